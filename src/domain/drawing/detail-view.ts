import { add, direction, leftNormal, scale } from '../geometry/vector.js';
import type { Vector } from '../geometry/vector.js';
import { inches } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import type { LengthUnit } from '../schedule/schedule.js';
import type { Junction, LaidStorey } from '../takeoff/laid.js';
import { intoWall, stubs } from './detail-walls.js';
import { courseAt } from './detail-legs.js';
import type { DetailView, Leg } from './detail-legs.js';
import { TINT } from './ink.js';
import { lengthLabel } from './length-label.js';
import { lookOf } from './piece-look.js';
import { outlinePoints, readingAngle } from './plan-frame.js';
import { stretch } from './plan-wall.js';
import type { PlanPoint, PlanWall } from './plan-wall.js';
import type { DrawingPoint, OutlinePoint } from './shapes.js';
import { TEXT_MM } from './sheet.js';
import type { Sheet } from './sheet.js';

/** What one view of a junction draws into. */
export interface DetailFrame {
  readonly junction: Junction;
  readonly storey: LaidStorey;
  readonly range: FormRange;
  readonly units: LengthUnit;
  readonly sheet: Sheet;
  readonly toSheet: (point: Vector) => DrawingPoint;
  /** Words at the head of the force arrow. */
  readonly force: string | null;
}

/** Of each wall past its leg, and of a wall that has none. */
const BEYOND = inches(12);
const WITHOUT_LEG = inches(34);
const DIMENSION_MM = 8;
const TEXT_OFF_LINE_MM = 1.7;
const MARK_MM = 6;
const ARROW_MM = { length: 13, text: 17, head: 2.4 } as const;
const THRUST_FROM_MM = 11;

/** One view: the walls near the junction from above, legs tinted by hand, leg lengths on the convex face, the thrust. */
export function drawView(frame: DetailFrame, view: DetailView): void {
  const { junction, storey } = frame;
  const longest = Math.max(WITHOUT_LEG - BEYOND, ...[...view.legs.values()].map((leg) => leg.onAxis));
  const walls = stubs(junction, storey, () => longest + BEYOND);
  const ordered = [...walls].sort(
    (a, b) => Number(a.wall.mark === junction.tee?.branch) - Number(b.wall.mark === junction.tee?.branch),
  );
  for (const wall of ordered) drawStub(frame, wall);
  const legs = stubs(junction, storey, (wall) => view.legs.get(wall.mark)?.onAxis ?? 0);
  for (const wall of legs) drawLeg(frame, wall, view.legs.get(wall.wall.mark));
  if (view.mitred === 'ledge') for (const wall of walls) drawLedges(frame, wall, view);
  for (const wall of walls) markStub(frame, wall);
  if (junction.kind === 'free-end') for (const wall of walls) drawEndClosure(frame, wall);
  if (junction.kind === 'corner') {
    for (const wall of legs) dimensionLeg(frame, wall, view.legs.get(wall.wall.mark));
    drawThrust(frame, walls);
  }
}

const points = (frame: DetailFrame, outline: readonly PlanPoint[]): OutlinePoint[] => outlinePoints(frame, outline);

function drawStub(frame: DetailFrame, wall: PlanWall): void {
  const branch = wall.wall.mark === frame.junction.tee?.branch;
  frame.sheet.polygon('piece', points(frame, wall.core), { fill: TINT.concrete, outline: false });
  for (const panel of [wall.outsidePanel, wall.insidePanel])
    frame.sheet.polygon('piece', points(frame, panel), { fill: TINT.foam });
  const [a, b, c, d] = points(frame, wall.core);
  if (!branch || !a || !b || !c || !d) return;
  frame.sheet.edge('piece', a, b);
  frame.sheet.edge('piece', c, d);
}

function drawLeg(frame: DetailFrame, wall: PlanWall, leg: Leg | undefined): void {
  if (leg === undefined) return;
  const look = lookOf(leg.hand === null ? 'corner-either' : `corner-${leg.hand}`);
  for (const panel of [wall.outsidePanel, wall.insidePanel]) {
    frame.sheet.polygon('frame', points(frame, panel), { fill: look.fill, subject: `leg:${wall.wall.mark}` });
    if (look.pattern !== null) frame.sheet.hatch([points(frame, panel)], look.pattern);
  }
}

