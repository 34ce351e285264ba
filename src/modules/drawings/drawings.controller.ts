import { Controller, Get, Headers, Param, Query, Res, StreamableFile } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { FastifyReply } from 'fastify';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import type { Actor } from '../../platform/database/actor.js';
import { AnswersRaw } from '../contract/answers.js';
import { Id } from '../contract/contract.schemas.js';
import { negotiated } from '../contract/negotiated.js';
import { dispositionOf, fileTag, isKnown } from './drawing-file.js';
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
    @Headers('if-none-match') ifNoneMatch: string | undefined,
    @Res({ passthrough: true }) reply: FastifyReply,
  ) {
    const type = negotiated(accept, DRAWING_TYPES);
    const { bytes, job } = await this.service.draw(actor, id, { kind, ref, type, widthPx: query.width });
    const tag = fileTag(bytes);
    void reply.headers({ etag: tag, vary: 'accept', 'cache-control': 'private, no-cache' });
    if (isKnown(ifNoneMatch, tag)) {
      void reply.status(304);
      return undefined;
    }
    return new StreamableFile(bytes, {
      type: type === 'image/svg+xml' ? `${type}; charset=utf-8` : type,
      disposition: dispositionOf(job, kind, ref, type),
    });
  }
}
