import { Global, Module, type DynamicModule } from '@nestjs/common';
import { Authenticator } from './auth/authenticator.js';
import { BlobStore } from './blobs/blob-store.js';
import { Clock } from './clock/clock.js';
import { Configuration } from './config/configuration.js';
import { Database } from './database/database.js';
import { HealthController } from './health/health.controller.js';
import { Drain } from './http/drain.js';
import { ProblemAnswer } from './http/problem-answer.js';
import type { Platform } from './platform.js';
import { IfcReader } from './ifc-reader/ifc-reader.js';
import { Queue } from './queue/queue.js';
import { Signals } from './signals/signals.js';
import { Log } from './telemetry/log.js';
import { Metrics } from './telemetry/metrics.js';
import { WorkerPool } from './workers/worker-pool.js';

/** Gives every module the platform's parts by their class: Database, Clock, Queue, BlobStore, WorkerPool, Signals, Drain, Configuration, Log, Metrics. */
@Global()
@Module({})
export class PlatformModule {
  static on(platform: Platform): DynamicModule {
    const providers = [
      { provide: Configuration, useValue: platform.configuration },
      { provide: Log, useValue: platform.log },
      { provide: Metrics, useValue: platform.metrics },
      { provide: Clock, useValue: platform.clock },
      { provide: Database, useValue: platform.database },
      { provide: Authenticator, useValue: platform.authenticator },
      { provide: Signals, useValue: platform.signals },
      { provide: Queue, useValue: platform.queue },
      { provide: BlobStore, useValue: platform.blobs },
      { provide: WorkerPool, useValue: platform.workers },
      { provide: IfcReader, useValue: platform.ifc },
      { provide: Drain, useValue: platform.drain },
      { provide: ProblemAnswer, useValue: platform.answer },
    ];
    return { module: PlatformModule, controllers: [HealthController], providers, exports: providers.map(({ provide }) => provide) };
  }
}
