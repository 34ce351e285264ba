import { Module } from '@nestjs/common';
import { PriceFiles } from './price-files.service.js';
import { PricesController } from './prices.controller.js';
import { PricesRepository } from './prices.repository.js';
import { PricesService } from './prices.service.js';

@Module({ controllers: [PricesController], providers: [PricesService, PriceFiles, PricesRepository], exports: [PricesService] })
export class PricesModule {}
