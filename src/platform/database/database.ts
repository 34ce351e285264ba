import { AsyncLocalStorage } from 'node:async_hooks';
import type pg from 'pg';
import { Clock } from '../clock/clock.js';
import type { Actor, Role } from './actor.js';
import { troubleOf } from './database-trouble.js';
import { Transaction } from './transaction.js';

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i;
const ROLES: readonly Role[] = ['contractor', 'support', 'sales', 'admin', 'system'];

const open = new AsyncLocalStorage<{ ended: boolean }>();

/** Checked here because it is written into the opening statement as it stands: one round trip instead of three. */
function opening(actor: Actor): string {
  const organisation = actor.organisationId ?? '';
  if (!UUID.test(actor.supplierId) || (organisation !== '' && !UUID.test(organisation)) || !ROLES.includes(actor.role)) {
    throw new Error('not an actor: supplier and organisation must be ids, the role one of the known');
  }
  return `begin; set local role wallcourse_app;
    select set_config('app.supplier', '${actor.supplierId}', true), set_config('app.organisation', '${organisation}', true),
      set_config('app.role', '${actor.role}', true)`;
}

/** What is done at the end of every transaction that made something, within the same commit. */
export type BeforeCommit = (tx: Transaction) => Promise<void>;

/**
 * The only door to the database. Within `fn` the tenant's rows can be seen and no others; what `fn` throws rolls everything back.
 *
 * A transaction within a transaction would wait for a second connection while holding the first, and would not be one commit: it is refused.
 */
export class Database {
  private readonly beforeCommit: BeforeCommit[] = [];

  constructor(
    private readonly pool: pg.Pool,
    private readonly clock: Clock,
  ) {}

  async transaction<T>(actor: Actor, fn: (tx: Transaction) => Promise<T>): Promise<T> {
    if (open.getStore()?.ended === false) throw new Error('a transaction was opened within another');
    const begin = opening(actor);
    const client = await this.connect();
    const scope = { ended: false };
    let broken: Error | undefined;
    try {
      await client.query(begin);
      const tx = new Transaction(client, actor, this.clock);
      const value = await open.run(scope, async () => {
        const result = await fn(tx);
        for (const step of this.beforeCommit) await step(tx);
        return result;
      });
      await client.query('commit');
      return value;
    } catch (error) {
      broken = await this.rolledBack(client);
      throw troubleOf(error);
    } finally {
      scope.ended = true;
      client.release(broken);
    }
  }

  /** Adds a step that joins every commit of this process; used by the idempotency of requests. */
  joinCommits(step: BeforeCommit): void {
    this.beforeCommit.push(step);
  }

  /** True when the database answers. */
  async alive(): Promise<boolean> {
    try {
      await this.pool.query('select 1');
      return true;
    } catch {
      return false;
    }
  }

  /** Who a token's hash speaks for, before any supplier is known. */
  async actorForToken(hash: Buffer): Promise<Actor | null> {
    try {
      const result = await this.pool.query<{ supplier_id: string; organisation_id: string | null; person_id: string; role: Role }>(
        'select supplier_id, organisation_id, person_id, role from actor_for_token($1)',
        [hash],
      );
      const row = result.rows[0];
      return row ? { supplierId: row.supplier_id, organisationId: row.organisation_id, personId: row.person_id, role: row.role } : null;
    } catch (error) {
      throw troubleOf(error);
    }
  }

  private async connect(): Promise<pg.PoolClient> {
    try {
      return await this.pool.connect();
    } catch (error) {
      throw troubleOf(error);
    }
  }

  /** Undefined where the connection can be used again, the error where it must be thrown away. */
  private async rolledBack(client: pg.PoolClient): Promise<Error | undefined> {
    try {
      await client.query('rollback');
      return undefined;
    } catch (error) {
      return error instanceof Error ? error : new Error(String(error));
    }
  }
}
