import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Logger as QueueLogger, runMigrations } from 'graphile-worker';
import pg from 'pg';
import { v7 as uuidv7 } from 'uuid';
import { PACKAGE_ROOT } from '../config/package-root.js';

/** The advisory lock that Prisma's own command takes, so that the two never run at once. */
const LOCK = 72707369;

const BOOK = `create table if not exists _prisma_migrations (
  id varchar(36) primary key not null,
  checksum varchar(64) not null,
  finished_at timestamptz,
  migration_name varchar(255) not null,
  logs text,
  rolled_back_at timestamptz,
  started_at timestamptz not null default now(),
  applied_steps_count integer not null default 0
)`;

interface Migration {
  readonly name: string;
  readonly sql: string;
  readonly checksum: string;
}

export const MIGRATIONS_FOLDER = join(PACKAGE_ROOT, 'prisma', 'migrations');

async function migrationsIn(folder: string): Promise<Migration[]> {
  const entries = await readdir(folder, { withFileTypes: true });
  const names = entries.filter((entry) => entry.isDirectory()).map((entry) => entry.name).sort();
  return Promise.all(
    names.map(async (name) => {
      const sql = await readFile(join(folder, name, 'migration.sql'), 'utf8');
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
    }),
  );
}

async function apply(client: pg.Client, migration: Migration): Promise<void> {
  await client.query('begin');
  try {
    await client.query(migration.sql);
    await client.query(
      `insert into _prisma_migrations (id, checksum, finished_at, migration_name, started_at, applied_steps_count)
       values ($1, $2, clock_timestamp(), $3, now(), 1)`,
      [uuidv7(), migration.checksum, migration.name],
    );
    await client.query('commit');
  } catch (error) {
    await client.query('rollback');
    throw new Error(`migration ${migration.name} failed: ${error instanceof Error ? error.message : String(error)}`, { cause: error });
  }
}

/** Refuses a database that is not the one these files made: one that was altered, or is ahead of this program. */
function pending(files: readonly Migration[], applied: ReadonlyMap<string, string>): Migration[] {
  const known = new Set(files.map((file) => file.name));
  const ahead = [...applied.keys()].filter((name) => !known.has(name));
  if (ahead.length > 0) throw new Error(`the database is ahead of this program: it has migrations ${ahead.join(', ')}`);
  for (const file of files) {
    const checksum = applied.get(file.name);
    if (checksum !== undefined && checksum !== file.checksum) throw new Error(`migration ${file.name} was changed after it had been applied`);
  }
  return files.filter((file) => !applied.has(file.name));
}

const silent = new QueueLogger(() => () => undefined);

/**
 * Brings the database to the state of prisma/migrations: each file in one transaction, in order of its name, remembered in Prisma's own
 * book. Any number of processes may start at once: one works, the others wait for its lock and find nothing left to do.
 *
 * @returns names of the migrations applied now
 */
export async function migrate(url: string, folder: string = MIGRATIONS_FOLDER): Promise<string[]> {
  const files = await migrationsIn(folder);
  const client = new pg.Client({ connectionString: url, application_name: 'wallcourse-migrate', connectionTimeoutMillis: 15_000 });
  await client.connect();
  try {
    await client.query('select pg_advisory_lock($1)', [LOCK]);
    await client.query("set client_min_messages = 'warning'");
    await client.query(BOOK);
    const rows = await client.query<{ migration_name: string; checksum: string }>(
      'select migration_name, checksum from _prisma_migrations where finished_at is not null and rolled_back_at is null',
    );
    const waiting = pending(files, new Map(rows.rows.map((row) => [row.migration_name, row.checksum])));
    await runMigrations({ connectionString: url, logger: silent });
    for (const file of waiting) await apply(client, file);
    return waiting.map((file) => file.name);
  } finally {
    await client.end();
  }
}
