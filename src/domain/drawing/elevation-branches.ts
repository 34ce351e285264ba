import type { Nm } from '../quantity/length.js';
import type { LengthUnit } from '../schedule/schedule.js';
import type { LaidCourse, LaidStorey, LaidWall } from '../takeoff/laid.js';
import { ledgeSections } from './elevation-features.js';
import { bracesOver } from './elevation-bracing.js';
import { rangeBox, reachOf } from './elevation-frame.js';
import type { ElevationFrame, WallEnd } from './elevation-frame.js';
import { TINT } from './ink.js';
import { lengthLabel } from './length-label.js';
import type { FacePart } from './slope-outline.js';

/** Branches of tees standing on this wall: a cut-out where the branch stands outside, dashed where it stands behind. */
export function drawTees(frame: ElevationFrame): void {
  for (const { tee, courses } of teesOn(frame)) {
    const span = frame.wall.courses.filter((course) => courses.includes(course.n));
    const bottom = Math.min(...span.map((course) => course.bottom));
    const top = Math.max(...span.map((course) => course.bottom + course.height));
    const box = rangeBox(frame, tee.cutFrom, tee.cutTo, bottom, top);
    if (tee.side === frame.wall.outside)
      frame.sheet.rect('cut-out', box, { fill: TINT.section, subject: `cut-out:${tee.branch}` });
    else frame.sheet.rect('hidden', box, { subject: `cut-out:${tee.branch}` });
  }
}

export function teesOn(
  frame: Pick<ElevationFrame, 'wall' | 'storey'>,
): { tee: NonNullable<ElevationFrame['storey']['junctions'][number]['tee']>; courses: readonly number[] }[] {
  return frame.storey.junctions.flatMap(({ tee, courses }) =>
    tee !== null && tee.through === frame.wall.mark && courses.length > 0 ? [{ tee, courses }] : [],
  );
}

/** The through wall in section where this wall ends as a branch. */
export function drawThroughWalls(frame: ElevationFrame, ends: readonly WallEnd[]): void {
  for (const end of ends.filter((candidate) => candidate.through > 0)) {
    const { node, through } = end;
    frame.sheet.rect('piece', rangeBox(frame, node - through, node + through, 0, frame.wall.stack.height), {
      fill: TINT.section,
    });
  }
}

/** The end of a branch on the skew: a dashed line where each of its two faces ends, about the end on the axis. */
export function drawSkewedEnds(frame: ElevationFrame, ends: readonly WallEnd[]): void {
  for (const at of ends.flatMap(skewStations)) {
    const x = frame.x(at);
    frame.sheet.line('hidden', { x, y: frame.y(0) }, { x, y: frame.y(frame.wall.stack.height) });
  }
}

/** Where the face that is seen ends, then the other. */
function skewStations({ node, through, skew }: WallEnd): Nm[] {
  if (skew === 0) return [];
  const inward = node === 0 ? 1 : -1;
  const axisEnd = node + inward * through;
  return [axisEnd - inward * skew, axisEnd + inward * skew];
}

/** `End cut on the skew at wall A: the face seen 3 3/4" longer than the axis, the other as much shorter`. */
export function skewNotes(wall: LaidWall, storey: LaidStorey, units: LengthUnit): string[] {
  const { start, end } = reachOf(wall, storey);
  return [start, end]
    .filter(({ skew }) => skew !== 0)
    .map(({ node, skew, junction }) => {
      const which = node === 0 ? 'Start' : 'End';
      const [seen, other] = skew > 0 ? ['longer', 'shorter'] : ['shorter', 'longer'];
      const by = lengthLabel(Math.abs(skew), units);
      return `${which} cut on the skew at wall ${junction?.tee?.through}: face seen ${by} ${seen} than the axis, the other ${other}`;
    });
}

/**
 * The parts of a piece's face between the upright lines drawn over it, the widest first, without the panel that a branch on this side cuts
 * out: letters stand on none of them.
 */
export function clearOfLines(frame: ElevationFrame, course: LaidCourse, part: FacePart): FacePart[] {
  const tees = teesOn(frame).filter(({ courses }) => courses.includes(course.n));
  const sections = ledgeSections(frame.wall, course);
  const lines = [...tees.flatMap(({ tee }) => [tee.cutFrom, tee.cutTo]), ...frame.ends.flatMap(skewStations)]
    .concat(bracesOver(frame, course))
    .concat(sections.flatMap(({ from, to }) => [from, to]))
    .filter((at) => at > part.from && at < part.to)
    .sort((a, b) => a - b);
  const stations = [part.from, ...lines, part.to];
  const cutOut = (from: Nm, to: Nm): boolean =>
    tees.some(({ tee }) => tee.side === frame.wall.outside && tee.cutFrom <= from && tee.cutTo >= to) ||
    sections.some((section) => section.from <= from && section.to >= to);
  return stations
    .slice(1)
    .map((to, i) => ({ ...part, from: stations[i] as Nm, to }))
    .filter(({ from, to }) => !cutOut(from, to))
    .sort((a, b) => b.to - b.from - (a.to - a.from));
}
