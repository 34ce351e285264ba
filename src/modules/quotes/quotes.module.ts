import { Module } from '@nestjs/common';
import { PeopleModule } from '../people/people.module.js';
import { PricesModule } from '../prices/prices.module.js';
import { RangesModule } from '../ranges/ranges.module.js';
import { SchedulesModule } from '../schedules/schedules.module.js';
import { TakeoffsModule } from '../takeoffs/takeoffs.module.js';
import { TicketsModule } from '../tickets/tickets.module.js';
import { QuotePapers } from './quote-papers.service.js';
import { QuotesController } from './quotes.controller.js';
import { QuotesRepository } from './quotes.repository.js';
import { QuotesService } from './quotes.service.js';

@Module({
  imports: [TakeoffsModule, TicketsModule, PricesModule, PeopleModule, SchedulesModule, RangesModule],
  controllers: [QuotesController],
  providers: [QuotesService, QuotePapers, QuotesRepository],
  exports: [QuotesService],
})
export class QuotesModule {}
