import { Module } from '@nestjs/common';
import { PricesController } from './prices.controller.js';
import { PricesRepository } from './prices.repository.js';
import { PricesService } from './prices.service.js';

@Module({ controllers: [PricesController], providers: [PricesService, PricesRepository], exports: [PricesService] })
export class PricesModule {}
