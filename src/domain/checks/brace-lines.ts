import type { Junction, LaidStorey, LaidWall } from '../takeoff/laid.js';
import type { Nm } from '../quantity/length.js';

export interface OpenSpan {
  readonly from: Nm;
  readonly to: Nm;
}

/** One wall of a line: where it begins along the line, and whether the line runs against the way it is drawn. */
export interface BraceLineWall {
  readonly wall: LaidWall;
  readonly from: Nm;
  readonly against: boolean;
}

/** Straight-on walls of one core, height and base, braced as one whatever their marks. Stations run along the line from its own beginning. */
export interface BraceLine {
  readonly walls: readonly [BraceLineWall, ...BraceLineWall[]];
  readonly length: Nm;
  /** Where its forms begin and end. */
  readonly first: Nm;
  readonly last: Nm;
  /** What stands there; null: nothing. */
  readonly start: Junction | null;
  readonly end: Junction | null;
  /** Cut-outs of tees. */
  readonly cuts: readonly OpenSpan[];
}

/**
 * The walls of a storey in lines that run on straight, each in walking order; a wall alone in the way it is drawn.
 *
 * @source statement of the project's decision 13
 */
export function braceLines(storey: LaidStorey): readonly BraceLine[] {
  const walls = new Map(storey.walls.map((wall) => [wall.mark, wall]));
  const goesOn = straightOn(storey, walls);
  const led = new Set([...goesOn.values()].map(({ walls: [, leaving] }) => leaving));
  const [junctions, cuts] = [new Map(storey.junctions.map((junction) => [junction.id, junction])), cutsByWall(storey)];
  return storey.walls.filter(({ mark }) => !led.has(mark)).map((wall) => lineFrom(wall, { walls, goesOn, junctions, cuts }));
}

interface Known {
  readonly walls: ReadonlyMap<string, LaidWall>;
  readonly goesOn: ReadonlyMap<string, Junction>;
  readonly junctions: ReadonlyMap<string, Junction>;
  readonly cuts: ReadonlyMap<string, readonly OpenSpan[]>;
}

/** Junctions at which the forms run on, by the wall that arrives there. */
function straightOn({ junctions }: LaidStorey, walls: ReadonlyMap<string, LaidWall>): ReadonlyMap<string, Junction> {
  const alike = junctions.filter(({ kind, walls: [arriving, leaving] }) => {
    const [a, b] = [walls.get(arriving ?? ''), walls.get(leaving ?? '')];
    return kind === 'straight' && a !== undefined && b !== undefined && isOneRun(a, b);
  });
  return new Map(alike.map((junction) => [junction.walls[0]!, junction]));
}

const isOneRun = (a: LaidWall, b: LaidWall): boolean =>
  a.arc === null && b.arc === null && a.core.code === b.core.code && a.base === b.base && a.askedHeight === b.askedHeight && changesOf(a) === changesOf(b);

const changesOf = ({ coreChanges }: LaidWall): string => coreChanges.map(({ at, core }) => `${at} ${core.code}`).join();

function cutsByWall({ junctions }: LaidStorey): ReadonlyMap<string, readonly OpenSpan[]> {
  const cuts = new Map<string, OpenSpan[]>();
  for (const { tee } of junctions) {
    if (!tee) continue;
    const known = cuts.get(tee.through);
    const cut = { from: tee.cutFrom, to: tee.cutTo };
    if (known) known.push(cut);
    else cuts.set(tee.through, [cut]);
  }
  return cuts;
}

function lineFrom(first: LaidWall, { walls, goesOn, junctions, cuts }: Known): BraceLine {
  const members: [BraceLineWall, ...BraceLineWall[]] = [{ wall: first, from: 0, against: goesOn.get(first.mark)?.id === first.startJunction }];
  let length = first.length;
  for (let joint = goesOn.get(first.mark); joint; joint = goesOn.get(joint.walls[1]!)) {
    const wall = walls.get(joint.walls[1]!)!;
    members.push({ wall, from: length, against: joint.id === wall.endJunction });
    length += wall.length;
  }
  const [begins, ends] = [members[0], members.at(-1)!];
  return {
    walls: members,
    length,
    first: begins.against ? begins.wall.trimEnd : begins.wall.trimStart,
    last: length - (ends.against ? ends.wall.trimStart : ends.wall.trimEnd),
    start: junctions.get(begins.against ? begins.wall.endJunction : begins.wall.startJunction) ?? null,
    end: junctions.get(ends.against ? ends.wall.startJunction : ends.wall.endJunction) ?? null,
    cuts: members.flatMap((member) => (cuts.get(member.wall.mark) ?? []).map((cut) => alongLine(member, cut))),
  };
}

/** A stretch of a wall in stations of the line. */
export const alongLine = ({ wall, from, against }: BraceLineWall, span: OpenSpan): OpenSpan =>
  against ? { from: from + wall.length - span.to, to: from + wall.length - span.from } : { from: from + span.from, to: from + span.to };

/** The wall in which a station of the line lies, at a mark the one that arrives there, and the station along its own axis. */
export function placeOnLine({ walls }: BraceLine, at: Nm): { readonly wall: LaidWall; readonly at: Nm } {
  const { wall, from, against } = walls.find((member) => at <= member.from + member.wall.length) ?? walls.at(-1)!;
  return { wall, at: against ? from + wall.length - at : at - from };
}
