import type { Nm } from '../quantity/length.js';
import type { EndName } from '../schedule/line-normalisation.js';
import type { CourseUnits, FormUnit } from './course-units.js';
import type { Line } from './lines.js';
import { meets, type LineOpening } from './openings.js';

/** A stretch of one kind of form along a line. */
export interface UnitStretch {
  readonly unit: FormUnit;
  /** What stretches must share to be one: kind, and face of a ledge. */
  readonly key: string;
  readonly from: Nm;
  readonly to: Nm;
}

/** A stretch of a wall as stations of its line; where it is open at the line's own end it has no end of its own. */
function onLine(line: Line, index: number, span: { from: Nm; to: Nm; open: Readonly<Record<EndName, boolean>> }): { from: Nm; to: Nm } {
  const { wall, from } = line.walls[index]!;
  const end = from + Math.max(0, wall.length);
  const first = index === 0 ? -Infinity : from;
  const last = index === line.walls.length - 1 ? Infinity : end;
  return {
    from: span.open.start ? first : Math.max(first, from + span.from),
    to: span.open.end ? last : Math.min(last, from + span.to),
  };
}

/** The ledge stops at both sides of an opening that meets its course at all. */
function beside(stretch: UnitStretch, openings: readonly LineOpening[]): UnitStretch[] {
  const parts: UnitStretch[] = [];
  let left = stretch.from;
  for (const opening of openings) {
    const [from, to] = opening.formsTo > opening.formsFrom ? [opening.formsFrom, opening.formsTo] : [opening.from, opening.to];
    if (from > left) parts.push({ ...stretch, from: left, to: Math.min(from, stretch.to) });
    left = Math.max(left, to);
  }
  if (stretch.to > left) parts.push({ ...stretch, from: left });
  return parts.filter(({ from, to }) => to > from);
}

/**
 * Stretches of one course of a line that are laid with other forms than straight ones, in order; those that go on over a mark are one.
 *
 * @source statement of the project's decision 23
 */
export function unitStretches(line: Line, course: number, bottom: Nm, height: Nm, openings: readonly LineOpening[], { ledges, tapers }: CourseUnits): UnitStretch[] {
  if (ledges.size === 0 && tapers.size === 0) return [];
  const inWay = openings.filter((opening) => meets(opening, bottom, height));
  const found = line.walls.flatMap(({ wall }, index): UnitStretch[] => {
    const taper = tapers.get(wall.index);
    const own = (ledges.get(wall.index) ?? []).filter((ledge) => ledge.course === course);
    const open = { start: true, end: true };
    return [
      ...own.map((ledge): UnitStretch => ({ unit: 'ledge', key: `ledge ${ledge.face}`, ...onLine(line, index, ledge) })),
      ...(taper?.course === course
        ? [{ unit: `taper-${taper.faces}` as const, key: `taper ${taper.faces}`, ...onLine(line, index, { from: 0, to: 0, open }) }]
        : []),
    ];
  });
  const joined: UnitStretch[] = [];
  for (const stretch of found.sort((a, b) => a.from - b.from)) {
    const last = joined.at(-1);
    if (last && last.key === stretch.key && last.to === stretch.from) joined[joined.length - 1] = { ...last, to: stretch.to };
    else joined.push(stretch);
  }
  return joined.flatMap((stretch) => (stretch.unit === 'ledge' ? beside(stretch, inWay) : [stretch]));
}
