import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { withCorrelation } from '../../../src/platform/telemetry/correlation.js';
import { addSupplier, jobRow, openTestDatabase, type Household, type TestDatabase } from '../../support/database.js';

interface JobRow {
  readonly id: string;
  readonly version: number;
  readonly name: string;
  readonly created_at: Date;
  readonly updated_at: Date;
}

describe('Database.transaction', () => {
  let db: TestDatabase;
  let heron: Household;
  let taken = 0;

  beforeAll(async () => {
    db = await openTestDatabase(3);
    heron = await addSupplier(db.database, 'heron');
  });
  afterAll(() => db.close());

  const addJob = (number = `X-${++taken}`) =>
    db.database.transaction(heron.contractor, (tx) => tx.insert<JobRow>('jobs', jobRow(heron.contractor, number), { kind: 'job.submitted', data: { number } }));
  const eventsOf = (id: string) =>
    db.owner<{ kind: string; job_id: string; organisation_id: string; person_id: string; role: string; correlation_id: string | null; data: object }>(
      'select * from history_events where subject_id = $1 order by id', [id]);

  it('writes version, times, event and outbox row with the row', async () => {
    const job = await withCorrelation('abc-1', () => addJob());
    expect(job).toMatchObject({ version: 1, created_at: db.clock.now(), updated_at: db.clock.now() });
    expect(job.id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7/);
    expect(await eventsOf(job.id)).toEqual([
      expect.objectContaining({
        kind: 'job.submitted', subject_type: 'job', job_id: job.id, organisation_id: heron.contractor.organisationId,
        person_id: heron.contractor.personId, role: 'contractor', correlation_id: 'abc-1', data: { number: `X-${taken}` },
      }),
    ]);
    const outbox = await db.owner(`select o.kind, o.state, o.attempts from outbox o join history_events h on h.id = o.event_id where h.subject_id = $1`, [job.id]);
    expect(outbox).toEqual([{ kind: 'job.submitted', state: 'waiting', attempts: 0 }]);
  });

  it('changes a row one version on, and refuses who has seen an older one', async () => {
    const { id } = await addJob();
    db.clock.set(new Date('2026-03-02T16:00:00Z'));
    const change = (expected: number | null, name: string) =>
      db.database.transaction(heron.contractor, (tx) => tx.update<JobRow>('jobs', id, expected, { name }, { kind: 'job.renamed', data: { name } }));
    expect(await change(1, 'b')).toMatchObject({ version: 2, name: 'b', updated_at: db.clock.now() });
    await expect(change(1, 'c')).rejects.toMatchObject({ code: 'stale', status: 412, detail: 'The job is at version 2, not 1.' });
    expect(await change(null, 'd')).toMatchObject({ version: 3, name: 'd' });
    expect((await eventsOf(id)).map((event) => event.kind)).toEqual(['job.submitted', 'job.renamed', 'job.renamed']);
  });

  it('lets one of two changers of the same version through', async () => {
    const { id } = await addJob();
    const both = await Promise.allSettled(
      ['left', 'right'].map((name) => db.database.transaction(heron.contractor, (tx) => tx.update('jobs', id, 1, { name }, { kind: 'job.renamed' }))),
    );
    expect(both.filter((result) => result.status === 'fulfilled')).toHaveLength(1);
    expect(both.find((result) => result.status === 'rejected')).toMatchObject({ reason: { code: 'stale' } });
  });

  it('loses row, event, outbox row, queue entry and number together when it is rolled back', async () => {
    const count = async () => (await db.owner(`select (select count(*) from jobs) as jobs, (select count(*) from history_events) as events,
      (select count(*) from outbox) as outbox, (select count(*) from graphile_worker.jobs) as queue, (select sum(last) from counters) as numbers`))[0];
    const work = (fail: boolean) =>
      db.database.transaction(heron.contractor, async (tx) => {
        const job = await tx.insert<JobRow>('jobs', jobRow(heron.contractor, await tx.nextNumber('job')), { kind: 'job.submitted' });
        await tx.enqueue('measure', { jobId: job.id }, { key: job.id, attempts: 3 });
        if (fail) throw new Error('thought better of it');
        return job;
      });
    const before = await count();
    await expect(work(true)).rejects.toThrow('thought better of it');
    expect(await count()).toEqual(before);
    const job = await work(false);
    const after = await count();
    const grown = (name: string) => Number(after?.[name] ?? 0) - Number(before?.[name] ?? 0);
    expect({ jobs: grown('jobs'), events: grown('events'), outbox: grown('outbox'), queue: grown('queue'), numbers: grown('numbers') }).toEqual({ jobs: 1, events: 1, outbox: 1, queue: 1, numbers: 1 });
    const queued = await db.owner(`select j.task_identifier, j.max_attempts, p.payload from graphile_worker.jobs j join graphile_worker._private_jobs p using (id) where j.key = $1`, [job.id]);
    expect(queued).toEqual([{ task_identifier: 'measure', max_attempts: 3, payload: { actor: heron.contractor, correlation: null, payload: { jobId: job.id } } }]);
  });

  it('gives numbers without a gap, however many ask at once and some fail', async () => {
    const ask = (fail: boolean) => db.database.transaction(heron.support, async (tx) => {
      const number = await tx.nextNumber('ticket');
      if (fail) throw new Error('no');
      return number;
    }).catch(() => null);
    const numbers = (await Promise.all(Array.from({ length: 30 }, (_, index) => ask(index % 5 === 0)))).filter((number) => number !== null);
    expect(numbers.sort()).toEqual(Array.from({ length: 24 }, (_, index) => `T-${String(index + 1).padStart(6, '0')}`));
  });

  it.each([
    ['an update past the door', `update jobs set name = 'x', version = version + 1`],
    ['an insert past the door', `insert into organisations (supplier_id, id, name, version, created_at, updated_at) values (nullif(current_setting('app.supplier'), '')::uuid, gen_random_uuid(), 'Bare', 1, now(), now())`],
  ])('refuses to commit %s that tells no history', async (_, sql) => {
    await addJob();
    const before = await db.owner('select name from jobs order by id');
    await expect(db.database.transaction(heron.system, (tx) => tx.query(sql))).rejects.toThrow('without a history event');
    expect(await db.owner('select name from jobs order by id')).toEqual(before);
  });

  it.each(['update history_events set data = \'{}\'', 'delete from history_events', 'delete from jobs', 'update form_ranges set code = \'x\'', 'update measurements set forms = 0', 'update quote_lines set amount_minor = 0', 'truncate jobs'])(
    'cannot rewrite what is settled: %s',
    async (sql) => {
      await expect(db.database.transaction(heron.system, (tx) => tx.query(sql))).rejects.toThrow('permission denied');
    },
  );

  it('refuses a transaction within a transaction, and goes on afterwards', async () => {
    await expect(
      db.database.transaction(heron.contractor, () => db.database.transaction(heron.system, (tx) => tx.query('select 1'))),
    ).rejects.toThrow('within another');
    expect(await db.database.transaction(heron.contractor, (tx) => tx.one('select 1 as one'))).toEqual({ one: 1 });
  });

  it('keeps JSON, exact numbers, dates and binary as they are', async () => {
    const { id } = await addJob();
    const walls = { tiny: 1e-7, big: 9_007_199_254_740_991, list: [1, 'two', null, { three: [] }], text: 'é ' };
    const result = await db.database.transaction(heron.system, async (tx) => {
      const range = await tx.insert<{ id: string; in_force_from: string; body: object }>(
        'form_ranges', { code: 'R', range_version: 1, name: 'R', in_force_from: '2026-01-31', body: walls }, { kind: 'range.added' });
      const measurement = await tx.insert<{ id: string; concrete_nm3: string; summary: object }>(
        'measurements',
        {
          organisation_id: heron.contractor.organisationId, job_id: id, revision: 1, engine: '1.0.0', range_id: range.id, range_code: 'R', range_version: 1,
          advice_key: 'none', forms: 30, concrete_nm3: 123_456_789_012_345_678_901_234_567_890n, face_nm2: 1n, opening_nm2: 0n, summary: ['an', 'array'],
        },
        { kind: 'job.measured' },
      );
      const token = await tx.insert<{ token_hash: Buffer }>('tokens', { person_id: heron.support.personId, name: 't', token_hash: Buffer.from('00ff10', 'hex') }, { kind: 'token.made' });
      return { range, measurement, token };
    });
    expect(result.range).toMatchObject({ in_force_from: '2026-01-31', body: walls });
    expect(result.measurement).toMatchObject({ concrete_nm3: '123456789012345678901234567890', summary: ['an', 'array'] });
    expect(result.token.token_hash).toEqual(Buffer.from('00ff10', 'hex'));
  });

  it('writes parts in the order in which they came', async () => {
    const { id } = await addJob();
    await db.database.transaction(heron.system, async (tx) => {
      const schedule = await tx.insert<{ id: string }>('schedule_revisions', { organisation_id: heron.contractor.organisationId, job_id: id, revision: 1, schedule: {} }, { kind: 'schedule.read' });
      await tx.insertParts('schedule_files', Array.from({ length: 50 }, (_, n) => ({
        organisation_id: heron.contractor.organisationId, schedule_revision_id: schedule.id, n, file_name: `${n}.csv`, media_type: 'text/csv', sha256: 'a', bytes: n,
      })));
      await tx.insertParts('schedule_files', []);
    });
    const files = await db.owner<{ n: number }>('select n from schedule_files order by id');
    expect(files.map((file) => file.n)).toEqual(Array.from({ length: 50 }, (_, n) => n));
  });

  it('refuses text that cannot be stored, and column names that are none', async () => {
    for (const name of ['nul \u0000 in it', 'half \ud800 of a pair']) {
      await expect(db.database.transaction(heron.contractor, (tx) => tx.insert('jobs', jobRow(heron.contractor, name), { kind: 'job.submitted' }))).rejects.toMatchObject({ code: 'invalid' });
    }
    await expect(db.database.transaction(heron.contractor, (tx) => tx.insert('jobs', { 'name"; drop table jobs; --': 1 }, { kind: 'job.submitted' }))).rejects.toThrow('not a column name');
  });

  it('says busy when the server takes the connection away', async () => {
    const cut = db.database.transaction(heron.contractor, async (tx) => {
      const self = await tx.one<{ pid: number }>('select pg_backend_pid() as pid');
      await db.owner('select pg_terminate_backend($1)', [self?.pid]);
      return tx.query('select 1');
    });
    await expect(cut).rejects.toMatchObject({ code: 'busy', status: 503 });
    expect(await db.database.transaction(heron.contractor, (tx) => tx.one('select 1 as one'))).toEqual({ one: 1 });
  });

  it('knows who a token speaks for until it is revoked', async () => {
    const hash = Buffer.alloc(32, 7);
    const token = await db.database.transaction(heron.system, (tx) =>
      tx.insert<{ id: string }>('tokens', { organisation_id: heron.contractor.organisationId, person_id: heron.contractor.personId, name: 'laptop', token_hash: hash }, { kind: 'token.made' }));
    expect(await db.database.actorForToken(hash)).toEqual(heron.contractor);
    expect(await db.database.actorForToken(Buffer.alloc(32, 8))).toBeNull();
    await db.database.transaction(heron.system, (tx) => tx.update('tokens', token.id, null, { revoked_at: db.clock.now() }, { kind: 'token.revoked' }));
    expect(await db.database.actorForToken(hash)).toBeNull();
  });
});