/** The outer edge of a ledge near the corner: from the mitre with the other wall's, or square where that has none. */
function drawLedges(frame: DetailFrame, wall: PlanWall, view: DetailView): void {
  const { mark, thickness, length, ledges } = wall.wall;
  const whole = frame.storey.walls.find((each) => each.mark === mark);
  const first = frame.storey.walls.find((each) => each.mark === frame.junction.walls[0]);
  const atStart = whole?.startJunction === frame.junction.id;
  const levels = view.courses.map((n) => whole && courseAt(whole, n, first)?.n);
  for (const { course, face, projection, spans, mitreStart, mitreEnd } of ledges) {
    const reached = atStart ? (spans[0]?.from ?? Infinity) <= 0 : (spans.at(-1)?.to ?? -Infinity) >= (whole?.length ?? Infinity);
    if (!levels.includes(course) || !reached) continue;
    const side = face === 'outside' ? 1 : -1;
    const [near, far] = [(side * thickness) / 2, side * (thickness / 2 + projection)];
    const ends = wall.faceEnds(near);
    const corner = atStart ? ends.from : ends.to;
    const node = atStart ? 0 : length;
    const tip = (atStart ? mitreStart : mitreEnd) ? node + ((corner - node) * far) / near : corner;
    const other = atStart ? length : 0;
    frame.sheet.polyline('ledge', [wall.at(corner, near), wall.at(tip, far), wall.at(other, far)].map(frame.toSheet));
  }
}

function drawEndClosure(frame: DetailFrame, wall: PlanWall): void {
  const half = wall.wall.core.width / 2;
  const thick = frame.range.closure.thickness;
  const [from, to] = wall.wall.startJunction === frame.junction.id ? [0, thick] : [wall.wall.length - thick, wall.wall.length];
  frame.sheet.polygon('closure', points(frame, stretch(wall, from, to, -half, half)), { fill: TINT.closure });
}

/** The wall's mark past the sawn end of its stub; a through wall has two. */
function markStub(frame: DetailFrame, wall: PlanWall): void {
  const ends = [
    wall.wall.startJunction === '' ? -frame.sheet.mm(MARK_MM) : null,
    wall.wall.endJunction === '' ? wall.wall.length + frame.sheet.mm(MARK_MM) : null,
  ];
  for (const station of ends) {
    if (station !== null)
      frame.sheet.text(frame.toSheet(wall.at(station, 0)), wall.wall.mark, TEXT_MM.body, { bold: true, anchor: 'middle' });
  }
}

function dimensionLeg(frame: DetailFrame, wall: PlanWall, leg: Leg | undefined): void {
  if (leg === undefined) return;
  const { sheet, junction } = frame;
  const side = junction.turn > 0 ? 1 : -1;
  const atStart = wall.wall.startJunction === junction.id;
  const past = leg.onFace - leg.onAxis;
  const [node, end] = atStart ? [-past, leg.onAxis] : [wall.wall.length + past, wall.wall.length - leg.onAxis];
  const face = (side * wall.wall.thickness) / 2;
  const line = face + side * sheet.mm(DIMENSION_MM);
  const on = (station: number, offset: number): DrawingPoint => frame.toSheet(wall.at(station, offset));
  const angle = readingAngle(wall.along);
  const up = { x: -Math.sin((angle * Math.PI) / 180), y: Math.cos((angle * Math.PI) / 180) };
  const textAt = add(wall.at((node + end) / 2, line), scale(up, sheet.mm(TEXT_OFF_LINE_MM)));
  const length = lengthLabel(leg.onFace, frame.units);
  const words = `${length} ${leg.name}`;
  const text = sheet.widthOf(words, TEXT_MM.small) < Math.abs(end - node) ? words : length;
  sheet.dimension(on(node, face), on(end, face), on(node, line), on(end, line), text, frame.toSheet(textAt), angle);
}

/** Outward on the convex side of a corner. */
function drawThrust(frame: DetailFrame, walls: readonly PlanWall[]): void {
  const inward = walls.map(({ wall }) => intoWall(wall, frame.junction)).reduce(add, { x: 0, y: 0 });
  const outward = scale(direction(inward), -1);
  const thickness = walls[0]?.wall.thickness ?? 0;
  const apex = add(frame.junction.at, scale(outward, thickness / 2 / Math.cos((frame.junction.turn * Math.PI) / 360)));
  drawArrow(frame, add(apex, scale(outward, frame.sheet.mm(THRUST_FROM_MM))), outward, frame.force ?? 'outward thrust');
}

/** An arrow of the given direction with its words past its head. */
export function drawArrow(frame: DetailFrame, from: Vector, along: Vector, words: string): void {
  const { sheet } = frame;
  const at = (mm: number, across = 0): DrawingPoint =>
    frame.toSheet(add(add(from, scale(along, sheet.mm(mm))), scale(leftNormal(along), sheet.mm(across))));
  const neck = ARROW_MM.length - ARROW_MM.head;
  sheet.line('thrust', at(0), at(neck));
  sheet.polygon('thrust', [at(ARROW_MM.length), at(neck, 1), at(neck, -1)], { fill: '#b01818' });
  const half = sheet.widthOf(words, TEXT_MM.small, true) / 2;
  const centre = add(add(from, scale(along, sheet.mm(ARROW_MM.text))), { x: along.x * half, y: 0 });
  sheet.text(frame.toSheet(centre), words, TEXT_MM.small, { bold: true, anchor: 'middle', layer: 'thrust' });
}
