import { Module } from '@nestjs/common';
import { PeopleModule } from '../people/people.module.js';
import { SchedulesModule } from '../schedules/schedules.module.js';
import { TakeoffsModule } from '../takeoffs/takeoffs.module.js';
import { ChecklistPapers } from './checklist-papers.service.js';
import { ChecklistsController } from './checklists.controller.js';
import { ChecklistsRepository } from './checklists.repository.js';
import { ChecklistsService } from './checklists.service.js';
import { ReadinessModule } from './readiness.module.js';

@Module({
  imports: [TakeoffsModule, ReadinessModule, PeopleModule, SchedulesModule],
  controllers: [ChecklistsController],
  providers: [ChecklistsService, ChecklistPapers, ChecklistsRepository],
  exports: [ChecklistsService],
})
export class ChecklistsModule {}
