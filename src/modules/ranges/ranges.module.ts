import { Module } from '@nestjs/common';
import { RangesController } from './ranges.controller.js';
import { RangesRepository } from './ranges.repository.js';
import { RangesService } from './ranges.service.js';

@Module({ controllers: [RangesController], providers: [RangesService, RangesRepository], exports: [RangesService] })
export class RangesModule {}
