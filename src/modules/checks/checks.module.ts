import { Module } from '@nestjs/common';
import { TakeoffsModule } from '../takeoffs/takeoffs.module.js';
import { ChecksController } from './checks.controller.js';
import { ChecksService } from './checks.service.js';

@Module({ imports: [TakeoffsModule], controllers: [ChecksController], providers: [ChecksService] })
export class ChecksModule {}
