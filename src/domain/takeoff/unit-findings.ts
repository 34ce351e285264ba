import { finding, type Finding } from '../evidence/finding.js';
import { toMm, type Nm } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import type { Feature } from '../schedule/schedule.js';
import { userStation } from './axes.js';
import type { CourseUnits } from './course-units.js';
import { planLedges } from './ledges.js';
import type { Layer } from './stack.js';
import type { LineResult } from './storey-layout.js';
import type { StoreyPlan } from './storey-plan.js';
import { planTapers } from './taper-tops.js';

const SQUARE_DEG = 90;

/**
 * Ledges and taper tops of a storey, or of one level of it, as they will be laid, with what keeps some of them from it.
 *
 * @param levels every level of the storey, bottom up: a ledge asks for a height of the whole wall
 */
export function planUnits(features: readonly Feature[], underGable: (mark: string) => boolean, plan: StoreyPlan, levels: readonly StoreyPlan[], range: FormRange): { units: CourseUnits; findings: Finding[] } {
  const coursesOf = (wall: number): Layer[] => levels.flatMap(({ stacks }) => stacks[wall]!.layers.filter(({ kind }) => kind === 'course'));
  const { tapers, findings } = planTapers(features, (wall) => underGable(plan.walls[wall]!.wall.mark), coursesOf, plan, range);
  const planned = planLedges(features, tapers, coursesOf, plan, range);
  return { units: { ledges: planned.ledges, tapers }, findings: [...findings, ...planned.findings] };
}

/** A mitre at a turn that is not square, once for each corner, told by the wall that arrives. */
function oddMitres({ line, courses }: LineResult, plan: StoreyPlan, range: FormRange): Finding[] {
  const { end } = line;
  const mitred = courses.find(({ run }) => run.mitreEnd);
  if (!mitred || end.kind !== 'corner') return [];
  const size = Math.abs(end.turn);
  if (Math.abs(size - SQUARE_DEG) <= range.parameters.turnToleranceDeg) return [];
  const walls = [line.walls.at(-1)!.wall, plan.walls[end.partner]!].map(({ wall }) => wall.mark);
  return [finding('mitre-odd', { storey: plan.storey.id, walls, course: mitred.run.n, numbers: { turnDeg: Math.round(size * 10) / 10, core: line.core.code } })];
}

/** Stretches beside a ledge, a taper or a mitre that are shorter than a piece should be: they are laid and strapped all the same. */
function shortStretches({ line, courses }: LineResult, plan: StoreyPlan, range: FormRange): Finding[] {
  const place = (at: Nm): { wall: string; atMm: number } => {
    const holder = line.walls.findLast(({ from }) => at >= from) ?? line.walls[0]!;
    return { wall: holder.wall.wall.mark, atMm: toMm(userStation(holder.wall, at - holder.from)) };
  };
  return courses.flatMap(({ run }) => {
    const besideUnits = run.mitreStart || run.mitreEnd || run.segments.some(({ unit }) => unit !== 'straight');
    if (!besideUnits) return [];
    return run.segments
      .filter(({ from, to }) => to - from < range.minPiece)
      .map(({ from, to }) => {
        const numbers = { lengthMm: toMm(to - from), minPieceMm: toMm(range.minPiece), core: line.core.code };
        return finding('piece-short', { storey: plan.storey.id, ...place(from), course: run.n, numbers });
      });
  });
}

/** What the laid ledges and tapers of one line leave to say. */
export function unitFindings(result: LineResult, plan: StoreyPlan, range: FormRange): Finding[] {
  return [...oddMitres(result, plan, range), ...shortStretches(result, plan, range)];
}
