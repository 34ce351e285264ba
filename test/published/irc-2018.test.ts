import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { aboveGradeCell } from '../../src/domain/engineering/irc-2018/above-grade-cell.js';
import { alternateSpacing } from '../../src/domain/engineering/irc-2018/alternate-spacing.js';
import { basementCell, basementTable, type BasementTable } from '../../src/domain/engineering/irc-2018/basement-cell.js';
import { gridCoreThickness } from '../../src/domain/engineering/irc-2018/grid-core-thickness.js';
import { inches } from '../../src/domain/quantity/length.js';

/** Weights of irc-2018 Table R608.3, read in a public summary; the thickness is worked by hand: weight · 12 / 150 in. */
describe('grid cores', () => {
  it.each([
    { family: 'waffle-grid', nominal: 6, weight: '56', nm: 113_792_000, printed: '4.48' },
    { family: 'waffle-grid', nominal: 8, weight: '76', nm: 154_432_000, printed: '6.08' },
    { family: 'screen-grid', nominal: 6, weight: '53', nm: 107_696_000, printed: '4.24' },
  ] as const)('$family of $nominal in weighs $weight psf: a flat wall of $printed in', ({ family, nominal, weight, nm, printed }) => {
    expect(gridCoreThickness(family, inches(nominal))).toBe(nm);
    expect(nm / 25_400_000).toBe(Number(printed));
    expect((nm * 150) / 304_800_000).toBeCloseTo(Number(weight), 9);
  });

  it('has no row for other nominals', () => {
    expect(gridCoreThickness('waffle-grid', inches(10))).toBeNull();
    expect(gridCoreThickness('screen-grid', inches(8))).toBeNull();
    expect(gridCoreThickness('waffle-grid', inches(6) + 1)).toBeNull();
  });
});

interface Cell {
  readonly table?: number;
  readonly nominal_in?: number;
  readonly height_ft: number;
  readonly backfill_ft: number;
  readonly psf_per_ft: number;
  readonly printed: string;
  readonly note?: string | null;
}
const data = (name: string): unknown => JSON.parse(readFileSync(`test/published/irc-2018/${name}.json`, 'utf8'));
const lookUp = (table: BasementTable, nominal: number, { height_ft, backfill_ft, psf_per_ft }: Cell): string | null => basementCell(table, nominal, height_ft, backfill_ft, psf_per_ft).cell;

/** irc-2018 Table R404.1.2(8), a public transcription that compares four state printings. */
describe('Table R404.1.2(8)', () => {
  const { rows } = data('inside-face') as { rows: Cell[] };

  it('has 324 cells, each found as transcribed', () => {
    expect(rows).toHaveLength(324);
    for (const row of rows) expect([row, lookUp(8, row.nominal_in ?? 0, row)]).toEqual([row, row.note ? `${row.printed} ${row.note}` : row.printed]);
  });

  /** A forum post quotes the 2009 code: 8 in, 9 ft wall, 8 ft of fill, #5 @ 41. */
  it('8 in, 9 ft, 8 ft of fill is #5 @ 41', () => expect(basementCell(8, 8, 9, 8, 30).cell).toBe('#5 @ 41'));

  it('between rows the next one up holds, beyond the last none', () => {
    expect(basementCell(8, 8, 8.5, 7.5, 31)).toEqual({ cell: '#6 @ 38', beyond: null, heightRowFt: 9, backfillRowFt: 8, soilRowPsfPerFt: 45 });
    expect(basementCell(8, 8, 10.1, 7, 30).beyond).toBe('height');
    expect(basementCell(8, 8, 8, 8.1, 30).beyond).toBe('backfill');
    expect(basementCell(8, 8, 8, 8, 60.1).beyond).toBe('soil');
    expect(basementCell(8, 9, 8, 8, 60).beyond).toBe('nominal');
  });
});

/** Tables R404.1.2(2) to (7): FROM MEMORY, no evidence; one cell was met in print. */
describe('Tables R404.1.2(2) to (7), from memory', () => {
  const { rows } = data('centre') as { rows: Cell[] };

  it('has 306 cells, each found as recalled', () => {
    expect(rows).toHaveLength(306);
    for (const row of rows) expect([row, lookUp(row.table as BasementTable, 0, row)]).toEqual([row, row.printed]);
  });

  /** The same forum post: bars at the center, #6 @ 36. */
  it('8 in flat, 9 ft, 8 ft of fill is #6 @ 36, met in print', () => expect(basementCell(3, 8, 9, 8, 30).cell).toBe('#6 @ 36'));

  it.each([
    ['flat', 6, 'inside-face', 8], ['flat', 12, 'inside-face', 8], ['flat', 6, 'center', 2], ['flat', 8, 'center', 3], ['flat', 10, 'center', 4], ['flat', 12, 'center', null],
    ['waffle-grid', 6, 'inside-face', 5], ['waffle-grid', 8, 'center', 6], ['screen-grid', 6, 'center', 7], ['screen-grid', 8, 'center', null], ['flat', 4, 'inside-face', null],
  ] as const)('%s of %d in with bars at the %s: table %s', (family, nominal, position, table) => expect(basementTable(family, nominal, position)).toBe(table));
});

