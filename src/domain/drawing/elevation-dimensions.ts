import type { Nm } from '../quantity/length.js';
import { dimensionRow } from './dimension-row.js';
import type { RowPart } from './dimension-row.js';
import { teesOn, unmarkedOpenings } from './elevation-openings.js';
import type { ElevationFrame, WallEnd, WallReach } from './elevation-frame.js';
import { spreadLevels, tierLabels } from './label-tiers.js';
import type { PlacedLabel } from './label-tiers.js';
import { lengthLabel } from './length-label.js';
import { TEXT_MM } from './sheet.js';
import { fitText } from './text-width.js';

const FIRST_ROW_MM = 6.5;
const TOP_GAP_MM = 4.2;
const TOP_TIER_MM = 3.4;
const STACK_LINE_MM = 7.5;
const STACK_TEXT_MM = 1.5;
const STACK_GAP_MM = 2.6;
const LEAST_COURSE_MM = 3.2;
const LEVEL_GAP_MM = 3.1;
const LEVEL_TEXT_MM = 6;
const LONGEST_LABEL_MM = 60;

/**
 * Rows under the wall: openings along the dimension line, the dimension line itself, the axis from node to node.
 *
 * @returns the height under which the next thing may stand [nm]
 */
export function drawLengths(frame: ElevationFrame): Nm {
  const { wall, sheet, units } = frame;
  const measured = frame.y(0);
  const start = -wall.startOffset;
  const end = wall.dimensionLength - wall.startOffset;
  let line = measured - sheet.mm(FIRST_ROW_MM);
  const jambs = wall.openings.flatMap((opening) => [opening.from, opening.to]).filter((at) => at > start && at < end).sort((a, b) => a - b);
  if (jambs.length > 0) {
    const stations = [start, ...jambs, end];
    const parts = stations.slice(1).map((to, i) => part(frame, stations[i] as Nm, to, [lengthLabel(to - (stations[i] as Nm), units)]));
    line = dimensionRow(sheet, inOrder(parts), line, measured, frame.edges);
  }
  const same = wall.startOffset === 0 && wall.dimensionLength === wall.length;
  const over = lengthLabel(wall.dimensionLength, units);
  line = dimensionRow(sheet, [part(frame, start, end, [`${over} ${same ? 'along the axis' : 'along the dimension line'}`, over])], line, measured, frame.edges);
  if (same) return line;
  const axis = lengthLabel(wall.length, units);
  return dimensionRow(sheet, [part(frame, 0, wall.length, [`${axis} axis, node to node`, `${axis} axis`, axis])], line, measured, frame.edges);
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
  const top = frame.y(frame.wall.stack.height);
  const size = sheet.mm(TEXT_MM.small);
  const labels = topLabels(frame, reach).map((label) => ({ ...label, text: fitText(label.text, size, sheet.mm(LONGEST_LABEL_MM)) }));
  const placed = tierLabels(labels.map(({ at, text }) => ({ centre: at, width: sheet.widthOf(text, TEXT_MM.small) })), sheet.mm(2), {
    left: frame.edges.left,
    right: frame.span.right + sheet.mm(LEVEL_TEXT_MM),
  });
  const heightOf = (tier: number): Nm => top + sheet.mm(TOP_GAP_MM + tier * TOP_TIER_MM);
  labels.forEach((label, i) => {
    const { centre, tier } = placed[i] as PlacedLabel;
    const foot = label.layer === 'node' ? frame.y(0) - sheet.mm(3) : top;
    sheet.line(label.layer, { x: label.at, y: foot }, { x: label.at, y: top + sheet.mm(1.2) });
    sheet.line('rule', { x: label.at, y: top + sheet.mm(1.2) }, { x: label.at, y: heightOf(tier) - sheet.mm(1.6) });
    sheet.text({ x: centre, y: heightOf(tier) }, label.text, TEXT_MM.small, { anchor: 'middle', layer: label.layer === 'seam' ? 'seam' : 'text' });
  });
  return heightOf(Math.max(...placed.map(({ tier }) => tier)) + 1);
}

interface TopLabel {
  readonly at: Nm;
  readonly text: string;
  readonly layer: 'node' | 'seam' | 'rule';
}

function topLabels(frame: ElevationFrame, reach: WallReach): TopLabel[] {
  const seams = new Set(frame.wall.courses.flatMap((course) => course.headJoints.filter((joint) => joint.kind === 'seam').map((joint) => joint.at)));
  return [
    ...[reach.start, reach.end].map((end): TopLabel => ({ at: frame.x(end.node), text: endText(frame, end), layer: 'node' })),
    ...[...seams].map((at): TopLabel => ({ at: frame.x(at), text: 'seam', layer: 'seam' })),
    ...teesOn(frame).map(({ tee }): TopLabel => ({ at: frame.x((tee.cutFrom + tee.cutTo) / 2), text: `tee: wall ${tee.branch}`, layer: 'rule' })),
    ...unmarkedOpenings(frame).map((opening): TopLabel => ({ at: frame.x((opening.from + opening.to) / 2), text: opening.mark, layer: 'rule' })),
  ];
}

/** `end S1-J2: corner 45° left, wall B`. */
function endText(frame: ElevationFrame, end: WallEnd): string {
  const { junction } = end;
  const which = end.node === 0 ? 'start' : 'end';
  if (junction === null) return which;
  const others = junction.walls.filter((mark) => mark !== frame.wall.mark).join(', ');
  const turn = junction.kind === 'corner' ? ` ${turnText(junction.turn)}` : '';
  const kind = { 'free-end': 'free end', straight: 'straight on', corner: 'corner', tee: 'tee', crossing: 'crossing', unsettled: 'unsettled' }[junction.kind];
  return `${which} ${junction.id}: ${kind}${turn}${others === '' ? '' : `, wall ${others}`}`;
}

