import { toMm } from '../quantity/length.js';
import type { Nm } from '../quantity/length.js';
import { psfToKpa } from '../quantity/us-customary.js';
import type { FormRange } from '../range/range.js';
import { bendThrustLbPerFt, panelForceLb } from '../reinforcement/thrust.js';
import type { LengthUnit } from '../schedule/schedule.js';
import type { Junction, LaidStorey, LaidWall } from '../takeoff/laid.js';
import { detailViews } from './detail-legs.js';
import { levelOf, mitreNotes } from './detail-level.js';
import type { DetailView } from './detail-legs.js';
import { drawTeeWork, stationOf } from './detail-tee.js';
import { drawView } from './detail-view.js';
import type { DetailFrame } from './detail-view.js';
import { scaleLadder } from './drawing-scale.js';
import type { DrawingScale, ScaleSpan } from './drawing-scale.js';
import { turnText } from './elevation-dimensions.js';
import { TINT } from './ink.js';
import { lengthLabel } from './length-label.js';
import { lookOf } from './piece-look.js';
import { extentOf } from './shape-extent.js';
import type { Drawing, SheetHeader } from './shapes.js';
import { Sheet, TEXT_MM } from './sheet.js';
import type { Box } from './sheet.js';
import { drawFurniture, furnitureHeightMm } from './sheet-furniture.js';
import type { Furniture, LegendEntry } from './sheet-furniture.js';

const SCALES: ScaleSpan = { imperial: { usual: 12, farthest: 24 }, metric: { usual: 10, farthest: 25 } };
const LEAST_WIDTH_MM = 184;
const EDGE_MM = 6;
const GAP_MM = 10;
const CAPTION_MM = 8;
const NEWTONS_PER_LB = 4.4482216152605;
const LB_PER_FT_TO_KN_PER_M = NEWTONS_PER_LB / 304.8;

/**
 * A corner, tee or end from above: how its units stand in alternate courses, leg lengths on the convex face, cut-out and pin of a
 * tee, and the force that the bracing must take.
 *
 * @param psf concrete pressure on this storey and core [lb/ft²]; null leaves the force without a figure
 */
export function junctionDetail(
  junction: Junction,
  storey: LaidStorey,
  range: FormRange,
  units: LengthUnit,
  header: SheetHeader,
  psf: number | null = null,
): Drawing {
  const level = levelOf(junction, storey);
  const job: DetailJob = { junction, storey: level, range, units, header, force: forceWords(junction, level, units, psf) };
  const ladder = scaleLadder(units, SCALES);
  for (const { scale, field } of ladder) {
    const drawing = detailAt(job, scale);
    if (toMm(drawing.width) / scale.denominator <= field.width && toMm(drawing.height) / scale.denominator <= field.height)
      return drawing;
  }
  return detailAt(job, (ladder.at(-1) as (typeof ladder)[number]).scale);
}

interface DetailJob {
  readonly junction: Junction;
  readonly storey: LaidStorey;
  readonly range: FormRange;
  readonly units: LengthUnit;
  readonly header: SheetHeader;
  readonly force: string | null;
}

