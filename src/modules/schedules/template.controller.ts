import { Controller, Get, Headers, Query, StreamableFile } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { CurrentActor } from '../../platform/auth/current-actor.js';
import type { Actor } from '../../platform/database/actor.js';
import { AnswersRaw } from '../contract/answers.js';
import { negotiated } from '../contract/negotiated.js';
import { TemplateQuery, XLSX } from './template.schemas.js';
import { TemplateService } from './template.service.js';

@ApiTags('schedules')
@Controller('schedules')
export class TemplateController {
  constructor(private readonly service: TemplateService) {}

  @Get('template.xlsx')
  @AnswersRaw([XLSX], { summary: 'A workbook to fill in, with an example, notes and drop-downs', permission: 'range.read' })
  async template(
    @CurrentActor() actor: Actor,
    @Query({ schema: TemplateQuery }) query: TemplateQuery,
    @Headers('accept') accept: string | undefined,
  ) {
    const type = negotiated(accept, [XLSX]);
    const bytes = await this.service.write(actor, query.range);
    return new StreamableFile(bytes, { type, disposition: 'attachment; filename="wall-schedule.xlsx"' });
  }
}
