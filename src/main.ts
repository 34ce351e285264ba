import 'reflect-metadata';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { createApp } from './app.js';
import { addressOf, writeAddress } from './platform/http/address-file.js';
import type { Platform } from './platform/platform.js';
import { runProcess, type Stop } from './platform/process/run-process.js';

/** The API, and the worker too where WORKER=inline. */
async function serve(platform: Platform): Promise<Stop> {
  const { configuration, queue, drain, log } = platform;
  const app = await createApp(platform);
  if (configuration.workerInline) await queue.start();
  await app.listen({ port: configuration.port, host: configuration.host });
  const server = app.getHttpServer() as Server;
  const address = addressOf(server.address() as AddressInfo);
  const removeAddress = await writeAddress(configuration.dataDir, address);
  log.info({ address, worker: configuration.workerInline }, 'listening');
  process.stdout.write(configuration.logLevel === 'silent' ? '' : `Wallcourse listens on ${address}\n`);
  return async () => {
    drain.begin();
    await removeAddress();
    const impatient = setTimeout(() => server.closeAllConnections(), configuration.drainMs);
    await app.close();
    clearTimeout(impatient);
    await queue.stop();
  };
}

await runProcess(serve);
