import { Module } from '@nestjs/common';
import { PeopleModule } from '../people/people.module.js';
import { PricesModule } from '../prices/prices.module.js';
import { RangesModule } from '../ranges/ranges.module.js';
import { DemoSeed } from './demo.seed.js';

@Module({ imports: [PeopleModule, PricesModule, RangesModule], providers: [DemoSeed] })
export class DemoModule {}
