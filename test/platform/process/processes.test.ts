import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { connect, createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { createDatabase } from '../../support/database.js';
import { exited, startServer, type TestServer } from '../../support/server.js';

const SCHEDULE = readFileSync('shared/samples/quay-workshop.schedule.json', 'utf8');

interface Job {
  readonly id: string;
  readonly state: string;
}

describe('api and worker as processes of their own', () => {
  let api: TestServer;
  const workers: ChildProcess[] = [];

  beforeAll(async () => {
    api = await startServer({ WORKER: 'none' });
  });
  afterAll(async () => {
    for (const worker of workers) worker.kill('SIGTERM');
    await Promise.all(workers.map(exited));
    await api.stop();
  });

  function startWorker(): { child: ChildProcess; said: () => string } {
    const child = spawn(process.execPath, [join(process.cwd(), 'dist', 'worker.js')], {
      cwd: api.dataDir, env: { PATH: process.env['PATH'], DATA_DIR: api.dataDir, DATABASE_URL: api.databaseUrl }, stdio: ['ignore', 'pipe', 'pipe'],
    });
    workers.push(child);
    let text = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk: Buffer) => (text += chunk.toString()));
    return { child, said: () => text };
  }

  const submit = (headers: Record<string, string> = {}) =>
    api.fetch('/v1/jobs', { as: 'contractor', method: 'POST', body: SCHEDULE, headers: { 'content-type': 'application/json', ...headers } });
  const job = async (id: string) => (await (await api.fetch(`/v1/jobs/${id}`, { as: 'contractor' })).json()) as Job;

  async function comesTo(id: string, state: string): Promise<void> {
    for (let tries = 0; tries < 600 && (await job(id)).state !== state; tries += 1) await sleep(50);
    expect((await job(id)).state).toBe(state);
  }

  it('leaves a job queued while no worker is there, and has it measured when one comes', async () => {
    const answer = await submit({ prefer: 'respond-async' });
    expect(answer.status).toBe(202);
    const { id } = (await answer.json()) as Job;
    await sleep(300);
    expect((await job(id)).state).toBe('queued');
    startWorker();
    await comesTo(id, 'measured');
  }, 90_000);

  it('goes on when a worker is killed: another takes up its work', async () => {
    const doomed = workers[0];
    const ids = await Promise.all(Array.from({ length: 4 }, async () => ((await (await submit({ prefer: 'respond-async' })).json()) as Job).id));
    doomed?.kill('SIGKILL');
    startWorker();
    for (const id of ids) await comesTo(id, 'measured');
  }, 120_000);

  it('ends a worker cleanly on SIGTERM', async () => {
    const { child, said } = startWorker();
    for (let tries = 0; tries < 600 && !said().includes('"working"'); tries += 1) await sleep(25);
    child.kill('SIGTERM');
    expect(await exited(child)).toBe(0);
    expect(said()).toContain('"stopped"');
  }, 60_000);
});

describe('a stopping API', () => {
  it('answers the request it has in hand, ends event streams and leaves with success', async () => {
    const server = await startServer({ WORKER: 'inline', LOG_LEVEL: 'info' });
    const created = (await (await server.fetch('/v1/jobs', { as: 'contractor', method: 'POST', body: SCHEDULE, headers: { 'content-type': 'application/json' } })).json()) as Job;
    const stream = await server.fetch(`/v1/jobs/${created.id}/events`, { as: 'contractor', headers: { accept: 'text/event-stream' } });
    expect(stream.status).toBe(200);
    const streamed = stream.text();

    // A request whose body is still on its way when the signal comes.
    const body = Buffer.from(SCHEDULE);
    const slow = new Promise<string>((settle, fail) => {
      const socket = connect(Number(new URL(server.url).port), '127.0.0.1', () => {
        socket.write(`POST /v1/jobs HTTP/1.1\r\nhost: x\r\nauthorization: Bearer ${server.tokens.contractor}\r\ncontent-type: application/json\r\nprefer: respond-async\r\ncontent-length: ${body.length}\r\n\r\n`);
        socket.write(body.subarray(0, 100));
        setTimeout(() => socket.write(body.subarray(100)), 1_000);
      });
      let text = '';
      socket.on('data', (chunk) => (text += chunk.toString())).on('close', () => settle(text)).on('error', fail);
    });
    await sleep(300);
    const began = performance.now();
    const stopped = server.stop('SIGTERM');
    expect(await slow).toMatch(/^HTTP\/1\.1 202 /);
    await streamed;
    expect(await stopped).toBe(0);
    expect(performance.now() - began).toBeLessThan(10_000);
    await expect(fetch(`${server.url}/health/live`)).rejects.toThrow();
    expect(server.output()).not.toContain('"level":"error"');
  }, 90_000);
});

describe('a process that cannot start', () => {
  const start = async (environment: Record<string, string>) => {
    const child = spawn(process.execPath, [join(process.cwd(), 'dist', 'main.js')], { env: { PATH: process.env['PATH'], ...environment }, stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk: Buffer) => (said += chunk.toString()));
    return { code: await exited(child), said };
  };

  it('says what is wrong with its configuration and leaves with a failure', async () => {
    const { code, said } = await start({ PORT: 'eighty', WORKER: 'maybe' });
    expect(code).toBe(1);
    expect(said).toMatch(/PORT="eighty": .*\n.*WORKER="maybe": /);
  }, 60_000);

  it('leaves with a failure where its port is taken or its database is not there', async () => {
    const taken = createServer().listen(0, '127.0.0.1');
    await once(taken, 'listening');
    const { port } = taken.address() as AddressInfo;
    const { url } = await createDatabase();
    const occupied = await start({ DATABASE_URL: url, PORT: String(port), SEED_DEMO: '0', DATA_DIR: join(tmpdir(), 'wallcourse-no-port') });
    expect({ code: occupied.code, said: occupied.said.includes('EADDRINUSE') }).toEqual({ code: 1, said: true });
    taken.close();
    await once(taken, 'close');
    const absent = await start({ DATABASE_URL: `postgresql://a:b@127.0.0.1:${port}/none`, PORT: '0' });
    expect({ code: absent.code, said: /DATABASE_URL .*ECONNREFUSED.*would do/.test(absent.said) }).toEqual({ code: 1, said: true });
    const file = await start({ DATA_DIR: join(process.cwd(), 'package.json'), PORT: '0' });
    expect({ code: file.code, said: /DATA_DIR=.*package\.json .*EEXIST.*would do/.test(file.said) }).toEqual({ code: 1, said: true });
  }, 90_000);
});
