import { Controller, Get, Param, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import type { Actor } from '../../platform/database/actor.js';
import { Answers } from '../contract/answers.js';
import { Id, PageQuery } from '../contract/contract.schemas.js';
import { EventList } from './histories.schemas.js';
import { HistoriesService } from './histories.service.js';

@ApiTags('histories')
@Controller('jobs')
export class HistoriesController {
  constructor(private readonly service: HistoriesService) {}

  @Get(':id/history')
  @Answers(EventList, { summary: 'What happened to the job, in order', permission: 'history.read' })
  ofJob(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string, @Query({ schema: PageQuery }) query: PageQuery) {
    return this.service.ofJob(actor, id, query);
  }
}
