import { describe, expect, test } from '@jest/globals';
import { takeOff, type Takeoff } from '../../../src/domain/takeoff/index.js';
import { heron, scheduleOf } from '../../support/small-schedules.js';

// Decision 5: face area × the standard's factor. Weights of IRC 2018 Table R608.3 (from memory, read in a public summary): waffle 6 in 56 psf,
// waffle 8 in 76 psf, screen 6 in 53 psf at 150 pcf, so 4.48, 6.08 and 4.24 in of concrete.

const FLAT = { ratedPressurePsf: 700 };
const withCore = (family: string, width: number): Takeoff => {
  const cores = [
    { code: '4', width: 4, family: 'flat', ...FLAT }, { code: '8', width: 8, family: 'flat', ...FLAT }, { code: '10', width: 10, family: 'flat', ...FLAT },
    { code: '6', width, family, ...FLAT },
  ];
  const openings = [{ mark: 'W', wall: 'A', at: 100, sill: 32, width: 40, height: 48 }];
  return takeOff(scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }], { openings }), heron({ top: { cores } }));
};
const cubicInches = ({ laid }: Takeoff): number => Number(laid.storeys[0]!.walls[0]!.concreteNm3) / 25_400_000 ** 3;

describe('concrete of grid cores', () => {
  test.each([
    ['waffle-grid', 6, 4.48], ['waffle-grid', 8, 6.08], ['screen-grid', 6, 4.24], ['flat', 6, 6],
  ] as const)('%s of %d in: (235 × 96 − 40 × 48) × %d in', (family, width, depth) => {
    const takeoff = withCore(family, width);
    expect(cubicInches(takeoff)).toBeCloseTo((235 * 96 - 40 * 48) * depth, 6);
    expect(takeoff.findings.filter(({ code }) => code === 'outside-method')).toEqual([]);
  });

  test('a grid the table does not list is a hold and counts full', () => {
    const takeoff = withCore('screen-grid', 8);
    expect(takeoff.findings.filter(({ severity }) => severity === 'hold').map(({ code, numbers }) => [code, numbers.core])).toEqual([['outside-method', '6']]);
    expect(cubicInches(takeoff)).toBeCloseTo((235 * 96 - 40 * 48) * 8, 6);
  });
});
