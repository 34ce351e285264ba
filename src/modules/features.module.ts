import { Module, StandardSchemaSerializerInterceptor } from '@nestjs/common';
import { APP_INTERCEPTOR, Reflector } from '@nestjs/core';
import { AnswerHeaders } from './contract/answer-headers.interceptor.js';
import { ChecklistsModule } from './checklists/checklists.module.js';
import { ChecksModule } from './checks/checks.module.js';
import { DemoModule } from './demo/demo.module.js';
import { DocsModule } from './docs/docs.module.js';
import { DrawingsModule } from './drawings/drawings.module.js';
import { GraphModule } from './graphql/graphql.module.js';
import { HistoriesModule } from './histories/histories.module.js';
import { JobsModule } from './jobs/jobs.module.js';
import { PeopleModule } from './people/people.module.js';
import { PricesModule } from './prices/prices.module.js';
import { QuotesModule } from './quotes/quotes.module.js';
import { RangesModule } from './ranges/ranges.module.js';
import { TakeoffsModule } from './takeoffs/takeoffs.module.js';
import { TicketsModule } from './tickets/tickets.module.js';

/** Everything that the API offers, on whatever platform it stands. */
@Module({
  imports: [
    JobsModule,
    TakeoffsModule,
    DrawingsModule,
    ChecklistsModule,
    QuotesModule,
    TicketsModule,
    HistoriesModule,
    ChecksModule,
    PeopleModule,
    PricesModule,
    RangesModule,
    DocsModule,
    GraphModule,
    DemoModule,
  ],
  providers: [
    { provide: APP_INTERCEPTOR, useClass: AnswerHeaders },
    {
      provide: APP_INTERCEPTOR,
      inject: [Reflector],
      useFactory: (reflector: Reflector) => new StandardSchemaSerializerInterceptor(reflector),
    },
  ],
})
export class FeaturesModule {}
