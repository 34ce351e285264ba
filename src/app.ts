import { StandardSchemaValidationPipe, type DynamicModule } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import type { FastifyInstance } from 'fastify';
import { AppModule } from './app.module.js';
import { RefusalFilter } from './platform/http/refusal.filter.js';
import { makeAdapter } from './platform/http/server.js';
import { installIdempotency } from './platform/idempotency/idempotent-requests.js';
import type { Platform } from './platform/platform.js';
import { invalidInput } from './platform/refusals/refusal-of.js';
import { NestLog } from './platform/telemetry/nest-log.js';

/** Paths that do not stand under /v1. */
const UNVERSIONED = ['health/live', 'health/ready', 'metrics'];

/** The API on a platform, ready to listen. */
export async function createApp(platform: Platform, root: DynamicModule = AppModule.on(platform)): Promise<NestFastifyApplication> {
  const { log, metrics, answer, drain, authenticator, configuration } = platform;
  const adapter = makeAdapter({ log, metrics, answer, drain, authenticator, uploadLimitBytes: configuration.uploadLimitBytes });
  const server = adapter.getInstance() as unknown as FastifyInstance;
  installIdempotency(server, platform.idempotency, configuration.uploadLimitBytes, log);
  const app = await NestFactory.create<NestFastifyApplication>(root, adapter, {
    bodyParser: false,
    abortOnError: false,
    logger: new NestLog(log),
  });
  app.setGlobalPrefix('v1', { exclude: UNVERSIONED });
  app.useGlobalPipes(new StandardSchemaValidationPipe({ exceptionFactory: (issues) => invalidInput(issues) }));
  app.useGlobalFilters(new RefusalFilter(answer));
  await app.init();
  await server.ready();
  return app;
}
