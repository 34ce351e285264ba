import type { Nm } from '../quantity/length.js';
import { rowPlace } from './places.js';
import { listed } from './read-storeys.js';
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
export interface ReadOpening {
  readonly reader: RowReader;
  readonly opening: Opening;
}

/**
 * The openings as holes in the concrete: on a known wall, inside it in both directions, clear of each other, marks unique.
 *
 * A `rough` size gains the buck at both jambs and the head, and at the sill unless the sill is 0 (decisions 16). An opening without
 * a mark gets one from its row (`O12`).
 */
export function readOpenings(
  reading: Reading,
  rows: readonly unknown[],
  walls: Walls,
  context: ScheduleContext,
): readonly Opening[] {
  const marks = new Map<string, string>();
  const drafts = rows.flatMap((row, index) => {
    const reader = RowReader.of(reading, row, `/openings/${index}`, OPENING_KEYS);
    return reader ? [{ reader, opening: readOpening(reading, reader, walls, context, marks) }] : [];
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
  walls: Walls,
  context: ScheduleContext,
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
  if (draft && !insideWall(reader, hole, draft, measured)) return undefined;
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
    : reader.fail('wall', `a wall of this schedule: ${listed(walls.marks.keys())}`);
}

function withBuck({ at, sill, width, height }: Hole, buck: Nm | null): Hole | undefined {
  if (buck === null) return undefined;
  const below = sill === 0 ? 0 : buck;
  return { at: at - buck, sill: sill - below, width: width + 2 * buck, height: height + buck + below };
}

function insideWall(reader: RowReader, hole: Hole, wall: WallDraft, measured: Opening['measured']): boolean {
  const withBuckToo = measured === 'rough' ? ', the buck included' : '';
  const faults: (readonly [boolean, string, string])[] = [
    [
      hole.at < 0,
      'at',
      `an opening that starts on wall ${wall.mark}${withBuckToo}; it starts ${reader.print(-hole.at)} before it`,
    ],
    [
      hole.at + hole.width > wall.length,
      'width',
      `an opening inside wall ${wall.mark}, ${reader.print(wall.length)} long${withBuckToo}; it ends at ${reader.print(hole.at + hole.width)}`,
    ],
    [hole.sill < 0, 'sill', `a sill at or above the foot of wall ${wall.mark}${withBuckToo}`],
    [
      hole.sill + hole.height > wall.height,
      'height',
      `a head at or below the top of wall ${wall.mark}, ${reader.print(wall.height)} high${withBuckToo}; it is at ${reader.print(hole.sill + hole.height)}`,
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
