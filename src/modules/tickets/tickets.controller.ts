import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import type { Actor } from '../../platform/database/actor.js';
import { IfMatch } from '../../platform/http/if-match.js';
import { Answers } from '../contract/answers.js';
import { Id } from '../contract/contract.schemas.js';

import { CloseBody, ReplyBody, TicketAnswer, TicketList, TicketQuery } from './tickets.schemas.js';
import { TicketsService } from './tickets.service.js';

@ApiTags('tickets')
@Controller('tickets')
export class TicketsController {
  constructor(private readonly service: TicketsService) {}

  @Get()
  @Answers(TicketList, { summary: 'Tickets, the newest first', permission: 'ticket.read' })
  list(@CurrentActor() actor: Actor, @Query({ schema: TicketQuery }) query: TicketQuery) {
    return this.service.list(actor, query);
  }

  @Get(':id')
  @Answers(TicketAnswer, { summary: 'One ticket with its findings and messages', permission: 'ticket.read' })
  one(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string) {
    return this.service.one(actor, id);
  }

  @Post(':id/claim')
  @Answers(TicketAnswer, { summary: 'Take the ticket on', permission: 'ticket.claim', ifMatch: 'honoured' })
  claim(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string, @IfMatch('honoured') version: number | null) {
    return this.service.claim(actor, id, version);
  }

  @Post(':id/reply')
  @Answers(TicketAnswer, {
    summary: "Write on the ticket; the desk's reply answers it",
    permission: 'ticket.reply',
    ifMatch: 'honoured',
  })
  reply(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: Id }) id: string,
    @Body({ schema: ReplyBody }) body: ReplyBody,
    @IfMatch('honoured') version: number | null,
  ) {
    return this.service.reply(actor, id, body, version);
  }

  @Post(':id/close')
  @Answers(TicketAnswer, { summary: 'Close an answered ticket', permission: 'ticket.close', ifMatch: 'honoured' })
  close(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: Id }) id: string,
    @Body({ schema: CloseBody }) body: CloseBody,
    @IfMatch('honoured') version: number | null,
  ) {
    return this.service.close(actor, id, body, version);
  }

  @Post(':id/reopen')
  @Answers(TicketAnswer, { summary: 'Open an answered or closed ticket again', permission: 'ticket.reopen', ifMatch: 'honoured' })
  reopen(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: Id }) id: string,
    @Body({ schema: CloseBody }) body: CloseBody,
    @IfMatch('honoured') version: number | null,
  ) {
    return this.service.reopen(actor, id, body, version);
  }
}
