import { reportConflicts, type ReadFeature } from './feature-conflicts.js';
import type { Gables, Slope } from './gables.js';
import { rowPlace } from './places.js';
import { listedNear } from './near-marks.js';
import type { Walls } from './read-walls.js';
import type { Reading } from './reading.js';
import { RowReader } from './row-reader.js';
import type { Feature } from './schedule.js';
import type { ScheduleContext } from './schedule-context.js';
import { MAX_MARK, MAX_WALL_HEIGHT } from './schedule-limits.js';
import type { WallDraft } from './wall-draft.js';

export const FEATURE_KEYS = ['kind', 'wall', 'at', 'from', 'to', 'face', 'faces', 'rise', 'peakAt', 'core', 'flush'] as const;

type Base = Pick<Feature, 'wall' | 'place'>;
type Read = (reader: RowReader, base: Base, wall: WallDraft | undefined, context: ScheduleContext) => Feature | undefined;

const READERS: Readonly<Record<Feature['kind'], Read>> = {
  ledge: readLedge,
  'taper-top': readTaperTop,
  gable: readGable,
  'core-change': readCoreChange,
};
const KINDS = ['ledge', 'taper-top', 'gable', 'core-change'] as const;

export interface Features {
  readonly features: readonly Feature[];
  readonly gables: Gables;
}

/** Ledges, taper tops, gables and core changes on known walls, inside their wall, and none in the way of another. */
export function readFeatures(reading: Reading, rows: readonly unknown[], walls: Walls, context: ScheduleContext): Features {
  const gables = new Map<string, Slope | null>();
  const read = rows.flatMap((row, index): readonly ReadFeature[] => {
    const reader = RowReader.of(reading, row, `/features/${index}`, FEATURE_KEYS);
    if (!reader) return [];
    const kind = reader.choice('kind', KINDS);
    const mark = reader.text('wall', MAX_MARK);
    if (mark !== undefined && !walls.marks.has(mark))
      reader.fail('wall', `a wall of this schedule: ${listedNear(walls.marks, mark)}`);
    if (kind === undefined) return [];
    const base = { wall: mark ?? '', place: rowPlace(reading.places, reader.pointer) };
    const wall = walls.drafts.get(base.wall);
    const straight = !wall?.arc || kind === 'core-change';
    if (!straight) reader.fail('wall', `a straight wall for a ${kind.replace('-', ' ')}: ${wall.mark} is an arc wall, and its units are straight`);
    const feature = READERS[kind](reader, base, wall, context);
    if (kind === 'gable' && !gables.get(base.wall)) gables.set(base.wall, feature?.kind === 'gable' ? feature : null);
    return feature && wall && straight ? [{ reader, feature, wall }] : [];
  });
  reportConflicts(read);
  return { features: read.map(({ feature }) => feature), gables };
}

/** Runs the whole wall where neither from nor to is written. */
function readLedge(reader: RowReader, base: Base, wall: WallDraft | undefined): Feature | undefined {
  const at = reader.length('at', { positive: true });
  const from = reader.has('from') ? reader.length('from') : 0;
  const to = reader.has('to') ? reader.length('to') : (wall?.length ?? 0);
  const face = reader.choice('face', ['outside', 'inside'] as const);
  if (at === undefined || from === undefined || to === undefined || face === undefined || !wall) return undefined;
  if (at > wall.height) return reader.fail('at', `a height on wall ${wall.mark}, ${reader.print(wall.height)} high`);
  if (to <= from || to > wall.length)
    return reader.fail('to', `a ledge that ends after it starts, on wall ${wall.mark}, ${reader.print(wall.length)} long`);
  return { kind: 'ledge', ...base, at, from, to, face };
}

function readTaperTop(reader: RowReader, base: Base): Feature | undefined {
  const faces = reader.choice('faces', ['one', 'both'] as const);
  return faces && { kind: 'taper-top', ...base, faces };
}

function readGable(reader: RowReader, base: Base, wall: WallDraft | undefined): Feature | undefined {
  const rise = reader.length('rise', { positive: true, most: MAX_WALL_HEIGHT });
  const peakAt = reader.length('peakAt');
  if (rise === undefined || peakAt === undefined || !wall) return undefined;
  if (peakAt > wall.length) return reader.fail('peakAt', `a peak on wall ${wall.mark}, ${reader.print(wall.length)} long`);
  return { kind: 'gable', ...base, rise, peakAt };
}

function readCoreChange(
  reader: RowReader,
  base: Base,
  wall: WallDraft | undefined,
  { cores }: ScheduleContext,
): Feature | undefined {
  const at = reader.length('at', { positive: true });
  const core = reader.text('core', MAX_MARK);
  const flush = reader.choice('flush', ['outside', 'inside', 'centre'] as const);
  const known = core === undefined || cores === null || cores.includes(core);
  if (!known) reader.fail('core', `a core of the range: ${cores.join(', ')}`);
  if (at === undefined || core === undefined || flush === undefined || !known || !wall) return undefined;
  if (at >= wall.height)
    return reader.fail('at', `a height below the top of wall ${wall.mark}, ${reader.print(wall.height)} high`);
  return { kind: 'core-change', ...base, at, core, flush };
}
