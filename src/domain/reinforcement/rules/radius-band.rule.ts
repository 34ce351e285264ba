import { toFeet, type Nm } from '../../quantity/length.js';
import { coreOfCourse } from '../../takeoff/course-core.js';
import type { LaidArc, LaidCourse, LaidStorey, LaidWall } from '../../takeoff/laid.js';
import { counted, forceText, lengthText, lineForceText, pressureText } from '../crew-text.js';
import { placesOfStorey } from '../laid-places.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta } from '../rule.js';
import { formLengthOf, formSegments } from '../segments.js';
import { endsOf } from '../stations.js';

/** A curve that is laid in chords. */
interface Curved {
  readonly storey: LaidStorey;
  readonly wall: LaidWall;
  readonly arc: LaidArc;
}

const FACES = 2;

const meta: RuleMeta = {
  id: 'radius-band',
  title: 'Bands the convex face of a radius wall in every course and foams the joints of its chords.',
  trigger: 'radius walls laid in chords, and joints of kind chord',
  consumes: ['strap', 'tape', 'board', 'foam'],
  parameters: ['radiusBandBy'],
  basis: 'common practice and statics',
};

export const radiusBand: Rule = {
  meta,
  evaluate(context) {
    const { storeys } = context.job;
    const curves = storeys.flatMap((storey) => storey.walls.flatMap((wall): readonly Curved[] => (wall.arc && wall.arc.chord !== null ? [{ storey, wall, arc: wall.arc }] : [])));
    return {
      materials: [...curves.flatMap((curved) => bands(curved, context)), ...storeys.flatMap(foam)],
      instructions: curves.map((curved) => instruction(curved, context)),
      findings: [],
    };
  },
};

function bands({ storey, wall, arc }: Curved, { range }: RuleContext): readonly Consumption[] {
  return wall.courses.flatMap((course): readonly Consumption[] => {
    const length = bandOf(wall, arc, course);
    return length > 0 ? [{ place: { storey: storey.id, wall: wall.mark, course: course.n }, material: range.parameters.radiusBandBy, at: endsOf(formSegments(course)), length }] : [];
  });
}

/** The band of a course on the convex face: it ends at openings that interrupt the course. */
function bandOf({ courses }: LaidWall, { bandLength }: LaidArc, course: LaidCourse): Nm {
  const whole = (courses[0]?.to ?? 0) - (courses[0]?.from ?? 0);
  return whole > 0 ? Math.round((bandLength * formLengthOf(course)) / whole) : 0;
}

const chordJoints = ({ headJoints }: LaidCourse): readonly Nm[] => headJoints.filter(({ kind }) => kind === 'chord').map(({ at }) => at);

function foam(storey: LaidStorey): readonly Consumption[] {
  return [...placesOfStorey(storey)]
    .map(({ course, place }) => ({ course, place, at: chordJoints(course) }))
    .map(({ course, place, at }): Consumption & { readonly length: Nm } => ({ place, material: 'foam', at, length: at.length * course.height * FACES }))
    .filter(({ length }) => length > 0);
}

function instruction({ storey, wall, arc }: Curved, { range, pressureOf }: RuleContext): CrewInstruction {
  const core = coreOfCourse(wall, 1);
  const pressure = pressureOf(storey.id, core);
  const tension = pressure.psf * toFeet(core.width);
  const height = Math.max(...wall.courses.map((course) => course.height));
  const joints = wall.courses.reduce((sum, course) => sum + chordJoints(course).length, 0);
  return {
    rule: meta.id,
    storey: storey.id,
    wall: wall.mark,
    course: null,
    text:
      `Curve of ${counted(arc.chords, 'chord')}: in every course a ${range.parameters.radiusBandBy} round the convex face, ${lengthText(arc.bandLength)} where no opening interrupts it, fixed to every chord and at its ends. ` +
      `It resists the hoop tension p · core = ${lineForceText(tension)} of height, up to ${forceText(tension * toFeet(height))} a course, at ${pressureText(pressure)}. Foam ${counted(joints, 'chord joint')} on both faces, the wedge at the convex face filled.`,
  };
}
