import { Authenticator } from './auth/authenticator.js';
import { BlobStore } from './blobs/blob-store.js';
import { SystemClock, type Clock } from './clock/clock.js';
import type { Configuration } from './config/configuration.js';
import { Database } from './database/database.js';
import { migrate } from './database/migrate.js';
import { openPool } from './database/pool.js';
import { startEmbeddedPostgres, type EmbeddedPostgres } from './embedded-postgres/embedded-postgres.js';
import { Drain } from './http/drain.js';
import { ProblemAnswer } from './http/problem-answer.js';
import { IdempotencyKeys } from './idempotency/idempotency-keys.js';
import { IfcReader } from './ifc-reader/ifc-reader.js';
import { Queue } from './queue/queue.js';
import { Signals } from './signals/signals.js';
import { openLog, type Log } from './telemetry/log.js';
import { Metrics } from './telemetry/metrics.js';
import { WorkerPool } from './workers/worker-pool.js';

/** What every process of the program stands on, opened in order and closed in reverse. */
export interface Platform {
  readonly configuration: Configuration;
  readonly log: Log;
  readonly metrics: Metrics;
  readonly clock: Clock;
  readonly database: Database;
  readonly authenticator: Authenticator;
  readonly idempotency: IdempotencyKeys;
  readonly signals: Signals;
  readonly queue: Queue;
  readonly blobs: BlobStore;
  readonly workers: WorkerPool;
  readonly ifc: IfcReader;
  readonly drain: Drain;
  readonly answer: ProblemAnswer;
  close(): Promise<void>;
}

type Closing = () => Promise<unknown>;

async function databaseUrl(configuration: Configuration, log: Log, closings: Closing[]): Promise<string> {
  if (configuration.databaseUrl !== null) return configuration.databaseUrl;
  const embedded: EmbeddedPostgres = await startEmbeddedPostgres({ dataDir: configuration.dataDir, onNotice: (text) => log.warn({}, text) });
  closings.push(() => embedded.stop());
  log.info({ port: embedded.port, pid: embedded.pid, adopted: embedded.adopted }, 'embedded database is up');
  return embedded.url;
}

async function closeAll(closings: readonly Closing[], log: Log): Promise<void> {
  for (const close of [...closings].reverse()) {
    await close().catch((error: unknown) => log.warn({ err: error }, 'something did not close cleanly'));
  }
}

export async function startPlatform(configuration: Configuration): Promise<Platform> {
  const log = openLog(configuration.logLevel);
  const metrics = new Metrics();
  const clock = new SystemClock();
  const closings: Closing[] = [];
  try {
    const url = await databaseUrl(configuration, log, closings);
    const applied = await migrate(url);
    if (applied.length > 0) log.info({ applied }, 'database migrated');
    const open = (size: number) => {
      const pool = openPool({ url, size, onLost: (error) => log.warn({ err: error }, 'a database connection was lost') });
      closings.push(() => pool.end());
      return pool;
    };
    const database = new Database(open(configuration.databasePool), clock);
    const signals = new Signals(url, log);
    await signals.start();
    closings.push(() => signals.close());
    const workers = new WorkerPool({ threads: configuration.threads, memoryMb: configuration.threadMemoryMb, deadlineMs: configuration.threadDeadlineMs });
    closings.push(() => workers.close());
    const ifc = new IfcReader({ processes: configuration.threads, memoryMb: configuration.ifcMemoryMb, deadlineMs: configuration.ifcDeadlineMs });
    closings.push(() => ifc.close());
    const queue = new Queue({ pool: open(configuration.workerTasks + 2), url, tasks: configuration.workerTasks, drainMs: configuration.drainMs }, log, metrics);
    closings.push(() => queue.stop());
    metrics.gauge('wallcourse_threads_waiting', 'Pieces of work that wait for a thread', () => workers.waiting);
    return {
      configuration, log, metrics, clock, database, signals, queue, workers, ifc,
      authenticator: new Authenticator(database),
      idempotency: new IdempotencyKeys(database, clock),
      blobs: new BlobStore(configuration.blobsFolder),
      drain: new Drain(),
      answer: new ProblemAnswer(log, metrics),
      close: () => closeAll(closings, log),
    };
  } catch (error) {
    await closeAll(closings, log);
    throw error;
  }
}
