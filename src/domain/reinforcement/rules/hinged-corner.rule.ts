import { coreOfCourse } from '../../takeoff/course-core.js';
import type { Junction, LaidStorey } from '../../takeoff/laid.js';
import { counted, lengthText, lineForceText, pressureText, stationText } from '../crew-text.js';
import { wallFinder } from '../laid-places.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta } from '../rule.js';
import { cornerStation } from '../stations.js';
import { bendThrustLbPerFt } from '../thrust.js';

const meta: RuleMeta = {
  id: 'hinged-corner',
  title: 'Tapes every hinged corner unit across its cut hinge and states the thrust its outside bracing must take.',
  trigger: 'corners made with a hinged unit, in every course',
  consumes: ['tape'],
  parameters: ['hingedCornerStrips', 'tapeStripLength'],
  basis: 'common practice and statics',
};

export const hingedCorner: Rule = {
  meta,
  evaluate(context) {
    const corners = context.job.storeys.flatMap((storey) =>
      storey.junctions.filter(({ unit, units }) => unit === 'corner-hinged' && units.length > 0).map((junction) => ({ storey, junction })),
    );
    return {
      materials: corners.flatMap(({ storey, junction }) => strips(storey, junction, context)),
      instructions: corners.map(({ storey, junction }) => instruction(storey, junction, context)),
      findings: [],
    };
  },
};

function strips(storey: LaidStorey, junction: Junction, { range }: RuleContext): readonly Consumption[] {
  const { hingedCornerStrips, tapeStripLength } = range.parameters;
  const arriving = wallFinder(storey)(junction.walls[0] as string);
  return junction.units.map(({ course }) => ({
    place: { storey: storey.id, wall: arriving.mark, course },
    material: 'tape',
    at: [cornerStation(arriving, course)],
    length: hingedCornerStrips * tapeStripLength,
  }));
}

function instruction(storey: LaidStorey, junction: Junction, { range, pressureOf }: RuleContext): CrewInstruction {
  const [arriving, leaving] = junction.walls;
  // Units of one row are alike: where the core changes a row begins anew.
  const wall = wallFinder(storey)(arriving as string);
  const course = junction.units[0]?.course ?? 1;
  const core = coreOfCourse(wall, course);
  const { hingedCornerStrips, tapeStripLength } = range.parameters;
  const pressure = pressureOf(storey.id, core);
  const thrust = bendThrustLbPerFt(pressure.psf, core.width, junction.turn);
  return {
    rule: meta.id,
    storey: storey.id,
    wall: arriving as string,
    course: null,
    text:
      `Corner of ${arriving} and ${leaving}, ${stationText(cornerStation(wall, course))}: cut the inner hinge wall away so that the core runs through, then ${counted(hingedCornerStrips, 'strip')} of tape, ${lengthText(tapeStripLength)} each, across the hinge of every unit. ` +
      `Brace the convex side over the full height for the bend thrust: 2 · p · t · sin(turn / 2) = ${lineForceText(thrust)} of height at ${pressureText(pressure)}.`,
  };
}
