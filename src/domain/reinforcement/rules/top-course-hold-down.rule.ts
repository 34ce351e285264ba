import type { LaidCourse, LaidStorey, LaidWall } from '../../takeoff/laid.js';
import { counted, lengthText } from '../crew-text.js';
import { formLines, spacedAlong, type FormLine } from '../form-lines.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta, RulePlace } from '../rule.js';
import { formSegments, type Segment } from '../segments.js';

const FACES = 2;

const meta: RuleMeta = {
  id: 'top-course-hold-down',
  title: 'Tapes the top course to the one below and ties its head joints, because nothing above keeps it from floating.',
  trigger: 'the top course of every wall',
  consumes: ['tape', 'cable-tie', 'wire-tie'],
  parameters: ['holdDownEveryWebs', 'tapeStripLength', 'holdDownTieBy'],
  basis: 'common practice',
};

export const topCourseHoldDown: Rule = {
  meta,
  evaluate(context) {
    const storeys = context.job.storeys.filter(({ walls }) => walls.length > 0);
    return {
      materials: storeys.flatMap((storey) => formLines(storey).flatMap((line) => [...tape(line, context), ...ties(line, context)])),
      instructions: storeys.map((storey) => instruction(storey, context)),
      findings: [],
    };
  },
};

const topCourse = (wall: LaidWall): LaidCourse | undefined => wall.courses.find(({ top }) => top);
const placeOf = (wall: LaidWall, course: number): RulePlace => ({ storey: wall.storey, wall: wall.mark, course });

/** A wall of one course has no course below to be taped to. */
function tape(line: FormLine, { range }: RuleContext): readonly Consumption[] {
  const { holdDownEveryWebs, tapeStripLength } = range.parameters;
  const segmentsOf = (wall: LaidWall): readonly Segment[] => {
    const course = topCourse(wall);
    return course && course.n > 1 ? formSegments(course) : [];
  };
  return spacedAlong(line, segmentsOf, holdDownEveryWebs * range.webSpacing)
    .filter(({ items }) => items > 0)
    .map(({ wall, items }) => ({ place: placeOf(wall, topCourse(wall)?.n ?? 0), material: 'tape', length: items * FACES * tapeStripLength }));
}

function ties({ walls }: FormLine, { range }: RuleContext): readonly Consumption[] {
  return walls.flatMap(({ wall }): readonly Consumption[] => {
    const course = topCourse(wall);
    if (!course || course.headJoints.length === 0) return [];
    return [{ place: placeOf(wall, course.n), material: range.parameters.holdDownTieBy, count: course.headJoints.length }];
  });
}

function instruction(storey: LaidStorey, { range }: RuleContext): CrewInstruction {
  const { holdDownEveryWebs, tapeStripLength, holdDownTieBy } = range.parameters;
  return {
    rule: meta.id,
    storey: storey.id,
    wall: null,
    course: null,
    text:
      `Top course: tape of ${lengthText(tapeStripLength)} over the joint to the course below at every ${counted(holdDownEveryWebs, 'web')} (${lengthText(holdDownEveryWebs * range.webSpacing)}), both faces; ` +
      `a ${holdDownTieBy.replace('-', ' ')} between neighbours at every head joint.`,
  };
}
