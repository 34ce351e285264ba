import { toFeet, toMm, feet, type Nm } from '../../quantity/length.js';
import { coreOfCourse } from '../../takeoff/course-core.js';
import type { LaidCourse, LaidStorey, LaidTaper, LaidWall } from '../../takeoff/laid.js';
import { axisRuns, lengthOf, within } from '../axis-runs.js';
import { forceText, lengthText, pressureText, stationText } from '../crew-text.js';
import { courseOf } from '../laid-places.js';
import type { CrewInstruction } from '../material-line.js';
import { mitreThrustLb } from '../mitre-thrust.js';
import { mitredCorners } from '../mitred-corners.js';
import type { Consumption, Rule, RuleContext, RuleMeta } from '../rule.js';
import type { Segment } from '../segments.js';
import { endsOf } from '../stations.js';

/** The taper top of one wall. */
interface Tapered {
  readonly storey: LaidStorey;
  readonly wall: LaidWall;
  readonly taper: LaidTaper;
  readonly course: LaidCourse;
  /** Along the axis, openings out and between the nodes of mitred corners. */
  readonly length: Nm;
  readonly spans: readonly Segment[];
}

/** Slim lips that a taper has. */
const LIPS = { one: 1, both: 2 } as const;
const MM2_PER_FT2 = toMm(feet(1)) ** 2;

const meta: RuleMeta = {
  id: 'taper-top-edge',
  title: 'Stiffens the slim lip of a taper top, both lips of a two-way one, so that it does not bow.',
  trigger: 'taper tops',
  consumes: ['strap', 'board'],
  parameters: ['taperEdgeBy'],
  basis: 'common practice and statics',
};

export const taperTopEdge: Rule = {
  meta,
  evaluate(context) {
    const tapers = context.job.storeys.flatMap(tapersOf);
    return {
      materials: tapers.flatMap((tapered) => edges(tapered, context)),
      instructions: tapers.map((tapered) => instruction(tapered, context)),
      findings: [],
    };
  },
};

function tapersOf(storey: LaidStorey): readonly Tapered[] {
  const tapered = storey.walls.flatMap((wall) => (wall.taper ? [{ wall, taper: wall.taper }] : []));
  const runs = tapered.length > 0 ? axisRuns(storey) : null;
  return tapered.flatMap(({ wall, taper }): readonly Tapered[] => {
    const course = courseOf(wall, taper.course);
    const spans = runs ? within(taper.spans, runs.endsOf(course)) : [];
    const length = lengthOf(spans);
    return length > 0 ? [{ storey, wall, taper, course, length, spans }] : [];
  });
}

function edges({ storey, wall, taper, length, spans }: Tapered, { range }: RuleContext): readonly Consumption[] {
  return [{ place: { storey: storey.id, wall: wall.mark, course: taper.course }, material: range.parameters.taperEdgeBy, at: endsOf(spans), length: LIPS[taper.faces] * length }];
}

function instruction({ storey, wall, taper, course, length }: Tapered, { range, pressureOf }: RuleContext): CrewInstruction {
  const pressure = pressureOf(storey.id, coreOfCourse(wall, course.n));
  const uplift = (pressure.psf * taper.upliftMm2) / MM2_PER_FT2;
  const lips = taper.faces === 'one' ? 'the slim lip' : 'both slim lips';
  const mitres = mitredCorners(storey)
    .filter(({ by, arriving }) => by === 'taper-top' && arriving.wall === wall)
    .map((corner) => `At the corner with ${corner.leaving.wall.mark}, ${stationText(corner.arriving.node)}, no corner unit stands in this course: brace the mitre for up to ${forceText(mitreThrustLb(corner, storey.id, range, pressureOf))}, by others.`);
  const edge = `Screw a ${range.parameters.taperEdgeBy} along ${lips} of the taper top, ${lengthText(length)} a lip${lengthOf(taper.spans) > 0 ? `, from ${stationText(taper.spans[0]?.from ?? 0)} to ${stationText(taper.spans.at(-1)?.to ?? 0)} less openings` : ''}.`;
  const held = `Where the faces lean over the concrete it lifts with up to ${forceText(uplift)} in all (${(toFeet(length) > 0 ? uplift / toFeet(length) : 0).toFixed(0)} lb/ft) at ${pressureText(pressure)}: hold the course down.`;
  return { rule: meta.id, storey: storey.id, wall: wall.mark, course: taper.course, text: [edge, held, ...mitres].join(' ') };
}
