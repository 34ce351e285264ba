import { readFileSync } from 'node:fs';
import { expect, it } from '@jest/globals';

export type Inputs = Readonly<Record<string, number | string | boolean>>;

/**
 * One published figure: `printed` as it stands in the source, or, where we do not follow it, `discrepancy` with our figure and why.
 *
 * status: found = the printed answer was read; garbled = read in a damaged copy; computed = the inputs or the formula are published, the
 * answer is the stated formula's and no evidence; from memory = not seen in print.
 */
export interface PublishedRow {
  readonly id: string;
  readonly source: string;
  readonly place: string;
  readonly status: 'found' | 'garbled' | 'computed' | 'from memory';
  readonly of: string;
  readonly inputs: Inputs;
  readonly printed: string;
  readonly unit: string;
  readonly discrepancy?: { readonly ours: string; readonly why: string };
}

const keys = (JSON.parse(readFileSync('shared/reference/bibliography.json', 'utf8')) as { sources: { key: string }[] }).sources.map((s) => s.key);

/** Rows of `test/published/<path>.json`. */
export function publishedRows(path: string): readonly PublishedRow[] {
  return (JSON.parse(readFileSync(`test/published/${path}.json`, 'utf8')) as { rows: PublishedRow[] }).rows;
}

/** Within half a unit of the last printed digit; the last term lets a tie pass whichever way the printer rounded it. */
export function expectPrinted(actual: number, printed: string): void {
  const decimals = printed.split('.')[1]?.length ?? 0;
  expect(Math.abs(actual - Number(printed))).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-9);
}

export function num(inputs: Inputs, key: string): number {
  const value = inputs[key];
  if (typeof value !== 'number') throw new Error(`row lacks ${key}`);
  return value;
}

/** A test for each row, named by its status where it is no evidence; rows we do not follow have to differ from print and say why. */
export function itIsAsPublished(rows: readonly PublishedRow[], asked: Readonly<Record<string, (inputs: Inputs) => number>>): void {
  const value = (row: PublishedRow): number => {
    const of = asked[row.of];
    if (!of) throw new Error(`nothing computes ${row.of}`);
    return of(row.inputs);
  };
  const named = (row: PublishedRow) => [`${row.id}, ${row.source} ${row.place}${row.status === 'found' ? '' : ` (${row.status})`}`, row] as const;
  it.each(rows.map(named))('%s', (_, row) => {
    expect([...keys, 'statics', 'geometry']).toContain(row.source);
    expect(['found', 'garbled', 'computed', 'from memory']).toContain(row.status);
    expectPrinted(value(row), row.discrepancy?.ours ?? row.printed);
  });
  const differing = rows.filter((row) => row.discrepancy);
  if (differing.length > 0)
    it.each(differing.map(named))('%s differs from print and says why', (_, row) => {
      expect(() => expectPrinted(value(row), row.printed)).toThrow();
      expect(row.discrepancy?.why.length).toBeGreaterThan(40);
    });
}
