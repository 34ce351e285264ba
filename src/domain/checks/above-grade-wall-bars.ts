import { aboveGradeCell, GREATEST_WIND_MPH, type AboveGradeCell } from '../engineering/irc-2018/above-grade-cell.js';
import { toFeet, toInches } from '../quantity/length.js';
import { alternateResult, barsResult, beyondTables, readCell, type WallBarsAnswer } from './wall-bars-answer.js';
import { horizontalBars } from './wall-bars-horizontal.js';
import { workedStep } from './worked-step.js';
import type { WallBarsQuestion, WindSide } from './wall-bars-input.js';

const LIMIT = 'flat 4 to 10 in, waffle 6 and 8 in, to 10 ft of wall';

/** Bars of a wall above grade by the residential code. */
export function aboveGradeWallBars({ edition, family, nominal, height, alternate }: WallBarsQuestion, { windMph, exposure, bearing }: WindSide): WallBarsAnswer {
  const [nominalIn, heightFt] = [toInches(nominal), toFeet(height)];
  const found = aboveGradeCell(family, nominalIn, windMph, exposure, heightFt, bearing);
  const memory = found.status === 'from memory';
  const source = `irc-2018 Table ${found.table === '' ? 'R608.6' : found.table}${memory ? ', from memory' : ''}`;
  if (found.cell === null) return beyond(found, { family, nominalIn, heightFt, windMph, exposure }, source);
  const cell = readCell(found.cell);
  const other = alternateResult(cell, alternate, true);
  const nextRow = windMph !== found.windRowMph || heightFt !== found.heightRowFt;
  return {
    result: { cell: found.cell, table: found.table, edition, status: found.status, ...barsResult(cell), ...other.result, horizontal: horizontalBars(heightFt) },
    governs: 'table',
    trace: [workedStep('cell of the table', 'row and column → cell', `${nominalIn} in, ${found.windRowMph} mph in exposure ${exposure}, ${found.heightRowFt} ft, ${bearing} bearing: ${found.cell}`, cell.spacing ?? 0, 'in', source)],
    source,
    notes: [
      memory ? 'This table is from memory and checked against nothing: check the cell against the adopted edition.' : 'Read in a public web copy of the 2018 edition: check it against the adopted one.',
      ...(nextRow ? [`Nothing lies between rows: the row of ${found.windRowMph} mph and ${found.heightRowFt} ft is taken.`] : []),
      'Bars at the center of the core; Grade 60, 2500 psi. The horizontal bars are from memory.',
      ...other.notes,
    ],
    findings: other.findings,
  };
}

function beyond({ beyond: what, table }: AboveGradeCell, numbers: Readonly<Record<string, number | string>>, source: string): WallBarsAnswer {
  if (what === 'wind') return beyondTables('site-beyond-method', { ...numbers, limitMph: GREATEST_WIND_MPH[String(numbers['exposure'])] ?? 0 }, source);
  return beyondTables('wall-beyond-tables', { ...numbers, limit: what === 'not-read' ? `a row of ${table} that was read` : LIMIT }, source);
}
