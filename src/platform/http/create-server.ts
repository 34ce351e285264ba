import { StandardSchemaValidationPipe, type DynamicModule } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import type { FastifyInstance } from 'fastify';
import { RefusalFilter } from './refusal.filter.js';
import { makeAdapter } from './server.js';
import { installIdempotency } from '../idempotency/idempotent-requests.js';
import type { Platform } from '../platform.js';
import { invalidInput } from '../refusals/refusal-of.js';
import { NestLog } from '../telemetry/nest-log.js';

/** Paths that do not stand under /v1. */
const UNVERSIONED = ['health/live', 'health/ready', 'metrics'];

/** The server with the routes of a root module on a platform, ready to listen. */
export async function createServer(platform: Platform, root: DynamicModule): Promise<NestFastifyApplication> {
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
