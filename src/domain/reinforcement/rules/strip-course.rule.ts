import type { LaidStorey, LaidStrip, LaidWall } from '../../takeoff/laid.js';
import { counted, lengthText } from '../crew-text.js';
import { courseOf } from '../laid-places.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta } from '../rule.js';
import { spacedItems, type Segment } from '../segments.js';

const FACES = 2;

const meta: RuleMeta = {
  id: 'strip-course',
  title: 'Tapes across every height strip, so that its bed joints do not open.',
  trigger: 'height strips between two courses',
  consumes: ['tape'],
  parameters: ['stripTapeSpacing', 'tapeStripLength'],
  basis: 'common practice',
};

export const stripCourse: Rule = {
  meta,
  evaluate(context) {
    return {
      materials: context.job.storeys.flatMap((storey) => storey.walls.flatMap((wall) => wall.strips.map((strip) => tape(wall, strip, context)))),
      instructions: context.job.storeys.filter(({ walls }) => walls.some(({ strips }) => strips.length > 0)).map((storey) => instruction(storey, context)),
      findings: [],
    };
  },
};

function tape(wall: LaidWall, strip: LaidStrip, { range }: RuleContext): Consumption {
  const { stripTapeSpacing, tapeStripLength } = range.parameters;
  return {
    place: { storey: wall.storey, wall: wall.mark, course: strip.afterCourse },
    material: 'tape',
    length: spacedItems(formedRuns(wall, strip), stripTapeSpacing) * FACES * tapeStripLength,
  };
}

/** A strip's runs within the axis length of forms: its mitre past a corner's node is the next wall's length. */
function formedRuns(wall: LaidWall, strip: LaidStrip): readonly Segment[] {
  const below = courseOf(wall, strip.afterCourse);
  return strip.runs
    .map(({ from, to }) => ({ from: Math.max(from, below.from), to: Math.min(to, below.to) }))
    .filter(({ from, to }) => to > from);
}

function instruction(storey: LaidStorey, { range }: RuleContext): CrewInstruction {
  const { stripTapeSpacing, tapeStripLength } = range.parameters;
  const layers = storey.walls.reduce((sum, { strips }) => sum + strips.length, 0);
  return {
    rule: meta.id,
    storey: storey.id,
    wall: null,
    course: null,
    text: `${counted(layers, 'height strip', 'height strips')} in this storey, wall by wall: upright tape, ${lengthText(tapeStripLength)} each, every ${lengthText(stripTapeSpacing)} on both faces, lapping the course above and the course below.`,
  };
}