/** `90° left`, `22.5° right`: to a tenth of a degree. */
export const turnText = (turn: number): string => `${Math.round(Math.abs(turn) * 10) / 10}° ${turn < 0 ? 'right' : 'left'}`;

/** Left of the wall: every course and strip with its height, then the whole stack. */
export function drawStack(frame: ElevationFrame): void {
  const { sheet, wall, units } = frame;
  const edge = frame.span.left;
  const column = edge - sheet.mm(STACK_LINE_MM);
  const layers = stackLayers(frame);
  const middles = spreadLevels(layers.map(({ bottom, top }) => Math.round((frame.y(bottom) + frame.y(top)) / 2)), sheet.mm(STACK_GAP_MM));
  const widest = Math.max(...layers.map(({ text }) => sheet.widthOf(text, TEXT_MM.small)));
  layers.forEach((layer, i) => {
    const [bottom, top] = [frame.y(layer.bottom), frame.y(layer.top)];
    const textAt = { x: Math.round(column - sheet.mm(STACK_TEXT_MM) - sheet.widthOf(layer.text, TEXT_MM.small) / 2), y: middles[i] as Nm };
    sheet.dimension({ x: edge, y: bottom }, { x: edge, y: top }, { x: column, y: bottom }, { x: column, y: top }, layer.text, textAt);
    sheet.text({ x: edge - sheet.mm(4), y: Math.round((bottom + top) / 2) }, layer.number, TEXT_MM.small, { bold: true, anchor: 'middle' });
  });
  const total = Math.round(column - sheet.mm(STACK_TEXT_MM + 2.5) - widest);
  const [bottom, top] = [frame.y(0), frame.y(wall.stack.height)];
  const textAt = { x: total - sheet.mm(1.9), y: Math.round((bottom + top) / 2) };
  sheet.dimension({ x: column, y: bottom }, { x: column, y: top }, { x: total, y: bottom }, { x: total, y: top }, lengthLabel(wall.stack.height, units), textAt, 90);
}

interface StackLayer {
  readonly bottom: Nm;
  readonly top: Nm;
  /** Number of the course; `1–6` where equal courses are drawn as one, empty for a strip. */
  readonly number: string;
  readonly text: string;
}

/** Courses and strips upward; runs of equal courses are joined where a course is too low on paper to carry its figures. */
function stackLayers(frame: ElevationFrame): StackLayer[] {
  const { wall, units, sheet } = frame;
  const single = [
    ...wall.courses.map((course) => ({ ...course, number: course.n as number | null })),
    ...wall.strips.map((strip) => ({ ...strip, number: null })),
  ].sort((a, b) => a.bottom - b.bottom);
  const joined = wall.courses.some((course) => course.height < sheet.mm(LEAST_COURSE_MM));
  const layers: StackLayer[] = [];
  let run: typeof single = [];
  const close = (): void => {
    const [first, last] = [run[0], run.at(-1)];
    if (first === undefined || last === undefined) return;
    const each = lengthLabel(first.height, units);
    const text = run.length === 1 ? each : `${run.length} × ${each}`;
    const number = first.number === null ? '' : run.length === 1 ? String(first.number) : `${first.number}–${last.number}`;
    layers.push({ bottom: first.bottom, top: last.bottom + last.height, number, text });
    run = [];
  };
  for (const layer of single) {
    const before = run.at(-1);
    const joins = joined && before !== undefined && before.height === layer.height && before.number !== null && layer.number !== null;
    if (!joins) close();
    run.push(layer);
  }
  close();
  return layers;
}

/** Right of the wall: levels of base, sills, heads, top of forms and the height asked for. */
export function drawLevels(frame: ElevationFrame): void {
  const { sheet } = frame;
  const levels = levelsOf(frame);
  const spread = spreadLevels(levels.map(({ level }) => frame.y(level)), sheet.mm(LEVEL_GAP_MM));
  const edge = frame.span.right + sheet.mm(1);
  levels.forEach(({ level, text }, i) => {
    const y = frame.y(level);
    const at = spread[i] as Nm;
    sheet.polyline('rule', [{ x: edge, y }, { x: edge + sheet.mm(2.2), y }, { x: edge + sheet.mm(4.4), y: at }, { x: edge + sheet.mm(LEVEL_TEXT_MM - 0.8), y: at }]);
    sheet.text({ x: edge + sheet.mm(LEVEL_TEXT_MM), y: at }, text, TEXT_MM.small);
  });
}

/** @returns levels above the wall's base, ascending, one label for all that share a level [nm] */
export function levelsOf(frame: Pick<ElevationFrame, 'wall' | 'storey' | 'units'>): { readonly level: Nm; readonly text: string }[] {
  const { wall, units } = frame;
  const named = new Map<Nm, string[]>();
  const add = (level: Nm, name: string): void => {
    const names = named.get(level) ?? [];
    if (!names.includes(name)) named.set(level, [...names, name]);
  };
  add(0, wall.base === 0 ? (frame.storey.onFooting ? 'footing' : 'storey bottom') : 'wall base');
  for (const opening of wall.openings) {
    if (opening.sill > 0) add(opening.sill, 'sill');
    if (opening.head < wall.stack.height) add(opening.head, 'head');
  }
  add(wall.stack.height, 'top');
  if (wall.stack.deviation !== 0) add(wall.askedHeight, 'asked');
  return [...named].sort(([a], [b]) => a - b).map(([level, names]) => ({ level, text: `${lengthLabel(level, units)} ${names.join(', ')}` }));
}
