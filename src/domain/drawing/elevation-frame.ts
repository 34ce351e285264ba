import { dot, leftNormal, scale } from '../geometry/vector.js';
import type { Nm } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import type { LengthUnit } from '../schedule/schedule.js';
import { coreOfCourse } from '../takeoff/index.js';
import type { Junction, LaidCourse, LaidStorey, LaidWall } from '../takeoff/laid.js';
import type { NumberedBrace } from './drawn-bracing.js';
import type { Box, Sheet } from './sheet.js';
import { directionAt, intoEnd, stationAt } from './wall-curve.js';

/** What every part of an elevation draws into: the wall, and where its stations and levels lie on the sheet. */
export interface ElevationFrame {
  readonly wall: LaidWall;
  readonly storey: LaidStorey;
  readonly range: FormRange;
  readonly units: LengthUnit;
  /** In order of station; none where the wall is drawn without its bracing. */
  readonly braces: readonly NumberedBrace[];
  readonly sheet: Sheet;
  /** Station along the wall's axis to sheet x; mirrored where the outside lies on the left of from→to. */
  readonly x: (station: Nm) => Nm;
  /** Level above the wall's base to sheet y. */
  readonly y: (level: Nm) => Nm;
  /** The wall's start, then its end. */
  readonly ends: readonly [WallEnd, WallEnd];
  /** Edges of the whole sheet. */
  readonly edges: { readonly left: Nm; readonly right: Nm };
  /** Edges of what is drawn of the wall. */
  readonly span: Span;
}

export interface Span {
  readonly left: Nm;
  readonly right: Nm;
}

/** The wall's own ends and how far what is drawn reaches past its nodes [nm along the axis]. */
export interface WallReach {
  readonly start: WallEnd;
  readonly end: WallEnd;
  readonly fromStation: Nm;
  readonly toStation: Nm;
}

export interface WallEnd {
  readonly junction: Junction | null;
  /** Node station: 0 or the wall's length. */
  readonly node: Nm;
  /** How far the outside face runs past the node: positive at a corner that is convex outside, negative in a re-entrant one. */
  readonly face: Nm;
  /** Where this end is a tee's branch: half the through wall's section along this wall's axis, longer on the skew. 0 elsewhere. */
  readonly through: Nm;
  /** How far the end of the face that is seen passes the end on the axis, where the branch is cut on the skew; negative where it is shorter. */
  readonly skew: Nm;
}

/** @returns how far the drawing reaches past the wall's nodes, stations from the wall's own start */
export function reachOf(wall: LaidWall, storey: LaidStorey): WallReach {
  const start = endOf(wall, storey, wall.startJunction, 0);
  const end = endOf(wall, storey, wall.endJunction, wall.length);
  const pieces = wall.courses.flatMap((course) => [
    course.from - Math.max(0, returnOf({ wall, storey }, course, start)),
    course.to + Math.max(0, returnOf({ wall, storey }, course, end)),
  ]);
  const strips = wall.strips.flatMap((strip) => strip.runs.flatMap((run) => [run.from, run.to]));
  return {
    start,
    end,
    fromStation: Math.min(0, -start.face, -start.through, -wall.startOffset, ...pieces, ...strips),
    toStation: Math.max(
      wall.length,
      wall.length + end.face,
      wall.length + end.through,
      wall.dimensionLength - wall.startOffset,
      ...pieces,
      ...strips,
    ),
  };
}

function endOf(wall: LaidWall, storey: LaidStorey, id: string, node: Nm): WallEnd {
  const junction = storey.junctions.find((candidate) => candidate.id === id) ?? null;
  const corner = junction?.kind === 'corner' && junction.unit !== null;
  const face = corner ? Math.round((wall.thickness / 2) * Math.tan((junction.turn * Math.PI) / 360)) : 0;
  const through =
    junction?.tee?.branch === wall.mark ? storey.walls.find((other) => other.mark === junction.tee?.through) : undefined;
  if (through === undefined) return { junction, node, face, through: 0, skew: 0 };
  const half = Math.round(through.thickness / 2);
  const trim = node === 0 ? wall.trimStart : wall.trimEnd;
  return { junction, node, face, through: Math.max(half, trim), skew: trim > half ? skewOf(wall, through, node) : 0 };
}

/** (T/2)·cot φ, signed for the face that is seen (decision 9). */
function skewOf(wall: LaidWall, through: LaidWall, node: Nm): Nm {
  const into = intoEnd(wall, node === 0 ? 'start' : 'end');
  const normal = leftNormal(directionAt(through, stationAt(through, node === 0 ? wall.axisFrom : wall.axisTo)));
  const toward = dot(normal, into) >= 0 ? normal : scale(normal, -1);
  const seenOnLeft = (wall.outside === 'left') === (node === 0);
  const lean = dot(leftNormal(into), toward) / dot(into, toward);
  return Math.round((seenOnLeft ? 1 : -1) * (wall.thickness / 2) * lean);
}

/** The junction that stands at an end of the wall in one of its courses; null where the wall ends free in it. */
export function junctionIn({ wall, storey }: Pick<ElevationFrame, 'wall' | 'storey'>, course: LaidCourse, end: WallEnd): Junction | null {
  const id = end.node === 0 ? wall.startJunction : wall.endJunction;
  const level = wall.base + course.bottom;
  const stands = (junction: Junction): boolean => {
    const first = storey.walls.find(({ mark }) => mark === junction.walls[0]);
    return first?.courses.some(({ n, bottom }) => first.base + bottom === level && junction.courses.includes(n)) ?? false;
  };
  const named = storey.junctions.filter((junction) => isAt(junction, id) && junction.walls.includes(wall.mark));
  return named.find(stands) ?? null;
}

/** A junction that is made otherwise above a change of cores goes by its own name and the level's: `S1-J1-L2`. */
export const isAt = (junction: Junction, id: string): boolean =>
  junction.id === id || (junction.id.startsWith(`${id}-L`) && /^\d+$/.test(junction.id.slice(id.length + 2)));

/** How far the outside face of a corner unit runs past the node in one course. */
export function returnOf(frame: Pick<ElevationFrame, 'wall' | 'storey'>, course: LaidCourse, end: WallEnd): Nm {
  const junction = junctionIn(frame, course, end);
  if (junction?.kind !== 'corner' || junction.unit === null) return 0;
  const { wall } = frame;
  const panels = wall.thickness - wall.core.width;
  return Math.round(((coreOfCourse(wall, course.n).width + panels) / 2) * Math.tan((junction.turn * Math.PI) / 360));
}

/** A course that runs to the mitre of a corner without its unit. */
export function isMitred(frame: Pick<ElevationFrame, 'wall' | 'storey'>, course: LaidCourse, end: WallEnd): boolean {
  const junction = junctionIn(frame, course, end);
  const forms = course.pieces.filter((piece) => !piece.inside);
  const outermost = end.node === 0 ? forms[0] : forms.at(-1);
  return junction?.kind === 'corner' && junction.unit !== null && outermost !== undefined && outermost.junction === null;
}

export const rangeBox = (frame: ElevationFrame, from: Nm, to: Nm, bottom: Nm, top: Nm): Box => {
  const [a, b] = [frame.x(from), frame.x(to)];
  return { left: Math.min(a, b), right: Math.max(a, b), bottom: frame.y(bottom), top: frame.y(top) };
};
