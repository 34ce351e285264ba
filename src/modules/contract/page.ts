import { Refusal } from '../../platform/refusals/refusal.js';
import type { Page, PageQuery } from './contract.schemas.js';
import { wrongField } from './field-error.js';

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

/** True where the text can be the id of anything. What is none answers as what is missing. */
export const isId = (text: string): boolean => UUID.test(text);

export function knownId(text: string, subject: string): string {
  if (!isId(text)) throw new Refusal('not-found', `There is no such ${subject}.`);
  return text;
}

export const cursorOf = (key: string | number): string => Buffer.from(`k${key}`).toString('base64url');

function keyIn(query: PageQuery): string | null {
  if (query.after === undefined) return null;
  const text = Buffer.from(query.after, 'base64url').toString('utf8');
  return text.startsWith('k') && cursorOf(text.slice(1)) === query.after ? text.slice(1) : wrongCursor(query.after);
}

/** The id after which the page begins, or null for the first page. */
export function idAfter(query: PageQuery): string | null {
  const key = keyIn(query);
  return key === null || isId(key) ? key : wrongCursor(query.after!);
}

/** The number after which the page begins; numbered parts begin at 1. */
export function numberAfter(query: PageQuery): number {
  const key = keyIn(query);
  if (key === null) return 0;
  return /^\d{1,9}$/.test(key) ? Number(key) : wrongCursor(query.after!);
}

function wrongCursor(read: string): never {
  throw wrongField('The cursor is not one that was given out.', '/after', read, 'the `next` of the page before, unaltered');
}

/** One page of rows of which one more was read than asked for. */
export function pageOf<R, T>(
  rows: readonly R[],
  first: number,
  key: (row: R) => string | number,
  answer: (row: R) => T,
): Page<T> {
  const shown = rows.slice(0, first);
  const last = shown.at(-1);
  return { items: shown.map(answer), next: rows.length > first && last !== undefined ? cursorOf(key(last)) : null };
}
