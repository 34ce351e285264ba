import { mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { v7 as uuidv7 } from 'uuid';
import { FixedClock } from '../../src/platform/clock/clock.js';
import { systemActor, type Actor } from '../../src/platform/database/actor.js';
import { Database } from '../../src/platform/database/database.js';
import { migrate } from '../../src/platform/database/migrate.js';
import { openPool } from '../../src/platform/database/pool.js';
import { startEmbeddedPostgres } from '../../src/platform/embedded-postgres/embedded-postgres.js';

const TEMPLATE = 'wallcourse_template';
const TURN = 4_711;

export interface TestDatabase {
  /** Connection string of the owner: past every policy, for looking at what is really there. */
  readonly url: string;
  readonly name: string;
  readonly database: Database;
  readonly clock: FixedClock;
  /** What is really there, past every policy. */
  owner<R extends pg.QueryResultRow = pg.QueryResultRow>(sql: string, params?: unknown[]): Promise<R[]>;
  close(): Promise<void>;
}

export async function testFolder(): Promise<string> {
  return process.env['WALLCOURSE_TEST_FOLDER'] ?? mkdtemp(join(tmpdir(), 'wallcourse-test-'));
}

/** The run's one server, without fsync: started by whoever asks first, found by everybody else. */
async function serverUrl(): Promise<string> {
  const server = await startEmbeddedPostgres({ dataDir: join(await testFolder(), 'database'), database: 'postgres', durable: false, outlives: true });
  await server.stop();
  return server.url;
}

export const inDatabase = (url: string, name: string): string => {
  const place = new URL(url);
  place.pathname = `/${name}`;
  return place.toString();
};

async function asOwner<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await work(client);
  } finally {
    await client.end();
  }
}

/** One after the other, over all processes of the run. */
export async function inTurn<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  return asOwner(url, async (client) => {
    await client.query('select pg_advisory_lock($1)', [TURN]);
    return work(client);
  });
}

const newName = (): string => `test_${uuidv7().replaceAll('-', '')}`;

/** An empty database of its own for a spec file; `migrated` ones are copies of a template that is migrated once. */
export async function createDatabase(migrated = true): Promise<{ url: string; name: string }> {
  if (migrated) return copyOf(TEMPLATE, migrate);
  const server = await serverUrl();
  const name = newName();
  await inTurn(server, (client) => client.query(`create database ${name}`));
  return { url: inDatabase(server, name), name };
}

/**
 * A copy of a database that is made once for the whole run.
 *
 * @param make fills an empty one at this connection string and leaves no connection open; where it fails, the next who asks makes it anew
 */
export async function copyOf(template: string, make: (url: string) => Promise<unknown>): Promise<{ url: string; name: string }> {
  const server = await serverUrl();
  const name = newName();
  await inTurn(server, async (client) => {
    const found = await client.query('select from pg_database where datname = $1 and datistemplate', [template]);
    if (!found.rowCount) {
      await client.query(`drop database if exists ${template}`);
      await client.query(`create database ${template}`);
      await make(inDatabase(server, template));
      await client.query(`alter database ${template} is_template true`);
    }
    await client.query(`create database ${name} template ${template} strategy file_copy`);
  });
  return { url: inDatabase(server, name), name };
}

/** A migrated database behind the real door. */
export async function openTestDatabase(poolSize = 4): Promise<TestDatabase> {
  const { url, name } = await createDatabase();
  const clock = new FixedClock(new Date('2026-03-02T15:00:00Z'));
  const pool = openPool({ url, size: poolSize, onLost: () => undefined });
  return {
    url,
    name,
    clock,
    database: new Database(pool, clock),
    owner: async <R extends pg.QueryResultRow>(sql: string, params?: unknown[]) => asOwner(url, async (client) => (await client.query<R>(sql, params)).rows),
    close: () => pool.end(),
  };
}

export interface Household {
  readonly system: Actor;
  readonly support: Actor;
  readonly contractor: Actor;
  readonly neighbour: Actor;
}

/** A supplier with a support person and two contractors' organisations. */
export async function addSupplier(database: Database, code: string): Promise<Household> {
  const supplierId = uuidv7();
  const system = systemActor(supplierId);
  return database.transaction(system, async (tx) => {
    await tx.insert('suppliers', { code, name: code, time_zone: 'America/Chicago', currency: 'USD' }, { kind: 'supplier.founded' });
    const person = async (name: string, role: string, organisationId: string | null): Promise<Actor> => {
      const row = await tx.insert<{ id: string }>(
        'people',
        { organisation_id: organisationId, name, email: `${name}@example.test`, role },
        { kind: 'person.added' },
      );
      return { supplierId, organisationId, personId: row.id, role: role as Actor['role'] };
    };
    const organisation = async (name: string): Promise<string> =>
      (await tx.insert<{ id: string }>('organisations', { name }, { kind: 'organisation.added' })).id;
    return {
      system,
      support: await person('support', 'support', null),
      contractor: await person('contractor', 'contractor', await organisation('Own')),
      neighbour: await person('neighbour', 'contractor', await organisation('Neighbour')),
    };
  });
}

/** The least row that is a job. */
export const jobRow = (actor: Actor, number: string, name = number): Record<string, unknown> => ({
  organisation_id: actor.organisationId, number, name, state: 'queued', revision: 1, created_by: actor.personId,
});
