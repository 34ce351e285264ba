import { Body, Controller, Get, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import type { Actor } from '../../platform/database/actor.js';
import { Answers } from '../contract/answers.js';
import { Id, PageQuery } from '../contract/contract.schemas.js';
import { PriceListAnswer, PriceListDocument, PriceListList } from './prices.schemas.js';
import { PricesService } from './prices.service.js';

@ApiTags('prices')
@Controller('price-lists')
export class PricesController {
  constructor(private readonly service: PricesService) {}

  @Get()
  @Answers(PriceListList, { summary: 'Price lists in all their versions', permission: 'price-list.read' })
  list(@CurrentActor() actor: Actor, @Query({ schema: PageQuery }) query: PageQuery) {
    return this.service.list(actor, query);
  }

  @Get(':id')
  @Answers(PriceListDocument, { summary: 'One price list as it was written', permission: 'price-list.read' })
  document(@CurrentActor() actor: Actor, @Param('id', { schema: Id }) id: string) {
    return this.service.document(actor, id);
  }

  @Post()
  @Answers(PriceListAnswer, { summary: 'Add a price list, or a new version of one', permission: 'price-list.write', status: 201 })
  add(@CurrentActor() actor: Actor, @Body({ schema: PriceListDocument }) document: PriceListDocument) {
    return this.service.add(actor, document);
  }
}
