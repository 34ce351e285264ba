import { finding, type Finding } from '../evidence/finding.js';
import { nearestMeeting } from '../geometry/tracks.js';
import { toMm, type Nm } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import { inFrameOf, trackOf, userStation, walkEnd, type AxisWall } from './axes.js';
import { nodeSetBack } from './corners.js';
import type { EndName } from '../schedule/line-normalisation.js';
import type { LineOpening } from './openings.js';
import type { LineResult } from './storey-layout.js';
import { cutOutHalf } from './runs.js';
import type { StoreyPlan } from './storey-plan.js';

/** Runs whose legs leave less than the smallest piece, or overlap, and walls that their corners or closures use up. */
function shortRuns(result: LineResult, storey: string, range: FormRange): Finding[] {
  const { line } = result;
  const walls = line.walls.map(({ wall }) => wall.wall.mark);
  const closed = [line.start, line.end].filter((joint) => joint.kind === 'free').length * range.closure.thickness;
  const usedUp = line.walls.filter(({ wall }) => wall.length <= (line.walls.length === 1 ? closed : 0));
  const course = result.courses.find(({ run }) => run.betweenLegs !== null && run.betweenLegs !== 0 && run.betweenLegs < range.minPiece);
  if (!course && usedUp.length === 0) return [];
  const remainder = course?.run.betweenLegs ?? usedUp[0]!.wall.length;
  const numbers = { lengthMm: toMm(Math.max(0, line.length)), remainderMm: toMm(remainder), minPieceMm: toMm(range.minPiece), core: line.core.code };
  return [finding('run-too-short', { storey, walls, course: course?.run.n ?? null, numbers })];
}

/** The off-module joint, with the wall lengths on the dimension line that would avoid it (decision 14). */
function seamNote(result: LineResult, storey: string, range: FormRange): Finding[] {
  const { seam } = result.laid;
  if (!seam) return [];
  const { walls } = result.line;
  const station = seam.at ?? 0;
  const holder = walls.findLast(({ from }) => station > from) ?? walls[0]!;
  const { wall } = holder;
  const at = userStation(wall, station - holder.from);
  const numbers = {
    remainderMm: toMm(seam.remainder),
    shorterMm: toMm(wall.drawn - seam.remainder),
    longerMm: toMm(wall.drawn + range.cutModule - seam.remainder),
  };
  return [finding('seam', { storey, wall: wall.wall.mark, walls: walls.map((entry) => entry.wall.wall.mark), atMm: seam.at === null ? null : toMm(at), numbers })];
}

const meetInHeight = (a: LineOpening, b: LineOpening): boolean => a.sill < b.head && b.sill < a.head;

function openingPlace(result: LineResult, opening: LineOpening, storey: string): { storey: string; wall: string; atMm: number } {
  const { wall, from } = result.line.walls.find((entry) => entry.wall.index === opening.wall)!;
  const at = userStation(wall, (wall.reversed ? opening.to : opening.from) - from);
  return { storey, wall: wall.wall.mark, atMm: toMm(at) };
}

/** Distance from a jamb to the foam-face corner, measured along the outside face (decision 31); null where no corner stands there. */
function toCorner(result: LineResult, opening: LineOpening, end: EndName, plan: StoreyPlan): Nm | null {
  const { line } = result;
  const joint = line[end];
  if (joint.kind !== 'corner') return null;
  const [own, partner] = [(end === 'start' ? line.walls[0]! : line.walls.at(-1)!).wall, plan.walls[joint.partner]!];
  const toNode = end === 'start' ? opening.from : line.length - opening.to;
  if (own.arc || partner.arc) return curvedToCorner(own, partner, end, toNode);
  return toNode + Math.round(nodeSetBack(line.thickness / 2, partner.thickness / 2, joint.turn));
}

/** The same where a curve meets the corner: to the meeting of the outside faces, a jamb's distance along a curve by that face's radius. */
function curvedToCorner(own: AxisWall, partner: AxisWall, end: EndName, toNode: Nm): Nm {
  const corner = nearestMeeting(trackOf(own, -own.thickness / 2), trackOf(partner, -partner.thickness / 2), end === 'start' ? own.from : own.to);
  const along = corner ? inFrameOf(own, corner).along : end === 'start' ? 0 : own.length;
  const onAxis = toNode + (end === 'start' ? -along : along - own.length);
  return Math.round(own.arc ? onAxis * (1 + (own.arc.turn * own.thickness) / 2 / own.arc.radius) : onAxis);
}

function nearCorners(result: LineResult, plan: StoreyPlan, range: FormRange): Finding[] {
  const limit = range.parameters.openingNearCorner;
  return result.openings.flatMap((opening) =>
    (['start', 'end'] as const).flatMap((end) => {
      const away = toCorner(result, opening, end, plan);
      if (away === null || away >= limit) return [];
      const { wall } = result.line.walls[end === 'start' ? 0 : result.line.walls.length - 1]!;
      const numbers = { distanceMm: toMm(away), limitMm: toMm(limit), opening: opening.mark, cornerAt: `${walkEnd(wall.reversed, end)} of ${wall.wall.mark}` };
      return [finding('opening-near-corner', { ...openingPlace(result, opening, plan.storey.id), numbers, source: 'common practice' })];
    }),
  );
}

