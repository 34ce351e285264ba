import type { LaidCourse, LaidStorey, LaidWall } from '../../takeoff/laid.js';
import { axisRuns, lengthOf, within, type AxisRuns } from '../axis-runs.js';
import { counted, lengthText } from '../crew-text.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta } from '../rule.js';
import type { Segment } from '../segments.js';
import { endsOf } from '../stations.js';

/** What of a wall's top another storey stands on. */
interface Carrying {
  readonly storey: LaidStorey;
  readonly wall: LaidWall;
  readonly course: LaidCourse;
  readonly stretches: readonly Segment[];
}

const meta: RuleMeta = {
  id: 'top-protect',
  title: 'Masks the connectors of the top course where forms of another storey will stand on them.',
  trigger: 'the top course of walls that carry another storey',
  consumes: ['cover', 'tape'],
  parameters: ['topProtectBy', 'topProtectFaces'],
  basis: 'common practice',
};

export const topProtect: Rule = {
  meta,
  evaluate(context) {
    const carrying = context.job.storeys.flatMap(carryingWalls);
    return {
      materials: carrying.map((each) => mask(each, context)),
      instructions: carrying.map((each) => instruction(each, context)),
      findings: [],
    };
  },
};

function carryingWalls(storey: LaidStorey): readonly Carrying[] {
  const known = storey.walls.some(({ carries }) => carries.length > 0);
  if (!known && !storey.storeyAbove) return [];
  const runs = axisRuns(storey);
  const top = Math.max(...storey.walls.map((wall) => wall.base + wall.askedHeight));
  return storey.walls.flatMap((wall): readonly Carrying[] => {
    const course = wall.courses.find((each) => each.top);
    if (!course || wall.gable) return [];
    // A curve tells nothing of what it carries, nor does any wall while the storey above is not in the job.
    const told = known && !wall.arc;
    const stretches = told ? carriedStretches(wall, course, runs) : wall.base + wall.askedHeight === top ? runs.segmentsOf(course) : [];
    return lengthOf(stretches) > 0 ? [{ storey, wall, course, stretches }] : [];
  });
}

/** Forms above reach to their outer corners, half a thickness past the nodes of their axes; stretches that touch are one. */
function carriedStretches(wall: LaidWall, course: LaidCourse, { segmentsOf }: AxisRuns): readonly Segment[] {
  const reach = Math.ceil(wall.thickness / 2);
  let covered = -Infinity;
  const stretches: Segment[] = [];
  for (const { from, to } of [...wall.carries].sort((a, b) => a.from - b.from)) {
    const stretch = { from: Math.max(from - reach, covered), to: to + reach };
    stretches.push(...within(segmentsOf(course), stretch));
    covered = Math.max(covered, stretch.to);
  }
  return stretches;
}

function mask({ storey, wall, course, stretches }: Carrying, { range }: RuleContext): Consumption {
  const { topProtectBy, topProtectFaces } = range.parameters;
  return { place: { storey: storey.id, wall: wall.mark, course: course.n }, material: topProtectBy, at: endsOf(stretches), length: topProtectFaces * lengthOf(stretches) };
}

function instruction({ storey, wall, stretches }: Carrying, { range }: RuleContext): CrewInstruction {
  const { topProtectBy, topProtectFaces } = range.parameters;
  return {
    rule: meta.id,
    storey: storey.id,
    wall: wall.mark,
    course: null,
    text: `Before the pour mask the connectors of the top course with ${counted(topProtectFaces, 'run')} of ${topProtectBy}, one over each panel's edge, where forms of the next storey will stand: ${lengthText(lengthOf(stretches))}. Strip the mask before the concrete sets hard and leave the connectors clean.`,
  };
}
