import { Controller, Get, Headers, Param, Post, StreamableFile } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import type { Actor } from '../../platform/database/actor.js';
import { IfMatch } from '../../platform/http/if-match.js';
import { Answers } from '../contract/answers.js';
import { Id } from '../contract/contract.schemas.js';
import { negotiated } from '../contract/negotiated.js';
import { QuotePapers } from './quote-papers.service.js';
import { BecauseAnswer, LineNumber, QuoteAnswer } from './quotes.schemas.js';
import { QuotesService } from './quotes.service.js';

@ApiTags('quotes')
@Controller()
export class QuotesController {
  constructor(
    private readonly service: QuotesService,
    private readonly papers: QuotePapers,
  ) {}

  @Post('jobs/:id/quotes')
  @Answers(QuoteAnswer, { summary: 'Price the job as it is measured: a draft', permission: 'quote.make', status: 201 })
  make(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string) {
    return this.service.make(actor, id);
  }

  @Get('quotes/:id')
  @Answers(QuoteAnswer, { summary: 'One quote, as JSON or as the paper to sign', permission: 'quote.read', alsoAs: ['application/pdf'] })
  async one(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: Id }) id: string,
    @Headers('accept') accept: string | undefined,
  ) {
    if (negotiated(accept, ['application/json', 'application/pdf']) === 'application/json') return this.service.one(actor, id);
    return new StreamableFile(await this.papers.pdf(actor, id), { type: 'application/pdf' });
  }

  @Get('quotes/:id/lines/:n/because')
  @Answers(BecauseAnswer, {
    summary: 'Walls and rules that caused a line, and how its quantity became what is sold',
    permission: 'quote.read',
  })
  because(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string, @Param('n', { schema: LineNumber }) n: number) {
    return this.service.because(actor, id, n);
  }

  @Post('quotes/:id/issue')
  @Answers(QuoteAnswer, { summary: 'Issue a draft: it is frozen from here on', permission: 'quote.issue', ifMatch: 'honoured' })
  issue(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string, @IfMatch('honoured') version: number | null) {
    return this.papers.issue(actor, id, version);
  }

  @Post('quotes/:id/accept')
  @Answers(QuoteAnswer, {
    summary: 'Accept an issued quote; refused while a question that holds it is open',
    permission: 'quote.accept',
    ifMatch: 'honoured',
  })
  accept(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string, @IfMatch('honoured') version: number | null) {
    return this.service.accept(actor, id, version);
  }

  @Post('quotes/:id/decline')
  @Answers(QuoteAnswer, { summary: 'Decline an issued quote', permission: 'quote.decline', ifMatch: 'honoured' })
  decline(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string, @IfMatch('honoured') version: number | null) {
    return this.service.decline(actor, id, version);
  }

  @Post('quotes/:id/withdraw')
  @Answers(QuoteAnswer, { summary: 'Withdraw a quote that is not settled', permission: 'quote.withdraw', ifMatch: 'honoured' })
  withdraw(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string, @IfMatch('honoured') version: number | null) {
    return this.service.withdraw(actor, id, version);
  }
}
