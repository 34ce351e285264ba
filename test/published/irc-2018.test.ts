import { describe, expect, it } from '@jest/globals';
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