/** irc-2018 Table R608.5.4(2): rows 8 to 37 read, rows 38 to 48 worked from the rule (computed, no evidence). */
describe('Table R608.5.4(2)', () => {
  const { columns, rows } = data('alternate-bars') as { columns: { table_bar: number; alt_bar: number; grade: number }[]; rows: { spacing_in: number; status: string; printed: number[] }[] };

  it.each(['found', 'computed'])('each %s cell', (status) => {
    const cells = rows.filter((row) => row.status === status).flatMap((row) => row.printed.map((printed, at) => ({ ...columns[at]!, spacing: row.spacing_in, printed })));
    expect(cells).toHaveLength(status === 'found' ? 455 : 165);
    for (const cell of cells) expect([cell, alternateSpacing(cell.spacing, `#${cell.table_bar}`, `#${cell.alt_bar}`, cell.grade * 1000)]).toEqual([cell, cell.printed]);
  });

  it('has nothing outside its rows, bars and grades', () => {
    expect([alternateSpacing(7, '#4', '#5', 60_000), alternateSpacing(49, '#4', '#5', 60_000), alternateSpacing(12, '#4', '#7', 60_000), alternateSpacing(12, '#4', '#5', 50_000)]).toEqual([null, null, null, null]);
  });
});

/** irc-2018 Table R608.6(1), read in a public web copy. */
describe('Table R608.6(1)', () => {
  interface AboveGrade { readonly nominal_in: number; readonly wind_mph: number; readonly exposure: 'B' | 'C' | 'D'; readonly height_ft: number; readonly bearing: 'top' | 'side'; readonly printed: string }
  const { rows } = data('above-grade') as { rows: AboveGrade[] };

  it('has 252 cells, each found as read', () => {
    expect(rows).toHaveLength(252);
    for (const row of rows) expect([row, aboveGradeCell('flat', row.nominal_in, row.wind_mph, row.exposure, row.height_ft, row.bearing)]).toMatchObject([row, { cell: row.printed, beyond: null, status: 'found' }]);
  });

  it.each([
    [4, 115, 'B', 9, 'side', '#4 @ 39'], [4, 120, 'B', 10, 'top', '#4 @ 37'], [4, 130, 'B', 8, 'side', '#4 @ 38'], [4, 110, 'C', 9, 'top', '#4 @ 39'],
    [4, 110, 'D', 10, 'side', '#4 @ 31'], [4, 150, 'B', 10, 'side', '#4 @ 27'], [4, 117, 'D', 9, 'side', '#4 @ 33'], [4, 160, 'B', 8, 'top', '#4 @ 34'],
    [6, 150, 'B', 10, 'side', '#4 @ 48'], [8, 140, 'B', 10, 'top', '#4 @ 48'], [10, 127, 'C', 9, 'side', '#4 @ 48'], [6, 136, 'C', 8, 'side', '#4 @ 48'],
  ] as const)('%d in, %d mph in %s, %d ft, %s bearing: %s', (nominal, wind, exposure, height, bearing, cell) =>
    expect(aboveGradeCell('flat', nominal, wind, exposure, height, bearing)).toMatchObject({ cell, beyond: null, status: 'found' }));

  it('between rows the next one up holds', () => {
    expect(aboveGradeCell('flat', 4, 121, 'B', 8.2, 'top')).toMatchObject({ cell: '#4 @ 39', windRowMph: 130, heightRowFt: 9 });
    expect(aboveGradeCell('flat', 4, 90, 'D', 8, 'top')).toMatchObject({ cell: '#4 @ 43', windRowMph: 110 });
  });

  it.each([
    ['flat', 4, 161, 'B', 8, 'wind'], ['flat', 6, 137, 'C', 8, 'wind'], ['flat', 6, 126, 'D', 8, 'wind'], ['flat', 6, 160, 'B', 9, 'not-read'], ['flat', 8, 155, 'B', 8, 'not-read'],
    ['flat', 6, 115, 'B', 10.5, 'height'], ['flat', 12, 115, 'B', 8, 'nominal'], ['screen-grid', 6, 115, 'B', 8, 'family'],
  ] as const)('%s of %d in, %d mph in %s, %d ft is beyond it: %s', (family, nominal, wind, exposure, height, beyond) =>
    expect(aboveGradeCell(family, nominal, wind, exposure, height, 'top')).toMatchObject({ cell: null, beyond }));

  it.each([[6, 115, 9, 'side', '#5 @ 43'], [6, 150, 10, 'side', '#6 @ 44'], [8, 140, 10, 'side', '#4 @ 48']] as const)('waffle of %d in, %d mph, %d ft, %s bearing: %s (from memory)', (nominal, wind, height, bearing, cell) =>
    expect(aboveGradeCell('waffle-grid', nominal, wind, 'B', height, bearing)).toMatchObject({ cell, status: 'from memory' }));
});
