import 'reflect-metadata';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { createApp } from './app.js';
import { addressOf, writeAddress } from './platform/http/address-file.js';
import { closeServer } from './platform/http/close-server.js';
import type { Platform } from './platform/platform.js';
import { runProcess, type Stop } from './platform/process/run-process.js';

/** The API, and the worker too where WORKER=inline. */
async function serve(platform: Platform): Promise<Stop> {
  const { configuration, queue, drain, log } = platform;
  const app = await createApp(platform);
  if (configuration.workerInline) await queue.start();
  await app.listen({ port: configuration.port, host: configuration.host });
  const address = addressOf((app.getHttpServer() as Server).address() as AddressInfo);
  const removeAddress = await writeAddress(configuration.dataDir, address);
  log.info({ address, worker: configuration.workerInline }, 'listening');
  process.stdout.write(configuration.logLevel === 'silent' ? '' : `Wallcourse listens on ${address}\n`);
  return async () => {
    await removeAddress();
    await closeServer(app, drain, configuration.drainMs);
    await queue.stop();
  };
}

await runProcess(serve);
