import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import type { BondRun } from './layout-kinds.js';
import type { LinePiece } from './layout-line.js';
import { offModule, piecesOf, type Placement } from './placements.js';

function coursePieces(run: BondRun, placed: readonly Placement[], range: FormRange): LinePiece[] {
  return run.segments.flatMap((segment, index) => {
    const own = piecesOf(segment, placed[index]!, range.formLength);
    const seamHere = segment.seamRight || offModule(segment, range) > 0;
    return own.map((piece, order): LinePiece => ({
      from: piece.from,
      to: piece.to,
      seamAt: seamHere && order === own.length - 1 ? piece.to : null,
      atLeg: !segment.seamRight,
      over: (order === 0 ? segment.overLeft : 0) + (order === own.length - 1 ? segment.overRight : 0),
    }));
  });
}

/** Straight pieces of every course; courses of one kind with the same placements share theirs. */
export function linePieces(runs: readonly BondRun[], kinds: readonly number[], chosen: readonly (readonly Placement[])[], range: FormRange): LinePiece[][] {
  const found: LinePiece[][] = [];
  runs.forEach((run, course) => {
    const placed = chosen[course]!;
    const alike = found.findIndex((_, other) => kinds[other] === kinds[course] && chosen[other]!.every((way, index) => way === placed[index]));
    found.push(alike < 0 ? coursePieces(run, placed, range) : found[alike]!);
  });
  return found;
}

/** Lengths of all pieces on their longer face, longest first, ripped ones as negative numbers. */
export function lineLengths(runs: readonly BondRun[], chosen: readonly (readonly Placement[])[], form: Nm): Nm[] {
  let wholes = 0;
  const sawn: Nm[] = [];
  runs.forEach(({ ripped, segments }, course) => {
    const add = (length: Nm): void => {
      if (ripped) sawn.push(-length);
      else if (length === form) wholes += 1;
      else sawn.push(length);
    };
    segments.forEach(({ from, to, overLeft, overRight }, index) => {
      const { firstJoint, joints } = chosen[course]![index]!;
      const length = to - from + overLeft + overRight;
      if (joints === 0) add(length);
      else {
        const first = firstJoint + overLeft;
        add(first);
        for (let joint = 1; joint < joints; joint += 1) add(form);
        add(length - first - (joints - 1) * form);
      }
    });
  });
  const lengths = sawn.sort((a, b) => b - a);
  return [...Array.from({ length: wholes }, () => form), ...lengths];
}
