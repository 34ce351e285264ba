import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import type { Reading } from './reading.js';
import { RowReader } from './row-reader.js';
import type { Storey } from './schedule.js';
import { MAX_MARK, MAX_WALL_HEIGHT } from './schedule-limits.js';

export const STOREY_KEYS = ['id', 'height', 'grade', 'storeyAbove', 'closed', 'on', 'dead', 'live', 'snow'] as const;

export interface Storeys {
  /** Every id that was written, those of storeys with errors too: a reference to one is not a second error. */
  readonly ids: ReadonlySet<string>;
  readonly read: ReadonlyMap<string, Storey>;
}

/** The storeys: ids unique, `on` a known storey below, no storey above itself. A storey that another stands on has a storey above. */
export function readStoreys(reading: Reading, rows: readonly unknown[]): Storeys {
  const ids = new Map<string, string>();
  const drafts = rows.flatMap((row, index) => {
    const reader = RowReader.of(reading, row, `/storeys/${index}`, STOREY_KEYS);
    return reader ? [{ reader, storey: readStorey(reader, ids) }] : [];
  });
  const read = new Map<string, Storey>();
  for (const { reader, storey } of drafts) {
    if (!storey) continue;
    if (storey.on !== null && !ids.has(storey.on)) reader.fail('on', `a storey of this schedule: ${listed(ids.keys())}`);
    else read.set(storey.id, storey);
  }
  for (const { reader, storey } of drafts)
    if (storey && standsOnItself(storey, read)) reader.fail('on', 'a storey below this one; here a storey stands on itself');
  const carrying = new Set([...read.values()].map(({ on }) => on));
  for (const storey of read.values()) if (carrying.has(storey.id)) read.set(storey.id, { ...storey, storeyAbove: true });
  return { ids: new Set(ids.keys()), read };
}

function readStorey(reader: RowReader, ids: Map<string, string>): Storey | undefined {
  const id = reader.text('id', MAX_MARK);
  const height = reader.length('height', { positive: true, most: MAX_WALL_HEIGHT });
  const grade = reader.choice('grade', ['above', 'below'] as const, 'above');
  const storeyAbove = reader.flag('storeyAbove', false);
  const closed = reader.flag('closed', false);
  const on = reader.has('on') ? reader.text('on', MAX_MARK) : null;
  const first = id === undefined ? undefined : ids.get(id);
  if (first !== undefined) return reader.fail('id', `an id that no other storey has; ${first} has it already`);
  if (id !== undefined) ids.set(id, reader.pointer);
  if (
    id === undefined ||
    height === undefined ||
    grade === undefined ||
    storeyAbove === undefined ||
    closed === undefined ||
    on === undefined
  )
    return undefined;
  return { id, height, grade, storeyAbove, closed, on, ...readLoads(reader) };
}

/** Only the loads that are stated; wrong ones are recorded and left out. */
function readLoads(reader: RowReader): Pick<Storey, 'deadKnPerM' | 'liveKnPerM' | 'snowKnPerM'> {
  const [deadKnPerM, liveKnPerM, snowKnPerM] = (['dead', 'live', 'snow'] as const).map((key) => reader.quantity(key, 'force per length', PLAUSIBLE.lineLoad));
  return {
    ...(deadKnPerM === undefined ? {} : { deadKnPerM }),
    ...(liveKnPerM === undefined ? {} : { liveKnPerM }),
    ...(snowKnPerM === undefined ? {} : { snowKnPerM }),
  };
}

function standsOnItself(storey: Storey, storeys: ReadonlyMap<string, Storey>): boolean {
  let below = storey.on;
  for (let steps = 0; below !== null && steps <= storeys.size; steps += 1) {
    if (below === storey.id) return true;
    below = storeys.get(below)?.on ?? null;
  }
  return false;
}

/** The first few of many names, for an error. */
export function listed(names: Iterable<string>): string {
  const all = [...names];
  return all.length > 12 ? `${all.slice(0, 12).join(', ')} and ${all.length - 12} more` : all.join(', ');
}
