import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { TABLES } from '../../../src/platform/database/tables.js';
import { openTestDatabase, type TestDatabase } from '../../support/database.js';

/** The program's own book-keeping, written by the door itself or by one part of the platform. */
const UNLISTED = ['counters', 'history_events', 'idempotency_keys', 'job_progress', 'outbox'];

describe('the table of tables', () => {
  let db: TestDatabase;
  beforeAll(async () => {
    db = await openTestDatabase();
  });
  afterAll(() => db.close());

  it('names every table of the database, with the columns that it has', async () => {
    const columns = await db.owner<{ name: string; columns: string[] }>(`select table_name as name, array_agg(column_name::text) as columns
      from information_schema.columns where table_schema = 'public' and table_name <> '_prisma_migrations' group by 1`);
    const found = Object.fromEntries(columns.filter((table) => !UNLISTED.includes(table.name)).map((table) => [
      table.name,
      { key: table.columns.includes('id') ? 'id' : 'supplier_id', versioned: table.columns.includes('version'), created: table.columns.includes('created_at') },
    ]));
    const told = Object.fromEntries(Object.entries(TABLES).map(([name, { key, versioned, created }]) => [name, { key, versioned, created }]));
    expect(told).toEqual(found);
    expect(columns.map((table) => table.name).filter((name) => UNLISTED.includes(name)).sort()).toEqual(UNLISTED);
  });

  it('calls exactly those business that the database guards', async () => {
    const guarded = await db.owner<{ name: string }>(`select tgrelid::regclass::text as name from pg_trigger where tgfoid = 'guard_history'::regproc and tgdeferrable and tginitdeferred order by 1`);
    const business = Object.entries(TABLES).filter(([, facts]) => facts.kind === 'business').map(([name]) => name).sort();
    expect(guarded.map((table) => table.name)).toEqual(business);
  });

  it('lets the app change exactly the versioned ones, of those it lists', async () => {
    const changeable = await db.owner<{ name: string }>(`select table_name as name from information_schema.role_table_grants
      where grantee = 'wallcourse_app' and privilege_type = 'UPDATE' and table_schema = 'public' order by 1`);
    const versioned = Object.entries(TABLES).filter(([, facts]) => facts.versioned).map(([name]) => name);
    const known = new Set(Object.keys(TABLES));
    expect(changeable.map((table) => table.name).filter((name) => known.has(name))).toEqual(versioned.sort());
  });
});
