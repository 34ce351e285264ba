import type { Nm } from '../quantity/length.js';
import { rowPlace } from './places.js';
import { roomUnderSlope, type Gables } from './gables.js';
import { listedNear } from './near-marks.js';
import type { Walls } from './read-walls.js';
import type { Reading } from './reading.js';
import { RowReader } from './row-reader.js';
import type { Opening } from './schedule.js';
import type { ScheduleContext } from './schedule-context.js';
import { MAX_MARK } from './schedule-limits.js';
import { reportOverlaps } from './overlapping-openings.js';
import type { WallDraft } from './wall-draft.js';

export const OPENING_KEYS = ['mark', 'wall', 'at', 'sill', 'width', 'height', 'lining', 'measured'] as const;

type Hole = Pick<Opening, 'at' | 'sill' | 'width' | 'height'>;
interface OpeningScope {
  readonly walls: Walls;
  readonly gables: Gables;
  readonly context: ScheduleContext;
}
export interface ReadOpening {
  readonly reader: RowReader;
  readonly opening: Opening;
}

/**
 * The openings as holes in the concrete: on a known wall, inside it in both directions, clear of each other, marks unique. Where a wall
 * has a gable a hole may reach over the wall's height as far as all of it lies under the slope (decision 22).
 *
 * A `rough` size gains the buck at both jambs and the head, and at the sill unless the sill is 0 (decisions 16). An opening without
 * a mark gets one from its row (`O12`).
 */
export function readOpenings(
  reading: Reading,
  rows: readonly unknown[],
  walls: Walls,
  gables: Gables,
  context: ScheduleContext,
): readonly Opening[] {
  const marks = new Map<string, string>();
  const drafts = rows.flatMap((row, index) => {
    const reader = RowReader.of(reading, row, `/openings/${index}`, OPENING_KEYS);
    return reader ? [{ reader, opening: readOpening(reading, reader, { walls, gables, context }, marks) }] : [];
  });
  const read = drafts.flatMap(({ reader, opening }) => (opening ? [{ reader, opening }] : []));
  reportOverlaps(read);
  return read.map(({ reader, opening }) =>
    opening.mark === '' ? { ...opening, mark: markOfRow(reader.pointer, marks) } : opening,
  );
}

function readOpening(
  reading: Reading,
  reader: RowReader,
  { walls, gables, context }: OpeningScope,
  marks: Map<string, string>,
): Opening | undefined {
  const mark = readMark(reader, marks);
  const wall = readWallName(reader, walls);
  const at = reader.length('at');
  const sill = reader.length('sill');
  const width = reader.length('width', { positive: true });
  const height = reader.length('height', { positive: true });
  const lining = reader.choice('lining', ['buck', 'end-closure'] as const, 'buck');
  const measured = reader.choice('measured', ['concrete', 'rough'] as const, 'concrete');
  if (
    mark === undefined ||
    wall === undefined ||
    at === undefined ||
    sill === undefined ||
    width === undefined ||
    height === undefined
  )
    return undefined;
  if (lining === undefined || measured === undefined) return undefined;
  const hole = measured === 'rough' ? withBuck({ at, sill, width, height }, context.buckThickness) : { at, sill, width, height };
  if (!hole) return reader.fail('measured', 'concrete, or a range that states its buck thickness');
  const draft = walls.drafts.get(wall);
  if (draft && !insideWall(reader, hole, draft, measured, gables)) return undefined;
  return { mark, wall, ...hole, lining, measured, place: rowPlace(reading.places, reader.pointer) };
}

/** The written mark, or '' where none is. */
function readMark(reader: RowReader, marks: Map<string, string>): string | undefined {
  const mark = reader.has('mark') ? reader.text('mark', MAX_MARK) : '';
  if (mark === undefined || mark === '') return mark;
  if (marks.has(mark)) return reader.fail('mark', `a mark that no other opening has; ${marks.get(mark)} has it already`);
  marks.set(mark, reader.pointer);
  return mark;
}

function readWallName(reader: RowReader, walls: Walls): string | undefined {
  const wall = reader.text('wall', MAX_MARK);
  return wall === undefined || walls.marks.has(wall)
    ? wall
    : reader.fail('wall', `a wall of this schedule: ${listedNear(walls.marks, wall)}`);
}

function withBuck({ at, sill, width, height }: Hole, buck: Nm | null): Hole | undefined {
  if (buck === null) return undefined;
  const below = sill === 0 ? 0 : buck;
  return { at: at - buck, sill: sill - below, width: width + 2 * buck, height: height + buck + below };
}

function insideWall(reader: RowReader, hole: Hole, wall: WallDraft, measured: Opening['measured'], gables: Gables): boolean {
  const withBuckToo = measured === 'rough' ? ', the buck included' : '';
  const [far, head] = [hole.at + hole.width, hole.sill + hole.height];
  const beside: (readonly [boolean, string, string])[] = [
    [
      hole.at < 0,
      'at',
      `an opening that starts on wall ${wall.mark}${withBuckToo}; it starts ${reader.print(-hole.at)} before it`,
    ],
    [
      far > wall.length,
      'width',
      `an opening inside wall ${wall.mark}, ${reader.print(wall.length)} long${withBuckToo}; it ends at ${reader.print(far)}`,
    ],
  ];
  const onWall = !beside.some(([outside]) => outside);
  const gable = gables.get(wall.mark);
  const top = wall.height + (gable && onWall ? roomUnderSlope(gable, hole.at, far, wall.length) : 0);
  const slope = gable ? `the slope over it, which is at ${reader.print(top)} there` : `the top of wall ${wall.mark}, ${reader.print(wall.height)} high`;
  const faults: typeof beside = [
    ...beside,
    [hole.sill < 0, 'sill', `a sill at or above the foot of wall ${wall.mark}${withBuckToo}`],
    [
      head > top && gable !== null && (onWall || gable === undefined),
      'height',
      `a head at or below ${slope}${withBuckToo}; it is at ${reader.print(head)}`,
    ],
  ];
  const broken = faults.filter(([outside]) => outside);
  for (const [, key, fix] of broken) reader.fail(key, fix);
  return broken.length === 0;
}

function markOfRow(pointer: string, marks: Map<string, string>): string {
  let mark = `O${Number(pointer.split('/').at(-1)) + 1}`;
  while (marks.has(mark)) mark = `${mark}'`;
  marks.set(mark, pointer);
  return mark;
}
