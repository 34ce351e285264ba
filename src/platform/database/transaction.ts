import type pg from 'pg';
import { v7 as uuidv7 } from 'uuid';
import type { Clock } from '../clock/clock.js';
import { Refusal } from '../refusals/refusal.js';
import { correlationId } from '../telemetry/correlation.js';
import type { Actor } from './actor.js';
import { TABLES, type BusinessTable, type PartTable, type Row, type TableFacts, type VersionedTable } from './tables.js';

/** What happened, told with the row that it happened to. */
export interface EventNote {
  /** `job.submitted`, `quote.issued`: subject and past participle. */
  readonly kind: string;
  readonly data?: object;
}

export interface HistoryEvent extends EventNote {
  readonly subject: { readonly type: string; readonly id: string };
  readonly organisationId?: string | null;
  /** The job whose history shows the event. */
  readonly jobId?: string | null;
}

export interface QueueOptions {
  /** An entry with the same key that has not started yet is replaced by this one. */
  readonly key?: string;
  /** Entries of one queue run one after the other. */
  readonly queue?: string;
  readonly attempts?: number;
}

const NUMBER_PREFIX = { job: 'J', quote: 'Q', ticket: 'T' } as const;
export type NumberedKind = keyof typeof NUMBER_PREFIX;

const COLUMN = /^[a-z][a-z0-9_]*$/;

function quoted(column: string): string {
  if (!COLUMN.test(column)) throw new Error(`not a column name: ${column}`);
  return `"${column}"`;
}

/** Rows travel as one JSON document: PostgreSQL reads each field as its column's type, so nothing is converted twice. */
function document(value: unknown): string {
  return JSON.stringify(value, function replace(this: Row, key: string, field: unknown) {
    const raw = this[key];
    if (Buffer.isBuffer(raw)) return `\\x${raw.toString('hex')}`;
    return typeof field === 'bigint' ? field.toString() : field;
  });
}

const text = (value: unknown): string | null => (typeof value === 'string' ? value : null);

/** One commit on behalf of one actor. Made by Database.transaction and dead when it ends. */
export class Transaction {
  /** First subject an event was written about: what an idempotent request has made. */
  firstSubject: HistoryEvent['subject'] | null = null;

  constructor(
    private readonly client: pg.PoolClient,
    readonly actor: Actor,
    private readonly clock: Clock,
  ) {}

  async query<R = Row>(sql: string, params: readonly unknown[] = []): Promise<R[]> {
    const result = await this.client.query(sql, params as unknown[]);
    return result.rows as R[];
  }

  async one<R = Row>(sql: string, params: readonly unknown[] = []): Promise<R | null> {
    return (await this.query<R>(sql, params))[0] ?? null;
  }

  /** Writes the row and its event. Adds id, supplier, version and times where the table has them; answers the row as stored. */
  async insert<R = Row>(table: BusinessTable, row: Row, event: EventNote): Promise<R> {
    const stored = await this.write<Row>(table, row);
    await this.record(this.about(table, stored, event));
    return stored as R;
  }

  /** Rows that belong to a business row of this commit; their order is kept in their ids. */
  async insertParts(table: PartTable, rows: readonly Row[]): Promise<void> {
    if (rows.length === 0) return;
    const complete = rows.map((row) => this.completed(TABLES[table], row));
    const columns = [...new Set(complete.flatMap((row) => Object.keys(row)))].map(quoted).join(', ');
    await this.query(`insert into ${table} (${columns}) select ${columns} from jsonb_populate_recordset(null::${table}, $1::jsonb)`, [
      document(complete),
    ]);
  }

  /**
   * Changes a row one version on and writes the event.
   *
   * @param expected the version the caller has seen (refused `stale` where the row has moved on), or null not to ask
   */
  async update<R = Row>(table: VersionedTable, id: string, expected: number | null, set: Row, event: EventNote): Promise<R> {
    const facts = TABLES[table];
    const fields: Row = { ...set, updated_at: this.clock.now() };
    const assignments = Object.keys(fields).map((column) => `${quoted(column)} = r.${quoted(column)}`).join(', ');
    const [stored] = await this.query<Row>(
      `update ${table} t set ${assignments}, version = t.version + 1 from jsonb_populate_record(null::${table}, $1::jsonb) r
       where t.supplier_id = $2 and t.${facts.key} = $3 and ($4::integer is null or t.version = $4) returning t.*`,
      [document(fields), this.actor.supplierId, id, expected],
    );
    if (!stored) throw await this.missed(table, id, expected);
    await this.record(this.about(table, stored, event));
    return stored as R;
  }

