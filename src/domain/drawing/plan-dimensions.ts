import { add, dot, scale } from '../geometry/vector.js';
import type { Vector } from '../geometry/vector.js';
import type { Nm } from '../quantity/length.js';
import { besideLines, tierLabels } from './label-tiers.js';
import { lengthLabel } from './length-label.js';
import { textQuad, readingAngle } from './plan-frame.js';
import type { PlanFrame } from './plan-frame.js';
import { stretch } from './plan-wall.js';
import type { PlanWall } from './plan-wall.js';
import type { Quad } from './obstacles.js';
import { TEXT_MM } from './sheet.js';
import { teeAxes } from './tee-axes.js';
import { fitText } from './text-width.js';

const FIRST_MM = 6;
const STEP_MM = 2.5;
const TRIES = 40;
const ROW_MM = 5.2;
const TIER_MM = 3.5;
const TEXT_MM_OFF_LINE = 1.7;
const PAD_MM = 1.2;
const BAND_MM = 1.2;
/** Room kept round a thin line [mm of paper]. */
const LINE_MM = 0.8;
/** Longest mark of a branch written on a dimension line [mm of paper]. */
const MARK_MM = 22;

/** One row of a wall's dimensions: the stations it measures between, and how far it lies beyond the nearest row [mm of paper]. */
interface Row {
  readonly stations: readonly Nm[];
  readonly beyondMm: number;
  readonly texts: readonly RowText[];
}

interface RowText {
  readonly text: string;
  /** Middle of the text: station, and rows of hung text away from the dimension line (0 = beside the line). */
  readonly station: Nm;
  readonly tier: number;
}

/**
 * The dimensions of one wall: openings along the dimension line where it has any, then the axes of the branches that stand on it,
 * then the dimension line's length, outside the building where there is room, inside where there is not.
 */
export function dimensionWall(frame: PlanFrame, wall: PlanWall): void {
  const rows = rowsOf(frame, wall);
  const distances = Array.from({ length: TRIES }, (_, i) => FIRST_MM + i * STEP_MM);
  const sides = distances.flatMap((distance) => [
    { distance, side: 1 },
    { distance, side: -1 },
  ]);
  const isFree = ({ distance, side }: { distance: number; side: number }): boolean =>
    frame.obstacles.isFree(bandsOf(frame, wall, rows, distance, side)) &&
    frame.obstacles.isClear(textsOf(frame, wall, rows, distance, side));
  const place = sides.find(isFree) ?? sides[0];
  if (place === undefined) return;
  frame.obstacles.addSolids(bandsOf(frame, wall, rows, place.distance, place.side));
  frame.obstacles.addTexts(textsOf(frame, wall, rows, place.distance, place.side));
  for (const row of rows) drawRow(frame, wall, row, place.distance + row.beyondMm, place.side);
}

function rowsOf(frame: PlanFrame, wall: PlanWall): Row[] {
  const [start, end] = [-wall.wall.startOffset, wall.wall.dimensionLength - wall.wall.startOffset];
  const within = (at: Nm): boolean => at > start && at < end;
  const jambs = wall.wall.openings
    .flatMap((opening) => [opening.from, opening.to])
    .filter(within)
    .sort((a, b) => a - b);
  const tees = teeAxes(frame.storey, wall.wall).filter(({ station }) => within(station));
  const axes = [...new Set(tees.map(({ station }) => station))];
  const toAxis = (to: Nm): string => {
    const branches = tees.filter(({ station }) => station === to).map(({ branch }) => branch);
    const marks = fitText(branches.join(', '), frame.sheet.mm(TEXT_MM.small), frame.sheet.mm(MARK_MM));
    return branches.length === 0 ? '' : ` to axis ${marks}`;
  };
  const rows: Row[] = [];
  const farther = [start, end, ...axes];
  const addRow = (stations: readonly Nm[], suffix: (to: Nm) => string = () => ''): void => {
    const last = rows.at(-1);
    const beyond = last === undefined ? 0 : last.beyondMm + ROW_MM + Math.max(...last.texts.map(({ tier }) => tier)) * TIER_MM;
    rows.push(rowOf(frame, stations, beyond, suffix, stations.length === 2 ? [] : suffix === toAxis ? [start, end] : farther));
  };
  if (jambs.length > 0) addRow([start, ...jambs, end]);
  if (axes.length > 0) addRow([start, ...axes, end], toAxis);
  addRow([start, end]);
  return rows;
}

