import { finding, type Finding } from '../evidence/finding.js';
import { distance, type Vector } from '../geometry/vector.js';
import { toMm } from '../quantity/length.js';
import { MEETING_REACH } from '../schedule/line-normalisation.js';
import type { PlanJunction, StoreyPlan } from './storey-plan.js';
import { cutOutHalf } from './runs.js';

const tenth = (degrees: number): number => Math.round(Math.abs(degrees) * 10) / 10;

function junctionFinding(junction: PlanJunction, plan: StoreyPlan): Finding[] {
  const storey = plan.storey.id;
  const walls = junction.walls.map((wall) => plan.walls[wall]!.wall.mark);
  const cores = junction.walls.map((wall) => plan.walls[wall]!.core.code);
  const [core, otherCore] = [cores[0]!, cores.at(-1)!];
  const place = { storey, walls };
  if (junction.kind === 'unsettled') return [finding('turn-not-made', { ...place, numbers: { ends: walls.length, core } })];
  if (junction.kind === 'crossing') return [finding('walls-cross', { ...place, numbers: { core, otherCore } })];
  if (junction.kind === 'straight' && core !== otherCore) return [finding('core-change', { ...place, numbers: { core, otherCore, turnDeg: 0 } })];
  if (junction.kind === 'corner' && junction.unmade === 'core-change') {
    return [finding('core-change', { ...place, severity: 'hold', numbers: { core, otherCore, turnDeg: tenth(junction.turn) } })];
  }
  if (junction.kind === 'corner' && junction.unmade) return [finding(junction.unmade, { ...place, numbers: { turnDeg: tenth(junction.turn), core } })];
  // Where a curve begins at the tee, half of the cut-out is the curve's.
  if (junction.tee && junction.walls.slice(0, -1).some((wall) => plan.walls[wall]!.arc)) {
    const numbers = { feature: 'tee on a radius wall', angleDeg: tenth(junction.tee.angle), core: otherCore, throughCore: core };
    return [finding('outside-method', { ...place, numbers, source: 'take-off' })];
  }
  if (junction.tee && !junction.tee.square) {
    const { angle, formTrim } = junction.tee;
    const cutOutMm = toMm(2 * cutOutHalf(junction.tee, plan));
    return [finding('tee-skewed', { ...place, numbers: { angleDeg: tenth(angle), core: otherCore, throughCore: core, cutOutMm, formTrimMm: toMm(formTrim) } })];
  }
  return [];
}

/** Ends declared to meet must meet, and a storey that claims to close must have a loop (`plan-open`). */
function openPlan(plan: StoreyPlan): Finding[] {
  const wide = plan.junctions.filter((junction) => junction.gap > MEETING_REACH);
  if (wide.length === 0 && (!plan.storey.closed || plan.plan.loops > 0)) return [];
  const storey = plan.storey.id;
  if (wide.length > 0) {
    return wide.map((junction) =>
      finding('plan-open', { storey, walls: junction.walls.map((wall) => plan.walls[wall]!.wall.mark), numbers: { gapMm: Math.round(toMm(junction.gap) * 1e3) / 1e3 } }),
    );
  }
  const ends = plan.junctions.filter((junction) => junction.kind === 'free-end');
  let nearest: { gap: number; walls: string[] } | null = null;
  ends.forEach((end, index) => {
    for (const other of ends.slice(index + 1)) {
      if (end.walls[0] === other.walls[0] && plan.walls.length > 1) continue;
      const gap = distance(end.at, other.at);
      if (!nearest || gap < nearest.gap) nearest = { gap, walls: [end, other].map((side) => plan.walls[side.walls[0]!]!.wall.mark) };
    }
  });
  const found = nearest as { gap: number; walls: string[] } | null;
  return [finding('plan-open', { storey, walls: found?.walls ?? [], numbers: found ? { gapMm: Math.round(toMm(found.gap) * 1e3) / 1e3 } : { loops: 0 } })];
}

/** Two walls that each end in the other's body: a corner drawn apart, which neither a corner unit nor a tee can make. */
function cornersApart(plan: StoreyPlan): Finding[] {
  return plan.tees.flatMap((tee, index) => {
    const other = plan.tees.findIndex((candidate) => candidate.branch === tee.through && candidate.through === tee.branch);
    if (other < index) return [];
    const ends = [tee, plan.tees[other]!].map(({ branch, branchEnd }) => {
      const wall = plan.walls[branch]!;
      return (branchEnd === 'start') === wall.reversed ? wall.wall.to : wall.wall.from;
    }) as [Vector, Vector];
    const marks = [tee.branch, tee.through].map((wall) => plan.walls[wall]!.wall.mark);
    return [finding('plan-open', { storey: plan.storey.id, walls: marks, numbers: { gapMm: Math.round(toMm(distance(...ends)) * 1e3) / 1e3 } })];
  });
}

/** Walls that meet and whose beds do not lie at one height: their courses cannot be bonded into each other. */
function bedsApart(plan: StoreyPlan): Finding[] {
  const beds = (wall: number): number[] =>
    plan.stacks[wall]!.layers.filter((layer) => layer.kind === 'course').map((layer) => plan.walls[wall]!.wall.base + layer.bottom);
  const top = (wall: number): number => plan.walls[wall]!.wall.base + plan.stacks[wall]!.stack.height;
  return plan.junctions.flatMap(({ walls }) => {
    const [first, last] = [walls[0]!, walls.at(-1)!];
    if (first === last || !plan.stacks[first]!.coursed || !plan.stacks[last]!.coursed) return [];
    const known = new Set(beds(first));
    const from = Math.max(plan.walls[first]!.wall.base, plan.walls[last]!.wall.base);
    const stray = beds(last).find((bed) => bed >= from && bed < Math.min(top(first), top(last)) && !known.has(bed));
    if (stray === undefined) return [];
    const marks = [first, last].map((wall) => plan.walls[wall]!.wall.mark);
    return [finding('height-not-coursed', { storey: plan.storey.id, walls: marks, severity: 'hold', numbers: { bedMm: toMm(stray), baseMm: toMm(plan.walls[last]!.wall.base) } })];
  });
}

/**
 * What the plan itself leaves unsettled: corners no unit makes, tees off square or on a curve, crossings, cores that change, beds that
 * miss each other, plans that stay open.
 */
export function planFindings(plan: StoreyPlan): Finding[] {
  const junctions = plan.junctions.flatMap((junction) => junctionFinding(junction, plan));
  const seen = new Set<string>();
  const once = junctions.filter((found) => {
    const key = `${found.code} ${found.code === 'walls-cross' ? found.walls.slice(0, 2).join(' ') : found.walls.join(' ')}`;
    return !seen.has(key) && seen.add(key);
  });
  return [...once, ...cornersApart(plan), ...bedsApart(plan), ...openPlan(plan)];
}
