import type { LaidStorey } from '../../takeoff/laid.js';
import { counted, forceText, lengthText, pressureText, stationText } from '../crew-text.js';
import type { CrewInstruction } from '../material-line.js';
import { mitreThrustLb } from '../mitre-thrust.js';
import { mitredCorners, type MitredCorner } from '../mitred-corners.js';
import type { Consumption, Rule, RuleContext, RuleMeta, RulePlace } from '../rule.js';
import { coreOfCourse } from '../../takeoff/course-core.js';

interface Mitre {
  readonly storey: LaidStorey;
  readonly corner: MitredCorner;
  readonly place: RulePlace;
}

const meta: RuleMeta = {
  id: 'mitred-ledge',
  title: 'Tapes the mitre of a ledge course at a corner, where no corner unit stands, and states the thrust its outside bracing must take.',
  trigger: 'corners that a ledge runs round or reaches into, in the course of the ledge',
  consumes: ['tape'],
  parameters: ['hingedCornerStrips', 'tapeStripLength'],
  basis: 'common practice and statics',
};

export const mitredLedge: Rule = {
  meta,
  evaluate(context) {
    const mitres = context.job.storeys.flatMap(mitresOf);
    return {
      materials: mitres.map((mitre) => strips(mitre, context)),
      instructions: mitres.map((mitre) => instruction(mitre, context)),
      findings: [],
    };
  },
};

function mitresOf(storey: LaidStorey): readonly Mitre[] {
  return mitredCorners(storey)
    .filter(({ by }) => by === 'ledge')
    .map((corner) => ({ storey, corner, place: { storey: storey.id, wall: corner.arriving.wall.mark, course: corner.arriving.course.n } }));
}

function strips({ place, corner }: Mitre, { range }: RuleContext): Consumption {
  const { hingedCornerStrips, tapeStripLength } = range.parameters;
  return { place, material: 'tape', at: [corner.arriving.node], length: hingedCornerStrips * tapeStripLength };
}

function instruction({ storey, corner, place }: Mitre, { range, pressureOf }: RuleContext): CrewInstruction {
  const { hingedCornerStrips, tapeStripLength } = range.parameters;
  const { arriving, leaving, junction } = corner;
  const pressure = pressureOf(storey.id, coreOfCourse(arriving.wall, arriving.course.n));
  const thrust = mitreThrustLb(corner, storey.id, range, pressureOf);
  return {
    rule: meta.id,
    ...place,
    text:
      `Corner of ${arriving.wall.mark} and ${leaving.wall.mark}, ${stationText(arriving.node)}: no corner unit stands in this course. Saw both forms to the mitre and put ${counted(hingedCornerStrips, 'strip')} of tape, ${lengthText(tapeStripLength)} each, across it. ` +
      `Brace the ${junction.turn > 0 ? 'outside' : 'inside'}, which is the convex side, over this course for up to ${forceText(thrust)} at ${pressureText(pressure)}; braces are by others. Bars round the mitre are as support advises.`,
  };
}
