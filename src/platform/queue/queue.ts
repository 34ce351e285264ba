import { EventEmitter } from 'node:events';
import { Logger as QueueLogger, run, type Runner, type TaskList, type WorkerEvents } from 'graphile-worker';
import type pg from 'pg';
import type { Actor } from '../database/actor.js';
import { withCorrelation } from '../telemetry/correlation.js';
import type { Log } from '../telemetry/log.js';
import type { Metrics } from '../telemetry/metrics.js';
import { Undertaker } from './undertaker.js';

export interface TaskContext {
  /** Who asked for it. Act for them, or as `systemActor(actor.supplierId)`. */
  readonly actor: Actor;
  readonly attempt: number;
  /** Nobody will try again: say so where people look. */
  readonly lastAttempt: boolean;
  /** Aborted when the process is told to stop and its patience is over. */
  readonly signal: AbortSignal | undefined;
}

export type TaskHandler = (payload: unknown, context: TaskContext) => Promise<void>;

interface Entry {
  readonly actor: Actor;
  readonly correlation: string | null;
  readonly payload: unknown;
}

export interface QueueOptions {
  readonly pool: pg.Pool;
  readonly url: string;
  readonly tasks: number;
  readonly drainMs: number;
}

/** The tasks this program knows, and the runner that carries out what was enqueued. Tasks orchestrate; threads compute. */
export class Queue {
  private readonly handlers = new Map<string, TaskHandler>();
  private runner: Runner | null = null;
  private undertaker: Undertaker | null = null;

  constructor(
    private readonly options: QueueOptions,
    private readonly log: Log,
    private readonly metrics: Metrics,
  ) {}

  /** A name has one handler, registered before the queue starts. */
  register(name: string, handler: TaskHandler): void {
    if (this.handlers.has(name)) throw new Error(`the task ${name} has two handlers`);
    this.handlers.set(name, handler);
  }

  get running(): boolean {
    return this.runner !== null;
  }

  async start(): Promise<void> {
    const events = new EventEmitter() as WorkerEvents;
    this.undertaker = new Undertaker(this.options.url, this.log);
    events.on('worker:create', ({ worker }) => this.undertaker?.announce(worker.workerId));
    events.on('pool:create', ({ workerPool }) => this.undertaker?.announce(workerPool.id));
    await this.undertaker.start();
    const taskList: TaskList = {};
    for (const [name, handler] of this.handlers) {
      taskList[name] = (payload, helpers) =>
        this.carryOut(name, handler, payload as Entry, helpers.job.attempts, helpers.job.max_attempts, helpers.abortSignal);
    }
    this.runner = await run({
      pgPool: this.options.pool,
      taskList,
      events,
      parsedCronItems: [],
      concurrency: this.options.tasks,
      pollInterval: 1_000,
      noHandleSignals: true,
      gracefulShutdownAbortTimeout: this.options.drainMs,
      logger: this.queueLogger(),
    });
  }

  /** Lets running tasks finish; those that do not are taken up again by the next worker. */
  async stop(): Promise<void> {
    await this.runner?.stop().catch((error: unknown) => this.log.warn({ err: error }, 'the queue did not stop cleanly'));
    this.runner = null;
    await this.undertaker?.close();
    this.undertaker = null;
  }

  private async carryOut(name: string, handler: TaskHandler, entry: Entry, attempt: number, most: number, signal: AbortSignal | undefined): Promise<void> {
    await withCorrelation(entry.correlation ?? `task-${name}`, async () => {
      const began = performance.now();
      try {
        await handler(entry.payload, { actor: entry.actor, attempt, lastAttempt: attempt >= most, signal });
        this.metrics.count('wallcourse_tasks_total', 'Queued tasks by outcome', { task: name, outcome: 'done' });
        this.log.info({ task: name, attempt, ms: Math.round(performance.now() - began) }, 'task done');
      } catch (error) {
        this.metrics.count('wallcourse_tasks_total', 'Queued tasks by outcome', { task: name, outcome: 'failed' });
        this.log.error({ task: name, attempt, err: error }, 'task failed');
        throw error;
      }
    });
  }

  private queueLogger(): QueueLogger {
    return new QueueLogger(() => (level, message, meta) => {
      if (level === 'error' || level === 'warning') this.log.warn({ meta }, message);
      else this.log.debug({ meta }, message);
    });
  }
}
