import { Refusal } from '../refusals/refusal.js';

/** SQL states that say "not now", not "wrong": serialisation, deadlock, no connection left, shutting down, lock not available. */
const BUSY = new Set(['40001', '40P01', '53300', '55P03', '57P01', '57P02', '57P03', '08006', '08001', '08003']);
/** What the driver says without a code of its own when a connection is lost or none is free. */
const LOST = /^(?:Client has encountered a connection error|Connection terminated|timeout exceeded when trying to connect|Client was closed)/;
/** Text that PostgreSQL cannot hold: the NUL character, half of a surrogate pair. */
const UNSTORABLE = new Set(['22021', '22P05']);

const sqlState = (error: unknown): string | null =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : null;

/** The refusal that a database error means, or the error itself where it is a defect of ours. */
export function troubleOf(error: unknown): unknown {
  const state = sqlState(error);
  const lost = state === null ? error instanceof Error && LOST.test(error.message) : state === 'ECONNREFUSED' || state === 'ECONNRESET';
  if (lost || (state !== null && BUSY.has(state))) return new Refusal('busy', 'The database could not take this just now.');
  if (state === null) return error;
  if (UNSTORABLE.has(state) || (state === '22P02' && String((error as { detail?: unknown }).detail ?? '').includes('surrogate'))) {
    return new Refusal('invalid', 'A text holds a character that cannot be stored (NUL, or half of a surrogate pair).');
  }
  return error;
}

/** True where the error is the breach of this unique index. */
export function breaches(error: unknown, index: string): boolean {
  return sqlState(error) === '23505' && (error as { constraint?: unknown }).constraint === index;
}
