import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { call, type Job } from '../e2e/api.js';
import { shed } from '../e2e/schedules.js';
import { startServer, type TestServer } from '../support/server.js';

const MANY = 200;

let server: TestServer;
let job: Job;

/** Nobody works here, so that the job stays queued and its streams stay open. */
beforeAll(async () => {
  server = await startServer({ WORKER: 'none' });
  job = (await call<Job>(server, 'contractor', 'POST', '/v1/jobs', shed(), { prefer: 'respond-async' })).body;
});

afterAll(async () => {
  await server.stop();
});

async function gauge(name: string): Promise<number> {
  const text = await (await server.fetch('/metrics')).text();
  return Number(new RegExp(`^${name} (\\d+)$`, 'm').exec(text)?.[1]);
}

async function until(name: string, wanted: number): Promise<number> {
  for (let round = 0; round < 100 && (await gauge(name)) !== wanted; round += 1) await sleep(50);
  return gauge(name);
}

async function opened(): Promise<{
  readonly first: string;
  readonly reader: ReadableStreamDefaultReader<Uint8Array>;
  readonly abort: () => void;
}> {
  const controller = new AbortController();
  const response = await server.fetch(`/v1/jobs/${job.id}/events`, { as: 'contractor', signal: controller.signal });
  const reader = response.body!.getReader();
  const { value } = await reader.read();
  return { first: Buffer.from(value ?? []).toString(), reader, abort: () => controller.abort() };
}

describe('event streams', () => {
  it(`${MANY} clients connect, hear where the job is, and leave nothing behind when they break off`, async () => {
    const streams = await Promise.all(Array.from({ length: MANY }, opened));
    expect(new Set(streams.map(({ first }) => first))).toEqual(
      new Set(['event: progress\ndata: {"stage":"queued","done":0,"total":0}\n\n']),
    );
    expect(await until('wallcourse_event_streams', MANY)).toBe(MANY);
    expect(await gauge('wallcourse_signal_subscribers')).toBe(MANY);
    for (const { abort } of streams) abort();
    expect(await until('wallcourse_event_streams', 0)).toBe(0);
    expect(await gauge('wallcourse_signal_subscribers')).toBe(0);
  });

  it('a server that is told to stop ends them and goes', async () => {
    const { reader } = await opened();
    const began = performance.now();
    const gone = server.stop();
    expect((await reader.read()).done).toBe(true);
    expect(await gone).toBe(0);
    expect(performance.now() - began).toBeLessThan(10_000);
  });
});
