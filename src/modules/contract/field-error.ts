import type { InputError } from '../../domain/evidence/input-error.js';
import { Refusal } from '../../platform/refusals/refusal.js';

const MOST_READ = 80;

/** One thing wrong with a field of the request. */
export const fieldError = (pointer: string, read: string, fix: string): InputError => ({
  sheet: null,
  row: null,
  column: null,
  pointer,
  read: read.slice(0, MOST_READ),
  fix,
});

export const wrongField = (detail: string, pointer: string, read: string, fix: string): Refusal =>
  new Refusal('invalid', detail, [fieldError(pointer, read, fix)]);
