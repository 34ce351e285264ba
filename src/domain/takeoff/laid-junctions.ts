import type { Nm } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import { userStation } from './axes.js';
import { isGableCourse } from './course-core.js';
import { bondsUpright } from './gables.js';
import type { Junction, LaidWall } from './laid.js';
import { cutOutHalf } from './runs.js';
import type { PlanJunction, StoreyPlan } from './storey-plan.js';

/** Courses that are built into a wall's end at a junction: those under a slope that falls to it are not. */
function coursesAt(wall: LaidWall, junction: string, formLength: Nm): LaidWall['courses'] {
  const { gable, stack } = wall;
  if (!gable) return wall.courses;
  const [slope, other] = gable.slopes;
  const uprightEnd = slope!.rises === 'with-stations' ? wall.endJunction : wall.startJunction;
  const bonded = (bottom: Nm): boolean => !other && uprightEnd === junction && bondsUpright(slope!.to - slope!.from, gable.rise, bottom - stack.height, formLength);
  return wall.courses.filter(({ n, bottom }) => !isGableCourse(wall, n) || bonded(bottom));
}

/** Courses, by the first wall's numbers, in which two walls both stand. */
function sharedCourses(first: LaidWall, second: LaidWall, junction: string, formLength: Nm): number[] {
  const bottoms = new Set(coursesAt(second, junction, formLength).map((course) => second.base + course.bottom));
  return coursesAt(first, junction, formLength).filter((course) => bottoms.has(first.base + course.bottom)).map((course) => course.n);
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

/** The junctions of a storey as later stages read them; of a level, those whose walls all stand in it. */
export function laidJunctions(plan: StoreyPlan, walls: readonly LaidWall[], range: Pick<FormRange, 'formLength'>): Junction[] {
  const byMark = new Map(walls.map((wall) => [wall.mark, wall]));
  const laid = plan.junctions.filter((junction) => junction.walls.every((index) => byMark.has(plan.walls[index]!.wall.mark)));
  return laid.map((junction): Junction => {
    const members = junction.walls.map((index) => byMark.get(plan.walls[index]!.wall.mark)!);
    const [first] = members;
    const last = members.at(-1)!;
    const { unit } = junction;
    const least = junction.kind === 'straight' ? 0 : range.formLength;
    const courses = members.length > 1 ? sharedCourses(first!, last, junction.id, least) : coursesAt(first!, junction.id, range.formLength).map((course) => course.n);
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
