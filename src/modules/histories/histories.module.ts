import { Module } from '@nestjs/common';
import { HistoriesController } from './histories.controller.js';
import { HistoriesRepository } from './histories.repository.js';
import { HistoriesService } from './histories.service.js';

@Module({ controllers: [HistoriesController], providers: [HistoriesService, HistoriesRepository] })
export class HistoriesModule {}