/** @param crossing stations at which farther rows' extension lines run through the texts that hang */
function rowOf(
  frame: PlanFrame,
  stations: readonly Nm[],
  beyondMm: number,
  suffix: (to: Nm) => string,
  crossing: readonly Nm[],
): Row {
  const parts = stations.slice(1).map((to, i) => {
    const from = stations[i] as Nm;
    const text = `${lengthLabel(to - from, frame.units)}${suffix(to)}`;
    return { text, middle: (from + to) / 2, width: frame.sheet.widthOf(text, TEXT_MM.small), length: to - from };
  });
  const pad = frame.sheet.mm(PAD_MM);
  const hung = parts.length === 1 ? [] : parts.filter((part) => part.width + pad > part.length);
  const tiers = tierLabels(
    hung.map(({ middle, width }) => ({ centre: besideLines(middle, width + pad, crossing), width })),
    pad,
    { left: -Infinity, right: Infinity },
  );
  const texts = parts.map((part): RowText => {
    const tier = tiers[hung.indexOf(part)];
    return { text: part.text, station: tier?.centre ?? part.middle, tier: tier === undefined ? 0 : tier.tier + 1 };
  });
  return { stations, beyondMm, texts };
}

/** Distance of a point from the axis: beyond the wall's face by paper millimetres, on the outside (+1) or the inside (−1). */
const offsetOf = (frame: PlanFrame, { wall }: PlanWall, mm: number, side: number): number =>
  side * (wall.thickness / 2 + frame.sheet.mm(mm));

function textPoint(frame: PlanFrame, wall: PlanWall, text: RowText, lineMm: number, side: number): Vector {
  if (text.tier > 0) return wall.at(text.station, offsetOf(frame, wall, lineMm + text.tier * TIER_MM, side));
  return add(
    wall.at(text.station, offsetOf(frame, wall, lineMm, side)),
    scale(readingUp(wall), frame.sheet.mm(TEXT_MM_OFF_LINE)),
  );
}

/** Unit vector from a dimension line toward the top of the letters on it. */
function readingUp(wall: PlanWall): Vector {
  const angle = (readingAngle(wall.along) * Math.PI) / 180;
  return { x: -Math.sin(angle), y: Math.cos(angle) };
}

/** The room the rows' lines take: a band round every line, short of its ends where other walls may stand. */
function bandsOf(frame: PlanFrame, wall: PlanWall, rows: readonly Row[], distance: number, side: number): Quad[] {
  return rows.map((row) => {
    const lineMm = distance + row.beyondMm;
    const [near, far] = [offsetOf(frame, wall, lineMm - BAND_MM, side), offsetOf(frame, wall, lineMm + BAND_MM, side)];
    const [start, end] = [row.stations[0] as Nm, row.stations.at(-1) as Nm];
    const clear = Math.min(wall.wall.thickness + Math.abs(far) * leanOf(frame, wall), (end - start) / 3);
    return stretch(wall, start + clear, end - clear, near, far);
  });
}

/** How far along the wall the through wall's face moves for each length across it, where the wall is a branch on the skew: cot φ. */
function leanOf(frame: PlanFrame, wall: PlanWall): number {
  if (!frame.storey.junctions.some(({ tee }) => tee?.branch === wall.wall.mark)) return 0;
  const [innerStart, innerEnd, outerEnd, outerStart] = wall.body.map((point) => dot(point, wall.along)) as [number, number, number, number];
  return Math.max(Math.abs(outerStart - innerStart), Math.abs(outerEnd - innerEnd)) / wall.wall.thickness;
}

function textsOf(frame: PlanFrame, wall: PlanWall, rows: readonly Row[], distance: number, side: number): Quad[] {
  const angle = readingAngle(wall.along);
  return rows.flatMap((row) =>
    row.texts.map((text) =>
      textQuad(frame.sheet, textPoint(frame, wall, text, distance + row.beyondMm, side), text.text, TEXT_MM.small, angle),
    ),
  );
}

function drawRow(frame: PlanFrame, wall: PlanWall, row: Row, lineMm: number, side: number): void {
  const angle = readingAngle(wall.along);
  const face = offsetOf(frame, wall, 0, side);
  const line = offsetOf(frame, wall, lineMm, side);
  const on = (station: Nm, offset: number): { x: number; y: number } => frame.toSheet(wall.at(station, offset));
  const [first, last] = [row.stations[0] as Nm, row.stations.at(-1) as Nm];
  frame.obstacles.addLine(wall.at(first, line), wall.at(last, line), frame.sheet.mm(LINE_MM));
  row.texts.forEach((text, i) => {
    const [from, to] = [row.stations[i] as Nm, row.stations[i + 1] as Nm];
    const at = textPoint(frame, wall, text, lineMm, side);
    if (text.tier > 0) {
      frame.sheet.line(
        'dimension',
        on((from + to) / 2, line),
        on(text.station, offsetOf(frame, wall, lineMm + text.tier * TIER_MM - 1.3, side)),
      );
    }
    for (const station of [from, to])
      frame.obstacles.addLine(
        wall.at(station, face),
        wall.at(station, offsetOf(frame, wall, lineMm + LINE_MM, side)),
        frame.sheet.mm(LINE_MM),
      );
    frame.sheet.dimension(on(from, face), on(to, face), on(from, line), on(to, line), text.text, frame.toSheet(at), angle);
  });
}
