import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { riseLimit, riseLimitSi } from '../../../../src/domain/engineering/aci-347-04/rise-limit.js';
import { wallFormPressure, wallFormPressureSi } from '../../../../src/domain/engineering/aci-347-04/wall-form-pressure.js';
import type { CementGroup } from '../../../../src/domain/engineering/aci-347-04/chemistry-coefficient.js';
import type { FreshConcreteWall, FreshConcreteWallSi } from '../../../../src/domain/engineering/aci-347-04/fresh-concrete-wall.js';

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

type StandingSi = Omit<FreshConcreteWallSi, 'riseMPerH'>;
const METRIC: StandingSi = { heightM: 4, concreteC: 20, unitWeightKgPerM3: 2400, cement: 'portland-i-ii-iii', retarder: false, slumpMm: 120 };
const thousandths = (min: number, max: number) => fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);
const standingSi = fc.record({
  heightM: thousandths(1, 9),
  concreteC: thousandths(5, 35),
  unitWeightKgPerM3: thousandths(1120, 4000),
  cement: fc.constantFrom(...CEMENTS),
  retarder: fc.boolean(),
  slumpMm: thousandths(0, 280),
});

function kpa(pour: StandingSi, riseMPerH: number): number {
  const answer = wallFormPressureSi({ ...pour, riseMPerH });
  if (answer.kind !== 'pressure') throw new Error('outside the method');
  return answer.pressureKpa;
}

describe('riseLimitSi', () => {
  it.each([
    { what: 'by equation A', rating: 7.2 + 1570 / 37.8, changes: {}, rise: 2, governs: 'equation-a' },
    { what: 'by equation B', rating: 7.2 + (1156 + 732) / 37.8, changes: {}, rise: 3, governs: 'equation-b' },
    { what: 'over 4.2 m by equation B', rating: 7.2 + (1156 + 366) / 37.8, changes: { heightM: 5 }, rise: 1.5, governs: 'equation-b' },
    { what: 'where the two equations do not meet, just under 2.1 m/h', rating: 51, changes: {}, rise: 2.1 * (1 - 1e-9), governs: 'equation-a-range' },
    { what: 'between 4.5 m/h and the liquid head', rating: 80, changes: {}, rise: 4.5, governs: 'highest-rate' },
  ] as const)('$what: $rise m/h', ({ rating, changes, rise, governs }) => {
    const limit = riseLimitSi(rating, { ...METRIC, ...changes });
    expect(limit).toMatchObject({ kind: 'limit', governs });
    if (limit.kind === 'limit') expect(limit.riseMPerH).toBeCloseTo(rise, 12);
  });

  it.each([
    { what: 'any rate where the full liquid head is within the rating', rating: 95, changes: {}, kind: 'any-rate', governs: 'liquid-head' },
    { what: 'no rate where the slump asks for the liquid head', rating: 90, changes: { slumpMm: 180 }, kind: 'no-rate', governs: 'slump' },
    { what: 'no rate where 30 kPa is over the rating', rating: 29, changes: {}, kind: 'no-rate', governs: 'minimum' },
    { what: 'no rate in a tall cold wall of a slow mix', rating: 36, changes: { heightM: 5, concreteC: 5, cement: 'high-blend' }, kind: 'no-rate', governs: 'equation-b' },
    { what: 'no answer outside the temperature span', rating: 36, changes: { concreteC: 0 }, kind: 'outside-method' },
  ] as const)('$what', ({ what: _what, rating, changes, ...said }) => {
    expect(riseLimitSi(rating, { ...METRIC, ...changes })).toMatchObject(said);
  });

  it('is the inverse of the pressure: at the limit the pressure is the rating, faster is over it', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(standingSi, thousandths(15, 150), (pour, rating) => {
        const limit = riseLimitSi(rating, pour);
        seen.add(limit.kind === 'outside-method' ? limit.kind : `${limit.kind} ${limit.governs}`);
        switch (limit.kind) {
          case 'limit': {
            const at = kpa(pour, limit.riseMPerH);
            const faster = kpa(pour, limit.riseMPerH + 1e-3);
            const ends = limit.governs === 'highest-rate' || limit.governs === 'equation-a-range';
            return (ends ? at <= rating * (1 + 1e-9) : Math.abs(at / rating - 1) < 1e-9) && faster > rating;
          }
          case 'any-rate':
            return kpa(pour, 300) <= rating;
          case 'no-rate':
            return kpa(pour, 1e-6) > rating && limit.leastKpa >= rating;
          case 'outside-method':
            return false;
        }
      }),
      { numRuns: 2000, seed: 347 },
    );
    expect([...seen].sort()).toEqual([
      'any-rate liquid-head', 'limit equation-a', 'limit equation-b', 'limit highest-rate', 'no-rate equation-b', 'no-rate minimum', 'no-rate slump',
    ]);
  });

  it('stays just under 2.1 m/h for every rating between equation A and equation B there', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 35 }), between(0.001, 0.999), fc.boolean(), (concreteC, share, retarder) => {
        const pour = { ...METRIC, heightM: 4.2, concreteC, retarder };
        const [a, b] = [785 * 2.1, 1156 + 244 * 2.1].map((over) => (retarder ? 1.2 : 1) * (7.2 + over / (concreteC + 17.8))) as [number, number];
        const rating = a + share * (b - a);
        const limit = riseLimitSi(rating, pour);
        return limit.kind === 'limit' && limit.governs === 'equation-a-range' && kpa(pour, limit.riseMPerH) <= rating && kpa(pour, 2.1) > rating;
      }),
    );
  });

  it('never falls when the rating grows', () => {
    const rate = (rating: number): number => {
      const limit = riseLimitSi(rating, METRIC);
      return limit.kind === 'limit' ? limit.riseMPerH : limit.kind === 'any-rate' ? Infinity : 0;
    };
    fc.assert(fc.property(between(25, 100), between(0, 5), (rating, more) => rate(rating + more) >= rate(rating) * (1 - 2e-9)), { numRuns: 2000 });
  });
});
