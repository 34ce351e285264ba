import { topOfWall } from '../takeoff/index.js';
import type { Nm } from '../quantity/length.js';
import type { Junction } from '../takeoff/laid.js';
import { dimensionRow } from './dimension-row.js';
import type { RowPart } from './dimension-row.js';
import { numberBraces } from './elevation-bracing.js';
import { teesOn } from './elevation-branches.js';
import { unmarkedOpenings } from './elevation-openings.js';
import { isAt } from './elevation-frame.js';
import type { ElevationFrame, WallEnd, WallReach } from './elevation-frame.js';
import { SLOPE_ROOM_MM, dimensionSlopes } from './elevation-slopes.js';
import { LEVEL_TEXT_MM } from './elevation-stack.js';
import { measureOf } from './arc-measure.js';
import { tierLabels } from './label-tiers.js';
import type { PlacedLabel } from './label-tiers.js';
import { lengthLabel } from './length-label.js';
import { TEXT_MM } from './sheet.js';
import { topAt } from './slope-outline.js';
import { fitText } from './text-width.js';

const FIRST_ROW_MM = 5.8;
const TOP_GAP_MM = 4.2;
const TOP_TIER_MM = 3.4;
const LONGEST_LABEL_MM = 72;

/**
 * Rows under the wall: braces under their numbers, openings and cut-outs of tees along the dimension line, the dimension line itself, the axis from node to node.
 *
 * @returns the height under which the next thing may stand [nm]
 */
export function drawLengths(frame: ElevationFrame): Nm {
  const { wall, sheet, units } = frame;
  const measured = frame.y(0);
  const measure = measureOf(wall, frame.storey);
  const { start, end } = measure;
  const rows: RowPart[][] = [];
  const braced = frame.braces.map(({ at }) => at).filter((at) => at > start && at < end);
  if (braced.length > 0) rows.push(betweenStations(frame, [start, ...braced, end]));
  const jambs = wall.openings
    .flatMap((opening) => [opening.from, opening.to])
    .filter((at) => at > start && at < end)
    .sort((a, b) => a - b);
  if (jambs.length > 0) rows.push(betweenStations(frame, [start, ...jambs, end]));
  rows.push(...cutRows(teesOn(frame).map(({ tee }) => tee)).map((cuts) => cutParts(frame, start, cuts, end)).filter((parts) => parts.length > 1));
  const peak = wall.gable?.peakAt ?? start;
  if (peak > start && peak < end) {
    const texts = (length: Nm): string[] => [`${lengthLabel(length, units)} to the peak`, lengthLabel(length, units)];
    rows.push([part(frame, start, peak, texts(peak - start)), part(frame, peak, end, texts(end - peak))]);
  }
  const same = measure.along === 'axis' || (wall.startOffset === 0 && wall.dimensionLength === wall.length);
  const over = lengthLabel(measure.length, units);
  rows.push([part(frame, start, end, [`${over} ${same ? 'along the axis' : 'along the dimension line'}`, ...(wall.arc === null ? [] : [`${over} as drawn`]), over])]);
  const axis = lengthLabel(wall.length, units);
  if (!same) rows.push([part(frame, 0, wall.length, [`${axis} axis, node to node`, `${axis} axis`, axis])]);
  const numbers = numberBraces(frame, [...new Set(rows.flatMap((row) => row.flatMap(({ from, to }) => [from, to])))]);
  return rows.reduce((line, parts, i) => {
    const crossing = rows.slice(i + 1).flatMap((row) => row.flatMap(({ from, to }) => [from, to]));
    return dimensionRow(sheet, inOrder(parts), line, measured, frame.edges, [...new Set(crossing)]);
  }, measured - sheet.mm(FIRST_ROW_MM) - numbers);
}

/** From each station to the next, along the line that the wall is measured on. */
function betweenStations(frame: ElevationFrame, stations: readonly Nm[]): RowPart[] {
  const measure = measureOf(frame.wall, frame.storey);
  return stations.slice(1).map((to, i) => {
    const from = stations[i] as Nm;
    return part(frame, from, to, [lengthLabel(measure.of(to - from), frame.units)]);
  });
}

interface Cut {
  readonly cutFrom: Nm;
  readonly cutTo: Nm;
}

/** Cut-outs in as many rows as are needed for none to lie over another: branches on both sides of the wall may stand opposite. */
function cutRows(cuts: readonly Cut[]): Cut[][] {
  const rows: Cut[][] = [];
  for (const cut of [...cuts].sort((a, b) => a.cutFrom - b.cutFrom)) {
    if (rows.some((row) => row.some(({ cutFrom, cutTo }) => cutFrom === cut.cutFrom && cutTo === cut.cutTo))) continue;
    const free = rows.find((row) => (row.at(-1) as Cut).cutTo <= cut.cutFrom);
    if (free === undefined) rows.push([cut]);
    else free.push(cut);
  }
  return rows;
}

/** From the start to the near edge of each cut-out, and its width. */
function cutParts(frame: ElevationFrame, start: Nm, cuts: readonly Cut[], end: Nm): RowPart[] {
  const edges = cuts.flatMap(({ cutFrom, cutTo }) => [cutFrom, cutTo]).filter((at) => at > start && at < end);
  const stations = [start, ...[...new Set(edges)].sort((a, b) => a - b), end];
  return stations.slice(1).map((to, i) => {
    const from = stations[i] as Nm;
    const cut = cuts.some(({ cutFrom, cutTo }) => cutFrom <= from && cutTo >= to);
    return part(frame, from, to, [`${lengthLabel(to - from, frame.units)}${cut ? ' cut-out' : ''}`]);
  });
}

