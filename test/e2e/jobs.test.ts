import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { startServer, type TestServer } from '../support/server.js';
import { call, itemsOf, submitted, type Answer, type Job, type List } from './api.js';
import { plan, shed } from './schedules.js';

interface Takeoff {
  readonly revision: number;
  readonly totals: { readonly forms: number };
  readonly units: readonly object[];
  readonly walls: readonly { readonly mark: string }[];
}

let server: TestServer;
let owner: pg.Client;

beforeAll(async () => {
  server = await startServer({ THREADS: '2' });
  owner = new pg.Client({ connectionString: server.databaseUrl });
  await owner.connect();
});

afterAll(async () => {
  await owner.end();
  await server.stop();
});

const takeoffOf = async (id: string): Promise<Takeoff> =>
  (await call<Takeoff>(server, 'contractor', 'GET', `/v1/jobs/${id}/takeoff`)).body;
const count = async (sql: string, params: unknown[] = []): Promise<number> =>
  Number((await owner.query<{ n: string }>(`select count(*) as n from ${sql}`, params)).rows[0]!.n);

async function settled(id: string): Promise<Job> {
  for (let round = 0; round < 600; round += 1) {
    const { body } = await call<Job>(server, 'contractor', 'GET', `/v1/jobs/${id}`);
    if (body.state === 'measured' || body.state === 'failed') return body;
    await sleep(100);
  }
  throw new Error('the job did not settle in a minute');
}

/** A long straight row of separate walls: enough work for a run that takes a while. */
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

describe('POST /v1/jobs', () => {
  it('answers 201 when the job is measured, with its place and its version', async () => {
    const answer = await call<Job>(server, 'contractor', 'POST', '/v1/jobs', shed());
    expect([answer.status, answer.body.state, answer.body.revision]).toEqual([201, 'measured', 1]);
    expect(answer.headers.get('location')).toBe(`/v1/jobs/${answer.body.id}`);
    expect(answer.headers.get('etag')).toBe(`"${answer.body.version}"`);
    expect(answer.body.number).toMatch(/^J-\d{6}$/);
    expect((await call(server, 'contractor', 'GET', `/v1/jobs/${answer.body.id}`)).body).toEqual(answer.body);
  });

  it('stores upload, revision, event and measurement, each once', async () => {
    const { id } = await submitted(server, shed('Counted'));
    expect(await count('schedule_revisions where job_id = $1', [id])).toBe(1);
    expect(
      await count('schedule_files f join schedule_revisions r on r.id = f.schedule_revision_id where r.job_id = $1', [id]),
    ).toBe(1);
    expect(await count('measurements where job_id = $1', [id])).toBe(1);
    expect(await count(`history_events where job_id = $1 and kind = 'job.submitted'`, [id])).toBe(1);
  });

  it('answers 202 at once where the client asks not to wait, and the events tell when it is done', async () => {
    const answer = await call<Job>(server, 'contractor', 'POST', '/v1/jobs', shed(), { prefer: 'respond-async' });
    expect([answer.status, answer.body.state, answer.headers.get('location')]).toEqual([
      202,
      'queued',
      `/v1/jobs/${answer.body.id}`,
    ]);
    const events = await call(server, 'contractor', 'GET', `/v1/jobs/${answer.body.id}/events`);
    expect(events.headers.get('content-type')).toBe('text/event-stream; charset=utf-8');
    const last = events.text.trim().split('\n\n').at(-1);
    expect(last).toBe('event: progress\ndata: {"stage":"measured","done":4,"total":4}');
    expect((await settled(answer.body.id)).state).toBe('measured');
  });

  it('takes the same schedule as a part of a form', async () => {
    const form = new FormData();
    form.append('files', new Blob([JSON.stringify(shed())], { type: 'application/octet-stream' }), 'anything.bin');
    const response = await server.fetch('/v1/jobs', { method: 'POST', body: form, as: 'contractor' });
    const job = (await response.json()) as Job;
    expect([response.status, job.state]).toEqual([201, 'measured']);
    const direct = await submitted(server, shed());
    expect(await takeoffOf(job.id)).toEqual(await takeoffOf(direct.id));
  });

  it('is carried out once for one Idempotency-Key', async () => {
    const before = await count('jobs');
    const key = { 'idempotency-key': 'shed-of-tuesday' };
    const [first, again] = [
      await call<Job>(server, 'contractor', 'POST', '/v1/jobs', shed(), key),
      await call<Job>(server, 'contractor', 'POST', '/v1/jobs', shed(), key),
    ];
    expect([again.status, again.text, again.headers.get('location')]).toEqual([201, first.text, first.headers.get('location')]);
    expect(await count('jobs')).toBe(before + 1);
    const other = await call(server, 'contractor', 'POST', '/v1/jobs', shed('Another'), key);
    expect([other.status, other.body['code']]).toEqual([422, 'invalid']);
    expect(await count('jobs')).toBe(before + 1);
  });

  it('asks staff whose job it is', async () => {
    const nobody = await call(server, 'sales', 'POST', '/v1/jobs', shed());
    expect([nobody.status, nobody.body['errors']]).toEqual([422, [expect.objectContaining({ pointer: '/organisation' })]]);
    const { rows } = await owner.query<{ id: string }>('select organisation_id as id from jobs limit 1');
    const answer = await call<Job>(server, 'sales', 'POST', `/v1/jobs?organisation=${rows[0]!.id}`, shed('For them'));
    expect(answer.status).toBe(201);
    expect((await call(server, 'contractor', 'GET', `/v1/jobs/${answer.body.id}`)).status).toBe(200);
  });
});

