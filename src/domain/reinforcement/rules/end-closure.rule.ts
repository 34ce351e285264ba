import type { Nm } from '../../quantity/length.js';
import type { Core, Material } from '../../range/range.js';
import { coreOfCourse } from '../../takeoff/course-core.js';
import type { LaidWall } from '../../takeoff/laid.js';
import { counted, forceText, lengthText, pressureText } from '../crew-text.js';
import { laidPlaces, type LaidPlace } from '../laid-places.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta } from '../rule.js';
import { closedEnd } from '../stations.js';
import { panelForceLb } from '../thrust.js';

/** Closures of one course of one wall. */
export interface Closed {
  readonly at: LaidPlace;
  /** The one this course stands on. */
  readonly core: Core;
  /** Where they close the forms, one station for each. */
  readonly closures: readonly Nm[];
  readonly forceLb: number;
  readonly board: boolean;
}

/** The tape returns along both faces: two legs hold the closure. */
const LEGS = 2;

const meta: RuleMeta = {
  id: 'end-closure',
  title: 'Tapes every end closure round both faces and backs it with a board where the tape alone is not known to hold.',
  trigger: 'end closures at free ends and at jambs, in every course',
  consumes: ['tape', 'board'],
  parameters: ['closureTapeLength', 'closureBoardPerCourse'],
  basis: 'common practice and statics',
};

export const endClosure: Rule = {
  meta,
  evaluate(context) {
    const closed = [...laidPlaces(context.job)].flatMap((at) => closuresAt(at, context));
    return {
      materials: closed.flatMap((each) => materials(each, context)),
      instructions: [...wallsOf(closed)].flatMap(([wall, here]) => instructions(wall, here, context)),
      findings: [],
    };
  },
};

export function closuresAt(at: LaidPlace, { range, pressureOf }: Pick<RuleContext, 'range' | 'pressureOf'>): readonly Closed[] {
  const closures = at.course.pieces.filter(({ kind }) => kind === 'end-closure').map((piece) => closedEnd(at.wall, at.course, piece));
  if (closures.length === 0) return [];
  const core = coreOfCourse(at.wall, at.course.n);
  const forceLb = panelForceLb(pressureOf(at.storey.id, core).psf, core.width, at.course.height);
  const holds = tapeHoldsLb(range.materials.find(({ kind }) => kind === 'tape'));
  return [{ at, core, closures, forceLb, board: holds === null || forceLb > holds }];
}

/**
 * What a tape returned along both faces can hold before it breaks.
 *
 * @equation F = 2 · strength per inch · width
 * @returns  F [lb], null where the strength or the width is not known
 * @valid    breaking of the tape; how well it sticks to foam is not covered
 * @source   statics
 */
export function tapeHoldsLb(tape: Material | undefined): number | null {
  const width = /^(\d+(?:\.\d+)?) in$/.exec(tape?.size ?? '')?.[1];
  if (!tape || tape.strengthLbPerIn === null || width === undefined) return null;
  return LEGS * tape.strengthLbPerIn * Number(width);
}

function materials({ at, closures, board }: Closed, { range }: RuleContext): readonly Consumption[] {
  const { closureTapeLength, closureBoardPerCourse } = range.parameters;
  const tape: Consumption = { place: at.place, material: 'tape', at: closures, length: closures.length * closureTapeLength };
  return board ? [tape, { place: at.place, material: 'board', at: closures, length: closures.length * closureBoardPerCourse }] : [tape];
}

function wallsOf(closed: readonly Closed[]): ReadonlyMap<LaidWall, readonly Closed[]> {
  const walls = new Map<LaidWall, Closed[]>();
  for (const each of closed) {
    const here = walls.get(each.at.wall);
    if (here) here.push(each);
    else walls.set(each.at.wall, [each]);
  }
  return walls;
}

/** One instruction for each core of a wall, with its worst course. */
function instructions(wall: LaidWall, here: readonly Closed[], context: RuleContext): readonly CrewInstruction[] {
  const cores = new Map(here.map(({ core }) => [core.code, core]));
  return [...cores.values()].map((core) => instruction(wall, core, here.filter((each) => each.core.code === core.code), context));
}

function instruction(wall: LaidWall, core: Core, here: readonly Closed[], { range, pressureOf }: RuleContext): CrewInstruction {
  const { closureTapeLength, closureBoardPerCourse } = range.parameters;
  const boards = here.filter(({ board }) => board).reduce((sum, { closures }) => sum + closures.length, 0);
  const force = here.reduce((most, { forceLb }) => Math.max(most, forceLb), 0);
  const reason = tapeHoldsLb(range.materials.find(({ kind }) => kind === 'tape')) === null ? 'the strength of the tape is not stated' : 'the force is more than the tape holds';
  const backing = boards > 0
    ? ` Because ${reason}, back ${counted(boards, 'closure')} with ${lengthText(closureBoardPerCourse)} of board a course.`
    : ' The tape holds it.';
  return {
    rule: meta.id,
    storey: wall.storey,
    wall: wall.mark,
    course: null,
    text:
      `Core ${core.code}: tape every end closure in every course, ${lengthText(closureTapeLength)} returning along both faces. ` +
      `The concrete pushes up to ${forceText(force)} on each at ${pressureText(pressureOf(wall.storey, core))}.${backing}`,
  };
}
