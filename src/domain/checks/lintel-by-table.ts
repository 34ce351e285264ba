import { METRIC_BARS } from '../engineering/csa-g30-18/bars.js';
import { flexuralStrength } from '../engineering/aci-318-14/flexural-strength.js';
import { lintelSpan } from '../engineering/obc-2024/lintel-span.js';
import { lintelTableRow, LINTEL_TABLE_SOURCE, tableStirrups } from './lintel-table-row.js';
import { LINTEL_COVER_IN, LINTEL_FC_PSI } from './lintel-place.js';
import { NM_PER_METRE, toMm, type Nm } from '../quantity/length.js';

const THICKNESSES_MM = [140, 150, 160, 190, 200, 240] as const;
/** The deepest row [mm]. */
const DEEPEST_MM = 600;
const MM_PER_INCH = 25.4;
/** Grade 400 [psi]. */
const METRIC_FY_PSI = 58_015;
const FLEXURE_PHI = 0.9;

/** What a lintel is looked up with: the clear opening, the core, the least concrete above, storeys above and snow of the site. */
export interface TableQuestion {
  readonly clear: Nm;
  readonly core: Nm;
  readonly least: Nm;
  readonly storeysAbove: number;
  readonly snowKpa: number | undefined;
  /** Factored moment that ACI 318 finds for the stated loads [in·lb]. */
  readonly momentInLb: number;
}

export type TableAnswer =
  | { readonly found: false; readonly why: string }
  | { readonly found: true; readonly results: Readonly<Record<string, number | string>> };

/**
 * Bars of a lintel by the tables of the Ontario code. A thickness between two rows takes the shorter span of the two (common practice);
 * a wall deeper than the tables go is read at their deepest. Bars that do not carry the stated loads by ACI 318 are no answer.
 *
 * @returns what to print, or why the tables do not answer
 * @source obc-2024 Tables 9.20.17.4.-A to -C
 */
export function lintelByTable({ clear, core, least, storeysAbove, snowKpa, momentInLb }: TableQuestion): TableAnswer {
  if (snowKpa === undefined) return { found: false, why: 'the snow load of the site is not stated' };
  if (storeysAbove > 1) return { found: false, why: 'more than one storey above' };
  const width = toMm(core);
  const depthMm = Math.min(DEEPEST_MM, toMm(least));
  const beside = [THICKNESSES_MM.findLast((each) => each <= width), THICKNESSES_MM.find((each) => each >= width)];
  const supports = storeysAbove === 0 ? 'roof' : 'storey-and-roof';
  const { table, longestM } = lintelTableRow(clear / NM_PER_METRE, (at) => {
    const both = beside.map((thick) => (thick === undefined ? null : lintelSpan(at, thick, depthMm, supports, snowKpa)));
    return both.some((each) => each === null) ? null : Math.min(...both.map((each) => each ?? 0));
  });
  if (table === null) return { found: false, why: 'outside the tables' };
  const share = momentInLb / strengthInLb(table.bars, toMm(clear), depthMm, width);
  if (share > 1) return { found: false, why: `the loads ask more than its ${table.bars} carries by ACI 318` };
  return {
    found: true,
    results: {
      by: 'obc-2024', table: LINTEL_TABLE_SOURCE, bars: table.bars, barsFrom: table.barsFrom, stirrups: tableStirrups(toMm(clear)), depthMm, longestSpanMm: longestM * 1000,
      governs: 'table', crossCheck: 'aci-318-14', momentShare: share,
    },
  };
}

/** Strength of the table's bars by ACI 318, with the cover of a lintel. */
function strengthInLb(bars: string, clearMm: number, depthMm: number, widthMm: number): number {
  const [count, name] = bars.split('-') as [string, keyof typeof METRIC_BARS];
  const { areaMm2, diameterMm } = METRIC_BARS[name];
  const tie = tableStirrups(clearMm) === 'none' ? 0 : METRIC_BARS['10M'].diameterMm;
  const dIn = (depthMm - tie - diameterMm / 2) / MM_PER_INCH - LINTEL_COVER_IN;
  return flexuralStrength((Number(count) * areaMm2) / MM_PER_INCH ** 2, dIn, widthMm / MM_PER_INCH, LINTEL_FC_PSI, METRIC_FY_PSI, FLEXURE_PHI);
}
