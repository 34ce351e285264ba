import type { InputError } from '../../domain/evidence/input-error.js';
import { readRange } from '../../domain/range/read-range.js';
import { readScheduleDocument } from '../../domain/schedule/read-schedule-document.js';
import type { Schedule } from '../../domain/schedule/schedule.js';

export interface ReadInput {
  readonly parts: readonly { readonly name: string; readonly mediaType: string; readonly bytes: Uint8Array }[];
  /** Documents of the ranges a schedule may name. */
  readonly ranges: readonly unknown[];
}

export type ReadOutput =
  | { readonly ok: true; readonly schedule: Schedule }
  | { readonly ok: false; readonly code: 'unreadable' | 'wrong-type' | 'too-large' | 'invalid'; readonly detail: string; readonly errors: readonly InputError[] };

export function read({ parts, ranges }: ReadInput): ReadOutput {
  const contexts = ranges.map((document) => {
    const range = readRange(document);
    if (!range.ok) throw new Error(`a stored range is not one: ${JSON.stringify(range.error)}`);
    const { code, cores, courseHeight, parameters } = range.value;
    return { range: code, cores: [...cores.keys()], courseHeight, buckThickness: parameters.buckThickness };
  });
  let json: unknown;
  try {
    json = JSON.parse(Buffer.from(parts[0]!.bytes).toString('utf8'));
  } catch {
    return { ok: false, code: 'unreadable', detail: 'The schedule is not JSON.', errors: [] };
  }
  const schedule = readScheduleDocument(json, contexts);
  return schedule.ok ? { ok: true, schedule: schedule.value } : { ok: false, code: 'invalid', detail: 'The schedule does not hold together.', errors: schedule.error };
}
