import 'reflect-metadata';
import { NestFactory } from '@nestjs/core';
import { AppModule } from './app.module.js';
import type { Platform } from './platform/platform.js';
import { runProcess, type Stop } from './platform/process/run-process.js';
import { NestLog } from './platform/telemetry/nest-log.js';

/** Queued work only; any number of these may run beside any number of APIs. */
async function work(platform: Platform): Promise<Stop> {
  const app = await NestFactory.createApplicationContext(AppModule.on(platform), { abortOnError: false, logger: new NestLog(platform.log) });
  await platform.queue.start();
  platform.log.info({}, 'working');
  return async () => {
    await platform.queue.stop();
    await app.close();
  };
}

await runProcess(work);
