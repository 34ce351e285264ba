import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { riseLimit } from '../../../../src/domain/engineering/aci-347-04/rise-limit.js';
import { wallFormPressure } from '../../../../src/domain/engineering/aci-347-04/wall-form-pressure.js';
import type { CementGroup } from '../../../../src/domain/engineering/aci-347-04/chemistry-coefficient.js';
import type { FreshConcreteWall } from '../../../../src/domain/engineering/aci-347-04/fresh-concrete-wall.js';

type Standing = Omit<FreshConcreteWall, 'riseFtPerH'>;
const ORDINARY: Standing = { heightFt: 12, concreteF: 80, unitWeightPcf: 150, cement: 'portland-i-ii-iii', retarder: false, slumpIn: 5 };
const CEMENTS: readonly CementGroup[] = ['portland-i-ii-iii', 'other-or-low-blend', 'high-blend'];
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const standing = fc.record({
  heightFt: between(0.5, 40),
  concreteF: between(40, 95),
  unitWeightPcf: between(70, 250),
  cement: fc.constantFrom(...CEMENTS),
  retarder: fc.boolean(),
  slumpIn: between(0, 11),
});

function psf(pour: Standing, riseFtPerH: number): number {
  const answer = wallFormPressure({ ...pour, riseFtPerH });
  if (answer.kind !== 'pressure') throw new Error('outside the method');
  return answer.pressurePsf;
}

describe('riseLimit, closed forms', () => {
  it('825 psf at 80 F is 6 ft/h', () => {
    expect(riseLimit(825, ORDINARY)).toMatchObject({ kind: 'limit', riseFtPerH: 6, governs: 'equation-a' });
  });

  it.each([
    { what: 'a rating of the minimum allows what equation A gives: 80 · 450 / 9000', rating: 600, changes: {}, kind: 'limit', rise: 4, governs: 'equation-a' },
    { what: 'between 7 and 15 ft/h by equation B', rating: 972.5, changes: {}, kind: 'limit', rise: 8, governs: 'equation-b' },
    { what: 'over 14 ft by equation B', rating: 902.5, changes: { heightFt: 16 }, kind: 'limit', rise: 6, governs: 'equation-b' },
    { what: 'a rating between 15 ft/h and the liquid head', rating: 1500, changes: {}, kind: 'limit', rise: 15, governs: 'highest-rate' },
  ] as const)('$what: $rise ft/h', ({ rating, changes, kind, rise, governs }) => {
    const limit = riseLimit(rating, { ...ORDINARY, ...changes });
    expect(limit).toMatchObject({ kind, governs });
    if (limit.kind === 'limit') expect(limit.riseFtPerH).toBeCloseTo(rise, 9);
  });

  it.each([
    { what: 'any rate where the full liquid head is within the rating', rating: 1800, changes: {}, kind: 'any-rate', governs: 'liquid-head' },
    { what: 'no rate where the slump asks for the liquid head', rating: 1799, changes: { slumpIn: 8 }, kind: 'no-rate', governs: 'slump' },
    { what: 'no rate where the minimum is over the rating', rating: 599, changes: {}, kind: 'no-rate', governs: 'minimum' },
    { what: 'no rate in a tall cold wall of a slow mix', rating: 750, changes: { heightFt: 16, concreteF: 40, cement: 'high-blend' }, kind: 'no-rate', governs: 'equation-b' },
  ] as const)('$what', ({ rating, changes, kind, governs }) => {
    expect(riseLimit(rating, { ...ORDINARY, ...changes })).toMatchObject({ kind, governs });
  });

  it('gives no rate outside the temperature span', () => {
    expect(riseLimit(750, { ...ORDINARY, concreteF: 30 })).toMatchObject({ kind: 'outside-method', outside: [{ quantity: 'concreteF', limit: 40 }] });
  });
});

describe('riseLimit, properties', () => {
  it('is the inverse of the pressure: at the limit the pressure is the rating, faster is over it', () => {
    fc.assert(
      fc.property(standing, between(300, 3000), (pour, rating) => {
        const limit = riseLimit(rating, pour);
        switch (limit.kind) {
          case 'limit': {
            const at = psf(pour, limit.riseFtPerH);
            const faster = psf(pour, limit.riseFtPerH + 1e-3);
            if (limit.governs === 'highest-rate') return at <= rating + 1e-9 && faster > rating;
            return Math.abs(at / rating - 1) < 1e-9 && faster > rating;
          }
          case 'any-rate':
            return psf(pour, 1000) <= rating;
          case 'no-rate':
            return psf(pour, 1e-6) > rating && limit.leastPsf >= rating;
          case 'outside-method':
            return false;
        }
      }),
      { numRuns: 3000 },
    );
  });

  it('meets every branch', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(standing, between(300, 3000), (pour, rating) => {
        const limit = riseLimit(rating, pour);
        seen.add(limit.kind === 'outside-method' ? limit.kind : `${limit.kind} ${limit.governs}`);
      }),
      { numRuns: 3000, seed: 347 },
    );
    expect([...seen].sort()).toEqual([
      'any-rate liquid-head', 'limit equation-a', 'limit equation-b', 'limit highest-rate', 'no-rate equation-b', 'no-rate minimum', 'no-rate slump',
    ]);
  });
});
