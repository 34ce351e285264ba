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

/**
 * Stretches shorter than a piece should be, between legs, jambs, tees, ledges and mitres: laid and strapped all the same. Courses with the same
 * stretch are told together, at the lowest.
 */
function shortStretches({ line, courses }: LineResult, plan: StoreyPlan, range: FormRange): Finding[] {
  const stretches = new Map<string, { readonly from: Nm; readonly to: Nm; readonly courses: number[] }>();
  for (const { run } of courses) {
    for (const { from, to } of run.segments.filter((segment) => segment.to - segment.from < range.minPiece)) {
      const known = stretches.get(`${from}/${to}`) ?? { from, to, courses: [] };
      known.courses.push(run.n);
      stretches.set(`${from}/${to}`, known);
    }
  }
  return [...stretches.values()].map(({ from, to, courses: met }) => {
    const holder = line.walls.findLast((each) => from >= each.from) ?? line.walls[0]!;
    const place = { storey: plan.storey.id, wall: holder.wall.wall.mark, atMm: toMm(userStation(holder.wall, from - holder.from)), course: met[0]! };
    const numbers = { lengthMm: toMm(to - from), minPieceMm: toMm(range.minPiece), courses: met.length, core: line.core.code };
    return finding('piece-short', { ...place, numbers });
  });
}

/** What the units of one line leave to say: mitres off square, stretches shorter than a piece. */
export function unitFindings(result: LineResult, plan: StoreyPlan, range: FormRange): Finding[] {
  return [...oddMitres(result, plan, range), ...shortStretches(result, plan, range)];
}
