import { toFeet, type Nm } from '../../quantity/length.js';
import { partsToCover } from '../../quantity/rounding.js';
import { coreOfCourse, isGableCourse } from '../../takeoff/course-core.js';
import type { LaidCourse, LaidGable, LaidSlope, LaidStorey, LaidWall } from '../../takeoff/laid.js';
import { counted, lengthText, lineForceText, pressureText, stationText } from '../crew-text.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta } from '../rule.js';

interface Sloped {
  readonly storey: LaidStorey;
  readonly wall: LaidWall;
  readonly gable: LaidGable;
}

const FACES = 2;

const meta: RuleMeta = {
  id: 'gable-edge',
  title: 'Runs a board along both faces of every gable diagonal, and caps the slopes that fresh concrete does not stand on.',
  trigger: 'gable slopes',
  consumes: ['board'],
  parameters: ['gableSteepFromDeg', 'gableBoardWidth'],
  basis: 'common practice and statics',
};

export const gableEdge: Rule = {
  meta,
  evaluate(context) {
    const gables = context.job.storeys.flatMap((storey) => storey.walls.flatMap((wall): readonly Sloped[] => (wall.gable ? [{ storey, wall, gable: wall.gable }] : [])));
    return {
      materials: gables.flatMap((sloped) => boards(sloped, context)),
      instructions: gables.flatMap((sloped) => sloped.gable.slopes.map((slope) => instruction(sloped, slope, context))),
      findings: [],
    };
  },
};

export const isSteep = ({ degrees }: LaidSlope, { range }: Pick<RuleContext, 'range'>): boolean => degrees >= range.parameters.gableSteepFromDeg;

/** Boards side by side over the core. */
const capBoards = (core: Nm, { range }: RuleContext): number => partsToCover(core, range.parameters.gableBoardWidth);

/** Board in each course: both faces of every slope, and the boards of its cap where it is steep. */
function boards({ storey, wall, gable }: Sloped, context: RuleContext): readonly Consumption[] {
  return wall.courses.flatMap((course): readonly Consumption[] => {
    if (!isGableCourse(wall, course.n)) return [];
    const { width } = coreOfCourse(wall, course.n);
    const length = gable.slopes.reduce((sum, slope) => sum + partIn(slope, course, wall, gable) * (FACES + (isSteep(slope, context) ? capBoards(width, context) : 0)), 0);
    const at = gable.slopes.flatMap((slope) => endsIn(slope, course, wall, gable));
    return length > 0 ? [{ place: { storey: storey.id, wall: wall.mark, course: course.n }, material: 'board', at, length }] : [];
  });
}

/** What of a slope lies in a course; the parts of all courses are its whole length. */
function partIn({ length }: LaidSlope, { bottom, height }: LaidCourse, { stack }: LaidWall, { rise }: LaidGable): Nm {
  const upTo = (above: Nm): Nm => Math.round((length * Math.min(above, rise)) / rise);
  return upTo(bottom - stack.height + height) - upTo(bottom - stack.height);
}

/** Stations between which a slope passes through a course. */
function endsIn({ from, to, rises }: LaidSlope, { bottom, height }: LaidCourse, { stack }: LaidWall, { rise }: LaidGable): readonly Nm[] {
  const beds = [bottom - stack.height, bottom - stack.height + height].map((above) => Math.min(above, rise) / rise);
  return beds.map((share) => Math.round(rises === 'with-stations' ? from + (to - from) * share : to - (to - from) * share));
}

function instruction({ storey, wall }: Sloped, slope: LaidSlope, context: RuleContext): CrewInstruction {
  const core = coreOfCourse(wall, wall.stack.courses);
  const pressure = context.pressureOf(storey.id, core);
  const count = capBoards(core.width, context);
  const cap = isSteep(slope, context)
    ? ` At ${slope.degrees.toFixed(1)} degrees fresh concrete does not stand: cap the slope as it is filled with ${counted(count, 'board')} side by side over the core, fixed to both panels against up to ${lineForceText(pressure.psf * toFeet(core.width))} of slope at ${pressureText(pressure)}.`
    : '';
  return {
    rule: meta.id,
    storey: storey.id,
    wall: wall.mark,
    course: null,
    text: `Slope from ${stationText(slope.from)} to ${stationText(slope.to)}: screw a board along the sawn edge on both faces, ${lengthText(slope.length)} a face, into the webs.${cap}`,
  };
}
