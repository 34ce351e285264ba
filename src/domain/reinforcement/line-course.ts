import type { Nm } from '../quantity/length.js';
import type { HeadJoint, LaidCourse, LaidWall, Notch, Piece } from '../takeoff/laid.js';
import { isForm } from '../takeoff/index.js';
import { lineStation, type FormLine, type LineWall } from './form-lines.js';
import { middleOf } from './stations.js';

/** One course of a line with the pieces that cross a mark put together again; every station is the line's. */
export interface LineCourse {
  readonly walls: readonly LaidWall[];
  /** Forms laid end to end, each once. */
  readonly pieces: readonly LinePiece[];
  readonly joints: readonly LineJoint[];
  readonly notches: readonly LineNotch[];
}

export interface LinePiece {
  /** The wall that counts the piece. */
  readonly wall: LaidWall;
  readonly from: Nm;
  readonly to: Nm;
  readonly cutEnds: Piece['cutEnds'];
  readonly webbed: boolean;
  /** One of a radius wall's chords: its joints are banded and foamed, not tied one by one. */
  readonly chord: boolean;
}

export interface LineJoint {
  readonly wall: LaidWall;
  readonly at: Nm;
  readonly kind: HeadJoint['kind'];
}

export interface LineNotch extends Pick<Notch, 'opening' | 'bottom' | 'top'> {
  readonly wall: LaidWall;
  /** Middle of the opening. */
  readonly at: Nm;
  readonly courseHeight: Nm;
}

interface Member {
  readonly member: LineWall;
  readonly course: LaidCourse;
}

export function lineCourse(line: FormLine, n: number): LineCourse {
  const members = line.walls.flatMap((member): readonly Member[] => {
    const course = member.wall.courses.find((each) => each.n === n);
    return course ? [{ member, course }] : [];
  });
  return {
    walls: members.map(({ member }) => member.wall),
    pieces: wholePieces(members),
    joints: members.flatMap(({ member, course }) =>
      course.headJoints.map(({ at, kind }) => ({ wall: member.wall, at: lineStation(member, at), kind })),
    ),
    notches: members.flatMap(({ member, course }) =>
      course.pieces.flatMap(({ notches }) =>
        notches.map((notch) => notchOf(member, course, notch)),
      ),
    ),
  };
}

/** Told at the middle of the opening, however many pieces it notches. */
function notchOf(member: LineWall, { height }: LaidCourse, { opening, bottom, top, from, to }: Notch): LineNotch {
  const { wall } = member;
  const hole = wall.openings.find(({ mark }) => mark === opening) ?? { from, to };
  return { wall, at: lineStation(member, middleOf(hole)), courseHeight: height, opening, bottom, top };
}

/** A form across a mark shows each wall its own part and its own webs. */
function wholePieces(members: readonly Member[]): readonly LinePiece[] {
  const whole = new Map<string, LinePiece>();
  for (const { member, course } of members) {
    for (const piece of course.pieces.filter(({ kind }) => isForm(kind))) {
      const [a, b] = [lineStation(member, piece.from), lineStation(member, piece.to)];
      const part: LinePiece = {
        wall: member.wall,
        from: Math.min(a, b),
        to: Math.max(a, b),
        cutEnds: piece.cutEnds,
        webbed: piece.webs !== null && piece.webs.length > 0,
        chord: piece.why === 'chord',
      };
      const before = whole.get(piece.id);
      whole.set(piece.id, before ? joined(before, part, piece.counted) : part);
    }
  }
  return [...whole.values()];
}

function joined(before: LinePiece, part: LinePiece, counted: boolean): LinePiece {
  return {
    wall: counted ? part.wall : before.wall,
    from: Math.min(before.from, part.from),
    to: Math.max(before.to, part.to),
    cutEnds: before.cutEnds,
    webbed: before.webbed || part.webbed,
    chord: before.chord,
  };
}