function detailAt(job: DetailJob, scale: DrawingScale): Drawing {
  const { junction, storey, range } = job;
  const views = detailViews(junction, storey, range);
  const boxes = views.map((view) => {
    const scratch = new Sheet(scale.denominator);
    paint(frameOf(job, scratch, { x: 0, y: 0 }), view);
    const caption = captionOf(view, job);
    const box = extentOf(scratch.drawing({ name: '', title: '', scaleText: '', width: 0, height: 0 }).shapes);
    const spare = Math.max(0, scratch.widthOf(caption, TEXT_MM.body, true) - (box.right - box.left)) / 2;
    return { ...box, left: box.left - Math.ceil(spare), right: box.right + Math.ceil(spare) };
  });
  const sheet = new Sheet(scale.denominator);
  const furniture = furnitureOf(job, views, scale);
  const widest = boxes.reduce((sum, box) => sum + box.right - box.left, 0) + sheet.mm(GAP_MM * (boxes.length - 1) + 2 * EDGE_MM);
  const width = Math.max(widest, sheet.mm(LEAST_WIDTH_MM));
  const foot = sheet.mm(Math.ceil(furnitureHeightMm(furniture, width / sheet.mm(1))) + 2);
  const tallest = Math.max(...boxes.map((box) => box.top - box.bottom));
  let left = sheet.mm(EDGE_MM) + Math.floor((width - widest) / 2);
  views.forEach((view, i) => {
    const box = boxes[i] as Box;
    const bottom = foot + sheet.mm(CAPTION_MM) + Math.floor((tallest - (box.top - box.bottom)) / 2);
    paint(frameOf(job, sheet, { x: left - box.left, y: bottom - box.bottom }), view);
    const middle = left + Math.round((box.right - box.left) / 2);
    sheet.text({ x: middle, y: foot + sheet.mm(CAPTION_MM / 2) }, captionOf(view, job), TEXT_MM.body, {
      bold: true,
      anchor: 'middle',
    });
    left += box.right - box.left + sheet.mm(GAP_MM);
  });
  const height = foot + sheet.mm(CAPTION_MM + EDGE_MM) + tallest;
  drawFurniture(sheet, furniture, width, height);
  return sheet.drawing({ name: `junction-${junction.id}`, title: furniture.heading, scaleText: scale.text, width, height });
}

function frameOf(job: DetailJob, sheet: Sheet, shift: { x: Nm; y: Nm }): DetailFrame {
  return { ...job, sheet, toSheet: (point) => ({ x: point.x + shift.x, y: point.y + shift.y }) };
}

function paint(frame: DetailFrame, view: DetailView): void {
  drawView(frame, view);
  if (frame.junction.kind === 'tee') drawTeeWork(frame);
}

/** `Courses 1, 3, 5: SQ6-L`. */
function captionOf(view: DetailView, { junction }: DetailJob): string {
  const skus = [...new Set([...view.legs.values()].map(({ sku }) => sku))].join(', ');
  const courses =
    view.courses.length === 0 ? '' : `${view.courses.length === 1 ? 'Course' : 'Courses'} ${courseList(view.courses)}`;
  const none = view.mitred === null ? 'no unit of the range, by advice' : `${view.mitred} forms to the mitre, no corner unit`;
  const words = junction.kind === 'corner' && skus === '' ? none : skus;
  return [courses, words].filter((part) => part !== '').join(': ');
}

/** `1, 3, 5`; `1–6` where they follow each other; shortened where there are many. */
function courseList(courses: readonly number[]): string {
  const [first = 0, last = 0] = [courses[0], courses.at(-1)];
  if (courses.length > 2 && last - first === courses.length - 1) return `${first}–${last}`;
  return courses.length <= 8 ? courses.join(', ') : `${courses.slice(0, 3).join(', ')} to ${last}`;
}

function forceWords(junction: Junction, storey: LaidStorey, units: LengthUnit, psf: number | null): string | null {
  const wall = storey.walls.find(({ mark }) => mark === (junction.tee?.through ?? junction.walls[0]));
  if (psf === null || wall === undefined) return null;
  const metric = units === 'mm' || units === 'm';
  const at = metric ? `${psfToKpa(psf).toFixed(1)} kPa` : `${Math.round(psf)} psf`;
  if (junction.tee !== null) {
    const force = panelForceLb(psf, junction.tee.cutTo - junction.tee.cutFrom, courseHeight(wall, junction));
    return `${metric ? `${((force * NEWTONS_PER_LB) / 1000).toFixed(2)} kN` : `${Math.round(force)} lb`} per course at ${at}`;
  }
  if (junction.kind !== 'corner') return null;
  const thrust = bendThrustLbPerFt(psf, wall.core.width, junction.turn);
  return `${metric ? `${(thrust * LB_PER_FT_TO_KN_PER_M).toFixed(2)} kN/m` : `${Math.round(thrust)} lb/ft`} of height at ${at}`;
}

