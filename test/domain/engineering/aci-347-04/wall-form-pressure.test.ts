import { describe, expect, it } from '@jest/globals';
import { pressureAtDepth } from '../../../../src/domain/engineering/aci-347-04/pressure-at-depth.js';
import { wallFormPressure } from '../../../../src/domain/engineering/aci-347-04/wall-form-pressure.js';
import type { FreshConcreteWall } from '../../../../src/domain/engineering/aci-347-04/fresh-concrete-wall.js';

const ORDINARY: FreshConcreteWall = {
  heightFt: 12, riseFtPerH: 6, concreteF: 80, unitWeightPcf: 150, cement: 'portland-i-ii-iii', retarder: false, slumpIn: 5,
};
const pressure = (changes: Partial<FreshConcreteWall>) => {
  const answer = wallFormPressure({ ...ORDINARY, ...changes });
  if (answer.kind !== 'pressure') throw new Error('outside the method');
  return answer;
};

describe('wallFormPressure, closed forms', () => {
  it('is 8 ft of liquid at 150 pcf when the slump is over 7 in: 1200 psf, liquid to the bottom', () => {
    expect(pressure({ heightFt: 8, slumpIn: 8 })).toMatchObject({ pressurePsf: 1200, hydrostaticDepthFt: 8, governs: 'liquid-head' });
  });

  it('is 150 + 9000 · 6 / 80 = 825 psf, liquid over 5.5 ft', () => {
    expect(pressure({})).toMatchObject({ pressurePsf: 825, hydrostaticDepthFt: 5.5, governs: 'equation-a', notes: [] });
  });

  it.each([
    { what: 'a 3 ft wall is capped by its own head', changes: { heightFt: 3 }, psf: 450, governs: 'liquid-head' },
    { what: 'a slow pour is held at the minimum', changes: { riseFtPerH: 1 }, psf: 600, governs: 'minimum' },
    { what: 'light concrete has a lower minimum: 600 · 0.8', changes: { riseFtPerH: 1, unitWeightPcf: 80 }, psf: 480, governs: 'minimum' },
    { what: '14 ft still takes equation A', changes: { heightFt: 14 }, psf: 825, governs: 'equation-a' },
    { what: 'over 14 ft takes equation B: 150 + 43400/80 + 2800 · 6/80', changes: { heightFt: 14.01 }, psf: 902.5, governs: 'equation-b' },
    { what: 'from 7 ft/h on equation B: 150 + 43400/80 + 2800 · 8/80', changes: { riseFtPerH: 8 }, psf: 972.5, governs: 'equation-b' },
    { what: '15 ft/h is the last rate of equation B', changes: { riseFtPerH: 15 }, psf: 1217.5, governs: 'equation-b' },
    { what: 'above 15 ft/h it is the liquid head', changes: { riseFtPerH: 15.01 }, psf: 1800, governs: 'liquid-head' },
    { what: 'slump of 7 in is within the method', changes: { slumpIn: 7 }, psf: 825, governs: 'equation-a' },
    { what: 'slump over 7 in is the liquid head', changes: { slumpIn: 7.01 }, psf: 1800, governs: 'liquid-head' },
    { what: 'a retarder adds a fifth', changes: { retarder: true }, psf: 990, governs: 'equation-a' },
  ] as const)('$what: $psf psf', ({ changes, psf, governs }) => {
    const answer = pressure(changes);
    expect(answer.pressurePsf).toBeCloseTo(psf, 9);
    expect(answer.governs).toBe(governs);
  });

  it('prints a note for each reason to take the liquid head', () => {
    expect(pressure({ slumpIn: 8, riseFtPerH: 20 }).notes).toEqual([
      'Slump 8 in is over the 7 in limit of the wall equations: full liquid head.',
      'Rate of rise 20 ft/h is over the 15 ft/h limit of the wall equations: full liquid head.',
    ]);
  });

  it('jumps with Cw at 150 pcf, as the table does: 825 to 825 · 150/145', () => {
    expect(pressure({ unitWeightPcf: 150 }).pressurePsf).toBe(825);
    expect(pressure({ unitWeightPcf: 150.000001 }).pressurePsf).toBeCloseTo((825 * 150) / 145, 4);
  });

  it('traces every number an engineer would write', () => {
    const { trace } = pressure({});
    expect(trace.map((step) => step.name)).toEqual([
      'unit weight coefficient', 'chemistry coefficient', 'equation A', 'minimum', 'liquid head', 'form pressure', 'liquid depth',
    ]);
    expect(trace.find((step) => step.name === 'equation A')).toMatchObject({ substituted: '1 · 1 · (150 + 9000 · 6 / 80)', value: 825, unit: 'psf' });
  });
});

describe('wallFormPressure outside the method', () => {
  it.each([
    { concreteF: 39.9, limit: 40, side: 'below' },
    { concreteF: 0, limit: 40, side: 'below' },
    { concreteF: -10, limit: 40, side: 'below' },
    { concreteF: 95.1, limit: 95, side: 'above' },
  ])('gives no number at $concreteF F, names the limit $limit', ({ concreteF, limit, side }) => {
    expect(wallFormPressure({ ...ORDINARY, concreteF })).toMatchObject({ kind: 'outside-method', outside: [{ quantity: 'concreteF', value: concreteF, limit, side }] });
  });

  it.each([40, 95])('answers at the limit itself, %d F', (concreteF) => {
    expect(pressure({ concreteF }).pressurePsf).toBeCloseTo(150 + 54_000 / concreteF, 9);
  });

  it('needs no temperature where the standard takes the liquid head', () => {
    expect(pressure({ concreteF: 30, slumpIn: 9 }).pressurePsf).toBe(1800);
  });
});

describe('pressureAtDepth', () => {
  it.each([
    { z: 0, psf: 0 },
    { z: 4, psf: 600 },
    { z: 5.5, psf: 825 },
    { z: 12, psf: 825 },
  ])('at $z ft is $psf psf', ({ z, psf }) => expect(pressureAtDepth(150, 825, z)).toBe(psf));
});
