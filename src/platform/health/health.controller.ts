import { Controller, Get, Header } from '@nestjs/common';
import { Database } from '../database/database.js';
import { Drain } from '../http/drain.js';
import { Refusal } from '../refusals/refusal.js';
import { Metrics } from '../telemetry/metrics.js';

@Controller()
export class HealthController {
  constructor(
    private readonly database: Database,
    private readonly drain: Drain,
    private readonly metrics: Metrics,
  ) {}

  @Get('health/live')
  live(): { status: string } {
    return { status: 'live' };
  }

  @Get('health/ready')
  async ready(): Promise<{ status: string }> {
    if (this.drain.draining) throw new Refusal('busy', 'This process is about to stop.');
    if (!(await this.database.alive())) throw new Refusal('busy', 'The database does not answer.');
    return { status: 'ready' };
  }

  @Get('metrics')
  @Header('content-type', 'text/plain; version=0.0.4; charset=utf-8')
  text(): string {
    return this.metrics.text();
  }
}
