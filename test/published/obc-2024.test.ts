import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { groundCell } from '../../src/domain/engineering/obc-2024/wall-cell.js';
import { METRIC_BARS } from '../../src/domain/engineering/csa-g30-18/bars.js';

/** obc-2024 Tables 9.15.4.5.-A to -C, read in a parsed transcription. */
describe('foundation walls', () => {
  const { rows } = JSON.parse(readFileSync('test/published/obc-2024/foundation-walls.json', 'utf8')) as { rows: { thickness_mm: number; ground_m: number; height_m: number; printed: string | null }[] };

  it('has 42 cells, each found as transcribed', () => {
    expect(rows).toHaveLength(42);
    for (const row of rows) expect([row, groundCell(row.thickness_mm, row.height_m, row.ground_m).cell]).toEqual([row, row.printed]);
  });

  it('between rows the next one up holds, beyond the last none', () => {
    expect(groundCell(150, 2.5, 1.7)).toEqual({ cell: '10M @ 380', beyond: null, heightRowM: 2.75, groundRowM: 2 });
    expect(groundCell(150, 3.01, 1.7).beyond).toBe('height');
    expect(groundCell(150, 2.44, 2.3).beyond).toBe('ground');
    expect(groundCell(240, 3, 3.1).beyond).toBe('ground');
    expect(groundCell(200, 2.44, 2).beyond).toBe('thickness');
  });
});

/** Nominal bars, printed in the same transcription: a steel bar weighs 7850 kg/m3. */
describe('metric bars', () => {
  it.each(Object.entries(METRIC_BARS))('%s weighs what its area does', (_, { areaMm2, diameterMm, kgPerM }) => {
    expect(Math.abs(areaMm2 * 0.00785 - kgPerM)).toBeLessThan(0.0005);
    expect(Math.abs((Math.PI * diameterMm ** 2) / 4 - areaMm2)).toBeLessThan(2.5);
  });
});
