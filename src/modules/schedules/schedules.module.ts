import { Module, Optional } from '@nestjs/common';
import { HttpAdapterHost } from '@nestjs/core';
import type { FastifyInstance } from 'fastify';
import { RangesModule } from '../ranges/ranges.module.js';
import { keepScheduleBytes } from './raw-json.js';
import { SchedulesRepository } from './schedules.repository.js';
import { SchedulesService } from './schedules.service.js';
import { TemplateController } from './template.controller.js';
import { TemplateService } from './template.service.js';

@Module({
  imports: [RangesModule],
  controllers: [TemplateController],
  providers: [SchedulesService, SchedulesRepository, TemplateService],
  exports: [SchedulesService, SchedulesRepository],
})
export class SchedulesModule {
  constructor(@Optional() host?: HttpAdapterHost) {
    const server = host?.httpAdapter?.getInstance<FastifyInstance | undefined>();
    if (server) keepScheduleBytes(server);
  }
}
