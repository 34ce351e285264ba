import { toFeet, type Nm } from '../../quantity/length.js';
import { coreOfCourse } from '../../takeoff/course-core.js';
import type { LaidCoreChange, LaidStorey, LaidWall } from '../../takeoff/laid.js';
import { axisRuns, lengthOf } from '../axis-runs.js';
import { lengthText, lineForceText, pressureText } from '../crew-text.js';
import { courseOf } from '../laid-places.js';
import type { CrewInstruction } from '../material-line.js';
import type { Rule, RuleContext, RuleMeta } from '../rule.js';

interface Change {
  readonly storey: LaidStorey;
  readonly wall: LaidWall;
  readonly change: LaidCoreChange;
  /** Forms of the first course on the other core. */
  readonly length: Nm;
}

const meta: RuleMeta = {
  id: 'core-change-cleat',
  title: 'Sets cleats under the set-back panel where a narrower form stands on a wider core.',
  trigger: 'changes of the core up a wall',
  consumes: [],
  parameters: [],
  basis: 'common practice and statics',
};

export const coreChangeCleat: Rule = {
  meta,
  evaluate(context) {
    const changes = context.job.storeys.flatMap(changesOf);
    return { materials: [], instructions: changes.map((change) => instruction(change, context)), findings: [] };
  },
};

function changesOf(storey: LaidStorey): readonly Change[] {
  const changed = storey.walls.flatMap((wall) => wall.coreChanges.map((change) => ({ storey, wall, change })));
  const runs = changed.length > 0 ? axisRuns(storey) : null;
  return changed.map((each) => ({ ...each, length: runs ? lengthOf(runs.segmentsOf(courseOf(each.wall, each.change.course))) : 0 }));
}

/** How far the upper form's faces lie within the lower one's; negative where they overhang. */
function setBacks({ wall, change }: Change): readonly { readonly side: 'outside' | 'inside'; readonly by: Nm; readonly seat: Nm }[] {
  const half = (coreOfCourse(wall, change.course - 1).width - change.core.width) / 2;
  return [
    { side: 'outside', by: half + change.axisShift, seat: change.seatOutside },
    { side: 'inside', by: half - change.axisShift, seat: change.seatInside },
  ];
}

function instruction(each: Change, { range, pressureOf }: RuleContext): CrewInstruction {
  const { storey, wall, change, length } = each;
  const below = coreOfCourse(wall, change.course - 1);
  const pressure = pressureOf(storey.id, below);
  const sides = setBacks(each).flatMap(({ side, by, seat }): readonly string[] => {
    const bare = Math.min(Math.abs(by), range.panel);
    if (by > 0) return [`on the ${side} cleat ${lengthText(length)} under the panel, which is set back ${lengthText(by)}${seat > 0 ? ` and leaves a seat of ${lengthText(seat)}` : ''} and is lifted with up to ${lineForceText(pressure.psf * toFeet(bare))}`];
    return by < 0 ? [`on the ${side} close and shore ${lengthText(length)} of soffit, where the panel overhangs by ${lengthText(-by)}`] : [];
  });
  return {
    rule: meta.id,
    storey: storey.id,
    wall: wall.mark,
    course: change.course,
    text: `Core ${below.code} changes to ${change.core.code} at ${lengthText(change.at)}, under course ${change.course}: ${sides.join('; ') || 'both faces stay in line'}. At ${pressureText(pressure)}; cleats, lumber and braces are by others, and support advises on the step.`,
  };
}
