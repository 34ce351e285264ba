import { Module } from '@nestjs/common';
import { ReadinessModule } from '../checklists/readiness.module.js';
import { RangesModule } from '../ranges/ranges.module.js';
import { TicketsModule } from '../tickets/tickets.module.js';
import { FindingsRepository } from './findings.repository.js';
import { MeasureTask } from './measure.task.js';
import { RunsRepository } from './runs.repository.js';
import { TakeoffsController } from './takeoffs.controller.js';
import { TakeoffsRepository } from './takeoffs.repository.js';
import { TakeoffsService } from './takeoffs.service.js';

@Module({
  imports: [RangesModule, TicketsModule, ReadinessModule],
  controllers: [TakeoffsController],
  providers: [TakeoffsService, TakeoffsRepository, FindingsRepository, RunsRepository, MeasureTask],
  exports: [TakeoffsService, TakeoffsRepository],
})
export class TakeoffsModule {}
