import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';

/** What a process may need that holds every row of the workbook, the bytes of the file and node itself [MB]: the bound of the design. */
const MOST_MB = 400;
const WALLS = 100_000;

let folder: string;
const file = (): string => join(folder, 'estate.xlsx');
const run = (...args: string[]): any => {
  const text = execFileSync(process.execPath, [join('test', 'support', 'large-workbook.mjs'), ...args], { encoding: 'utf8' });
  return text === '' ? null : JSON.parse(text);
};

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'wallcourse-large-'));
  run('write', file(), String(WALLS));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('a workbook of a hundred thousand walls', () => {
  it('is read whole, every row held, within 400 MB', () => {
    const { rows, last, maxRssMb } = run('rows', file());
    expect(rows).toBe(5 + 2 + 1 + WALLS);
    expect(last).toEqual({ row: WALLS + 1, cells: [[1, `Façade Süd, wall ${WALLS}`], [2, 'S1'], [3, '6'], [4, `100'-6 1/2"`], [5, 2_000_000], [6, `110'-0"`], [7, 2_000_000], [8, `9'-0"`]] });
    expect(maxRssMb).toBeLessThan(MOST_MB);
  });

  it('is refused as a schedule with the limit named, having read no further', () => {
    const { ok, error, maxRssMb } = run('schedule', file());
    expect([ok, error]).toEqual([false, { code: 'too-large', errors: [{ sheet: 'walls', row: 10_002, column: null, pointer: null, read: 'more than 10,000 walls', fix: 'at most 10,000 walls: split the schedule into several jobs' }] }]);
    expect(maxRssMb).toBeLessThan(MOST_MB);
  });
});
