import { Module } from '@nestjs/common';
import { ReadinessModule } from '../checklists/readiness.module.js';
import { TicketSettler } from './ticket-settler.js';
import { TicketsController } from './tickets.controller.js';
import { TicketsRepository } from './tickets.repository.js';
import { TicketsService } from './tickets.service.js';

@Module({
  imports: [ReadinessModule],
  controllers: [TicketsController],
  providers: [TicketsService, TicketsRepository, TicketSettler],
  exports: [TicketsService, TicketSettler],
})
export class TicketsModule {}
