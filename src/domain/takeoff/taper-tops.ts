import { finding, type Finding } from '../evidence/finding.js';
import type { FormRange } from '../range/range.js';
import type { Feature } from '../schedule/schedule.js';
import type { CourseUnits, PlannedTaper } from './course-units.js';
import type { Layer } from './stack.js';
import type { StoreyPlan } from './storey-plan.js';

/** Taper tops of a storey, and what cannot be laid as holds: no unit for the core, a ripped top course, a gable above it. */
export function planTapers(features: readonly Feature[], underGable: (wall: number) => boolean, coursesOf: (wall: number) => readonly Layer[], plan: StoreyPlan, range: FormRange): { tapers: CourseUnits['tapers']; findings: Finding[] } {
  const byMark = new Map(plan.walls.map((wall) => [wall.wall.mark, wall]));
  const tapers = new Map<number, PlannedTaper>();
  const findings: Finding[] = [];
  for (const feature of features) {
    const wall = byMark.get(feature.wall);
    if (feature.kind !== 'taper-top' || !wall) continue;
    const core = wall.core.code;
    const top = coursesOf(wall.index).at(-1)!;
    if (!plan.stacks[wall.index]!.layers.includes(top)) continue;
    const refused =
      (!range.taperTop?.cores.includes(core) && 'taper-top') ||
      (top.ripped && 'taper-top in a ripped course') ||
      (underGable(wall.index) && 'taper-top under a gable') ||
      (tapers.has(wall.index) && 'two taper tops on one wall');
    if (refused) {
      findings.push(finding('outside-method', { storey: plan.storey.id, wall: wall.wall.mark, numbers: { feature: refused, core, faces: feature.faces }, source: 'take-off' }));
      continue;
    }
    tapers.set(wall.index, { wall, faces: feature.faces, course: top.course, elevation: wall.wall.base + top.bottom, height: top.height });
  }
  return { tapers, findings };
}
