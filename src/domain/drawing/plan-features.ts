import type { Nm } from '../quantity/length.js';
import type { LengthUnit } from '../schedule/schedule.js';
import type { Junction, LaidCoreChange, LaidLedge, LaidStorey, LaidWall } from '../takeoff/laid.js';
import { measureOf } from './arc-measure.js';
import { coreText } from './elevation-features.js';
import { isAt } from './elevation-frame.js';
import { TINT } from './ink.js';
import { lengthLabel } from './length-label.js';
import { outlinePoints, placeLabel, readingAngle } from './plan-frame.js';
import type { PlanFrame } from './plan-frame.js';
import { besideWall, offsets } from './plan-labels.js';
import { planWalls } from './plan-wall.js';
import type { PlanWall } from './plan-wall.js';
import { TEXT_MM } from './sheet.js';
import type { LegendEntry } from './sheet-furniture.js';
import { pointAt } from './wall-curve.js';

const LABEL_MM = { near: 2.6, step: 1.4, tries: 60 };
const SHARES = [0.5, 0.35, 0.65, 0.22, 0.78];
/** How far a peak's line stands out of the wall [mm of paper]. */
const PEAK_MM = 1.6;
const LINE_MM = 0.5;

/** Ledges along their faces and the core further up in dashes. */
export function drawPlanFeatures(frame: PlanFrame, wall: PlanWall): void {
  for (const ledge of wall.wall.ledges) drawLedge(frame, wall, ledge);
  for (const change of wall.wall.coreChanges) drawUpperCore(frame, wall, change);
}

/** Its outer edge over its forms, and its ends back to the face: square, or along the mitre with the next wall's ledge. */
function drawLedge(frame: PlanFrame, wall: PlanWall, { face, projection, spans, mitreStart, mitreEnd }: LaidLedge): void {
  const side = face === 'outside' ? 1 : -1;
  const half = wall.wall.thickness / 2;
  const [near, far] = [side * half, side * (half + projection)];
  const { length } = wall.wall;
  const corner = wall.faceEnds(near);
  // the mitre is a straight line through the node: as far again as the face is
  const tip = (station: number, node: Nm): number => node + ((station - node) * (half + projection)) / half;
  spans.forEach(({ from, to }, i) => {
    const start = i === 0 && mitreStart ? { near: corner.from, far: tip(corner.from, 0) } : { near: from, far: from };
    const end = i === spans.length - 1 && mitreEnd ? { near: corner.to, far: tip(corner.to, length) } : { near: to, far: to };
    const points = [wall.at(start.near, near), wall.at(start.far, far), wall.at(end.far, far), wall.at(end.near, near)];
    frame.sheet.polyline('ledge', points.map(frame.toSheet));
    points.slice(1).forEach((point, k) => frame.obstacles.addLine(points[k] as typeof point, point, frame.sheet.mm(LINE_MM)));
  });
}

/** The faces of the core above a change, over the whole of its run. */
function drawUpperCore(frame: PlanFrame, wall: PlanWall, change: LaidCoreChange): void {
  const above = planWalls(storeyAbove(frame.storey, change.at)).find((upper) => upper.wall.mark === wall.wall.mark);
  const [a, b, c, d] = outlinePoints(frame, above?.core ?? []);
  if (!a || !b || !c || !d) return;
  frame.sheet.edge('hidden', a, b);
  frame.sheet.edge('hidden', c, d);
}

/** The walls as they stand over a height at which cores change; corners alone whose walls all change there. */
function storeyAbove(storey: LaidStorey, at: Nm): LaidStorey {
  const changed = (mark: string): boolean => storey.walls.some((wall) => wall.mark === mark && wall.coreChanges.some((change) => change.at === at));
  return {
    ...storey,
    walls: storey.walls.map((wall) => {
      const change = wall.coreChanges.find((each) => each.at === at);
      return change === undefined ? wall : wallAbove(wall, change);
    }),
    junctions: storey.junctions.filter(({ kind, walls }) => kind !== 'corner' || walls.every(changed)),
  };
}

/** A wall as it stands over a change of its core, on its own axis. */
export function wallAbove(wall: LaidWall, { course: first, core, axisShift }: LaidCoreChange): LaidWall {
  const above = wall.courses.filter(({ n }) => n >= first && n <= wall.stack.courses);
  const course = above.find(({ pieces }) => pieces.some(({ junction }) => junction !== null)) ?? above[0];
  const left = wall.outside === 'right' ? axisShift : -axisShift;
  const [from, to] = [course?.from ?? 0, course?.to ?? wall.length];
  const thickness = wall.thickness - wall.core.width + core.width;
  return { ...wall, core, thickness, length: to - from, axisFrom: pointAt(wall, from, left), axisTo: pointAt(wall, to, left) };
}

