import { Module } from '@nestjs/common';
import { SchedulesModule } from '../schedules/schedules.module.js';
import { JobEvents } from './job-events.js';
import { JobsController } from './jobs.controller.js';
import { JobsRepository } from './jobs.repository.js';
import { JobsService } from './jobs.service.js';

@Module({
  imports: [SchedulesModule],
  controllers: [JobsController],
  providers: [JobsService, JobsRepository, JobEvents],
  exports: [JobsService],
})
export class JobsModule {}
