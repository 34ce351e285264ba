import { meantLength, type Nm } from '../quantity/length.js';
import { arcSweep, SEMICIRCLE_REACH } from './arc-line.js';
import { rowPlace } from './places.js';
import { readJoint } from './read-joint.js';
import { listed, type Storeys } from './read-storeys.js';
import type { Reading } from './reading.js';
import { RowReader } from './row-reader.js';
import type { DimensionsTo, PlanPoint, Storey, Wall } from './schedule.js';
import type { ScheduleContext } from './schedule-context.js';
import { MAX_MARK, MAX_WALL_HEIGHT, MAX_WALL_LENGTH, MEETING_DISTANCE } from './schedule-limits.js';
import type { WallDraft } from './wall-draft.js';

export const WALL_KEYS = [
  'mark',
  'storey',
  'core',
  'from',
  'to',
  'length',
  'start',
  'end',
  'arc',
  'dimensionsTo',
  'height',
  'base',
] as const;
export const ARC_KEYS = ['radius', 'turns'] as const;
export const DIMENSIONS_TO = ['foam-face', 'concrete-face', 'axis'] as const;

export interface Walls {
  /** Every mark that was written, those of walls with errors too. */
  readonly marks: ReadonlyMap<string, string>;
  /** In the order of the rows. */
  readonly drafts: ReadonlyMap<string, WallDraft>;
}

interface WallScope {
  readonly reading: Reading;
  readonly storeys: Storeys;
  readonly dimensionsTo: DimensionsTo;
  readonly context: ScheduleContext;
}

/**
 * The walls' own fields: marks unique, storey and core known, a length that is not zero, at least one course high.
 *
 * Height is what reaches the storey's top where none is written (storey height less base). A written length is kept exactly; with
 * coordinates beside it the two agree within 1 mm. Without one it is the distance of the ends, along the arc for an arc wall.
 */
export function readWalls(scope: WallScope, rows: readonly unknown[]): Walls {
  const marks = new Map<string, string>();
  const drafts = new Map<string, WallDraft>();
  rows.forEach((row, index) => {
    const reader = RowReader.of(scope.reading, row, `/walls/${index}`, WALL_KEYS);
    const draft = reader && readWall(scope, reader, marks);
    if (draft) drafts.set(draft.mark, draft);
  });
  return { marks, drafts };
}

function readWall(scope: WallScope, reader: RowReader, marks: Map<string, string>): WallDraft | undefined {
  const mark = readMark(scope.reading, reader, marks);
  const storey = readStoreyOf(scope.storeys, reader);
  const core = readCore(reader, scope.context.cores);
  const line = readLine(reader);
  const start = readJoint(reader, 'start');
  const end = readJoint(reader, 'end');
  const dimensionsTo = reader.choice('dimensionsTo', DIMENSIONS_TO, scope.dimensionsTo);
  const rise = readRise(reader, storey, scope.context.courseHeight);
  if (
    mark === undefined ||
    !storey ||
    core === undefined ||
    !line ||
    start === undefined ||
    end === undefined ||
    dimensionsTo === undefined ||
    !rise
  )
    return undefined;
  const place = rowPlace(scope.reading.places, reader.pointer);
  return { reader, mark, storey: storey.id, core, ...line, dimensionsTo, ...rise, start, end, place };
}

function readMark(reading: Reading, reader: RowReader, marks: Map<string, string>): string | undefined {
  const mark = reader.text('mark', MAX_MARK);
  const first = mark === undefined ? undefined : marks.get(mark);
  if (first !== undefined) {
    const { row } = reading.places.at(first);
    return reader.fail('mark', `a mark that no other wall has; ${row === null ? first : `row ${row}`} has it already`);
  }
  if (mark !== undefined) marks.set(mark, reader.pointer);
  return mark;
}

/** A wall may leave its storey out only where there is just one. Where there is none at all that has been told. */
function readStoreyOf({ ids, read }: Storeys, reader: RowReader): Storey | undefined {
  const [only] = ids;
  if (only === undefined) return undefined;
  const id = !reader.has('storey') && ids.size === 1 ? only : reader.text('storey', MAX_MARK);
  if (id === undefined) return undefined;
  return ids.has(id) ? read.get(id) : reader.fail('storey', `a storey of this schedule: ${listed(ids)}`);
}

