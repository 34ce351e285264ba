import { Injectable } from '@nestjs/common';
import { Clock } from '../../platform/clock/clock.js';
import type { Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import { WorkerPool } from '../../platform/workers/worker-pool.js';
import { wrongField } from '../contract/field-error.js';
import { permit } from '../people/permissions.js';
import { RangesService } from '../ranges/ranges.service.js';
import type { TemplateInput } from './template.worker.js';

@Injectable()
export class TemplateService {
  constructor(
    private readonly database: Database,
    private readonly ranges: RangesService,
    private readonly pool: WorkerPool,
    private readonly clock: Clock,
  ) {}

  /** The workbook to fill in, for one of the ranges in force; written in a thread. */
  async write(actor: Actor, code: string | undefined): Promise<Uint8Array> {
    permit(actor, 'range.read');
    const inForce = await this.database.transaction(actor, (tx) => this.ranges.inForce(tx));
    const codes = inForce.map((range) => range.code);
    const range = code === undefined ? inForce[0] : inForce.find((each) => each.code === code);
    if (!range && code !== undefined)
      throw wrongField('There is no such form range in force.', '/range', code, `one of: ${codes.join(', ')}`);
    if (!range) throw new Refusal('not-found', 'There is no form range in force to make a template for.');
    const input = { range: range.body, ranges: codes, writtenAt: this.clock.now().toISOString() };
    return this.pool.run<TemplateInput, Uint8Array>('modules/schedules/template.worker.js', 'write', input);
  }
}
