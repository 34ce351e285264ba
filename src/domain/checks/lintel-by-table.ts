import { lintelSpan } from '../engineering/obc-2024/lintel-span.js';
import { LINTEL_TABLES } from '../engineering/obc-2024/lintel-tables.js';
import { NM_PER_METRE, toMm, type Nm } from '../quantity/length.js';

const THICKNESSES_MM = [140, 150, 160, 190, 200, 240] as const;
/** The deepest row [mm]. */
const DEEPEST_MM = 600;
const STIRRUPS_OVER_MM = 1200;
const SAME = 1e-9;

/**
 * Bars of a lintel by the tables of the Ontario code. A thickness between two rows takes the shorter span of the two (common practice);
 * a wall deeper than the tables go is read at their deepest.
 *
 * @returns what to print; `none` with why where the tables do not answer
 * @source obc-2024 Tables 9.20.17.4.-A to -C
 */
export function lintelByTable(clear: Nm, core: Nm, least: Nm, storeysAbove: number, snowKpa: number | undefined): Readonly<Record<string, number | string>> {
  if (snowKpa === undefined) return { table: 'none: the snow load of the site is not stated' };
  if (storeysAbove > 1) return { table: 'none: more than one storey above' };
  const supports = storeysAbove === 0 ? 'roof' : 'storey-and-roof';
  const width = toMm(core);
  const beside = [THICKNESSES_MM.findLast((each) => each <= width), THICKNESSES_MM.find((each) => each >= width)];
  const spans = LINTEL_TABLES.map((_, at) => {
    const both = beside.map((thick) => (thick === undefined ? null : lintelSpan(at, thick, Math.min(DEEPEST_MM, toMm(least)), supports, snowKpa)));
    return both.some((each) => each === null) ? null : Math.min(...both.map((each) => each ?? 0));
  });
  const chosen = spans.findIndex((longest) => longest !== null && longest >= clear / NM_PER_METRE - SAME);
  const table = LINTEL_TABLES[chosen];
  if (table === undefined) return { table: 'none: outside the tables' };
  return { table: 'obc-2024 9.20.17.4', tableBars: table.bars, tableBarsFrom: table.barsFrom, tableSpanMm: (spans[chosen] ?? 0) * 1000, tableStirrups: toMm(clear) > STIRRUPS_OVER_MM ? '10M @ d/2' : 'none' };
}
