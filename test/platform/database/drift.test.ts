import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openTestDatabase, type TestDatabase } from '../../support/database.js';
import { readPrismaModel, type PrismaModel, type PrismaTable } from '../../support/prisma-model.js';

const NOT_OURS = '_prisma_migrations';

/** The same facts as the model's, asked of the migrated database. */
async function databaseModel(db: TestDatabase): Promise<PrismaModel> {
  const enums = await db.owner<{ name: string; labels: string[] }>(
    `select t.typname as name, array_agg(e.enumlabel::text order by e.enumsortorder) as labels from pg_type t join pg_enum e on e.enumtypid = t.oid
     where t.typnamespace = 'public'::regnamespace group by 1`);
  const columns = await db.owner<{ table: string; name: string; type: string; required: boolean; default: string | null }>(
    `select c.relname as table, a.attname as name, format_type(a.atttypid, a.atttypmod) as type, a.attnotnull as required, pg_get_expr(d.adbin, d.adrelid) as default
     from pg_attribute a join pg_class c on c.oid = a.attrelid left join pg_attrdef d on d.adrelid = c.oid and d.adnum = a.attnum
     where c.relnamespace = 'public'::regnamespace and c.relkind = 'r' and a.attnum > 0 and not a.attisdropped and c.relname <> $1 order by c.relname, a.attnum`, [NOT_OURS]);
  const indexes = await db.owner<{ table: string; name: string; unique: boolean; primary: boolean; columns: string[] }>(
    `select t.relname as table, i.relname as name, x.indisunique as unique, x.indisprimary as primary,
       (select array_agg(a.attname::text order by k.n) from unnest(x.indkey::int[]) with ordinality k(attnum, n) join pg_attribute a on a.attrelid = t.oid and a.attnum = k.attnum) as columns
     from pg_index x join pg_class i on i.oid = x.indexrelid join pg_class t on t.oid = x.indrelid
     where t.relnamespace = 'public'::regnamespace and t.relname <> $1`, [NOT_OURS]);
  const references = await db.owner<{ table: string; name: string; columns: string[]; to: string[]; target: string; actions: string }>(
    `select conrelid::regclass::text as table, conname as name, confrelid::regclass::text as target, confdeltype::text || confupdtype::text as actions,
       (select array_agg(attname::text order by n) from unnest(conkey) with ordinality k(attnum, n) join pg_attribute a on a.attrelid = conrelid and a.attnum = k.attnum) as columns,
       (select array_agg(attname::text order by n) from unnest(confkey) with ordinality k(attnum, n) join pg_attribute a on a.attrelid = confrelid and a.attnum = k.attnum) as to
     from pg_constraint where contype = 'f' and connamespace = 'public'::regnamespace`);
  expect(references.filter((reference) => reference.actions !== 'aa')).toEqual([]);
  const names = [...new Set(columns.map((column) => column.table))];
  const table = (name: string): PrismaTable => ({
    columns: Object.fromEntries(columns.filter((column) => column.table === name).map((column) => [
      column.name, { type: column.type, required: column.required, default: column.default?.replace(/::jsonb$/, '').replace(/^'(.*)'$/, '$1') ?? null }])),
    key: indexes.find((index) => index.table === name && index.primary)?.columns ?? [],
    indexes: Object.fromEntries(indexes.filter((index) => index.table === name && !index.primary).map((index) => [index.name, { unique: index.unique, columns: index.columns }])),
    references: Object.fromEntries(references.filter((reference) => reference.table === name).map((reference) => [
      reference.name, { columns: reference.columns, table: reference.target, to: reference.to }])),
  });
  return { enums: Object.fromEntries(enums.map((row) => [row.name, row.labels])), tables: Object.fromEntries(names.map((name) => [name, table(name)])) };
}

describe('schema.prisma', () => {
  let db: TestDatabase;
  beforeAll(async () => {
    db = await openTestDatabase();
  });
  afterAll(() => db.close());

  const model = () => readPrismaModel(readFileSync('prisma/schema.prisma', 'utf8'));

  it('says of enums, tables, columns, keys, indexes and references what the migrated database is', async () => {
    expect(model()).toEqual(await databaseModel(db));
  });

  it.each([
    ['a column', 'alter table jobs add column colour text'],
    ['a type', 'alter table jobs alter column revision type bigint'],
    ['a null', 'alter table jobs alter column name drop not null'],
    ['an index', 'drop index jobs_organisation_idx'],
    ['a reference', 'alter table jobs drop constraint jobs_organisation_fkey'],
    ['an enum', `alter type quote_state add value 'lost'`],
    ['a default', 'alter table suppliers alter column settings drop default'],
  ])('is found wrong when the database drifts by %s', async (_, sql) => {
    const other = await openTestDatabase();
    await other.owner(sql);
    expect(await databaseModel(other)).not.toEqual(model());
    await other.close();
  });
});