  /** A history event with its outbox row, for what changes no row of its own. */
  async record(event: HistoryEvent): Promise<void> {
    this.firstSubject ??= event.subject;
    const id = uuidv7();
    const now = this.clock.now();
    await this.query(
      `with written as (
         insert into history_events (supplier_id, id, organisation_id, job_id, kind, subject_type, subject_id, data, person_id, role, correlation_id, created_at)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12))
       insert into outbox (supplier_id, id, organisation_id, event_id, kind, state, attempts, created_at)
       values ($1, $13, $3, $2, $5, 'waiting', 0, $12)`,
      [
        this.actor.supplierId, id, event.organisationId ?? null, event.jobId ?? null, event.kind, event.subject.type, event.subject.id,
        document(event.data ?? {}), this.actor.personId, this.actor.role, correlationId(), now, uuidv7(),
      ],
    );
  }

  /** A queue entry that exists exactly when this commit does. The task finds the actor and the payload again. */
  async enqueue(task: string, payload: object, options: QueueOptions = {}): Promise<void> {
    const entry = { actor: this.actor, correlation: correlationId(), payload };
    await this.query('select enqueue($1, $2::json, $3, $4, $5)', [
      task, document(entry), options.key ?? null, options.queue ?? null, options.attempts ?? null,
    ]);
  }

  /** The supplier's next number of a kind: J-000123. Other transactions wait for it, so ask for it late. */
  async nextNumber(kind: NumberedKind): Promise<string> {
    const counter = await this.one<{ last: number }>(
      `insert into counters (supplier_id, kind, last) values ($1, $2, 1)
       on conflict (supplier_id, kind) do update set last = counters.last + 1 returning last`,
      [this.actor.supplierId, kind],
    );
    if (!counter) throw new Error(`no counter came back for ${kind}`);
    return `${NUMBER_PREFIX[kind]}-${String(counter.last).padStart(6, '0')}`;
  }

  /** Wakes those who wait on the subject, in every process, when this commit stands. */
  async signal(topic: string, id: string): Promise<void> {
    await this.query(`select pg_notify('wallcourse', $1)`, [`${this.actor.supplierId} ${topic} ${id}`]);
  }

  now(): Date {
    return this.clock.now();
  }

  private async write<R>(table: BusinessTable, row: Row): Promise<R> {
    const complete = this.completed(TABLES[table], row);
    const columns = Object.keys(complete).map(quoted).join(', ');
    const [stored] = await this.query<R>(
      `insert into ${table} (${columns}) select ${columns} from jsonb_populate_record(null::${table}, $1::jsonb) returning *`,
      [document(complete)],
    );
    if (!stored) throw new Error(`no row came back from ${table}`);
    return stored;
  }

  private completed(facts: TableFacts, row: Row): Row {
    const now = this.clock.now();
    return {
      ...row,
      supplier_id: this.actor.supplierId,
      ...(facts.key === 'id' ? { id: row['id'] ?? uuidv7() } : {}),
      ...(facts.versioned ? { version: 1, updated_at: now } : {}),
      created_at: now,
    };
  }

  private about(table: BusinessTable, row: Row, event: EventNote): HistoryEvent {
    const facts = TABLES[table];
    const id = String(row[facts.key]);
    return {
      ...event,
      subject: { type: facts.subject, id },
      organisationId: table === 'organisations' ? id : text(row['organisation_id']),
      jobId: table === 'jobs' ? id : text(row['job_id']),
    };
  }

  private async missed(table: VersionedTable, id: string, expected: number | null): Promise<Refusal> {
    const facts = TABLES[table];
    const found = await this.one<{ version: number }>(`select version from ${table} where supplier_id = $1 and ${facts.key} = $2`, [
      this.actor.supplierId,
      id,
    ]);
    if (!found) return new Refusal('not-found', `There is no such ${facts.subject}.`);
    return new Refusal('stale', `The ${facts.subject} is at version ${found.version}, not ${expected ?? 'the one expected'}.`);
  }
}
