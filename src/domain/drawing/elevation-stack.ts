import { topOfWall } from '../takeoff/index.js';
import type { Nm } from '../quantity/length.js';
import type { ElevationFrame } from './elevation-frame.js';
import { featureHeights } from './elevation-features.js';
import { slopeSideMm } from './elevation-slopes.js';
import { spreadLevels } from './label-tiers.js';
import { lengthLabel } from './length-label.js';
import { TEXT_MM } from './sheet.js';

/** Of one more height beside the stack's own [mm of paper]. */
export const HEIGHT_COLUMN_MM = 5;
const STACK_LINE_MM = 7.5;
const STACK_TEXT_MM = 1.5;
const STACK_GAP_MM = 2.6;
const LEAST_COURSE_MM = 3.2;
const LEVEL_GAP_MM = 3.1;
const LOW_MM = 2.2;
/** Where the words of the levels begin, right of the wall [mm of paper]. */
export const LEVEL_TEXT_MM = 6;

/** Left of the wall: every course and strip with its height, then the whole stack. */
export function drawStack(frame: ElevationFrame): void {
  const { sheet, wall } = frame;
  const edge = frame.span.left - sheet.mm(slopeSideMm(wall));
  const column = edge - sheet.mm(STACK_LINE_MM);
  const layers = stackLayers(frame);
  const middles = spreadLevels(
    layers.map(({ bottom, top }) => Math.round((frame.y(bottom) + frame.y(top)) / 2)),
    sheet.mm(STACK_GAP_MM),
  );
  const last = layers.at(-1);
  // a last course lower than its figures has them over it, clear of its two lines
  const low = last !== undefined && last.top - last.bottom < sheet.mm(LOW_MM);
  if (low) middles[middles.length - 1] = frame.y(last.top) + sheet.mm(STACK_TEXT_MM);
  const widest = Math.max(0, ...layers.map(({ text }) => sheet.widthOf(text, TEXT_MM.small)));
  layers.forEach((layer, i) => {
    const [bottom, top] = [frame.y(layer.bottom), frame.y(layer.top)];
    const textAt = {
      x: Math.round(column - sheet.mm(STACK_TEXT_MM) - sheet.widthOf(layer.text, TEXT_MM.small) / 2),
      y: middles[i] as Nm,
    };
    sheet.dimension(
      { x: edge, y: bottom },
      { x: edge, y: top },
      { x: column, y: bottom },
      { x: column, y: top },
      layer.text,
      textAt,
    );
    const beside = low && layer === last ? textAt.y : Math.round((bottom + top) / 2);
    sheet.text({ x: edge - sheet.mm(4), y: beside }, layer.number, TEXT_MM.small, {
      bold: true,
      anchor: 'middle',
    });
  });
  const top = topOfWall(wall);
  const total = Math.round(column - sheet.mm(STACK_TEXT_MM + 2.5) - widest);
  heightDimension(frame, 0, wall.stack.height, column, total, []);
  if (top > wall.stack.height) heightDimension(frame, wall.stack.height, top, column, total, [' rise']);
  featureHeights(wall).forEach((height, i) => {
    const words = wall.ledges.some(({ bearing }) => bearing === height) ? [' to ledge', ''] : [' to bed', ''];
    heightDimension(frame, 0, height, total, total - sheet.mm(HEIGHT_COLUMN_MM * (i + 1)), words);
  });
}

/** An upright dimension left of the wall; the fullest of its wordings that fits between its ticks. */
function heightDimension(frame: ElevationFrame, from: Nm, to: Nm, edge: Nm, line: Nm, words: readonly string[]): void {
  const { sheet } = frame;
  const [bottom, top] = [frame.y(from), frame.y(to)];
  const length = lengthLabel(to - from, frame.units);
  const word = words.find((each) => sheet.widthOf(`${length}${each}`, TEXT_MM.small) <= top - bottom) ?? '';
  const textAt = { x: line - sheet.mm(1.9), y: Math.round((bottom + top) / 2) };
  sheet.dimension({ x: edge, y: bottom }, { x: edge, y: top }, { x: line, y: bottom }, { x: line, y: top }, `${length}${word}`, textAt, 90);
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
  const joined = wall.courses.some(({ height, top }) => !top && height < sheet.mm(LEAST_COURSE_MM));
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
    const joins =
      joined && before !== undefined && before.height === layer.height && before.number !== null && layer.number !== null;
    if (!joins) close();
    run.push(layer);
  }
  close();
  return layers;
}

/**
 * Right of the wall: levels of base, sills, heads, top of forms and the height asked for.
 *
 * @returns height over which the next thing may stand [nm]
 */
export function drawLevels(frame: ElevationFrame): Nm {
  const { sheet } = frame;
  const levels = levelsOf(frame);
  const spread = spreadLevels(
    levels.map(({ level }) => frame.y(level)),
    sheet.mm(LEVEL_GAP_MM),
  );
  const edge = frame.span.right + sheet.mm(1 + slopeSideMm(frame.wall));
  levels.forEach(({ level, text }, i) => {
    const y = frame.y(level);
    const at = spread[i] as Nm;
    sheet.polyline('rule', [
      { x: edge, y },
      { x: edge + sheet.mm(2.2), y },
      { x: edge + sheet.mm(4.4), y: at },
      { x: edge + sheet.mm(LEVEL_TEXT_MM - 0.8), y: at },
    ]);
    sheet.text({ x: edge + sheet.mm(LEVEL_TEXT_MM), y: at }, text, TEXT_MM.small);
  });
  return Math.max(0, ...spread) + sheet.mm(LEVEL_GAP_MM);
}

/** @returns levels above the wall's base, ascending, one label for all that share a level [nm] */
export function levelsOf(
  frame: Pick<ElevationFrame, 'wall' | 'storey' | 'units'>,
): { readonly level: Nm; readonly text: string }[] {
  const { wall, units } = frame;
  const named = new Map<Nm, string[]>();
  const add = (level: Nm, name: string): void => {
    const names = named.get(level) ?? [];
    if (!names.includes(name)) named.set(level, [...names, name]);
  };
  add(0, wall.base === 0 ? (frame.storey.onFooting ? 'footing' : 'storey bottom') : 'wall base');
  for (const opening of wall.openings) {
    if (opening.sill > 0) add(opening.sill, 'sill');
    if (opening.head < topOfWall(wall)) add(opening.head, 'head');
  }
  for (const { bearing, asked, face } of wall.ledges) {
    add(bearing, `ledge ${face}`);
    if (asked !== bearing) add(asked, 'ledge asked');
  }
  for (const { at, core } of wall.coreChanges) add(at, `core ${lengthLabel(core.width, units)} above`);
  add(wall.stack.height, wall.gable === null ? 'top' : 'foot of slope');
  if (wall.gable !== null) add(topOfWall(wall), 'peak');
  if (wall.stack.deviation !== 0) add(wall.askedHeight, 'asked');
  return [...named]
    .sort(([a], [b]) => a - b)
    .map(([level, names]) => ({ level, text: `${lengthLabel(level, units)} ${names.join(', ')}` }));
}