function readCore(reader: RowReader, cores: readonly string[] | null): string | undefined {
  const core = reader.text('core', MAX_MARK);
  return core === undefined || cores === null || cores.includes(core)
    ? core
    : reader.fail('core', `a core of the range: ${cores.join(', ')}`);
}

function readRise(
  reader: RowReader,
  storey: Storey | undefined,
  courseHeight: Nm | null,
): Pick<Wall, 'height' | 'base'> | undefined {
  const base = reader.has('base') ? reader.length('base', { most: MAX_WALL_HEIGHT }) : 0;
  const written = reader.optionalLength('height', { positive: true, most: MAX_WALL_HEIGHT });
  if (base === undefined || written === undefined || !storey) return undefined;
  const height = written ?? storey.height - base;
  if (courseHeight === null ? height > 0 : height >= courseHeight) return { height, base };
  const source = written === null ? ` (it is the storey's ${reader.print(storey.height)} less the base)` : '';
  return reader.fail(
    'height',
    `a height of at least one course, ${reader.print(courseHeight ?? 0)}${source}`,
    reader.value('height') ?? reader.print(height),
  );
}

/** Ends, length and arc, or undefined with what is wrong. */
function readLine(reader: RowReader): Pick<WallDraft, 'ends' | 'length' | 'arc'> | undefined {
  const from = readPoint(reader, 'from');
  const to = readPoint(reader, 'to');
  const written = reader.optionalLength('length', { positive: true, most: MAX_WALL_LENGTH });
  const arc = readArc(reader);
  if (from === undefined || to === undefined || written === undefined || arc === undefined) return undefined;
  if ((from === null) !== (to === null)) return reader.fail(from === null ? 'from' : 'to', 'both ends of the wall, from and to');
  if (from === null || to === null) return withoutEnds(reader, written, arc);
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  if (chord < MEETING_DISTANCE) return reader.fail('to', 'an end other than the start: this wall has no length', endsText(reader));
  if (arc && 2 * arc.radius < chord - SEMICIRCLE_REACH)
    return reader.fail(
      'arc',
      `a radius of at least half the distance of the ends, ${reader.print(Math.ceil(chord / 2))}`,
      'radius too small',
    );
  const drawn = arc ? Math.round(arc.radius * arcSweep(chord, arc.radius)) : meantLength(chord);
  if (drawn > MAX_WALL_LENGTH) return reader.fail('to', `a wall of at most ${MAX_WALL_LENGTH / 1e9} m`, endsText(reader));
  if (written !== null && Math.abs(written - drawn) >= MEETING_DISTANCE)
    return reader.fail('length', `the length between the ends, ${reader.print(drawn)}, or no length`);
  return { ends: { from, to }, length: written ?? drawn, arc };
}

/** Both ends as they were sent: `[0, 0] to [0, 0]`. */
const endsText = (reader: RowReader): string =>
  (['from', 'to'] as const).map((key) => `[${(reader.value(key) as readonly unknown[]).join(', ')}]`).join(' to ');

function withoutEnds(
  reader: RowReader,
  length: Nm | null,
  arc: Wall['arc'],
): Pick<WallDraft, 'ends' | 'length' | 'arc'> | undefined {
  if (arc) return reader.fail('from', 'the ends of an arc wall, from and to');
  if (length === null)
    return reader.fail('from', 'the ends of the wall, from and to, or its length with the joints at its start and end');
  if (length < MEETING_DISTANCE) return reader.fail('length', 'a length of at least 1 mm');
  return { ends: null, length, arc };
}

function readPoint(reader: RowReader, key: 'from' | 'to'): PlanPoint | null | undefined {
  const value = reader.value(key);
  if (value === undefined) return null;
  if (!Array.isArray(value) || value.length !== 2) return reader.fail(key, 'a point of two coordinates, [x, y]');
  const [x, y] = value.map((coordinate: unknown, index) =>
    reader.lengthOf(coordinate, `${reader.at(key)}/${index}`, { signed: true }),
  );
  return x === undefined || y === undefined ? undefined : { x, y };
}

function readArc(reader: RowReader): Wall['arc'] | undefined {
  const arc = reader.object('arc', ARC_KEYS);
  if (!arc) return arc;
  const radius = arc.length('radius', { positive: true });
  const turns = arc.choice('turns', ['left', 'right'] as const);
  return radius === undefined || turns === undefined ? undefined : { radius, turns };
}
