import { tmpdir } from 'node:os';
import pg from 'pg';
import { Authenticator } from '../platform/auth/authenticator.js';
import { BlobStore } from '../platform/blobs/blob-store.js';
import { SystemClock } from '../platform/clock/clock.js';
import { Configuration } from '../platform/config/configuration.js';
import { Database } from '../platform/database/database.js';
import { Drain } from '../platform/http/drain.js';
import { ProblemAnswer } from '../platform/http/problem-answer.js';
import { IdempotencyKeys } from '../platform/idempotency/idempotency-keys.js';
import type { Platform } from '../platform/platform.js';
import { IfcReader } from '../platform/ifc-reader/ifc-reader.js';
import { Queue } from '../platform/queue/queue.js';
import { Signals } from '../platform/signals/signals.js';
import { silentLog } from '../platform/telemetry/log.js';
import { Metrics } from '../platform/telemetry/metrics.js';
import { WorkerPool } from '../platform/workers/worker-pool.js';

/** A platform on which the application can be put together and looked at, and nothing can be asked: no database, no port. */
export function unopenedPlatform(): Platform {
  const configuration = Configuration.read({ SEED_DEMO: '0', DATA_DIR: tmpdir(), LOG_LEVEL: 'silent' });
  const log = silentLog();
  const metrics = new Metrics();
  const clock = new SystemClock();
  const pool = new pg.Pool();
  const database = new Database(pool, clock);
  const workers = new WorkerPool({
    threads: 1,
    memoryMb: configuration.threadMemoryMb,
    deadlineMs: configuration.threadDeadlineMs,
  });
  return {
    configuration,
    log,
    metrics,
    clock,
    database,
    workers,
    ifc: new IfcReader({ processes: 1, memoryMb: configuration.ifcMemoryMb, deadlineMs: configuration.ifcDeadlineMs }),
    authenticator: new Authenticator(database),
    idempotency: new IdempotencyKeys(database, clock),
    signals: new Signals('', log),
    queue: new Queue({ pool, url: '', tasks: 1, drainMs: 0 }, log, metrics),
    blobs: new BlobStore(configuration.blobsFolder),
    drain: new Drain(),
    answer: new ProblemAnswer(log, metrics),
    close: async () => {
      await workers.close();
      await pool.end();
    },
  };
}
