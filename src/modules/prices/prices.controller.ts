import { Controller, Get, Headers, Param, Post, Query, Req, StreamableFile } from '@nestjs/common';
import { ApiBody, ApiConsumes, ApiTags } from '@nestjs/swagger';
import type { FastifyRequest } from 'fastify';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import { Configuration } from '../../platform/config/configuration.js';
import type { Actor } from '../../platform/database/actor.js';
import { Answers } from '../contract/answers.js';
import { Id, PageQuery } from '../contract/contract.schemas.js';
import { negotiated } from '../contract/negotiated.js';
import { uploadedParts } from '../schedules/read-upload.js';
import { XLSX } from '../schedules/template.schemas.js';
import { PriceFiles } from './price-files.service.js';
import { PriceListAnswer, PriceListDocument, PriceListList, PriceListQuery, PriceListUpload } from './prices.schemas.js';
import { PricesService } from './prices.service.js';

const TYPES = ['application/json', 'text/csv', XLSX] as const;

@ApiTags('prices')
@Controller('price-lists')
export class PricesController {
  constructor(
    private readonly service: PricesService,
    private readonly files: PriceFiles,
    private readonly configuration: Configuration,
  ) {}

  @Get()
  @Answers(PriceListList, { summary: 'Price lists in all their versions', permission: 'price-list.read' })
  list(@CurrentActor() actor: Actor, @Query({ schema: PageQuery }) query: PageQuery) {
    return this.service.list(actor, query);
  }

  @Get(':id')
  @Answers(PriceListDocument, { summary: 'One price list as it was written, as a workbook, or one sheet of it as CSV', permission: 'price-list.read', alsoAs: ['text/csv', XLSX] })
  async document(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: Id }) id: string,
    @Query({ schema: PriceListQuery }) { sheet }: PriceListQuery,
    @Headers('accept') accept: string | undefined,
  ) {
    const type = negotiated(accept, TYPES);
    if (type === 'application/json') return this.service.document(actor, id);
    if (type === XLSX) return new StreamableFile(await this.files.workbook(actor, id), { type, disposition: 'attachment; filename="prices.xlsx"' });
    return new StreamableFile(await this.files.csv(actor, id, sheet), { type: 'text/csv; charset=utf-8', disposition: `attachment; filename="${sheet}.csv"` });
  }

  @Post()
  @ApiConsumes('application/json', 'multipart/form-data')
  @ApiBody(PriceListUpload)
  @Answers(PriceListAnswer, { summary: 'Add a price list, or a new version of one; none is ever changed', permission: 'price-list.write', status: 201 })
  async add(@CurrentActor() actor: Actor, @Req() request: FastifyRequest) {
    if (request.isMultipart()) return this.files.add(actor, await uploadedParts(request, this.configuration.uploadLimitBytes));
    return this.service.add(actor, request.body as PriceListDocument);
  }
}
