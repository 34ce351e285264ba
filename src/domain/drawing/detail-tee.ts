import { add, scale } from '../geometry/vector.js';
import { lengthLabel } from './length-label.js';
import { drawArrow } from './detail-view.js';
import type { DetailFrame } from './detail-view.js';
import { planWalls } from './plan-wall.js';
import type { PlanWall } from './plan-wall.js';
import { readingAngle } from './plan-frame.js';
import type { Vector } from '../geometry/vector.js';
import type { DrawingPoint } from './shapes.js';
import { TEXT_MM } from './sheet.js';
import { stationAt } from './wall-curve.js';

const ROWS_MM = [7, 13] as const;
const TEXT_OFF_LINE_MM = 1.7;
/** Past the dimension rows and their letters. */
const PUSH_FROM_MM = 17;

/** On a tee: the cut-out, the far panel that lost its webs, the pin with its wire to the branch, and the push on the panel. */
export function drawTeeWork(frame: DetailFrame): void {
  const tee = frame.junction.tee;
  const walls = planWalls(frame.storey);
  const through = walls.find(({ wall }) => wall.mark === tee?.through);
  const branch = walls.find(({ wall }) => wall.mark === tee?.branch);
  if (tee === null || through === undefined || branch === undefined) return;
  const { range, sheet } = frame;
  const far = tee.side === through.wall.outside ? -1 : 1;
  const at = (station: number, offset: number): DrawingPoint => frame.toSheet(through.at(station, offset * far));
  const [core, face] = [through.wall.core.width / 2, through.wall.thickness / 2];
  sheet.hatch([[at(tee.cutFrom, core), at(tee.cutTo, core), at(tee.cutTo, face), at(tee.cutFrom, face)]], 'crossed');
  const reach = range.webSpacing + range.parameters.teePinEmbedment;
  const [pinFrom, pinTo] = [tee.cutFrom - reach, tee.cutTo + reach];
  const pin = core * 0.6;
  sheet.line('seam', at(pinFrom, pin), at(pinTo, pin));
  sheet.line('hidden', at((tee.cutFrom + tee.cutTo) / 2, pin), frame.toSheet(webOf(frame, branch)));
  sheet.circle('piece', frame.toSheet(webOf(frame, branch)), sheet.mm(0.7), '#33404a');
  dimensionRow(frame, through, far, [tee.cutFrom, tee.cutTo], ROWS_MM[0], 'cut out');
  dimensionRow(frame, through, far, [pinFrom, pinTo], ROWS_MM[1], `pin ${range.parameters.teePinBar}`);
  drawArrow(
    frame,
    through.at((tee.cutFrom + tee.cutTo) / 2, (face + sheet.mm(PUSH_FROM_MM)) * far),
    scale(through.outward, far),
    frame.force ?? 'push on the far panel',
  );
}

/** The web of the branch to which the pin is wired, on its axis. */
function webOf(frame: DetailFrame, branch: PlanWall): Vector {
  const { firstWeb, webSpacing, parameters } = frame.range;
  const atStart = branch.wall.startJunction === frame.junction.id;
  const trim = atStart ? branch.wall.trimStart : branch.wall.trimEnd;
  const station = trim + firstWeb + (parameters.teeTieWeb - 1) * webSpacing;
  return branch.at(atStart ? station : branch.wall.length - station, 0);
}

function dimensionRow(
  frame: DetailFrame,
  wall: PlanWall,
  far: number,
  [from, to]: readonly [number, number],
  mm: number,
  words: string,
): void {
  const { sheet } = frame;
  const face = (far * wall.wall.thickness) / 2;
  const line = face + far * sheet.mm(mm);
  const on = (station: number, offset: number): DrawingPoint => frame.toSheet(wall.at(station, offset));
  const angle = readingAngle(wall.along);
  const up = { x: -Math.sin((angle * Math.PI) / 180), y: Math.cos((angle * Math.PI) / 180) };
  const text = `${lengthLabel(Math.round(to - from), frame.units)} ${words}`;
  const side = sheet.widthOf(text, TEXT_MM.small) > to - from;
  const middle = side ? to + sheet.widthOf(text, TEXT_MM.small) / 2 + sheet.mm(2) : (from + to) / 2;
  const textAt = add(wall.at(middle, line), scale(up, side ? 0 : sheet.mm(TEXT_OFF_LINE_MM)));
  sheet.dimension(on(from, face), on(to, face), on(from, line), on(to, line), text, frame.toSheet(textAt), angle);
}

/** Station of the junction along a wall's axis [nm]. */
export const stationOf = (wall: PlanWall['wall'], point: Vector): number => stationAt(wall, point);
