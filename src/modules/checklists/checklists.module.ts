import { Module } from '@nestjs/common';
import { TakeoffsModule } from '../takeoffs/takeoffs.module.js';
import { ChecklistsController } from './checklists.controller.js';
import { ChecklistsRepository } from './checklists.repository.js';
import { ChecklistsService } from './checklists.service.js';
import { ReadinessModule } from './readiness.module.js';

@Module({
  imports: [TakeoffsModule, ReadinessModule],
  controllers: [ChecklistsController],
  providers: [ChecklistsService, ChecklistsRepository],
  exports: [ChecklistsService],
})
export class ChecklistsModule {}
