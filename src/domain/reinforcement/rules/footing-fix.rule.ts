import { finding, type Finding } from '../../evidence/finding.js';
import type { LaidStorey } from '../../takeoff/laid.js';
import { axisRuns, lengthOf } from '../axis-runs.js';
import { counted } from '../crew-text.js';
import { placesOfStorey } from '../laid-places.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta } from '../rule.js';
import { endsOf } from '../stations.js';

const meta: RuleMeta = {
  id: 'footing-fix',
  title: 'Fixes the first course to its footing, so that it neither creeps nor leaks.',
  trigger: 'course 1 of every wall of a storey that stands on a footing',
  consumes: ['foam'],
  parameters: ['footingFixBy', 'footingBeadFaces'],
  basis: 'common practice',
};

export const footingFix: Rule = {
  meta,
  evaluate(context) {
    const storeys = context.job.storeys.filter((storey) => storey.onFooting && storey.walls.length > 0);
    if (context.range.parameters.footingFixBy !== 'adhesive') return { materials: [], instructions: [], findings: storeys.map((storey) => unserved(storey, context)) };
    return {
      materials: storeys.flatMap((storey) => beads(storey, context)),
      instructions: storeys.map((storey) => instruction(storey, context)),
      findings: [],
    };
  },
};

function beads(storey: LaidStorey, { range }: RuleContext): readonly Consumption[] {
  const faces = range.parameters.footingBeadFaces;
  const { segmentsOf } = axisRuns(storey);
  return [...placesOfStorey(storey)]
    .filter(({ course }) => course.n === 1)
    .map(({ course, place }) => ({ place, segments: segmentsOf(course) }))
    .map(({ place, segments }) => ({ place, material: 'foam' as const, at: endsOf(segments), length: lengthOf(segments) * faces }))
    .filter(({ length }) => length > 0);
}

function instruction(storey: LaidStorey, { range }: RuleContext): CrewInstruction {
  const beads = counted(range.parameters.footingBeadFaces, 'bead');
  return {
    rule: meta.id,
    storey: storey.id,
    wall: null,
    course: 1,
    text: `Set course 1 on ${beads} of adhesive foam, under the panels along every run. Pack the forms level where the footing is out of level; let the foam set before course 2 is laid.`,
  };
}

/** Tracks, plates and dowel ties have no material in a form range: what they take is not counted in silence as nothing. */
function unserved(storey: LaidStorey, { range }: RuleContext): Finding {
  return finding('outside-method', {
    storey: storey.id,
    numbers: { rule: meta.id, footingFixBy: range.parameters.footingFixBy },
    source: 'common practice',
  });
}
