/**
 * What the door must know of each table. `test/platform/database/tables.test.ts` holds it against the migrated database.
 *
 * business: a row is written with its history event and outbox row, or not at all (the database's guard_history agrees).
 * part: a row belongs to a business row written in the same commit, or is the program's own book-keeping.
 */
export const TABLES = {
  suppliers: { kind: 'business', key: 'supplier_id', subject: 'supplier', versioned: true, created: true },
  organisations: { kind: 'business', key: 'id', subject: 'organisation', versioned: true, created: true },
  people: { kind: 'business', key: 'id', subject: 'person', versioned: true, created: true },
  tokens: { kind: 'business', key: 'id', subject: 'token', versioned: true, created: true },
  form_ranges: { kind: 'business', key: 'id', subject: 'range', versioned: false, created: true },
  price_lists: { kind: 'business', key: 'id', subject: 'price-list', versioned: false, created: true },
  jobs: { kind: 'business', key: 'id', subject: 'job', versioned: true, created: true },
  schedule_revisions: { kind: 'business', key: 'id', subject: 'schedule', versioned: false, created: true },
  measurements: { kind: 'business', key: 'id', subject: 'measurement', versioned: false, created: true },
  tickets: { kind: 'business', key: 'id', subject: 'ticket', versioned: true, created: true },
  ticket_messages: { kind: 'business', key: 'id', subject: 'ticket-message', versioned: false, created: true },
  advice: { kind: 'business', key: 'id', subject: 'advice', versioned: false, created: true },
  quotes: { kind: 'business', key: 'id', subject: 'quote', versioned: true, created: true },
  checklist_ticks: { kind: 'business', key: 'id', subject: 'checklist-tick', versioned: true, created: true },
  blobs: { kind: 'part', key: 'id', subject: 'blob', versioned: false, created: true },
  schedule_files: { kind: 'part', key: 'id', subject: 'schedule-file', versioned: false, created: true },
  measurement_walls: { kind: 'part', key: 'id', subject: 'wall', versioned: false, created: true },
  findings: { kind: 'part', key: 'id', subject: 'finding', versioned: false, created: true },
  checklist_items: { kind: 'part', key: 'supplier_id', subject: 'checklist-item', versioned: false, created: true },
  quote_lines: { kind: 'part', key: 'id', subject: 'quote-line', versioned: false, created: true },
} as const satisfies Record<string, TableFacts>;

export interface TableFacts {
  readonly kind: 'business' | 'part';
  readonly key: 'id' | 'supplier_id';
  /** What an event about a row calls it. */
  readonly subject: string;
  /** Has `version` and `updated_at`. */
  readonly versioned: boolean;
  readonly created: boolean;
}

type TablesWhere<F> = { [T in keyof typeof TABLES]: (typeof TABLES)[T] extends F ? T : never }[keyof typeof TABLES];

export type BusinessTable = TablesWhere<{ kind: 'business' }>;
export type PartTable = TablesWhere<{ kind: 'part' }>;
export type VersionedTable = TablesWhere<{ kind: 'business'; versioned: true }>;

export type Row = Record<string, unknown>;
