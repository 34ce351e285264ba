import type { InputError } from '../../domain/evidence/input-error.js';
import { readRange } from '../../domain/range/read-range.js';
import type { StepLines } from '../../domain/schedule/ifc/step-model.js';
import { readSchedule, type RefusalCode, type Schedule, type ScheduleContext } from '../../domain/schedule/index.js';

export interface ReadInput {
  readonly parts: readonly { readonly name: string; readonly mediaType: string; readonly bytes: Uint8Array; readonly model?: Uint8Array }[];
  /** Documents of the ranges a schedule may name. */
  readonly ranges: readonly unknown[];
}

export type ReadOutput =
  | { readonly ok: true; readonly schedule: Schedule }
  | { readonly ok: false; readonly code: RefusalCode; readonly errors: readonly InputError[] };

export async function read({ parts, ranges }: ReadInput): Promise<ReadOutput> {
  const [only] = parts;
  if (parts.length === 1 && only?.mediaType === 'application/json' && !couldBeJson(only.bytes))
    return { ok: false, code: 'unreadable', errors: [] };
  const schedule = await readSchedule(parts.map(opened), ranges.map(contextOf));
  return schedule.ok ? { ok: true, schedule: schedule.value } : { ok: false, ...schedule.error };
}

/** A building model comes with what its own process took out of it, as the text of a JSON object. */
const opened = ({ name, bytes, model }: ReadInput['parts'][number]) => ({
  name,
  bytes,
  ...(model ? { model: JSON.parse(Buffer.from(model).toString('utf8')) as StepLines } : {}),
});

/** What was sent as JSON and begins like none is broken JSON, not a table. */
function couldBeJson(bytes: Uint8Array): boolean {
  const text = Buffer.from(bytes).toString('utf8');
  if (/^\ufeff?\s*[[{]/.test(text)) return true;
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

function contextOf(document: unknown): ScheduleContext {
  const range = readRange(document);
  if (!range.ok) throw new Error(`a stored range is not one: ${JSON.stringify(range.error)}`);
  const { code, cores, panel, courseHeight, parameters } = range.value;
  const coreWidths = new Map([...cores].map(([core, { width }]) => [core, width]));
  return { range: code, cores: [...cores.keys()], coreWidths, panel, courseHeight, buckThickness: parameters.buckThickness };
}
