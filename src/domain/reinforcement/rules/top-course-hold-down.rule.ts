import type { LaidCourse, LaidStorey } from '../../takeoff/laid.js';
import { counted, lengthText } from '../crew-text.js';
import { placesOfStorey, type LaidPlace } from '../laid-places.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta } from '../rule.js';
import { formSegments, spacedItems } from '../segments.js';

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
      materials: storeys.flatMap((storey) => [...placesOfStorey(storey)].filter(({ course }) => course.top).flatMap((at) => materials(at, context))),
      instructions: storeys.map((storey) => instruction(storey, context)),
      findings: [],
    };
  },
};

function materials({ course, place }: LaidPlace, { range }: RuleContext): readonly Consumption[] {
  const { tapeStripLength, holdDownTieBy } = range.parameters;
  const strips = tapePlaces(course, range) * FACES;
  const used: Consumption[] = [];
  if (strips > 0) used.push({ place, material: 'tape', length: strips * tapeStripLength });
  if (course.headJoints.length > 0) used.push({ place, material: holdDownTieBy, count: course.headJoints.length });
  return used;
}

/** A wall of one course has no course below to be taped to. */
function tapePlaces(course: LaidCourse, range: RuleContext['range']): number {
  return course.n === 1 ? 0 : spacedItems(formSegments(course), range.parameters.holdDownEveryWebs * range.webSpacing);
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
