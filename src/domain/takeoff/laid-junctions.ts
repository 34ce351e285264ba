import { userStation } from './axes.js';
import type { Junction, LaidWall } from './laid.js';
import { cutOutHalf } from './runs.js';
import type { PlanJunction, StoreyPlan } from './storey-plan.js';

/** Courses, by the first wall's numbers, in which two walls both stand. */
function sharedCourses(first: LaidWall, second: LaidWall): number[] {
  const bottoms = new Set(second.courses.map((course) => second.base + course.bottom));
  return first.courses.filter((course) => bottoms.has(first.base + course.bottom)).map((course) => course.n);
}

function teeOf(junction: PlanJunction, plan: StoreyPlan, byMark: ReadonlyMap<string, LaidWall>): Junction['tee'] {
  const { tee } = junction;
  if (!tee) return null;
  const through = plan.walls[tee.through]!;
  const laid = byMark.get(through.wall.mark)!;
  const at = userStation(through, tee.station);
  const half = cutOutHalf(tee, plan);
  const side = through.reversed ? (tee.side === 'left' ? 'right' : 'left') : tee.side;
  return { through: laid.mark, branch: plan.walls[tee.branch]!.wall.mark, cutFrom: at - half, cutTo: at + half, side };
}

/** The junctions of a storey as later stages read them. */
export function laidJunctions(plan: StoreyPlan, walls: readonly LaidWall[]): Junction[] {
  const byMark = new Map(walls.map((wall) => [wall.mark, wall]));
  return plan.junctions.map((junction): Junction => {
    const members = junction.walls.map((index) => byMark.get(plan.walls[index]!.wall.mark)!);
    const [first] = members;
    const last = members.at(-1)!;
    const { unit } = junction;
    const courses = members.length > 1 ? sharedCourses(first!, last) : first!.courses.map((course) => course.n);
    const units = unit
      ? first!.courses.flatMap((course) =>
          course.pieces.flatMap((piece) =>
            piece.junction === junction.id && piece.hand ? [{ course: course.n, hand: piece.hand, sku: piece.sku, piece: piece.id }] : [],
          ),
        )
      : [];
    return {
      id: junction.id,
      kind: junction.kind,
      turn: junction.turn,
      walls: members.map((wall) => wall.mark),
      sku: unit ? `${unit.prefix}${first!.core.code}` : null,
      unit: unit?.kind ?? null,
      at: junction.at,
      courses,
      tee: teeOf(junction, plan, byMark),
      units,
    };
  });
}
