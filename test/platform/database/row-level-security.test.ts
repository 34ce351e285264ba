import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import type { Actor } from '../../../src/platform/database/actor.js';
import pg from 'pg';
import { addSupplier, jobRow, openTestDatabase, type Household, type TestDatabase } from '../../support/database.js';

/** The migration's own book; no program reads it and the app's role may not. */
const BOOK = '_prisma_migrations';

describe('row level security', () => {
  let db: TestDatabase;
  let heron: Household;
  let plover: Household;

  const addJob = (actor: Actor, number: string): Promise<{ id: string }> =>
    db.database.transaction(actor, (tx) => tx.insert('jobs', jobRow(actor, number), { kind: 'job.submitted' }));
  const numbers = (actor: Actor): Promise<string[]> =>
    db.database.transaction(actor, async (tx) => (await tx.query<{ number: string }>('select number from jobs order by number')).map((row) => row.number));

  beforeAll(async () => {
    db = await openTestDatabase(2);
    heron = await addSupplier(db.database, 'heron');
    plover = await addSupplier(db.database, 'plover');
    await addJob(heron.contractor, 'H-own');
    await addJob(heron.neighbour, 'H-neighbour');
    await addJob(plover.contractor, 'P-own');
  });
  afterAll(() => db.close());

  it('is forced on every table, with at least one policy', async () => {
    const bare = await db.owner(
      `select relname from pg_class c where relnamespace = 'public'::regnamespace and relkind in ('r', 'p') and relname <> '${BOOK}'
       and not (relrowsecurity and relforcerowsecurity and exists (select from pg_policy where polrelid = c.oid))`,
    );
    expect(bare).toEqual([]);
    const [all] = await db.owner<{ count: string }>(`select count(*) from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r' and relname <> '${BOOK}'`);
    expect(Number(all?.count)).toBe(25);
  });

  it('names the supplier in every policy of the app, and the key of every table begins with it', async () => {
    const loose = await db.owner(`select tablename, policyname from pg_policies where schemaname = 'public' and roles = '{wallcourse_app}'
      and coalesce(qual, with_check) not like '%supplier_id = (NULLIF(current_setting(''app.supplier''%'`);
    expect(loose).toEqual([]);
    const keys = await db.owner(`select conrelid::regclass::text as name from pg_constraint k where contype = 'p' and connamespace = 'public'::regnamespace
      and conrelid::regclass::text <> '${BOOK}'
      and (select attname from pg_attribute where attrelid = conrelid and attnum = k.conkey[1]) <> 'supplier_id'`);
    expect(keys).toEqual([]);
  });

  it('cannot be bypassed by the roles that programs take', async () => {
    const roles = await db.owner(`select rolname, rolsuper, rolbypassrls, rolcreaterole, rolcreatedb, rolcanlogin from pg_roles where rolname in ('wallcourse_app', 'wallcourse_lookup') order by 1`);
    const powerless = { rolsuper: false, rolbypassrls: false, rolcreaterole: false, rolcreatedb: false, rolcanlogin: false };
    expect(roles).toEqual([{ rolname: 'wallcourse_app', ...powerless }, { rolname: 'wallcourse_lookup', ...powerless }]);
    const owned = await db.owner(`select relname from pg_class where relowner in (select oid from pg_roles where rolname like 'wallcourse\\_%')`);
    expect(owned).toEqual([]);
    const memberships = await db.owner(`select r.rolname from pg_auth_members m join pg_roles r on r.oid = m.roleid
      where m.member in (select oid from pg_roles where rolname in ('wallcourse_app', 'wallcourse_lookup'))`);
    expect(memberships).toEqual([]);
  });

  it.each(['set row_security = off', 'alter table jobs no force row level security', 'alter table jobs disable row level security', 'drop policy tenant on jobs', 'create table loot (a int)'])(
    'refuses the app: %s',
    async (sql) => {
      await expect(db.database.transaction(heron.contractor, async (tx) => {
        await tx.query(sql);
        return tx.query('select * from jobs');
      })).rejects.toThrow(/must be owner|permission denied|would be affected by row-level security/);
    },
  );

  it.each([BOOK, 'graphile_worker._private_jobs', 'graphile_worker.jobs'])('gives the app no way to %s', async (table) => {
    await expect(db.database.transaction(heron.system, (tx) => tx.query(`select * from ${table}`))).rejects.toThrow(/permission denied/);
  });

  it('shows nothing and takes nothing while no supplier is set, whatever else is', async () => {
    const client = new pg.Client({ connectionString: db.url });
    await client.connect();
    const tables = await db.owner<{ name: string }>(`select relname as name from pg_class where relnamespace = 'public'::regnamespace and relkind = 'r' and relname <> '${BOOK}'`);
    const filled = await db.owner<{ n: string }>('select count(*) as n from history_events');
    expect(Number(filled[0]?.n)).toBe(15);
    for (const settings of ['select 1', `select set_config('app.supplier', '', true)`, `select set_config('app.supplier', '', true), set_config('app.role', 'admin', true)`]) {
      for (const { name } of tables) {
        await client.query(`begin; set local role wallcourse_app; ${settings}`);
        const counted = await client.query<{ n: string }>(`select count(*) as n from ${name}`);
        await client.query('rollback');
        expect({ settings, name, n: Number(counted.rows[0]?.n) }).toEqual({ settings, name, n: 0 });
      }
    }
    await client.query('begin; set local role wallcourse_app');
    await expect(client.query(`insert into counters (supplier_id, kind, last) values ('${heron.system.supplierId}', 'job', 1)`)).rejects.toThrow(/row-level security/);
    await client.query('rollback');
    await client.end();
  });

  it('shows a contractor the own organisation, staff the supplier, nobody another supplier', async () => {
    expect(await numbers(heron.contractor)).toEqual(['H-own']);
    expect(await numbers(heron.neighbour)).toEqual(['H-neighbour']);
    expect(await numbers(heron.support)).toEqual(['H-neighbour', 'H-own']);
    expect(await numbers(plover.support)).toEqual(['P-own']);
    expect(await numbers(plover.contractor)).toEqual(['P-own']);
  });

  it('refuses rows written for another organisation, and staff rows written by a contractor', async () => {
    const foreign = { ...jobRow(heron.neighbour, 'H-smuggled') };
    await expect(db.database.transaction(heron.contractor, (tx) => tx.insert('jobs', foreign, { kind: 'job.submitted' }))).rejects.toThrow(/row-level security/);
    await expect(
      db.database.transaction(heron.contractor, (tx) => tx.insert('organisations', { name: 'Mine too' }, { kind: 'organisation.added' })),
    ).rejects.toThrow(/row-level security/);
  });

  it('answers for another organisation\'s row exactly as for none', async () => {
    const [job] = await db.owner<{ id: string }>(`select id from jobs where number = 'H-neighbour'`);
    const change = (id: string) => db.database.transaction(heron.contractor, (tx) => tx.update('jobs', id, 1, { name: 'x' }, { kind: 'job.renamed' }));
    const told = async (id: string) => change(id).then(() => 'done', (error: unknown) => ({ ...(error as object) }));
    expect(await told(job?.id ?? '')).toEqual(await told('00000000-0000-7000-8000-000000000000'));
    expect(await told(job?.id ?? '')).toMatchObject({ code: 'not-found', status: 404 });
  });

  it('keeps 400 interleaved transactions of four tenants apart on two connections', async () => {
    const actors: [Actor, string[]][] = [
      [heron.contractor, ['H-own']],
      [heron.neighbour, ['H-neighbour']],
      [plover.contractor, ['P-own']],
      [plover.neighbour, []],
    ];
    const work = Array.from({ length: 400 }, async (_, index) => {
      const [actor, own] = actors[index % actors.length] ?? [heron.contractor, []];
      const seen = await db.database.transaction(actor, async (tx) => {
        const first = await tx.query<{ number: string }>('select number from jobs');
        if (index % 7 === 0) throw new Error('rolled back');
        const again = await tx.query<{ number: string }>('select number from jobs');
        return [...first, ...again].map((row) => row.number);
      }).catch(() => null);
      return seen === null || (seen.length === own.length * 2 && seen.every((number) => own.includes(number)));
    });
    expect((await Promise.all(work)).filter((right) => !right)).toEqual([]);
  });

  it('refuses actors that are none, before a word reaches the database', async () => {
    const bad: Actor[] = [
      { ...heron.contractor, supplierId: '' },
      { ...heron.contractor, supplierId: `${heron.system.supplierId}'; select 1; --` },
      { ...heron.contractor, organisationId: "x', true); set role postgres; --" },
      { ...heron.contractor, role: 'owner' as Actor['role'] },
    ];
    for (const actor of bad) await expect(db.database.transaction(actor, (tx) => tx.query('select 1'))).rejects.toThrow('not an actor');
  });
});
