import { Readable } from 'node:stream';
import { Controller, Get, Param, Query, StreamableFile } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import type { Actor } from '../../platform/database/actor.js';
import { Answers } from '../contract/answers.js';
import { Id, PageQuery } from '../contract/contract.schemas.js';
import { BracingList } from './bracing.schemas.js';
import { FindingList } from './findings.schemas.js';
import { CheckList, TakeoffAnswer, TakeoffQuery } from './takeoffs.schemas.js';
import { TakeoffsService } from './takeoffs.service.js';

@ApiTags('takeoffs')
@Controller('jobs')
export class TakeoffsController {
  constructor(private readonly service: TakeoffsService) {}

  @Get(':id/takeoff')
  @Answers(TakeoffAnswer, { summary: 'What the job takes, and where', permission: 'takeoff.read' })
  async takeoff(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: Id }) id: string,
    @Query({ schema: TakeoffQuery }) query: TakeoffQuery,
  ) {
    if (query.detail === undefined) return this.service.takeoff(actor, id);
    return new StreamableFile(Readable.from(await this.service.detailedText(actor, id)), {
      type: 'application/json; charset=utf-8',
    });
  }

  @Get(':id/findings')
  @Answers(FindingList, { summary: 'What a person must know of the job', permission: 'takeoff.read' })
  findings(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: Id }) id: string,
    @Query({ schema: PageQuery }) query: PageQuery,
  ) {
    return this.service.findings(actor, id, query);
  }

  @Get(':id/checks')
  @Answers(CheckList, { summary: 'The checks that ran, with their arithmetic', permission: 'takeoff.read' })
  checks(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string, @Query({ schema: PageQuery }) query: PageQuery) {
    return this.service.checks(actor, id, query);
  }

  @Get(':id/bracing')
  @Answers(BracingList, { summary: 'Where the forms of each storey are braced, and what each brace takes', permission: 'takeoff.read' })
  bracing(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string, @Query({ schema: PageQuery }) query: PageQuery) {
    return this.service.bracing(actor, id, query);
  }
}
