import { cutStock, type CutBin, type CutPlan } from '../cutting/index.js';
import { failure, success } from '../evidence/result.js';
import { inches, NM_PER_FOOT, toMm, type Nm } from '../quantity/length.js';
import { CalculatorInput } from './calculator-input.js';
import { lengthInBoth, type Calculator, type CalculatorRow } from './calculator-answer.js';
import { readPieces, type PieceRow } from './cut-stock-pieces.js';
import type { TraceStep } from '../evidence/trace.js';

const SOURCE = 'geometry';
/** A hundred thousand pieces of this length are still summed exactly. */
const LONGEST_FT = 200;
const STOCK = { above: 0, to: LONGEST_FT * NM_PER_FOOT, says: `more than 0 and at most ${LONGEST_FT} ft` };
const KERF = { from: 0, to: inches(12), says: '0 or more and at most 12 in' };
const OFFCUT = { from: 0, to: LONGEST_FT * NM_PER_FOOT, says: `0 or more and at most ${LONGEST_FT} ft` };

/**
 * Pieces cut from stock of one length, buying few.
 *
 * Reads `stock`, `pieces` (rows of `length` and `count`), `kerf` (once a cut; a piece that ends at the stock's end needs none) and `minOffcut`.
 * Answers `bars` to buy, `lowerBound` (no plan has fewer), `waste`, `usableOffcut` (offcuts of at least `minOffcut`; without it every
 * offcut is waste) and `patterns`: how many bars are cut alike, the lengths in laying order and the offcut. Stock bought = pieces +
 * usable offcuts + waste; the kerf is in the waste.
 *
 * @source see `cutStock`
 */
export const cutStockCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['stock', 'kerf', 'minOffcut', 'pieces']);
  const stock = input.length('stock', '20 ft', STOCK);
  const kerf = input.orElse('kerf', () => input.length('kerf', '1/8 in', KERF), 0, 'kerf: 0 in');
  const minOffcut = input.orElse<Nm | null>('minOffcut', () => input.length('minOffcut', '2 ft', OFFCUT), null, 'minOffcut: none, every offcut is waste');
  const pieces = readPieces(fields['pieces'], stock ?? null, STOCK);
  const errors = [...input.errors, ...(pieces.ok ? [] : pieces.error)];
  if (errors.length > 0 || !pieces.ok || stock === undefined || kerf === undefined || minOffcut === undefined) return failure(errors);
  const items = pieces.value.flatMap(({ length, count }, row) => Array.from({ length: count }, () => ({ id: `${row + 1}`, length })));
  const plan = cutStock({ stock, kerf, items, ...(minOffcut === null ? {} : { minOffcut }) });
  const met = plan.bins.length === plan.lowerBound;
  return success({
    result: resultOf(plan),
    governs: met ? 'lower-bound' : 'search',
    trace: [materialBound(stock, kerf, pieces.value)],
    source: SOURCE,
    defaults: input.defaults,
    notes: [met ? 'No plan can do with fewer bars.' : 'The search ended above the lower bound; whether fewer bars would do is not known.'],
    findings: [],
  });
};

function resultOf({ bins, lowerBound, waste, usable }: CutPlan) {
  return { bars: bins.length, lowerBound, waste: lengthInBoth(waste), usableOffcut: lengthInBoth(usable), patterns: patternsOf(bins) };
}

/** Bars that are cut alike in one row, those cut most often first. */
function patternsOf(bins: readonly CutBin[]): readonly CalculatorRow[] {
  const alike = new Map<string, { readonly bin: CutBin; count: number }>();
  for (const bin of bins) {
    const key = bin.items.map(({ length }) => length).join(' ');
    const known = alike.get(key);
    if (known) known.count += 1;
    else alike.set(key, { bin, count: 1 });
  }
  return [...alike.values()]
    .sort((a, b) => b.count - a.count)
    .map(({ bin, count }) => ({ count, lengths: bin.items.map(({ length }) => lengthInBoth(length)), offcut: lengthInBoth(bin.offcut) }));
}

function materialBound(stock: Nm, kerf: Nm, pieces: readonly PieceRow[]): TraceStep {
  const made = pieces.reduce((sum, { length, count }) => sum + (length + kerf) * count, 0);
  return {
    name: 'bars by length alone',
    equation: 'Σ (length + kerf) · count / (stock + kerf)',
    substituted: `${toMm(made)} / ${toMm(stock + kerf)}`,
    value: made / (stock + kerf),
    unit: 'bars',
    source: SOURCE,
  };
}