/** Across the wall where its slope is highest. */
export function drawPeak(frame: PlanFrame, wall: PlanWall): void {
  const { gable, thickness } = wall.wall;
  if (gable === null) return;
  const reach = thickness / 2 + frame.sheet.mm(PEAK_MM);
  frame.sheet.line('slope', frame.toSheet(wall.at(gable.peakAt, -reach)), frame.toSheet(wall.at(gable.peakAt, reach)));
  frame.obstacles.addLine(wall.at(gable.peakAt, -reach), wall.at(gable.peakAt, reach), frame.sheet.mm(LINE_MM));
}

/** `peak +9'-4"` beside the mark of a slope's highest place. */
export function markPeak(frame: PlanFrame, wall: PlanWall): void {
  const { gable } = wall.wall;
  if (gable === null) return;
  const angle = readingAngle(wall.directionAt(gable.peakAt));
  const aside = frame.sheet.mm(2 * PEAK_MM);
  const places = offsets(frame, wall, LABEL_MM).flatMap((offset) =>
    [gable.peakAt, gable.peakAt - aside, gable.peakAt + aside].map((station) => besideWall(frame, wall, station, offset, angle)),
  );
  placeLabel(frame, `peak +${lengthLabel(gable.rise, frame.units)}`, TEXT_MM.small, places);
}

/** Radius of the axis and length of the line that a curve is dimensioned along; stations of its openings are in the list. */
export function labelArc(frame: PlanFrame, wall: PlanWall): void {
  const { arc } = wall.wall;
  if (arc === null) return;
  const measure = measureOf(wall.wall, frame.storey);
  const text = `axis R ${lengthLabel(arc.axisRadius, frame.units)}, ${lengthLabel(measure.length, frame.units)} along the ${measure.along}`;
  const places = offsets(frame, wall, LABEL_MM).flatMap((offset) =>
    SHARES.map((share) => {
      const station = wall.wall.length * share;
      return besideWall(frame, wall, station, offset, readingAngle(wall.directionAt(station)));
    }),
  );
  placeLabel(frame, text, TEXT_MM.small, places);
}

export function planFeatureEntries(storey: LaidStorey): LegendEntry[] {
  const has = (test: (wall: LaidWall) => boolean): boolean => storey.walls.some(test);
  const entry = (text: string, fill: string, stroke: LegendEntry['stroke']): LegendEntry => ({ text, fill, pattern: null, stroke });
  return [
    ...(has(({ ledges }) => ledges.length > 0) ? [entry('outer edge of a ledge', TINT.foam, 'ledge')] : []),
    ...(has(({ gable }) => gable !== null) ? [entry('where a slope is highest', TINT.foam, 'ridge')] : []),
    ...(has(({ coreChanges }) => coreChanges.length > 0) ? [entry('core further up', TINT.concrete, 'upper')] : []),
  ];
}

export function planFeatureNotes(storey: LaidStorey, units: LengthUnit): string[] {
  return [...storey.walls.flatMap((wall) => wallNotes(wall, storey, units)), ...storey.junctions.flatMap((junction) => upperNotes(junction, storey))];
}

function wallNotes(wall: LaidWall, storey: LaidStorey, units: LengthUnit): string[] {
  const label = (value: Nm): string => lengthLabel(value, units);
  const { mark, ledges, taper, gable, coreChanges, arc } = wall;
  return [
    ...ledges.map(({ face, bearing }) => `${mark}: ledge ${face}, bears at ${label(bearing)}`),
    ...(taper === null ? [] : [`${mark}: taper top, ${taper.faces === 'one' ? 'one face' : 'both faces'}`]),
    ...(gable === null ? [] : [`${mark}: rises ${label(gable.rise)}, highest ${label(gable.peakAt + wall.startOffset)} from its start`]),
    ...(coreChanges.length === 0 ? [] : [`${mark}: core ${coreText(wall, units)}`]),
    ...(arc === null ? [] : curveNotes(wall, storey, label)),
  ];
}

function curveNotes(wall: LaidWall, storey: LaidStorey, label: (value: Nm) => string): string[] {
  const measure = measureOf(wall, storey);
  const openings = wall.openings.map(
    ({ mark, from, to }) => `${mark} ${label(measure.of(from - measure.start))}, ${label(measure.of(to - from))} wide`,
  );
  return openings.length === 0 ? [] : [`On curve ${wall.mark}, along the ${measure.along} from its start: ${openings.join('; ')}`];
}

/** `S1-J1-L2 over S1-J1: no unit of the range, by advice`. */
function upperNotes(upper: Junction, { junctions }: LaidStorey): string[] {
  const below = junctions.find(({ id }) => id !== upper.id && isAt(upper, id));
  if (below === undefined || upper.kind !== 'corner') return [];
  return [`${upper.id} over ${below.id}: ${upper.unit === null ? 'no unit of the range, by advice' : (upper.sku ?? 'corner')}`];
}
