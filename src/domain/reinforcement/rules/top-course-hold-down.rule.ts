import type { Nm } from '../../quantity/length.js';
import type { LaidCourse, LaidStorey, LaidWall } from '../../takeoff/laid.js';
import { axisRuns, type AxisRuns } from '../axis-runs.js';
import { counted, lengthText } from '../crew-text.js';
import { formLines, spacedAlong, type FormLine } from '../form-lines.js';
import type { CrewInstruction } from '../material-line.js';
import { openJoints, openStretches } from '../open-tops.js';
import type { Consumption, Rule, RuleContext, RuleMeta, RulePlace } from '../rule.js';
import type { Segment } from '../segments.js';
import { middleOf } from '../stations.js';

const FACES = 2;

const meta: RuleMeta = {
  id: 'top-course-hold-down',
  title: 'Tapes the top course to the one below and ties its head joints, because nothing above keeps it from floating.',
  trigger: 'the top course of every wall, up the slopes of a gable every course where it lies open',
  consumes: ['tape', 'cable-tie', 'wire-tie'],
  parameters: ['holdDownEveryWebs', 'tapeStripLength', 'holdDownTieBy'],
  basis: 'common practice',
};

export const topCourseHoldDown: Rule = {
  meta,
  evaluate(context) {
    const storeys = context.job.storeys;
    return {
      materials: storeys.flatMap((storey) => {
        const runs = axisRuns(storey);
        return formLines(storey).flatMap((line) => [...tape(line, runs, context), ...ties(line, context)]);
      }),
      instructions: storeys.flatMap((storey) => instructions(storey, context)),
      findings: [],
    };
  },
};

const placeOf = (wall: LaidWall, course: number): RulePlace => ({ storey: wall.storey, wall: wall.mark, course });

/** Courses of a line that lie open somewhere, by number: a stretch goes on across a mark only in one course. */
function openCourses({ walls }: FormLine): readonly number[] {
  const open = walls.flatMap(({ wall }) => wall.courses.filter(({ n, top }) => top || n >= wall.stack.courses));
  return [...new Set(open.map(({ n }) => n))].sort((a, b) => a - b);
}

/** A course at the bottom has none below to be taped to. */
function tape(line: FormLine, runs: AxisRuns, { range }: RuleContext): readonly Consumption[] {
  const { holdDownEveryWebs, tapeStripLength } = range.parameters;
  return openCourses(line).flatMap((n) => {
    const segmentsOf = (wall: LaidWall): readonly Segment[] => {
      const course = wall.courses.find((each) => each.n === n);
      return course && n > 1 ? openStretches(wall, course, runs) : [];
    };
    return spacedAlong(line, segmentsOf, holdDownEveryWebs * range.webSpacing)
      .filter(({ items }) => items > 0)
      .map(({ wall, items, parts }): Consumption => ({ place: placeOf(wall, n), material: 'tape', at: heldAt(parts, wall.courses.find((each) => each.n === n)), length: items * FACES * tapeStripLength }));
  });
}

/** The first web in each strip's part of the wall; where none is known, as in a corner unit, the middle of the part. */
function heldAt(parts: readonly Segment[], course: LaidCourse | undefined): readonly Nm[] {
  const webs = (course?.pieces ?? []).flatMap((piece) => piece.webs ?? []).sort((a, b) => a - b);
  return parts.map((part) => webs.find((web) => web >= part.from && web <= part.to) ?? middleOf(part));
}

function ties({ walls }: FormLine, { range }: RuleContext): readonly Consumption[] {
  return walls.flatMap(({ wall }) =>
    wall.courses.flatMap((course): readonly Consumption[] => {
      const at = openJoints(wall, course).map((joint) => joint.at);
      return at.length > 0 ? [{ place: placeOf(wall, course.n), material: range.parameters.holdDownTieBy, at, count: at.length }] : [];
    }),
  );
}

/** One for a storey, and for each gable one of its own. */
function instructions({ id, walls }: LaidStorey, { range }: RuleContext): readonly CrewInstruction[] {
  const { holdDownEveryWebs, tapeStripLength, holdDownTieBy } = range.parameters;
  const level =
    `Top course: tape of ${lengthText(tapeStripLength)} over the joint to the course below at every ${counted(holdDownEveryWebs, 'web')} (${lengthText(holdDownEveryWebs * range.webSpacing)}), both faces; ` +
    `a ${holdDownTieBy.replace('-', ' ')} between neighbours at every head joint.`;
  const told = (wall: string | null, text: string): CrewInstruction => ({ rule: meta.id, storey: id, wall, course: null, text });
  return [
    ...(walls.some(({ gable }) => !gable) ? [told(null, level)] : []),
    ...walls.filter(({ gable }) => gable).map(({ mark }) => told(mark, `${level} On the gable the same up every slope, in every course where no form stands on it.`)),
  ];
}
