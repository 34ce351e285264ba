import type { Server } from 'node:http';
import type { INestApplication } from '@nestjs/common';
import type { Drain } from './drain.js';

const SWEEP_MS = 50;

/**
 * Closes the API without cutting anyone off: no new connections, streams are ended, requests in hand are answered and their
 * connections closed as soon as they are idle. Whoever has not come to an end after `patienceMs` is cut off.
 */
export async function closeServer(app: INestApplication, drain: Drain, patienceMs: number): Promise<void> {
  const server = app.getHttpServer() as Server;
  drain.begin();
  const sweep = setInterval(() => server.closeIdleConnections(), SWEEP_MS);
  const impatient = setTimeout(() => server.closeAllConnections(), patienceMs);
  try {
    await app.close();
  } finally {
    clearInterval(sweep);
    clearTimeout(impatient);
  }
}