/** Piers between two openings, or an opening and a free end, narrower than the range wants. */
function narrowPiers(result: LineResult, storey: string, range: FormRange): Finding[] {
  const limit = range.parameters.pierNarrow;
  const { line, openings } = result;
  const pier = (opening: LineOpening, width: Nm, beside: string): Finding[] =>
    width >= 0 && width < limit
      ? [finding('pier-narrow', { ...openingPlace(result, opening, storey), numbers: { widthMm: toMm(width), limitMm: toMm(limit), opening: opening.mark, beside }, source: 'common practice' })]
      : [];
  const between = openings.flatMap((opening, index) => {
    const next = openings.slice(index + 1).find((candidate) => candidate.from >= opening.to && meetInHeight(opening, candidate));
    return next ? pier(opening, next.from - opening.to, next.mark) : [];
  });
  const first = line.start.kind === 'free' && openings[0] ? pier(openings[0], openings[0].from, 'free end') : [];
  const last = openings.reduce<LineOpening | null>((far, opening) => (!far || opening.to > far.to ? opening : far), null);
  const end = line.end.kind === 'free' && last ? pier(last, line.length - last.to, 'free end') : [];
  return [...between, ...first, ...end];
}

/** A hole lined with end closures needs room for two of them. */
function overClosed(result: LineResult, storey: string, range: FormRange): Finding[] {
  return result.openings
    .filter((opening) => opening.lining === 'end-closure' && opening.formsTo <= opening.formsFrom)
    .map((opening) => {
      const numbers = { feature: 'opening lined with end closures', opening: opening.mark, widthMm: toMm(opening.to - opening.from), closuresMm: toMm(2 * range.closure.thickness) };
      return finding('outside-method', { ...openingPlace(result, opening, storey), numbers, source: 'take-off' });
    });
}

/** A hole that reaches into the wall its own wall stands on takes away what is not there. */
function intoThrough(result: LineResult, storey: string): Finding[] {
  const { line } = result;
  const from = line.start.kind === 'tee' ? line.start.tee.formTrim : -Infinity;
  const to = line.end.kind === 'tee' ? line.length - line.end.tee.formTrim : Infinity;
  return result.openings
    .filter((opening) => opening.from < from || opening.to > to)
    .map((opening) => finding('outside-method', { ...openingPlace(result, opening, storey), numbers: { feature: 'opening in a tee', opening: opening.mark }, source: 'take-off' }));
}

/** A hole that reaches into a corner's own concrete: no form closes it, and half of what it takes is the neighbour's. */
function intoCorners(result: LineResult, plan: StoreyPlan): Finding[] {
  const { line } = result;
  const reach = (end: EndName): Nm => {
    const joint = line[end];
    return joint.kind === 'corner' ? Math.round(nodeSetBack(line.core.width / 2, plan.walls[joint.partner]!.core.width / 2, Math.abs(joint.turn))) : -Infinity;
  };
  return result.openings
    .filter((opening) => opening.from < reach('start') || opening.to > line.length - reach('end'))
    .map((opening) => finding('outside-method', { ...openingPlace(result, opening, plan.storey.id), numbers: { feature: 'opening in a corner', opening: opening.mark }, source: 'take-off' }));
}

/** A branch that lands in a hole has nothing to stand on. */
function overTees(result: LineResult, plan: StoreyPlan): Finding[] {
  return result.line.tees.flatMap(({ tee, at }) => {
    const half = cutOutHalf(tee, plan);
    const { wall } = plan.walls[tee.branch]!;
    const [low, high] = [wall.base - result.line.base, wall.base - result.line.base + plan.stacks[tee.branch]!.stack.height];
    return result.openings
      .filter((opening) => opening.from < at + half && opening.to > at - half && opening.sill < high && opening.head > low)
      .map((opening) =>
        finding('outside-method', { ...openingPlace(result, opening, plan.storey.id), numbers: { feature: 'opening over a tee', opening: opening.mark, branch: wall.mark }, source: 'take-off' }),
      );
  });
}

/** Findings of one line: short runs, seams, openings close to corners, narrow piers. */
export function lineFindings(result: LineResult, plan: StoreyPlan, range: FormRange): Finding[] {
  const storey = plan.storey.id;
  return [...shortRuns(result, storey, range), ...seamNote(result, storey, range), ...nearCorners(result, plan, range), ...narrowPiers(result, storey, range), ...overClosed(result, storey, range), ...intoThrough(result, storey), ...intoCorners(result, plan), ...overTees(result, plan)];
}

/** Findings on heights, one for each storey and height: ripped, not coursed, more than a single lift should reach. */
export function heightFindings(plan: StoreyPlan, range: FormRange): Finding[] {
  const storey = plan.storey.id;
  const byHeight = new Map<string, number[]>();
  plan.walls.forEach((wall, index) => {
    const key = `${wall.wall.height}/${plan.stacks[index]!.coursed}/${plan.stacks[index]!.stack.ripped}`;
    byHeight.set(key, [...(byHeight.get(key) ?? []), index]);
  });
  return [...byHeight.values()].flatMap((members) => {
    const { stack, coursed } = plan.stacks[members[0]!]!;
    const walls = members.map((index) => plan.walls[index]!.wall.mark);
    const askedMm = toMm(plan.walls[members[0]!]!.wall.height);
    const place = { storey, walls };
    const limit = range.parameters.singleLiftHeight;
    return [
      ...(coursed ? [] : [finding('height-not-coursed', { ...place, numbers: { askedMm, stackMm: toMm(stack.height), deviationMm: toMm(stack.deviation) } })]),
      ...(stack.ripped === null ? [] : [finding('height-ripped', { ...place, course: stack.courses, numbers: { askedMm, rippedMm: toMm(stack.ripped) } })]),
      ...(stack.height > limit ? [finding('single-lift-height', { ...place, numbers: { heightMm: toMm(stack.height), limitMm: toMm(limit) }, source: 'common practice' })] : []),
    ];
  });
}