/** The highest course in which the junction stands. */
const courseHeight = (wall: LaidWall, junction: Junction): Nm =>
  Math.max(0, ...wall.courses.filter(({ n }) => junction.courses.includes(n)).map(({ height }) => height));

const KIND: Readonly<Record<Junction['kind'], string>> = {
  'free-end': 'free end',
  straight: 'straight on',
  corner: 'corner',
  tee: 'tee',
  crossing: 'crossing',
  unsettled: 'unsettled junction',
};

function furnitureOf(
  { junction, storey, range, units, header }: DetailJob,
  views: readonly DetailView[],
  scale: DrawingScale,
): Furniture {
  const turn = junction.kind === 'corner' ? `, turn ${turnText(junction.turn)}` : '';
  return {
    legend: legendOf(junction, views),
    notes: [
      ...junction.walls.map((mark) => wallNote(mark, storey, units)),
      ...workNotes(junction, storey, range, units),
      ...mitreNotes(views, storey, junction, units),
    ],
    heading: `Junction ${junction.id}`,
    detail: `${KIND[junction.kind]} of ${junction.walls.join(', ')}${turn}`,
    scaleText: scale.text,
    header,
  };
}

function wallNote(mark: string, storey: LaidStorey, units: LengthUnit): string {
  const wall = storey.walls.find((candidate) => candidate.mark === mark);
  if (wall === undefined) return mark;
  const panel = Math.round((wall.thickness - wall.core.width) / 2);
  const [core, foam, over] = [wall.core.width, panel, wall.thickness].map((length) => lengthLabel(length, units));
  return `Wall ${mark}: core ${core}, panels ${foam}, ${over} over the forms`;
}

function workNotes(junction: Junction, storey: LaidStorey, range: FormRange, units: LengthUnit): string[] {
  if (junction.tee !== null) {
    const through = storey.walls.find(({ mark }) => mark === junction.tee?.through);
    const middle = through === undefined ? 0 : Math.round(stationOf(through, junction.at) + through.startOffset);
    return [
      `Branch ${junction.tee.branch} meets ${junction.tee.through} ${lengthLabel(middle, units)} from its start`,
      `Pin wired to web ${range.parameters.teeTieWeb} of ${junction.tee.branch}`,
      'Push on the far panel = pressure × cut-out × course height',
    ];
  }
  if (junction.kind !== 'corner') return [];
  return [
    ...(junction.unit === 'corner-hinged' ? ['Hinged unit: cut the inner hinge wall away, the core runs through'] : []),
    ...(junction.unit === 'corner-pair' ? ['Sawn from a paired blank'] : []),
    'Outward thrust = 2 × pressure × core × sin(turn / 2), per unit of height',
  ];
}

function legendOf(junction: Junction, views: readonly DetailView[]): LegendEntry[] {
  const sample = (
    text: string,
    fill: string,
    pattern: LegendEntry['pattern'] = null,
    stroke: LegendEntry['stroke'] = null,
  ): LegendEntry => ({ text, fill, pattern, stroke });
  const hands = new Set(views.flatMap(({ legs }) => [...legs.values()].map(({ hand }) => hand)));
  return [
    sample('form panel', TINT.foam),
    sample('concrete core', TINT.concrete),
    ...(['left', 'right'] as const)
      .filter((hand) => hands.has(hand))
      .map((hand) => {
        const look = lookOf(`corner-${hand}`);
        return sample(`corner unit, ${hand} hand`, look.fill, look.pattern);
      }),
    ...(junction.kind === 'free-end' ? [sample('end closure', TINT.closure)] : []),
    ...(views.some(({ mitred }) => mitred === 'ledge') ? [sample('outer edge of a ledge', TINT.foam, null, 'ledge')] : []),
    ...(junction.kind === 'tee'
      ? [
          sample('panel without webs', TINT.foam, 'crossed'),
          sample('pin bar', TINT.paper, null, 'seam'),
          sample('wire', TINT.paper, null, 'hidden'),
        ]
      : []),
  ];
}
