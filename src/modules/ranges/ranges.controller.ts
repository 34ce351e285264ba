import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import type { Actor } from '../../platform/database/actor.js';
import { Answers } from '../contract/answers.js';
import { Id, PageQuery } from '../contract/contract.schemas.js';
import { RangeAnswer, RangeDocument, RangeList } from './ranges.schemas.js';
import { RangesService } from './ranges.service.js';

@ApiTags('ranges')
@Controller('ranges')
export class RangesController {
  constructor(private readonly service: RangesService) {}

  @Get()
  @Answers(RangeList, { summary: 'Form ranges in all their versions', permission: 'range.read' })
  list(@CurrentActor() actor: Actor, @Query({ schema: PageQuery }) query: PageQuery) {
    return this.service.list(actor, query);
  }

  @Get(':id')
  @Answers(RangeDocument, { summary: 'One form range as it was written', permission: 'range.read' })
  document(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string) {
    return this.service.document(actor, id);
  }

  @Post()
  @Answers(RangeAnswer, { summary: 'Add a form range, or a new version of one', permission: 'range.write', status: 201 })
  add(@CurrentActor() actor: Actor, @Body({ schema: RangeDocument }) document: RangeDocument) {
    return this.service.add(actor, document);
  }
}
