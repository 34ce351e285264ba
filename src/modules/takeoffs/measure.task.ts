import { createHash } from 'node:crypto';
import { Injectable, type OnModuleInit } from '@nestjs/common';
import { z } from 'zod';
import type { Advice } from '../../domain/advice/advice.js';
import type { Schedule } from '../../domain/schedule/schedule.js';
import { systemActor, type Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import type { Transaction } from '../../platform/database/transaction.js';
import { Queue, type TaskContext } from '../../platform/queue/queue.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import { Log } from '../../platform/telemetry/log.js';
import { WorkerPool } from '../../platform/workers/worker-pool.js';
import { Readiness } from '../checklists/readiness.js';
import { isMeasured } from '../jobs/jobs.schemas.js';
import type { RangeWithDocument } from '../ranges/ranges.repository.js';
import { RangesService } from '../ranges/ranges.service.js';
import { TicketSettler } from '../tickets/ticket-settler.js';
import type { MeasureInput, MeasureOutput } from './measure.worker.js';
import { RunsRepository, type MeasuredWith, type RunningJob } from './runs.repository.js';

export const MEASURE = 'measure';
const WALLS_AT_ONCE = 500;
const ITEMS_AT_ONCE = 5_000;

const Payload = z.object({ job: z.string(), revision: z.number().int() });
type Payload = z.infer<typeof Payload>;

interface Loaded {
  readonly job: RunningJob;
  readonly schedule: Schedule;
  readonly range: RangeWithDocument;
  readonly advice: readonly Advice[];
}

/** Measures the revision of a job that is in force when the result is stored; what comes too late is dropped. */
@Injectable()
export class MeasureTask implements OnModuleInit {
  constructor(
    private readonly database: Database,
    private readonly queue: Queue,
    private readonly pool: WorkerPool,
    private readonly ranges: RangesService,
    private readonly tickets: TicketSettler,
    private readonly readiness: Readiness,
    private readonly repository: RunsRepository,
    private readonly log: Log,
  ) {}

  onModuleInit(): void {
    this.queue.register(MEASURE, (payload, context) => this.run(Payload.parse(payload), context));
  }

  private async run(payload: Payload, { actor, lastAttempt }: TaskContext): Promise<void> {
    const system = systemActor(actor.supplierId);
    const loaded = await this.load(system, payload);
    if (!loaded) return;
    try {
      const output = await this.pool.run<MeasureInput, MeasureOutput>('modules/takeoffs/measure.worker.js', 'measured', {
        schedule: loaded.schedule,
        range: loaded.range.body,
        advice: loaded.advice,
      });
      await this.database.transaction(system, (tx) => this.store(tx, payload, loaded, output));
    } catch (error) {
      if (!lastAttempt && !isFinal(error)) throw error;
      this.log.error({ err: error, job: payload.job }, 'a job could not be measured');
      await this.database.transaction(system, (tx) => this.fail(tx, payload, error));
    }
  }

  private load(actor: Actor, { job: id, revision }: Payload): Promise<Loaded | null> {
    return this.database.transaction(actor, async (tx) => {
      const job = await this.repository.job(tx, id);
      if (!job || job.revision !== revision || isMeasured(job.state) || job.state === 'failed') return null;
      const schedule = await this.repository.schedule(tx, id, revision);
      const range = (await this.ranges.inForce(tx)).find(({ code }) => code === schedule.range);
      if (!range) throw new Error(`the range ${schedule.range} that the schedule was read with is gone`);
      const advice = await this.repository.advice(tx, id);
      if (job.state === 'queued')
        await tx.update('jobs', id, null, { state: 'running' }, { kind: 'job.measuring', data: { revision } });
      await this.repository.progress(tx, job, 'measuring', 0, schedule.walls.length);
      return { job, schedule, range, advice };
    });
  }

  private async store(
    tx: Transaction,
    { job: id, revision }: Payload,
    { range, advice }: Loaded,
    output: MeasureOutput,
  ): Promise<void> {
    const job = await this.repository.job(tx, id);
    if (!job || job.revision !== revision) return;
    const inputs = { rangeId: range.id, rangeCode: range.code, rangeVersion: range.range_version, adviceKey: adviceKey(advice) };
    const standing = await this.tickets.standing(tx, id);
    const measurement =
      (await this.repository.stored(tx, job, output.engine, inputs)) ?? (await this.storeResult(tx, job, output, inputs));
    await this.tickets.settle(tx, { id, organisationId: job.organisation_id, revision }, standing, output.questions);
    await this.repository.progress(tx, job, 'measured', output.walls.length, output.walls.length);
    await tx.update(
      'jobs',
      id,
      null,
      { state: 'measured', measurement_id: measurement, failure: null },
      { kind: 'job.measured', data: { revision, forms: output.forms } },
    );
    await this.readiness.untickChanged(tx, id, measurement, revision);
    await this.readiness.settle(tx, id);
    await tx.signal('job', id);
  }

  private async storeResult(tx: Transaction, job: RunningJob, output: MeasureOutput, inputs: MeasuredWith): Promise<string> {
    const id = await this.repository.store(tx, job, output, inputs);
    for (let from = 0; from < output.walls.length; from += WALLS_AT_ONCE) {
      await this.repository.storeWalls(tx, job, id, output.walls.slice(from, from + WALLS_AT_ONCE));
    }
    for (let from = 0; from < output.checklist.length; from += ITEMS_AT_ONCE) {
      await this.repository.storeChecklist(tx, job, id, from, output.checklist.slice(from, from + ITEMS_AT_ONCE));
    }
    await this.repository.storeFindings(tx, job, id, output);
    return id;
  }

  private async fail(tx: Transaction, { job: id, revision }: Payload, error: unknown): Promise<void> {
    const job = await this.repository.job(tx, id);
    if (!job || job.revision !== revision) return;
    const failure = error instanceof Refusal ? error.detail : 'Something is wrong on our side; it has been written down.';
    await tx.update('jobs', id, null, { state: 'failed', failure }, { kind: 'job.failed', data: { revision, failure } });
    await tx.signal('job', id);
  }
}

/** What another attempt would not change: too large, too slow. A busy pool or database is tried again. */
const isFinal = (error: unknown): boolean =>
  error instanceof Refusal ? error.code !== 'busy' : !(error instanceof Error && 'code' in error);

const adviceKey = (advice: readonly Advice[]): string => createHash('sha256').update(JSON.stringify(advice)).digest('hex');
