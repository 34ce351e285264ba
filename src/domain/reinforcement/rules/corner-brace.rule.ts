import { twoCoreThrust } from '../../engineering/statics/two-core-thrust.js';
import { toFeet, type Nm } from '../../quantity/length.js';
import { coreOfCourse } from '../../takeoff/course-core.js';
import type { Junction, LaidStorey, LaidWall } from '../../takeoff/laid.js';
import { counted, forceText, lengthText, lineForceText, pressureText, stationText } from '../crew-text.js';
import { courseOf, stripOn, wallFinder } from '../laid-places.js';
import type { CrewInstruction } from '../material-line.js';
import { courseBeside } from '../mitred-corners.js';
import type { PressureOf, Rule, RuleContext, RuleMeta } from '../rule.js';
import { cornerStation } from '../stations.js';

/** A corner over its whole height: one row of the take-off for each level, where a core changes. */
export interface Corner {
  readonly storey: LaidStorey;
  readonly rows: readonly Junction[];
}

/** One course of a corner, up to the next one's bed. */
export interface Part {
  readonly height: Nm;
  readonly thrustLbPerFt: number;
  readonly pressure: ReturnType<PressureOf>;
}

/** What the take-off puts behind the id of a junction that is made otherwise in a level above. */
const LEVEL = /-L\d+$/;

const meta: RuleMeta = {
  id: 'corner-brace',
  title: 'Stands full-height verticals outside every corner and states the thrust that their bracing must take.',
  trigger: 'corners of two walls, whatever makes them',
  consumes: [],
  parameters: ['cornerBraceVerticals'],
  basis: 'common practice and statics',
};

export const cornerBrace: Rule = {
  meta,
  evaluate(context) {
    const corners = context.job.storeys.flatMap(cornersOf);
    return { materials: [], instructions: corners.flatMap((corner) => instruction(corner, context)), findings: [] };
  },
};

export function cornersOf(storey: LaidStorey): readonly Corner[] {
  const rows = new Map<string, Junction[]>();
  for (const junction of storey.junctions.filter(({ kind, courses }) => kind === 'corner' && courses.length > 0)) {
    const key = `${junction.id.replace(LEVEL, '')} ${junction.walls.join(' ')}`;
    rows.set(key, [...(rows.get(key) ?? []), junction]);
  }
  return [...rows.values()].map((each) => ({ storey, rows: each }));
}

export function partsOf(storey: LaidStorey, junction: Junction, arriving: LaidWall, leaving: LaidWall, pressureOf: PressureOf): readonly Part[] {
  return junction.courses.map((n): Part => {
    const course = courseOf(arriving, n);
    const cores = [coreOfCourse(arriving, n), coreOfCourse(leaving, courseBeside(arriving, n, leaving)?.n ?? 1)] as const;
    const pressures = cores.map((core) => pressureOf(storey.id, core)).sort((a, b) => b.psf - a.psf);
    const pressure = pressures[0] as Part['pressure'];
    const thrustLbPerFt = twoCoreThrust(pressure.psf, toFeet(cores[0].width), toFeet(cores[1].width), Math.abs(junction.turn));
    return { height: course.height + stripOn(arriving, n), thrustLbPerFt, pressure };
  });
}

function instruction({ storey, rows }: Corner, { range, pressureOf }: RuleContext): readonly CrewInstruction[] {
  const [first] = rows;
  if (!first) return [];
  const [arriving, leaving] = first.walls.map(wallFinder(storey)) as [LaidWall, LaidWall];
  const parts = rows.flatMap((row) => partsOf(storey, row, arriving, leaving, pressureOf));
  const worst = parts.reduce((most, part) => (part.thrustLbPerFt > most.thrustLbPerFt ? part : most));
  const height = parts.reduce((sum, part) => sum + part.height, 0);
  const total = parts.reduce((sum, part) => sum + part.thrustLbPerFt * toFeet(part.height), 0);
  const side = first.turn > 0 ? 'outside' : 'inside';
  const verticals = counted(range.parameters.cornerBraceVerticals, 'vertical');
  return [
    {
      rule: meta.id,
      storey: storey.id,
      wall: arriving.mark,
      course: null,
      text:
        `Corner of ${arriving.mark} and ${leaving.mark}, ${stationText(cornerStation(arriving, first.courses[0] ?? 1))}, turn ${Number(first.turn.toFixed(1))} degrees: ${verticals}, ${lengthText(height)} high, on its convex side (the ${side}), fixed to the webs of every course of both legs and braced. ` +
        `The corner is pushed out with up to ${lineForceText(worst.thrustLbPerFt)} of height, ${forceText(total)} in all, at ${pressureText(worst.pressure)}. Verticals and braces are by others.`,
    },
  ];
}
