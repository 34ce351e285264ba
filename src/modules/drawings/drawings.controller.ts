import { Controller, Get, Headers, Param, Query, StreamableFile } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import type { Actor } from '../../platform/database/actor.js';
import { AnswersRaw } from '../contract/answers.js';
import { Id } from '../contract/contract.schemas.js';
import { negotiated } from '../contract/negotiated.js';
import { DRAWING_TYPES, DrawingKind, DrawingQuery, DrawingRef } from './drawings.schemas.js';
import { DrawingsService } from './drawings.service.js';

@ApiTags('drawings')
@Controller('jobs')
export class DrawingsController {
  constructor(private readonly service: DrawingsService) {}

  @Get(':id/drawings/:kind/:ref')
  @AnswersRaw(DRAWING_TYPES, {
    summary: 'A storey from above, a wall from outside, or a junction from near',
    permission: 'drawing.read',
  })
  async drawing(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: Id }) id: string,
    @Param('kind', { schema: DrawingKind }) kind: DrawingKind,
    @Param('ref', { schema: DrawingRef }) ref: string,
    @Query({ schema: DrawingQuery }) query: DrawingQuery,
    @Headers('accept') accept: string | undefined,
  ) {
    const type = negotiated(accept, DRAWING_TYPES);
    const bytes = await this.service.draw(actor, id, { kind, ref, type, widthPx: query.width });
    return new StreamableFile(bytes, { type: type === 'image/svg+xml' ? `${type}; charset=utf-8` : type });
  }
}
