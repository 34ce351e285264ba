import { readCell, type WallBarsAnswer } from './wall-bars-answer.js';
import type { CheckReport } from './check-report.js';
import type { Core } from '../range/range.js';
import type { Finding } from '../evidence/finding.js';
import type { InBothUnits } from './calculator-answer.js';
import type { Nm } from '../quantity/length.js';

type Results = CheckReport['results'];

/** A wall as the tables are asked for it. */
export interface WallToRead {
  readonly mark: string;
  /** The thinnest up the wall. */
  readonly core: Core;
  readonly height: Nm;
}

/** Why a wall was not read from a table though no table leaves it out: words for each kind of reason. */
export type NotRead = Readonly<Partial<Record<'missing' | 'notAtHand' | 'inside' | 'gable', string>>>;

/** What the tables answer for one wall. */
export interface WallBars {
  readonly results: Results;
  /** In a length of wall; infinite where it has to be designed, below 0 where it was not read. */
  readonly steel: number;
  readonly trace: CheckReport['trace'];
  readonly source: string;
  readonly defaults: readonly string[];
  readonly notes: readonly string[];
  readonly findings: readonly Finding[];
  readonly notRead: NotRead;
}

/** Section of a bar [mm²]. astm-a615, csa-g30-18. */
const AREAS: Readonly<Record<string, number>> = { '#4': 129, '#5': 200, '#6': 284, '10M': 100, '15M': 200 };

/** Bars in a length of wall, for comparing cells of one code; 0 where none are asked for. */
export function steelOf(cell: string): number {
  const { bar, spacing, kind } = readCell(cell);
  return kind === 'design' ? Number.POSITIVE_INFINITY : bar === null || spacing === null ? 0 : (AREAS[bar] ?? 0) / spacing;
}

export const notRead = (reasons: NotRead, source: string): WallBars => ({
  results: { status: 'not checked' }, steel: -1, trace: [], source, defaults: [], notes: [], findings: [], notRead: reasons,
});

/** A calculator's answer as a job's: numbers with their unit in the key. Without a table: the hold and no bars. */
export function wallBarsOf(answer: WallBarsAnswer, more: Results = {}, defaults: readonly string[] = []): WallBars {
  const { cell, table, status, bar, spacing, horizontal } = answer.result;
  const held = answer.findings.some(({ severity }) => severity === 'hold');
  const told = { cell, table, status: held && cell === undefined ? 'beyond the tables' : status, bar, horizontal };
  const words = Object.fromEntries(Object.entries(told).filter((entry): entry is [string, string] => typeof entry[1] === 'string'));
  const minimum = answer.governs === 'stay-in-place-minimum';
  return {
    results: { ...words, ...(spacing === undefined ? {} : spacingOf(spacing as InBothUnits)), ...(minimum ? { governs: 'least of a 6 in wall in stay-in-place forms' } : {}), ...more },
    steel: held ? Number.POSITIVE_INFINITY : steelOf(spacing === undefined ? String(cell) : `${String(bar)} @ ${printed(spacing as InBothUnits, String(bar))}`),
    trace: answer.trace, source: answer.source, defaults, notes: answer.notes, findings: answer.findings, notRead: {},
  };
}

const spacingOf = ({ us, si }: InBothUnits): Results => ({ spacingMm: si.value, spacingIn: us.value });
const printed = ({ us, si }: InBothUnits, bar: string): number => (bar.endsWith('M') ? si.value : us.value);

/** Of two answers for one wall the one with more bars, the other said beside it. */
export function greaterOf(below: WallBars, above: WallBars, standsOn: string): WallBars {
  const more = above.steel > below.steel && Number.isFinite(above.steel);
  const beside = { aboveGradeCell: above.results['cell'] ?? above.results['status'] ?? '', aboveGradeTable: above.results['table'] ?? '', aboveGradeStatus: above.results['status'] ?? '' };
  const bars: Results = more ? { bar: above.results['bar'] ?? '', spacingMm: above.results['spacingMm'] ?? 0, spacingIn: above.results['spacingIn'] ?? 0, governs: `the wall above, ${standsOn}` } : {};
  return {
    ...below,
    results: { ...below.results, ...beside, ...bars },
    steel: more ? above.steel : below.steel,
    trace: [...below.trace, ...above.trace],
    defaults: [...new Set([...below.defaults, ...above.defaults])],
    notes: [...below.notes, 'A concrete wall stands on it: the bars are the greater of both tables.'],
    notRead: { ...above.notRead, ...below.notRead },
  };
}
