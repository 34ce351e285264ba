import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { startServer, type TestServer } from '../support/server.js';
import { call, type Job } from './api.js';
import { plan, shed } from './schedules.js';

const row = (walls: number) => ({
  ...plan('Row', []),
  storeys: [{ id: 'S1', height: '8\'-0"', grade: 'above', storeyAbove: false, closed: false }],
  walls: Array.from({ length: walls }, (_, index) => ({
    mark: `W${index}`,
    storey: 'S1',
    core: '6',
    from: [0, index * 60],
    to: [480, index * 60],
  })),
});

describe('a run that takes longer than the client is kept waiting', () => {
  let server: TestServer;

  beforeAll(async () => {
    server = await startServer({ WORKER: 'none', RUN_WAIT_S: '1' });
  });

  afterAll(async () => {
    await server.stop();
  });

  it('is answered 202 with the place where it will be, and until then there is no take-off', async () => {
    const began = performance.now();
    const answer = await call<Job>(server, 'contractor', 'POST', '/v1/jobs', shed());
    expect(performance.now() - began).toBeGreaterThan(1_000);
    expect([answer.status, answer.body.state, answer.headers.get('location')]).toEqual([
      202,
      'queued',
      `/v1/jobs/${answer.body.id}`,
    ]);
    for (const part of ['takeoff', 'findings', 'checks', 'drawings/plan/S1']) {
      const early = await call(server, 'contractor', 'GET', `/v1/jobs/${answer.body.id}/${part}`);
      expect([early.status, early.body['code']]).toEqual([409, 'already-running']);
    }
    const quote = await call(server, 'contractor', 'POST', `/v1/jobs/${answer.body.id}/quotes`);
    expect([quote.status, quote.body['code']]).toEqual([409, 'already-running']);
  });
});

describe('a run that takes longer than it may', () => {
  let server: TestServer;

  beforeAll(async () => {
    server = await startServer({ THREAD_DEADLINE_S: '3' });
  });

  afterAll(async () => {
    await server.stop();
  });

  it('fails, says why, and the next revision is measured all the same', async () => {
    const failed = await call<Job>(server, 'contractor', 'POST', '/v1/jobs', row(9_000));
    expect([failed.status, failed.body.state]).toEqual([201, 'failed']);
    const takeoff = await call(server, 'contractor', 'GET', `/v1/jobs/${failed.body.id}/takeoff`);
    expect([takeoff.status, takeoff.body['code']]).toEqual([409, 'illegal-move']);
    expect(takeoff.body['detail']).toBe('Revision 1 could not be measured: It takes longer than the 3 s it may take.');
    const events = await call(server, 'contractor', 'GET', `/v1/jobs/${failed.body.id}/events`);
    expect(events.text).toBe('event: progress\ndata: {"stage":"failed","done":0,"total":9000}\n\n');
    const put = await call<Job>(server, 'contractor', 'PUT', `/v1/jobs/${failed.body.id}/schedule`, shed(), {
      'if-match': `"${failed.body.version}"`,
    });
    expect([put.status, put.body.state]).toEqual([200, 'measured']);
  });
});
