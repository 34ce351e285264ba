import type { Nm } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import type { LengthUnit } from '../schedule/schedule.js';
import type { LaidCourse, LaidStorey, LaidWall } from '../takeoff/laid.js';
import { measureOf } from './arc-measure.js';
import { forceLabel, runsOf } from './drawn-bracing.js';
import type { NumberedBrace } from './drawn-bracing.js';
import type { ElevationFrame } from './elevation-frame.js';
import { TINT } from './ink.js';
import { besideLines, tierLabels } from './label-tiers.js';
import { lengthLabel } from './length-label.js';
import { TEXT_MM } from './sheet.js';
import type { LegendEntry } from './sheet-furniture.js';

/** Half of the bar at a brace's top [mm of paper]. */
const HEAD_MM = 1.3;
/** From the wall's base to the first row of numbers, and from row to row [mm of paper]. */
const NUMBER_MM = 4.3;
const NUMBER_ROW_MM = 2.8;
const PAD_MM = 0.8;
/** Paper that numbers and their row of dimensions take on most walls. */
export const BRACE_ROWS_MM = 9;
const STATIONS_A_NOTE = 6;

const topOf = ({ height }: NumberedBrace, { parameters }: FormRange): Nm => Math.min(parameters.braceTop, height);

/** An upright from the foot's level to the top of every brace, with a bar across its head: they stand behind the wall. */
export function drawBraces(frame: ElevationFrame): void {
  const { sheet, range } = frame;
  for (const brace of frame.braces) {
    const [x, head] = [frame.x(brace.at), frame.y(topOf(brace, range))];
    sheet.line('brace', { x, y: frame.y(0) }, { x, y: head });
    sheet.line('brace', { x: x - sheet.mm(HEAD_MM), y: head }, { x: x + sheet.mm(HEAD_MM), y: head });
  }
}

/** Stations of the braces that are drawn over a course. */
export const bracesOver = ({ braces, range }: ElevationFrame, course: LaidCourse): Nm[] =>
  braces.filter((brace) => topOf(brace, range) > course.bottom).map(({ at }) => at);

/**
 * The numbers of the braces under the wall, beside the extension lines of the rows that follow.
 *
 * @param crossing places of those lines
 * @returns height that the numbers take [nm]
 */
export function numberBraces(frame: ElevationFrame, crossing: readonly Nm[]): Nm {
  const { sheet, braces } = frame;
  if (braces.length === 0) return 0;
  const pad = sheet.mm(PAD_MM);
  const labels = braces.map(({ n, at }) => {
    const width = sheet.widthOf(String(n), TEXT_MM.tiny);
    return { centre: besideLines(frame.x(at), width + pad, crossing), width };
  });
  const placed = tierLabels(labels, pad, frame.edges);
  placed.forEach(({ centre, tier }, i) => {
    const y = frame.y(0) - sheet.mm(NUMBER_MM + tier * NUMBER_ROW_MM);
    sheet.text({ x: centre, y }, String(braces[i]?.n), TEXT_MM.tiny, { layer: 'brace', anchor: 'middle' });
  });
  return sheet.mm((Math.max(...placed.map(({ tier }) => tier)) + 1) * NUMBER_ROW_MM + PAD_MM);
}

/** `brace behind the wall, to 6'-0" up it, foot 5'-0" from the form`. */
export function braceEntries(braces: readonly NumberedBrace[], range: FormRange, units: LengthUnit): LegendEntry[] {
  if (braces.length === 0) return [];
  const highest = lengthLabel(Math.max(...braces.map((brace) => topOf(brace, range))), units);
  const foot = lengthLabel(range.parameters.braceFoot, units);
  return [{ text: `brace on the inside, behind the wall, to ${highest} up it, foot ${foot} from the form`, fill: TINT.full, pattern: null, stroke: 'brace' }];
}

/** Where the braces stand and what each of them takes; those that take the same are told together. */
export function braceNotes(braces: readonly NumberedBrace[], wall: LaidWall, storey: LaidStorey, units: LengthUnit): string[] {
  const measure = measureOf(wall, storey);
  const stations = braces.map(({ n, at }) => `${n} at ${lengthLabel(measure.of(at - measure.start), units)}`);
  const rows = Array.from({ length: Math.ceil(stations.length / STATIONS_A_NOTE) }, (_, i) =>
    `Braces from the start: ${stations.slice(i * STATIONS_A_NOTE, (i + 1) * STATIONS_A_NOTE).join(', ')}`,
  );
  const alike = new Map<string, number[]>();
  for (const brace of braces) {
    const text = forcesText(brace, units);
    alike.set(text, [...(alike.get(text) ?? []), brace.n]);
  }
  return [...rows, ...[...alike].map(([text, numbers]) => `Brace${numbers.length > 1 ? 's' : ''} ${runsOf(numbers)}${numbers.length > 1 ? ', each' : ''}: ${text}`)];
}

function forcesText({ axial, horizontal, uplift }: NumberedBrace, units: LengthUnit): string {
  if (axial === null || horizontal === null || uplift === null) return 'no force, the wind is outside the method';
  return `${forceLabel(axial, units)} axial, ${forceLabel(horizontal, units)} horizontal, ${forceLabel(uplift, units)} uplift`;
}
