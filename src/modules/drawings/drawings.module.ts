import { Module } from '@nestjs/common';
import { PeopleModule } from '../people/people.module.js';
import { RangesModule } from '../ranges/ranges.module.js';
import { SchedulesModule } from '../schedules/schedules.module.js';
import { TakeoffsModule } from '../takeoffs/takeoffs.module.js';
import { DrawingsController } from './drawings.controller.js';
import { DrawingsService } from './drawings.service.js';

@Module({
  imports: [TakeoffsModule, SchedulesModule, RangesModule, PeopleModule],
  controllers: [DrawingsController],
  providers: [DrawingsService],
})
export class DrawingsModule {}
