import type { LaidWall } from '../../takeoff/laid.js';
import { axisRuns, within, type AxisRuns } from '../axis-runs.js';
import { counted, lengthText } from '../crew-text.js';
import { formLines, spacedAlong, type FormLine } from '../form-lines.js';
import { courseOf } from '../laid-places.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta } from '../rule.js';
import type { Segment } from '../segments.js';
import { middleOf } from '../stations.js';

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
    const stripped = context.job.storeys.filter(({ walls }) => walls.some(({ strips }) => strips.length > 0));
    return {
      materials: stripped.flatMap((storey) => {
        const runs = axisRuns(storey);
        return formLines(storey).flatMap((line) => tape(line, runs, context));
      }),
      instructions: stripped.flatMap(({ walls }) => walls.filter(({ strips }) => strips.length > 0).map((wall) => instruction(wall, context))),
      findings: [],
    };
  },
};

/** Walls of one line share their stack, so their strips lie on the same courses. */
function tape(line: FormLine, runs: AxisRuns, { range }: RuleContext): readonly Consumption[] {
  const { stripTapeSpacing, tapeStripLength } = range.parameters;
  const layers = [...new Set(line.walls.flatMap(({ wall }) => wall.strips.map(({ afterCourse }) => afterCourse)))];
  return layers.flatMap((course) =>
    spacedAlong(line, (wall) => formedRuns(wall, course, runs), stripTapeSpacing)
      .filter(({ items }) => items > 0)
      .map(({ wall, items, parts }): Consumption => ({
        place: { storey: wall.storey, wall: wall.mark, course },
        material: 'tape',
        at: parts.map(middleOf),
        length: items * FACES * tapeStripLength,
      })),
  );
}

/** A strip's runs within the axis length of forms: its mitre past a corner's node is the next wall's length. */
function formedRuns(wall: LaidWall, afterCourse: number, { endsOf }: AxisRuns): readonly Segment[] {
  return wall.strips
    .filter((strip) => strip.afterCourse === afterCourse)
    .flatMap(({ runs }) => within(runs, endsOf(courseOf(wall, afterCourse))));
}

function instruction({ storey, mark, strips }: LaidWall, { range }: RuleContext): CrewInstruction {
  const { stripTapeSpacing, tapeStripLength } = range.parameters;
  return {
    rule: meta.id,
    storey,
    wall: mark,
    course: null,
    text: `${counted(strips.length, 'height strip')}, on course ${strips.map(({ afterCourse }) => afterCourse).join(', ')}: upright tape, ${lengthText(tapeStripLength)} each, every ${lengthText(stripTapeSpacing)} on both faces, lapping the course above and the course below.`,
  };
}