describe('GET /v1/jobs', () => {
  it('goes page by page, the newest first, by link as by cursor', async () => {
    for (const name of ['P1', 'P2', 'P3']) await submitted(server, shed(name));
    const all = await itemsOf<Job>(server, 'contractor', '/v1/jobs?first=200');
    const seen: Job[] = [];
    let path: string | null = '/v1/jobs?first=2';
    while (path !== null) {
      const answer: Answer<List<Job>> = await call<List<Job>>(server, 'contractor', 'GET', path);
      seen.push(...answer.body.items);
      const link: string | null = /^<([^>]+)>; rel="next"$/.exec(answer.headers.get('link') ?? '')?.[1] ?? null;
      expect(link).toBe(answer.body.next === null ? null : `/v1/jobs?first=2&after=${answer.body.next}`);
      path = link;
    }
    expect(seen).toEqual(all);
    expect(all.slice(0, 3).map(({ name }) => name)).toEqual(['P3', 'P2', 'P1']);
  });
});

describe('GET /v1/jobs/{id}/schedule', () => {
  it('can be sent again and measures the same', async () => {
    const first = await submitted(server, shed());
    const { body } = await call(server, 'contractor', 'GET', `/v1/jobs/${first.id}/schedule`);
    const second = await submitted(server, body);
    expect(await takeoffOf(second.id)).toEqual(await takeoffOf(first.id));
  });
});

