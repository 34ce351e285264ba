import { describe, expect, it } from '@jest/globals';
import { pressureAtDepth } from '../../../../src/domain/engineering/aci-347-04/pressure-at-depth.js';
import { pressureAtDepthSi } from '../../../../src/domain/engineering/aci-347-04/pressure-at-depth-si.js';
import { wallFormPressure, wallFormPressureSi } from '../../../../src/domain/engineering/aci-347-04/wall-form-pressure.js';
import type { FreshConcreteWall, FreshConcreteWallSi } from '../../../../src/domain/engineering/aci-347-04/fresh-concrete-wall.js';

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

const METRIC: FreshConcreteWallSi = {
  heightM: 4, riseMPerH: 2, concreteC: 20, unitWeightKgPerM3: 2400, cement: 'portland-i-ii-iii', retarder: false, slumpMm: 120,
};
const kpa = (changes: Partial<FreshConcreteWallSi>) => {
  const answer = wallFormPressureSi({ ...METRIC, ...changes });
  if (answer.kind !== 'pressure') throw new Error('outside the method');
  return answer;
};
/** 2400 kg/m3 by standard gravity [kN/m3]. */
const GAMMA = 23.53596;

describe('wallFormPressureSi, closed forms', () => {
  it.each([
    { what: 'equation A: 7.2 + 1570/37.8', changes: {}, p: 7.2 + 1570 / 37.8, governs: 'equation-a' },
    { what: 'a 1 m wall is capped by its own head', changes: { heightM: 1 }, p: GAMMA, governs: 'liquid-head' },
    { what: 'a slow pour is held at 30 kPa', changes: { riseMPerH: 0.5 }, p: 30, governs: 'minimum' },
    { what: 'light concrete has a lower minimum: 30 · 0.8', changes: { riseMPerH: 0.3, unitWeightKgPerM3: 1280 }, p: 24, governs: 'minimum' },
    { what: '4.2 m still takes equation A', changes: { heightM: 4.2 }, p: 7.2 + 1570 / 37.8, governs: 'equation-a' },
    { what: 'over 4.2 m takes equation B', changes: { heightM: 4.21 }, p: 7.2 + (1156 + 488) / 37.8, governs: 'equation-b' },
    { what: 'just under 2.1 m/h still takes equation A', changes: { riseMPerH: 2.0999 }, p: 7.2 + (785 * 2.0999) / 37.8, governs: 'equation-a' },
    { what: 'from 2.1 m/h on equation B', changes: { riseMPerH: 2.1 }, p: 7.2 + (1156 + 512.4) / 37.8, governs: 'equation-b' },
    { what: '4.5 m/h is the last rate of equation B', changes: { riseMPerH: 4.5 }, p: 7.2 + (1156 + 1098) / 37.8, governs: 'equation-b' },
    { what: 'above 4.5 m/h it is the liquid head', changes: { riseMPerH: 4.51 }, p: 4 * GAMMA, governs: 'liquid-head' },
    { what: 'slump of 175 mm is within the method', changes: { slumpMm: 175 }, p: 7.2 + 1570 / 37.8, governs: 'equation-a' },
    { what: 'slump over 175 mm is the liquid head', changes: { slumpMm: 176 }, p: 4 * GAMMA, governs: 'liquid-head' },
    { what: '7 in of slump, written in inches, is within the method', changes: { slumpMm: 177.8, slumpIn: 7 }, p: 7.2 + 1570 / 37.8, governs: 'equation-a' },
    { what: '7 1/4 in of slump is the liquid head', changes: { slumpMm: 184.15, slumpIn: 7.25 }, p: 4 * GAMMA, governs: 'liquid-head' },
    { what: '2402.77 kg/m3 is heavy concrete', changes: { unitWeightKgPerM3: 2402.77 }, p: (2402.77 / 2320) * (7.2 + 1570 / 37.8), governs: 'equation-a' },
    { what: '150 pcf, written in pcf, is not', changes: { unitWeightKgPerM3: 2402.77, unitWeightPcf: 150 }, p: 7.2 + 1570 / 37.8, governs: 'equation-a' },
    { what: 'a retarder adds a fifth', changes: { retarder: true }, p: 1.2 * (7.2 + 1570 / 37.8), governs: 'equation-a' },
  ] as const)('$what: $p kPa', ({ changes, p, governs }) => {
    const answer = kpa(changes);
    expect(answer.pressureKpa).toBeCloseTo(p, 9);
    expect(answer.governs).toBe(governs);
    expect(answer.hydrostaticDepthM).toBeCloseTo((p * 1000) / (9.80665 * { ...METRIC, ...changes }.unitWeightKgPerM3), 9);
  });

  it('prints a note for each reason to take the liquid head, in the units of the limit', () => {
    expect(kpa({ slumpMm: 200, riseMPerH: 5 }).notes).toEqual([
      'Slump 200 mm is over the 175 mm limit of the wall equations: full liquid head.',
      'Rate of rise 5 m/h is over the 4.5 m/h limit of the wall equations: full liquid head.',
    ]);
    expect(kpa({ slumpMm: 203.2, slumpIn: 8 }).notes).toEqual(['Slump 8 in is over the 7 in limit of the wall equations: full liquid head.']);
  });

  it('traces the SI equation with its numbers, in SI units, and says where its constants are from', () => {
    const { trace } = kpa({});
    expect(trace.map(({ name, unit }) => [name, unit])).toEqual([
      ['unit weight coefficient', '1'], ['chemistry coefficient', '1'], ['equation A', 'kPa'], ['minimum', 'kPa'], ['liquid head', 'kPa'], ['form pressure', 'kPa'], ['liquid depth', 'm'],
    ]);
    expect(trace[2]).toMatchObject({
      equation: 'p = Cw · Cc · (7.2 + 785 · R / (T + 17.8))', substituted: '1 · 1 · (7.2 + 785 · 2 / (20 + 17.8))', source: 'aci-347-04 §2.2.2, SI, from memory; nunnally Eq. 12-1B prints T + 18',
    });
    expect(trace[4]).toMatchObject({ substituted: '2400 · 9.80665 · 4 / 1000', source: 'aci-347-04 §2.2.2' });
    expect(kpa({ heightM: 5 }).trace[2]).toMatchObject({
      equation: 'p = Cw · Cc · (7.2 + 1156 / (T + 17.8) + 244 · R / (T + 17.8))', source: 'aci-347-04 §2.2.2, SI, from memory; nunnally Eq. 12-2B prints 1154 and T + 18',
    });
  });

  it.each([{ concreteC: 4.4, limit: 40 }, { concreteC: 35.1, limit: 95 }])('gives no number at $concreteC C', ({ concreteC, limit }) => {
    expect(wallFormPressureSi({ ...METRIC, concreteC })).toMatchObject({ kind: 'outside-method', outside: [{ quantity: 'concreteF', limit }] });
  });

  it('answers at 95 F, which is 35 C', () => expect(kpa({ concreteC: 35 }).governs).toBe('equation-a'));

  it.each([{ z: 0, p: 0 }, { z: 1, p: GAMMA }, { z: 4, p: 40 }])('at $z m is $p kPa', ({ z, p }) => {
    expect(pressureAtDepthSi(2400, 40, z)).toBeCloseTo(p, 9);
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
