import { coreOfCourse } from '../../takeoff/course-core.js';
import type { Junction, LaidStorey } from '../../takeoff/laid.js';
import { forceText, lengthText, pressureText, stationText } from '../crew-text.js';
import { courseOf, stripOn, wallFinder } from '../laid-places.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta } from '../rule.js';
import { middleOf } from '../stations.js';
import { panelForceLb } from '../thrust.js';
import type { Nm } from '../../quantity/length.js';

type Tee = NonNullable<Junction['tee']>;

const FACES = 2;

const meta: RuleMeta = {
  id: 'tee-cut-out',
  title: 'Pins the panel that lost its webs behind a tee to the branch wall, course by course, and closes the butt joint of the branch.',
  trigger: 'tees, in every course in which both walls stand',
  consumes: ['bar', 'wire-tie', 'foam', 'strap'],
  parameters: ['teePinBar', 'teePinEmbedment', 'teeTieWeb'],
  basis: 'common practice and statics',
};

export const teeCutOut: Rule = {
  meta,
  evaluate(context) {
    const tees = context.job.storeys.flatMap((storey) =>
      storey.junctions.flatMap((junction) => (junction.tee && junction.courses.length > 0 ? [{ storey, junction, tee: junction.tee }] : [])),
    );
    return {
      materials: tees.flatMap(({ storey, junction, tee }) => materials(storey, junction, tee, context)),
      instructions: tees.map(({ storey, junction, tee }) => instruction(storey, junction, tee, context)),
      findings: [],
    };
  },
};

/** The pin in one piece: over the cut-out, one web beyond it on each side, and an embedment past each web. */
function pinLength({ cutFrom, cutTo }: Tee, { range }: RuleContext): Nm {
  return cutTo - cutFrom + 2 * range.webSpacing + 2 * range.parameters.teePinEmbedment;
}

/**
 * The junction's courses are numbered in the first of its walls, which is the through wall or its first part. The butt joint runs up a strip
 * between two of them as well.
 */
function materials(storey: LaidStorey, junction: Junction, tee: Tee, context: RuleContext): readonly Consumption[] {
  const through = wallFinder(storey)(junction.walls[0] as string);
  const at = [middleOf({ from: tee.cutFrom, to: tee.cutTo })];
  return junction.courses.flatMap((n): readonly Consumption[] => {
    const place = { storey: storey.id, wall: through.mark, course: n };
    const joint = FACES * (courseOf(through, n).height + (junction.courses.includes(n + 1) ? stripOn(through, n) : 0));
    return [
      { place, material: { bar: context.range.parameters.teePinBar }, at, length: pinLength(tee, context) },
      { place, material: 'wire-tie', at, count: 1 },
      { place, material: 'foam', at, length: joint },
      { place, material: 'strap', at, length: joint },
    ];
  });
}

function instruction(storey: LaidStorey, junction: Junction, tee: Tee, context: RuleContext): CrewInstruction {
  const wall = wallFinder(storey);
  const { teeTieWeb } = context.range.parameters;
  const through = wall(junction.walls[0] as string);
  const pins = junction.courses.map((n) => {
    const pressure = context.pressureOf(storey.id, coreOfCourse(through, n));
    return { pressure, force: panelForceLb(pressure.psf, tee.cutTo - tee.cutFrom, courseOf(through, n).height) };
  });
  const { pressure, force } = pins.reduce((most, pin) => (pin.force > most.force ? pin : most));
  return {
    rule: meta.id,
    storey: storey.id,
    wall: tee.through,
    course: null,
    text:
      `Tee of ${tee.branch} on ${tee.through}, ${stationText(middleOf({ from: tee.cutFrom, to: tee.cutTo }))}: cut the near panel of ${tee.through} out over the core of ${tee.branch}, ${lengthText(tee.cutTo - tee.cutFrom)} wide. ` +
      `In every course pin the far panel with one ${context.range.parameters.teePinBar} bar of ${lengthText(pinLength(tee, context))} through the webs beside the cut and wire it back to web ${teeTieWeb} of ${tee.branch}: take up the slack and no more, or the panel is drawn in. ` +
      `Each pin holds up to ${forceText(force)} at ${pressureText(pressure)}. Foam and strap the butt joint of ${tee.branch} on both faces.`,
  };
}
