import type { LaidStorey } from '../../takeoff/laid.js';
import { placesOfStorey } from '../laid-places.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta } from '../rule.js';
import { formLengthOf, formSegments } from '../segments.js';
import { endsOf } from '../stations.js';

const EDGES = 2;

const meta: RuleMeta = {
  id: 'ripped-edge',
  title: 'Stiffens both edges of a ripped top course, which has lost its moulded rim, so that they do not bow.',
  trigger: 'top courses ripped to a lower height',
  consumes: ['strap', 'board'],
  parameters: ['rippedEdgeBy'],
  basis: 'common practice',
};

export const rippedEdge: Rule = {
  meta,
  evaluate(context) {
    const materials = context.job.storeys.map((storey) => edges(storey, context));
    return {
      materials: materials.flat(),
      instructions: context.job.storeys.filter((_, index) => (materials[index]?.length ?? 0) > 0).map((storey) => instruction(storey, context)),
      findings: [],
    };
  },
};

function edges(storey: LaidStorey, { range }: RuleContext): readonly Consumption[] {
  return [...placesOfStorey(storey)]
    .filter(({ course }) => course.ripped && course.top)
    .map(({ course, place }) => ({ place, material: range.parameters.rippedEdgeBy, at: endsOf(formSegments(course)), length: EDGES * formLengthOf(course) }))
    .filter(({ length }) => length > 0);
}

function instruction(storey: LaidStorey, { range }: RuleContext): CrewInstruction {
  return {
    rule: meta.id,
    storey: storey.id,
    wall: null,
    course: null,
    text: `Screw a ${range.parameters.rippedEdgeBy} along the sawn edge of the ripped top course, on both faces, into the webs; take it off once the concrete is hard.`,
  };
}
