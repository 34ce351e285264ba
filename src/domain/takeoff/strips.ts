import type { FormRange } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { nodeSetBack } from './corners.js';
import type { EndName } from '../schedule/line-normalisation.js';
import type { Line } from './lines.js';
import { meets, takesWhole, type LineOpening } from './openings.js';
import type { RunContext } from './runs.js';
import { facingEnd, neighbourOf } from './storey-plan.js';

/** A height strip along a line: runs between ends and openings, and the lengths it is laid in. */
export interface LineStrip {
  readonly afterCourse: number;
  readonly bottom: Nm;
  readonly height: Nm;
  readonly runs: readonly { readonly from: Nm; readonly to: Nm; readonly pieces: readonly Nm[] }[];
  /** Outer stations of the free ends and jambs that an end closure of the strip's height shuts. */
  readonly closures: readonly Nm[];
}

/** Whether nothing stands beside a line's end at an elevation. */
function isFree(line: Line, end: EndName, elevation: Nm, context: RunContext): boolean {
  const joint = line[end];
  const neighbour = neighbourOf(joint);
  return neighbour === null ? joint.kind === 'free' : !context.standsAt(neighbour, elevation, facingEnd(joint, end));
}

/** Where a strip ends: at the outer apex of a corner, where it is mitred (decision 12); elsewhere where the forms do. */
function stripEnd(line: Line, end: EndName, elevation: Nm, context: RunContext): Nm {
  const joint = line[end];
  const node = end === 'start' ? 0 : line.length;
  const outwards = end === 'start' ? -1 : 1;
  const wall = end === 'start' ? line.walls[0]!.wall : line.walls.at(-1)!.wall;
  const drawn = node + outwards * wall.back[end];
  if (joint.kind === 'free' || isFree(line, end, elevation, context)) return drawn;
  if (joint.kind === 'unsettled' || joint.kind === 'straight') return node;
  if (joint.kind === 'tee') return node - outwards * joint.tee.formTrim;
  const partner = context.plan.walls[joint.partner]!;
  if (line.arc || partner.arc) return node;
  const other = partner.thickness;
  return node + outwards * Math.round(nodeSetBack(line.thickness / 2, other / 2, Math.abs(joint.turn)));
}

function piecesOf(length: Nm, form: Nm): Nm[] {
  const whole = Math.floor(length / form);
  const rest = length - whole * form;
  return [...Array.from({ length: whole }, () => form), ...(rest > 0 ? [rest] : [])];
}

/** Every strip of a line, openings of the strip's full height out. */
export function stripsOf(line: Line, openings: readonly LineOpening[], context: RunContext, range: FormRange): LineStrip[] {
  return line.stack.layers
    .filter((layer) => layer.kind === 'strip')
    .map(({ course, bottom, height }) => {
      const from = stripEnd(line, 'start', line.base + bottom, context);
      const to = stripEnd(line, 'end', line.base + bottom, context);
      const runs: { from: Nm; to: Nm; pieces: Nm[] }[] = [];
      let left = from;
      for (const opening of openings.filter((candidate) => takesWhole(candidate, bottom, height))) {
        if (opening.formsFrom > left) runs.push({ from: left, to: opening.formsFrom, pieces: piecesOf(opening.formsFrom - left, range.formLength) });
        left = Math.max(left, opening.formsTo);
      }
      if (to > left) runs.push({ from: left, to, pieces: piecesOf(to - left, range.formLength) });
      const ends = (['start', 'end'] as const).filter((end) => isFree(line, end, line.base + bottom, context)).map((end) => (end === 'start' ? from : to));
      const jambs = openings.filter((opening) => opening.lining === 'end-closure' && meets(opening, bottom, height)).flatMap((opening) => [opening.from, opening.to]);
      return { afterCourse: course, bottom, height, runs, closures: [...ends, ...jambs] };
    });
}
