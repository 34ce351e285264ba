import type { z } from 'zod';
import { invalidInput } from '../../platform/refusals/refusal-of.js';

/** Arguments held against the schema that the REST query is held against. */
export function checked<T extends z.ZodType>(schema: T, args: Readonly<Record<string, unknown>>): z.output<T> {
  const given = Object.fromEntries(Object.entries(args).filter(([, value]) => value !== null));
  const read = schema.safeParse(given);
  if (!read.success) throw invalidInput(read.error.issues);
  return read.data;
}
