import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Actor } from '../../platform/database/actor.js';
import { Answers } from '../contract/answers.js';
import { Caller } from '../contract/caller.js';
import { Id } from '../contract/contract.schemas.js';
import { IfMatch } from '../contract/if-match.js';
import { CloseBody, ReplyBody, TicketAnswer, TicketList, TicketQuery } from './tickets.schemas.js';
import { TicketsService } from './tickets.service.js';

@ApiTags('tickets')
@Controller('v1/tickets')
export class TicketsController {
  constructor(private readonly service: TicketsService) {}

  @Get()
  @Answers(TicketList, { summary: 'Tickets, the newest first', permission: 'ticket.read' })
  list(@Caller() actor: Actor, @Query({ schema: TicketQuery }) query: TicketQuery) {
    return this.service.list(actor, query);
  }

  @Get(':id')
  @Answers(TicketAnswer, { summary: 'One ticket with its findings and messages', permission: 'ticket.read' })
  one(@Caller() actor: Actor, @Param('id', { schema: Id }) id: string) {
    return this.service.one(actor, id);
  }

  @Post(':id/claim')
  @Answers(TicketAnswer, { summary: 'Take the ticket on', permission: 'ticket.claim' })
  claim(@Caller() actor: Actor, @Param('id', { schema: Id }) id: string, @IfMatch() version: number | null) {
    return this.service.claim(actor, id, version);
  }

  @Post(':id/reply')
  @Answers(TicketAnswer, { summary: "Write on the ticket; the desk's reply answers it", permission: 'ticket.reply' })
  reply(@Caller() actor: Actor, @Param('id', { schema: Id }) id: string, @Body({ schema: ReplyBody }) body: ReplyBody, @IfMatch() version: number | null) {
    return this.service.reply(actor, id, body, version);
  }

  @Post(':id/close')
  @Answers(TicketAnswer, { summary: 'Close an answered ticket', permission: 'ticket.close' })
  close(@Caller() actor: Actor, @Param('id', { schema: Id }) id: string, @Body({ schema: CloseBody }) body: CloseBody, @IfMatch() version: number | null) {
    return this.service.close(actor, id, body, version);
  }

  @Post(':id/reopen')
  @Answers(TicketAnswer, { summary: 'Open an answered or closed ticket again', permission: 'ticket.reopen' })
  reopen(@Caller() actor: Actor, @Param('id', { schema: Id }) id: string, @Body({ schema: CloseBody }) body: CloseBody, @IfMatch() version: number | null) {
    return this.service.reopen(actor, id, body, version);
  }
}
