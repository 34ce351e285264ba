import { Body, Controller, Delete, Get, Headers, Param, Post, Query, Req, Res, StreamableFile } from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiTags } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import type { Actor } from '../../platform/database/actor.js';
import { IfMatch } from '../../platform/http/if-match.js';
import { Answers, AnswersRaw } from '../contract/answers.js';
import { Id } from '../contract/contract.schemas.js';
import { negotiated } from '../contract/negotiated.js';
import { ChecklistPapers } from './checklist-papers.service.js';
import { ChecklistAnswer, ChecklistQuery, TickBody, TickedAnswer, TickForm } from './checklists.schemas.js';
import { ChecklistsService } from './checklists.service.js';
import { tickInput } from './tick-upload.js';

@ApiTags('checklists')
@Controller('jobs/:id/checklist')
export class ChecklistsController {
  constructor(
    private readonly service: ChecklistsService,
    private readonly papers: ChecklistPapers,
  ) {}

  @Get()
  @Answers(ChecklistAnswer, {
    summary: 'The pre-pour checklist in the order in which the crew walks: JSON page by page, or all of it as a paper for the site',
    permission: 'checklist.read',
    alsoAs: ['application/pdf'],
  })
  async list(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: Id }) id: string,
    @Query({ schema: ChecklistQuery }) query: ChecklistQuery,
    @Headers('accept') accept: string | undefined,
  ) {
    if (negotiated(accept, ['application/json', 'application/pdf']) === 'application/json') return this.service.list(actor, id, query);
    return new StreamableFile(await this.papers.pdf(actor, id, query.storey ?? null), { type: 'application/pdf' });
  }

  @Post(':item/tick')
  @ApiConsumes('application/json', 'multipart/form-data')
  @ApiBody(TickForm)
  @Answers(TickedAnswer, {
    summary: 'Tick an item, with a note and a photo; If-Match names the version of the job',
    permission: 'checklist.tick',
    ifMatch: 'honoured',
  })
  async tick(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: Id }) id: string,
    @Param('item', { schema: Id }) item: string,
    @IfMatch('honoured') version: number | null,
    @Req() request: FastifyRequest,
  ) {
    return this.service.tick(actor, id, item, version, await tickInput(request));
  }

  @Delete(':item/tick')
  @Answers(TickedAnswer, { summary: 'Take a tick back', permission: 'checklist.tick', ifMatch: 'honoured' })
  untick(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: Id }) id: string,
    @Param('item', { schema: Id }) item: string,
    @Body({ schema: TickBody }) body: TickBody,
    @IfMatch('honoured') version: number | null,
  ) {
    return this.service.untick(actor, id, item, version, body);
  }

  @Get(':item/photo')
  @AnswersRaw(['image/jpeg', 'image/png'], { summary: 'The photo that was sent with the tick', permission: 'checklist.read' })
  async photo(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: Id }) id: string,
    @Param('item', { schema: Id }) item: string,
    @Res({ passthrough: true }) reply: FastifyReply,
  ) {
    const { bytes, mediaType } = await this.service.photo(actor, id, item);
    void reply.header('cache-control', 'private, no-store');
    const name = `checklist-photo.${mediaType === 'image/png' ? 'png' : 'jpg'}`;
    return new StreamableFile(bytes, { type: mediaType, disposition: `attachment; filename="${name}"` });
  }
}