describe('PUT /v1/jobs/{id}/schedule', () => {
  const wider = () =>
    plan('Wider', [
      [0, 0],
      [960, 0],
      [960, 336],
      [0, 336],
    ]);

  it('makes a new revision for who knows the version, and for nobody else', async () => {
    const job = await submitted(server, shed());
    const path = `/v1/jobs/${job.id}/schedule`;
    const none = await call(server, 'contractor', 'PUT', path, wider());
    expect([none.status, none.body['code']]).toEqual([428, 'version-missing']);
    const old = await call(server, 'contractor', 'PUT', path, wider(), { 'if-match': `"${job.version - 1}"` });
    expect([old.status, old.body['code']]).toEqual([412, 'stale']);
    expect((await takeoffOf(job.id)).revision).toBe(1);
    const answer = await call<Job>(server, 'contractor', 'PUT', path, wider(), { 'if-match': `"${job.version}"` });
    expect([answer.status, answer.body.state, answer.body.revision, answer.body.name]).toEqual([200, 'measured', 2, 'Wider']);
    expect(answer.body.version).toBeGreaterThan(job.version);
    expect((await takeoffOf(job.id)).revision).toBe(2);
  });

  it('stores nothing of a schedule that does not hold together', async () => {
    const job = await submitted(server, shed());
    const broken = { ...wider(), walls: [] };
    const answer = await call(server, 'contractor', 'PUT', `/v1/jobs/${job.id}/schedule`, broken, {
      'if-match': `"${job.version}"`,
    });
    expect(answer.status).toBe(422);
    expect((await call(server, 'contractor', 'GET', `/v1/jobs/${job.id}`)).body).toEqual(job);
  });

  it('a result that comes late does not replace a newer one', async () => {
    const { body: job } = await call<Job>(server, 'contractor', 'POST', '/v1/jobs', row(800), { prefer: 'respond-async' });
    let now = job;
    while (now.state === 'queued') now = (await call<Job>(server, 'contractor', 'GET', `/v1/jobs/${job.id}`)).body;
    expect(now.state).toBe('running');
    const put = await call<Job>(server, 'contractor', 'PUT', `/v1/jobs/${job.id}/schedule`, shed(), {
      'if-match': `"${now.version}"`,
    });
    expect([put.status, put.body.state, put.body.revision]).toEqual([200, 'measured', 2]);
    for (let waiting = 1; waiting > 0; await sleep(100)) waiting = await count('graphile_worker._private_jobs');
    expect(await settled(job.id)).toEqual(put.body);
    expect((await takeoffOf(job.id)).walls).toHaveLength(4);
    expect(await count('measurements where job_id = $1 and revision = 1', [job.id])).toBe(0);
  });

  it('a task for an old revision that comes when the new one is measured does nothing', async () => {
    const job = await submitted(server, shed());
    const put = await call<Job>(server, 'contractor', 'PUT', `/v1/jobs/${job.id}/schedule`, wider(), {
      'if-match': `"${job.version}"`,
    });
    const { rows } = await owner.query<{ supplier_id: string }>('select supplier_id from jobs where id = $1', [job.id]);
    const actor = { supplierId: rows[0]!.supplier_id, organisationId: null, personId: null, role: 'system' };
    await owner.query(`select graphile_worker.add_job('measure', $1::json)`, [
      JSON.stringify({ actor, correlation: null, payload: { job: job.id, revision: 1 } }),
    ]);
    for (let waiting = 1; waiting > 0; await sleep(50)) waiting = await count('graphile_worker._private_jobs');
    expect(await settled(job.id)).toEqual(put.body);
  });
});

describe('GET /v1/jobs/{id}/history', () => {
  it('tells what happened in order', async () => {
    const job = await submitted(server, shed());
    const events = await itemsOf<{ kind: string; by: string | null; role: string }>(
      server,
      'contractor',
      `/v1/jobs/${job.id}/history`,
    );
    expect(events.map(({ kind, role }) => `${kind} ${role}`)).toEqual([
      'job.submitted contractor',
      'schedule.stored contractor',
      'job.measuring system',
      'measurement.stored system',
      'job.measured system',
    ]);
    expect(events[0]!.by).toBe('Ines Calder');
  });
});

describe('the detailed take-off', () => {
  it('comes as one document, however many walls it has', async () => {
    const job = await submitted(server, row(450));
    const answer = await call<{ walls: { mark: string; courses: unknown[] }[]; cuts: unknown[] }>(
      server,
      'contractor',
      'GET',
      `/v1/jobs/${job.id}/takeoff?detail=courses`,
    );
    expect(answer.headers.get('content-type')).toBe('application/json; charset=utf-8');
    expect(answer.body.walls.map(({ mark }) => mark)).toEqual(Array.from({ length: 450 }, (_, index) => `W${index}`));
    expect(answer.body.walls.every(({ courses }) => courses.length === 6)).toBe(true);
    const { walls: _, cuts: __, ...rest } = answer.body;
    const { walls: ___, ...summary } = await takeoffOf(job.id);
    expect(rest).toEqual(summary);
  });
});
