import pg from 'pg';

const { builtins } = pg.types;

/** int8 counts and money stay far below 2^53; one that does not must not be rounded in silence. */
function safeInteger(text: string): number {
  const value = Number(text);
  if (!Number.isSafeInteger(value)) throw new RangeError(`integer beyond 2^53 read from the database: ${text}`);
  return value;
}

const PARSERS: ReadonlyMap<number, (text: string) => unknown> = new Map<number, (text: string) => unknown>([
  [builtins.INT8, safeInteger],
  // A date is a day, not a moment: it stays the text it is.
  [builtins.DATE, (text: string) => text],
]);

const types = {
  getTypeParser: (oid: number, format?: string) =>
    (format === 'binary' ? undefined : PARSERS.get(oid)) ?? pg.types.getTypeParser(oid, format as 'text'),
} as pg.CustomTypesConfig;

export interface PoolOptions {
  readonly url: string;
  readonly size: number;
  /** Called when an idle connection is lost, as when the server restarts; the pool opens another at the next use. */
  readonly onLost: (error: Error) => void;
}

export function openPool(options: PoolOptions): pg.Pool {
  const pool = new pg.Pool({
    connectionString: options.url,
    max: options.size,
    types,
    connectionTimeoutMillis: 15_000,
    statement_timeout: 60_000,
    idle_in_transaction_session_timeout: 120_000,
    application_name: 'wallcourse',
  });
  pool.on('error', options.onLost);
  pool.on('connect', (client) => client.on('error', options.onLost));
  return pool;
}
