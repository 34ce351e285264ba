import { alternateSpacing } from '../engineering/irc-2018/alternate-spacing.js';
import { finding, type Finding, type FindingCode } from '../evidence/finding.js';
import { gradePsi } from './bar-grade.js';
import { lengthFromInches } from './strength-units.js';
import { NM_PER_MM } from '../quantity/length.js';
import { lengthInBoth, type CalculatorAnswer, type CalculatorResult } from './calculator-answer.js';
import type { AlternateBar } from './wall-bars-input.js';

export type WallBarsAnswer = Omit<CalculatorAnswer, 'defaults'>;

/** What a printed cell says: `#5 @ 41`, `10M @ 400`, `NR l`, `none`, `DR j`. */
export interface ReadCell {
  readonly bar: string | null;
  readonly spacing: number | null;
  readonly kind: 'bars' | 'none' | 'design';
  /** The table's note behind the cell. */
  readonly note: string | null;
}

/** Takes a printed cell apart. */
export function readCell(cell: string): ReadCell {
  const bars = /^(#\d|\d\dM) @ (\d+)(?: (\w))?$/.exec(cell);
  if (bars) return { bar: bars[1] ?? null, spacing: Number(bars[2]), kind: 'bars', note: bars[3] ?? null };
  const note = / (\w)$/.exec(cell)?.[1] ?? null;
  return { bar: null, spacing: null, kind: cell.startsWith('DR') ? 'design' : 'none', note };
}

/** The answer where no table covers the wall: no bars, and a hold for a licensed engineer. */
export function beyondTables(code: FindingCode, numbers: Readonly<Record<string, number | string>>, source: string): WallBarsAnswer {
  return { result: {}, governs: code, trace: [], source, notes: [], findings: [finding(code, { numbers, source })] };
}

/** The parts of the result that say what the wall takes. */
export function barsResult({ bar, spacing }: Pick<ReadCell, 'bar' | 'spacing'>): Readonly<Record<string, CalculatorResult>> {
  if (bar === null || spacing === null) return { bar: 'none' };
  return { bar, spacing: bar.endsWith('M') ? lengthInBoth(spacing * NM_PER_MM) : lengthFromInches(spacing) };
}

const ALTERNATES = 'irc-2018 Table R608.5.4(2)';
const LAST_READ_ROW_IN = 37;

/** Spacing of another bar or grade in place of the cell's; a finding where the table has none. */
export function alternateResult(cell: Pick<ReadCell, 'bar' | 'spacing'>, alternate: AlternateBar | null, allowed: boolean): Pick<WallBarsAnswer, 'result' | 'notes'> & { readonly findings: readonly Finding[] } {
  if (alternate === null || cell.bar === null || cell.spacing === null) return { result: {}, notes: [], findings: [] };
  const spacing = allowed ? alternateSpacing(cell.spacing, cell.bar, alternate.bar, gradePsi(alternate.fyPsi)) : null;
  if (spacing === null) {
    const limit = allowed ? '#4 to #6 of Grade 40 or 60 in place of 8 to 48 in' : 'flat walls with at least 4 ft of backfill';
    return { result: {}, notes: [], findings: [finding('outside-method', { numbers: { method: 'Table R404.1.2(9)', bar: alternate.bar, yieldPsi: alternate.fyPsi, limit }, source: ALTERNATES })] };
  }
  return {
    result: { alternateBar: alternate.bar, alternateSpacing: lengthFromInches(spacing) },
    notes: cell.spacing > LAST_READ_ROW_IN ? ['The row of the alternate bars was not read; it is worked from the rule that gives all rows that were.'] : [],
    findings: [],
  };
}