function part(frame: ElevationFrame, from: Nm, to: Nm, texts: readonly string[]): RowPart {
  const [a, b] = [frame.x(from), frame.x(to)];
  return { from: Math.min(a, b), to: Math.max(a, b), texts };
}

const inOrder = (parts: readonly RowPart[]): RowPart[] => [...parts].sort((a, b) => a.from - b.from);

/**
 * Labels over the wall: what stands at its ends, tees, seams, and openings too small for their mark.
 *
 * @returns the height over which the next thing may stand [nm]
 */
export function drawTopLabels(frame: ElevationFrame, reach: WallReach): Nm {
  const { sheet } = frame;
  const { gable } = frame.wall;
  const top = frame.y(topOfWall(frame.wall)) + (gable === null ? 0 : sheet.mm(SLOPE_ROOM_MM));
  const size = sheet.mm(TEXT_MM.small);
  const labels = topLabels(frame, reach).map((label) => ({
    ...label,
    text: fitText(label.text, size, sheet.mm(LONGEST_LABEL_MM)),
  }));
  const placed = tierLabels(
    labels.map(({ at, text }) => ({ centre: at, width: sheet.widthOf(text, TEXT_MM.small) })),
    sheet.mm(2),
    {
      left: frame.edges.left,
      right: frame.span.right + sheet.mm(LEVEL_TEXT_MM),
    },
  );
  const heightOf = (tier: number): Nm => top + sheet.mm(TOP_GAP_MM + tier * TOP_TIER_MM);
  labels.forEach((label, i) => {
    const { centre, tier } = placed[i] as PlacedLabel;
    const own = frame.y(Math.round(topAt(frame.wall, label.station)));
    const foot = label.layer === 'node' ? frame.y(0) - sheet.mm(3) : own;
    sheet.line(label.layer, { x: label.at, y: foot }, { x: label.at, y: own + sheet.mm(1.2) });
    sheet.line('rule', { x: label.at, y: own + sheet.mm(1.2) }, { x: label.at, y: heightOf(tier) - sheet.mm(1.6) });
    sheet.text({ x: centre, y: heightOf(tier) }, label.text, TEXT_MM.small, {
      anchor: 'middle',
      layer: label.layer === 'seam' ? 'seam' : 'text',
    });
  });
  dimensionSlopes(frame, labels.map(({ at }) => at));
  return heightOf(Math.max(...placed.map(({ tier }) => tier)) + 1);
}

interface TopLabel {
  readonly station: Nm;
  /** On the sheet. */
  readonly at: Nm;
  readonly text: string;
  readonly layer: 'node' | 'seam' | 'rule';
}

function topLabels(frame: ElevationFrame, reach: WallReach): TopLabel[] {
  const seams = new Set(
    frame.wall.courses.flatMap((course) => course.headJoints.filter((joint) => joint.kind === 'seam').map((joint) => joint.at)),
  );
  const label = (station: Nm, text: string, layer: TopLabel['layer']): TopLabel => ({ station, at: frame.x(station), text, layer });
  const tees = new Map(teesOn(frame).map(({ tee }) => [tee.branch, (tee.cutFrom + tee.cutTo) / 2]));
  return [
    ...[reach.start, reach.end].map((end) => label(end.node, endText(frame, end), 'node')),
    ...[...seams].map((at) => label(at, 'seam', 'seam')),
    ...[...tees].map(([branch, middle]) => label(middle, `tee: wall ${branch}`, 'rule')),
    ...unmarkedOpenings(frame).map((opening) => label((opening.from + opening.to) / 2, opening.mark, 'rule')),
  ];
}

/** `end S1-J2: corner 45° left, wall B`. */
function endText(frame: ElevationFrame, end: WallEnd): string {
  const { junction } = end;
  const which = end.node === 0 ? 'start' : 'end';
  if (junction === null) return which;
  const others = junction.walls.filter((mark) => mark !== frame.wall.mark).join(', ');
  const made = junction.unit === null ? ', by advice' : '';
  const angle = end.skew === 0 ? '' : ` ${sharpAngle(junction.turn)}°`;
  const turn = junction.kind === 'corner' ? ` ${turnText(junction.turn)}${made}` : angle;
  const kind = {
    'free-end': 'free end',
    straight: 'straight on',
    corner: 'corner',
    tee: 'tee',
    crossing: 'crossing',
    unsettled: 'unsettled',
  }[junction.kind];
  return `${which} ${junction.id}: ${kind}${turn}${others === '' ? '' : `, wall ${others}`}${aboveText(frame, junction)}`;
}

/** `, by advice above 5'-4"` where cores of two widths meet over a corner that has its unit. */
function aboveText({ wall, storey, units }: ElevationFrame, below: Junction): string {
  const advised = storey.junctions.find(
    (junction) => junction.id !== below.id && isAt(junction, below.id) && junction.kind === 'corner' && junction.unit === null,
  );
  const first = storey.walls.find(({ mark }) => mark === advised?.walls[0]);
  const bed = first?.courses.find(({ n }) => n === advised?.courses[0])?.bottom;
  return below.unit === null || bed === undefined || first === undefined ? '' : `, by advice above ${lengthLabel(first.base + bed - wall.base, units)}`;
}

/** Of the two angles at a tee the sharp one, to a tenth of a degree. */
const sharpAngle = (turn: number): number => Math.round(Math.min(Math.abs(turn), 180 - Math.abs(turn)) * 10) / 10;

/** `90° left`, `22.5° right`: to a tenth of a degree. */
export const turnText = (turn: number): string => `${Math.round(Math.abs(turn) * 10) / 10}° ${turn < 0 ? 'right' : 'left'}`;
