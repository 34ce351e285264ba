import { AsyncLocalStorage } from 'node:async_hooks';
import type { Clock } from '../clock/clock.js';
import type { Actor } from '../database/actor.js';
import type { Database } from '../database/database.js';
import type { Transaction } from '../database/transaction.js';
import { Refusal } from '../refusals/refusal.js';

/** A request that died with its process may be taken up again after this. */
const ABANDONED_MS = 5 * 60_000;
/** An answer is repeated for a day; then the key is free again. */
const KEPT_MS = 24 * 3_600_000;

export interface KeyedRequest {
  readonly actor: Actor;
  /** Method and path, with the ids in it. */
  readonly route: string;
  readonly key: string;
}

export interface StoredAnswer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string;
}

interface KeyRow {
  readonly request_hash: string;
  readonly state: 'running' | 'answered';
  readonly subject_type: string | null;
  readonly subject_id: string | null;
  readonly status: number | null;
  readonly headers: Readonly<Record<string, string>> | null;
  readonly body: string | null;
  readonly updated_at: Date;
}

/** What claiming a key comes to: it is ours to carry out, or it was answered before. */
export type Claim = { readonly kind: 'ours' } | { readonly kind: 'answered'; readonly hash: string; readonly answer: StoredAnswer };

const WHERE = 'supplier_id = $1 and person_id = $2 and route = $3 and key = $4';

const FORGET = `delete from idempotency_keys where (supplier_id, person_id, route, key) in (
  select supplier_id, person_id, route, key from idempotency_keys where supplier_id = $1 and created_at < $2 limit 100 for update skip locked)`;

/**
 * The same POST sent twice is carried out once. A key belongs to a person and a route. While its request runs, another with the
 * same key is refused `already-running`; afterwards it gets the stored answer, or `invalid` where its body is another. What was
 * refused and had changed nothing is forgotten, so that it may be tried again with the same key.
 */
export class IdempotencyKeys {
  private readonly scope = new AsyncLocalStorage<KeyedRequest & { made: boolean }>();

  constructor(
    private readonly database: Database,
    private readonly clock: Clock,
  ) {
    database.joinCommits((tx) => this.noteMade(tx));
  }

  async claim(request: KeyedRequest): Promise<Claim> {
    return this.database.transaction(request.actor, async (tx) => {
      const key = this.keyOf(request);
      const now = this.clock.now();
      await tx.query(FORGET, [request.actor.supplierId, new Date(now.getTime() - KEPT_MS)]);
      const claimed = await tx.one(
        `insert into idempotency_keys (supplier_id, person_id, route, key, organisation_id, request_hash, state, created_at, updated_at)
         values ($1, $2, $3, $4, $5, '', 'running', $6, $6) on conflict do nothing returning key`,
        [...key, request.actor.organisationId, now],
      );
      if (claimed) return { kind: 'ours' };
      const row = await tx.one<KeyRow>(`select * from idempotency_keys where ${WHERE} for update`, key);
      return this.claimOf(tx, request, row, now);
    });
  }

  /** Runs the request so that its first commit writes down what it made. */
  within<T>(request: KeyedRequest, work: () => T): T {
    return this.scope.run({ ...request, made: false }, work);
  }

  /** Keeps the answer for the next time. */
  async answer(request: KeyedRequest, hash: string, answer: StoredAnswer): Promise<void> {
    await this.database.transaction(request.actor, (tx) =>
      tx.query(`update idempotency_keys set state = 'answered', request_hash = $5, status = $6, headers = $7, body = $8, updated_at = $9 where ${WHERE}`, [
        ...this.keyOf(request), hash, answer.status, JSON.stringify(answer.headers), answer.body, this.clock.now(),
      ]),
    );
  }

  /** Frees the key of a request that was refused; one that had made something before it failed keeps it. */
  async release(request: KeyedRequest): Promise<void> {
    await this.database.transaction(request.actor, (tx) =>
      tx.query(`delete from idempotency_keys where ${WHERE} and state = 'running' and subject_id is null`, this.keyOf(request)),
    );
  }

  private keyOf(request: KeyedRequest): unknown[] {
    return [request.actor.supplierId, request.actor.personId, request.route, request.key];
  }

  private async claimOf(tx: Transaction, request: KeyedRequest, row: KeyRow | null, now: Date): Promise<Claim> {
    if (row?.state === 'answered') {
      return { kind: 'answered', hash: row.request_hash, answer: { status: row.status ?? 200, headers: row.headers ?? {}, body: row.body ?? '' } };
    }
    const abandoned = row !== null && now.getTime() - row.updated_at.getTime() > ABANDONED_MS;
    if (abandoned && row.subject_id !== null) {
      throw new Refusal('already-running', `It was carried out and made ${row.subject_type} ${row.subject_id}, but its answer was lost.`);
    }
    if (!abandoned) throw new Refusal('already-running', 'A request with this Idempotency-Key is being carried out.');
    await tx.query(`update idempotency_keys set updated_at = $5 where ${WHERE}`, [...this.keyOf(request), now]);
    return { kind: 'ours' };
  }

  private async noteMade(tx: Transaction): Promise<void> {
    const request = this.scope.getStore();
    if (!request || request.made || tx.firstSubject === null || tx.actor.personId !== request.actor.personId) return;
    await tx.query(`update idempotency_keys set subject_type = $5, subject_id = $6 where ${WHERE}`, [
      ...this.keyOf(request), tx.firstSubject.type, tx.firstSubject.id,
    ]);
    request.made = true;
  }
}
