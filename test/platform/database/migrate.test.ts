import { execFile } from 'node:child_process';
import { cp, mkdir, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { createHash } from 'node:crypto';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { migrate, MIGRATIONS_FOLDER } from '../../../src/platform/database/migrate.js';
import { Database } from '../../../src/platform/database/database.js';
import { openPool } from '../../../src/platform/database/pool.js';
import { SystemClock } from '../../../src/platform/clock/clock.js';
import { addSupplier, createDatabase, jobRow } from '../../support/database.js';
import { ensureBuilt } from '../../support/server.js';

async function rows(url: string, sql: string): Promise<Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query<Record<string, unknown>>(sql)).rows;
  } finally {
    await client.end();
  }
}

describe('migrations', () => {
  let folder: string;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'wallcourse-migrations-'));
    await cp(MIGRATIONS_FOLDER, folder, { recursive: true });
  });
  afterEach(() => rm(folder, { recursive: true }));

  const add = async (name: string, sql: string): Promise<void> => {
    await mkdir(join(folder, name));
    await writeFile(join(folder, name, 'migration.sql'), sql);
  };

  it('are applied once when four processes start at once', async () => {
    const { url } = await createDatabase(false);
    await ensureBuilt(url);
    const script = `import { migrate } from ${JSON.stringify(join(process.cwd(), 'dist/platform/database/migrate.js'))}; console.log(JSON.stringify(await migrate(process.argv[1])));`;
    const started = Array.from({ length: 4 }, () => promisify(execFile)(process.execPath, ['--input-type=module', '-e', script, url]));
    const applied = (await Promise.all(started)).map(({ stdout }) => JSON.parse(stdout) as string[]);
    const names = (await readdir(MIGRATIONS_FOLDER)).filter((name) => !name.endsWith('.toml'));
    expect(applied.filter((list) => list.length > 0)).toEqual([names]);
    expect(await rows(url, 'select migration_name, applied_steps_count from _prisma_migrations order by 1')).toEqual(names.map((name) => ({ migration_name: name, applied_steps_count: 1 })));
  }, 120_000);

  it('are written into the book as the prisma command would, with the checksum of the file', async () => {
    const { url } = await createDatabase(false);
    const names = await migrate(url);
    const book = await rows(url, 'select * from _prisma_migrations order by migration_name');
    for (const [index, name] of names.entries()) {
      const checksum = createHash('sha256').update(await readFile(join(MIGRATIONS_FOLDER, name, 'migration.sql'))).digest('hex');
      expect(book[index]).toMatchObject({ migration_name: name, checksum, rolled_back_at: null, logs: null, finished_at: expect.any(Date) });
    }
    expect(await migrate(url)).toEqual([]);
  });

  it('go on from where a database stands, in order of their names, one transaction each', async () => {
    const { url } = await createDatabase(false);
    await migrate(url, folder);
    await add('20990102000000_second', 'alter table added add column b integer');
    await add('20990101000000_first', 'create table added (a integer)');
    await add('20990103000000_broken', 'create table half (a integer); select 1 / 0');
    await expect(migrate(url, folder)).rejects.toThrow('20990103000000_broken failed: division by zero');
    expect(await rows(url, `select column_name from information_schema.columns where table_name = 'added' order by 1`)).toEqual([{ column_name: 'a' }, { column_name: 'b' }]);
    expect(await rows(url, `select to_regclass('half') as half`)).toEqual([{ half: null }]);
    await writeFile(join(folder, '20990103000000_broken', 'migration.sql'), 'create table whole (a integer)');
    expect(await migrate(url, folder)).toEqual(['20990103000000_broken']);
  });

  it('refuse a file that was changed after it had been applied, and a database that is ahead', async () => {
    const { url } = await createDatabase(false);
    await add('20990101000000_extra', 'create table extra (a integer)');
    await migrate(url, folder);
    await writeFile(join(folder, '20990101000000_extra', 'migration.sql'), 'create table extra (a integer, b integer)');
    await expect(migrate(url, folder)).rejects.toThrow('20990101000000_extra was changed after it had been applied');
    await rm(join(folder, '20990101000000_extra'), { recursive: true });
    await expect(migrate(url, folder)).rejects.toThrow('ahead of this program: it has migrations 20990101000000_extra');
  });

  it('make a working, closed house for an owner who is no superuser', async () => {
    const { url, name } = await createDatabase(false);
    const owner = `owner_${name}`;
    await rows(url, `create role ${owner} login password 'secret' createrole nosuperuser nobypassrls; alter database ${name} owner to ${owner}; grant wallcourse_app, wallcourse_lookup to ${owner} with admin option`);
    const place = new URL(url);
    place.username = owner;
    place.password = 'secret';
    await migrate(place.toString());
    const pool = openPool({ url: place.toString(), size: 2, onLost: () => undefined });
    const database = new Database(pool, new SystemClock());
    const heron = await addSupplier(database, 'heron');
    await database.transaction(heron.system, (tx) => tx.insert('tokens', { organisation_id: heron.contractor.organisationId, person_id: heron.contractor.personId, name: 't', token_hash: Buffer.alloc(32, 1) }, { kind: 'token.made' }));
    await database.transaction(heron.contractor, async (tx) => {
      await tx.insert('jobs', jobRow(heron.contractor, await tx.nextNumber('job')), { kind: 'job.submitted' });
      await tx.enqueue('measure', {});
    });
    expect(await database.actorForToken(Buffer.alloc(32, 1))).toEqual(heron.contractor);
    expect(await database.transaction(heron.neighbour, (tx) => tx.query('select id from jobs'))).toEqual([]);
    expect((await pool.query('select id from jobs')).rows).toEqual([]);
    await pool.end();
  });
});
