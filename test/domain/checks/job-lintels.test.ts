import { describe, expect, it } from '@jest/globals';
import { checkLintels } from '../../../src/domain/checks/job-lintels.js';
import { lintelDepth } from '../../../src/domain/checks/lintel-place.js';
import { readScheduleDocument } from '../../../src/domain/schedule/index.js';
import { takeOff } from '../../../src/domain/takeoff/index.js';
import { canonicalSchedule } from '../../support/canonical-schedule.js';
import { ORDINARY_PLANS } from '../../support/ordinary-plans.js';
import { HERON, rectangle } from '../../support/schedule-documents.js';
import { heron } from '../../support/small-schedules.js';
import type { Schedule } from '../../../src/domain/schedule/schedule.js';

const range = heron();
const checked = (schedule: Schedule) =>
  checkLintels({ schedule, range, takeoff: takeOff(schedule, range), materials: [], pressureOf: () => { throw new Error('lintels ask for no pressure'); } });

/** The rectangle at 8 ft: six courses of 16 in, 96 in. Its door is 36 x 84 in, so 12 in of a 6 in core stand over it. */
function house(change: { storey?: object; opening?: object; site?: object; features?: object[]; more?: object } = {}) {
  const document = rectangle();
  const read = readScheduleDocument({
    ...document,
    storeys: [{ ...document.storeys[0], height: 96, ...change.storey }],
    openings: [{ ...document.openings[0], ...change.opening }],
    ...(change.features && { features: change.features }),
    ...(change.site && { site: change.site }),
    ...change.more,
  }, HERON);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return checked(read.value);
}
const LOADED = { dead: '400 lb/ft', live: '300 lb/ft', snow: '150 lb/ft' };

describe('lintels of a job', () => {
  it('carry floors and roof: one #4 and the least stirrups, worked by hand', () => {
    // Wall 150 · 6 · 12 / 144 = 75 lb/ft; D = 475. 1.2 · 475 + 1.6 · 300 + 0.5 · 150 = 1125 lb/ft. Mu = 1125 · 3² / 8 = 1265.625 ft·lb; Vu = 1687.5 lb.
    // h = 8 in (9 would be a quarter of the span); d = 8 − 1.5 − 0.375 − 0.25 = 5.875; a = 12000 / (0.85 · 3000 · 6) = 0.784314;
    // φMn = 0.9 · 12000 · (5.875 − 0.392157) = 59214.7 in·lb. φVc = 0.75 · 2 · √3000 · 6 · 5.875 = 2896.08 lb; its half is under Vu: s = d / 2, 2 in whole.
    const [report, ...more] = house({ storey: LOADED });
    expect([more, report?.findings]).toEqual([[], []]);
    expect(report).toMatchObject({ check: 'lintel', storey: 'S1', core: '6' });
    expect(report?.places).toHaveLength(1);
    const [place] = report?.places ?? [];
    expect(place).toMatchObject({ wall: 'A', course: null });
    // Foam face to axis at a corner of 90 degrees: 6 / 2 + 2.5 = 5.5 in; 60 − 5.5 = 54.5 in.
    expect(place?.atMm).toBeCloseTo(54.5 * 25.4, 6);
    expect(place?.results).toMatchObject({ opening: 'D1', bars: '1-#4', stirrups: '#3', governs: 'stirrups-least', loads: 'floors and roof', trimBar: '#4', trimBelow: 0, trimAbove: 1 });
    const number = (key: string) => Number(place?.results[key]);
    expect(number('clearMm')).toBeCloseTo(914.4, 9);
    expect(number('aboveMm')).toBeCloseTo(304.8, 9);
    expect(number('depthMm')).toBeCloseTo(203.2, 9);
    expect(number('factoredLbPerFt')).toBeCloseTo(1125, 6);
    expect(number('momentFtLb')).toBeCloseTo(1265.625, 6);
    expect(number('shearLb')).toBeCloseTo(1687.5, 6);
    expect(number('momentShare')).toBeCloseTo(15_187.5 / 59_214.7, 5);
    expect(number('shearOfConcreteShare')).toBeCloseTo(1687.5 / 2896.08, 5);
    expect(number('stirrupSpacingMm')).toBeCloseTo(50.8, 9);
    expect(number('stirrupsOverMm')).toBeCloseTo(914.4, 9);
    // #4 as a top bar developed: 1.3 · 60000 / (25 · √3000) · 0.5 = 28.48 in, 29 in whole; over the 24 in of R608.8.1.
    expect(number('trimPastCornerMm')).toBeCloseTo(29 * 25.4, 6);
    expect(place?.results).toMatchObject({ trimBesideEach: 1, trimWithinMm: 304.8, trimBy: 'irc-2018 R608.8.1, from summaries', by: 'aci-318-14' });
    // 36 in is over four depths of 8: an ordinary beam.
    expect(place?.results['deepBeam']).toBeUndefined();
    expect(report?.trace[0]?.name).toBe('weight of the wall above');
  });

  it('carry the wall alone where no load is stated, and say so once for the storey', () => {
    // 1.4 · 75 = 105 lb/ft; Mu = 105 · 9 / 8 = 118.125 ft·lb.
    const [report] = house();
    expect(report?.places[0]?.results).toMatchObject({ loads: 'wall above only', bars: '1-#4', stirrups: 'none' });
    expect(report?.places[0]?.results['momentFtLb']).toBeCloseTo(118.125, 6);
    expect(report?.findings.map(({ code, severity, storey }) => [code, severity, storey])).toEqual([['lintel-load-not-stated', 'note', 'S1']]);
  });

  it('in millimetres: worked in SI by hand', () => {
    // 1.4 · 23.5632 kN/m³ · 0.2032 · 0.3384 = 2.26838 kN/m; M = w · 1.2² / 8 = 0.408309 kN·m; V = 1.361030 kN. 11 in deep: 12 in would be over a quarter of 47.24 in.
    const schedule = canonicalSchedule(ORDINARY_PLANS.find(({ name }) => name === 'U in millimetres')!);
    const place = checked(schedule)[0]?.places.find(({ results }) => results['opening'] === 'O1');
    expect(place?.results['clearMm']).toBeCloseTo(1200, 6);
    expect(place?.results['depthMm']).toBeCloseTo(279.4, 6);
    expect(place?.results['momentKnM']).toBeCloseTo(0.408309, 5);
    expect(place?.results['shearKn']).toBeCloseTo(1.36103, 4);
  });

  it('under a gable are no deeper than its least height over the opening, and carry the greatest', () => {
    // 48 in over 240: 12 in at station 60, 19.2 at 96. Least 12 + 12 = 24 in; weight 150 · 6 · 31.2 / 144 = 195, times 1.4 = 273 lb/ft.
    const [report] = house({ features: [{ kind: 'gable', wall: 'A', rise: 48, peakAt: 240 }] });
    expect(report?.places[0]?.results['aboveMm']).toBeCloseTo(609.6, 3);
    expect(report?.places[0]?.results['factoredLbPerFt']).toBeCloseTo(273, 3);
  });

  it('span between the end closures', () => {
    // Decision 16: the hole less a closure at each jamb.
    const [report] = house({ opening: { lining: 'end-closure' } });
    expect(report?.places[0]?.results['clearMm']).toBeCloseTo(914.4 - (2 * range.closure.thickness) / 1e6, 6);
  });

  it('are none where an opening goes to the top of the wall', () => {
    const [report] = house({ storey: LOADED, opening: { height: 96 } });
    expect(report?.places[0]?.results).toMatchObject({ lintel: 'no concrete above', trimAbove: 0 });
    expect(report?.findings).toEqual([]);
  });

  it('hold an opening whose stirrups would stand too close, on both sides of the limit', () => {
    // h = 8, #5: d = 5.8125. Over Vs = 4 · √3000 · 6 · d stirrups have to stand at d / 4 = 1.45 in, under 2 in. Vu = 0.75 · 6 · √3000 · 6 · 5.8125 = 8595.8 lb,
    // wu = 5730.6 lb/ft = 1.2 · 75 + 1.6 · L: L = 3525.4 lb/ft.
    expect(house({ storey: { live: '3520 lb/ft' } })[0]).toMatchObject({ findings: [], places: [{ results: { bars: '1-#5', governs: 'stirrups-shear' } }] });
    const [report] = house({ storey: { live: '3530 lb/ft' } });
    expect(report?.findings).toMatchObject([{ code: 'opening-too-wide', severity: 'hold', storey: 'S1', wall: 'A', numbers: { core: '6' } }]);
    expect(report?.findings[0]?.numbers['widthMm']).toBeCloseTo(914.4, 9);
    expect(report?.places[0]?.results).toMatchObject({ bars: 'none fit' });
  });

  it('are by the Ontario table where it has a row, with ACI beside it', () => {
    // obc-2024 9.20.17.4.-A, roof, 1.50 kPa: 160 mm, 300 mm deep 1.78 m and 400 mm 2.07 m; at 304.8 mm 1.79392 m, shorter than the 1.7944 m of 150 mm.
    // 10M without stirrups: d = 304.8 − 38.1 − 5.65 = 261.05 mm; a = 100 · 400 / (0.85 · 20.684 · 152.4) = 14.929 mm; φMn = 0.9 · 40 000 · 253.586 = 9.1291 kN·m.
    // Mu = 1265.625 ft·lb = 1.71595 kN·m.
    const [report] = house({ storey: LOADED, site: { code: 'obc-2024', snow: '1.5 kPa' } });
    const results = report?.places[0]?.results;
    expect(results).toMatchObject({
      by: 'obc-2024', bars: '1-10M', barsFrom: 'found', stirrups: 'none', governs: 'table', crossCheck: 'aci-318-14', crossCheckBars: '1-#4', crossCheckStirrups: '#3', crossCheckGoverns: 'stirrups-least',
      trimBar: '10M', trimBesideEach: 1, trimAbove: 1, trimPastCornerMm: 600, trimBy: 'obc-2024 9.20.17',
    });
    expect(results?.['longestSpanMm']).toBeCloseTo(1793.92, 6);
    expect(results?.['depthMm']).toBeCloseTo(304.8, 6);
    expect(results?.['momentShare']).toBeCloseTo(1.71595 / 9.1291, 4);
    expect(results?.['crossCheckMomentShare']).toBeCloseTo(15_187.5 / 59_214.7, 5);
    expect(results?.['crossCheckDepthMm']).toBeCloseTo(203.2, 9);
    expect(report?.findings).toEqual([]);
  });

  it.each([
    ['no snow load', {}, {}, 'the snow load of the site is not stated'],
    // 10 in is 254 mm; the thickest rows are 240 mm.
    ['a core thicker than its rows', { snow: '1.5 kPa' }, { more: { walls: rectangle().walls.map((wall: object) => ({ ...wall, core: '10' })) } }, 'outside the tables'],
    // 8000 lb/ft live: Mu = (90 + 12 800) · 9 / 8 = 14 501 ft·lb, 19.66 kN·m, over the 9.13 kN·m of the 10M.
    ['loads that its bars do not carry', { snow: '1.5 kPa' }, { storey: { live: '8000 lb/ft' } }, 'the loads ask more than its 1-10M carries by ACI 318'],
  ])('are by ACI where the Ontario table has none: %s', (_, site, change, why) => {
    const results = house({ ...change, site: { code: 'obc-2024', ...site } })[0]?.places[0]?.results;
    expect(results).toMatchObject({ table: `none: ${why}` });
    expect(results?.['crossCheck']).toBeUndefined();
    if (why.startsWith('the loads')) expect(results).toMatchObject({ bars: 'none fit', governs: 'opening-too-wide' });
    else expect(results).toMatchObject({ by: 'aci-318-14', bars: '1-#4' });
  });

  it('over a narrow opening are deep beams by ACI 318, and say so without a hold', () => {
    // 8 in is the least depth: 32 in is four depths, 33 is over.
    expect(house({ storey: LOADED, opening: { width: 33 } })[0]?.places[0]?.results['deepBeam']).toBeUndefined();
    const [report] = house({ storey: LOADED, opening: { width: 32 } });
    expect(report).toMatchObject({ findings: [], places: [{ results: { deepBeam: 'yes', bars: '1-#4' } }] });
    expect(report?.notes[0]).toContain('9.9.1.1');
  });

  it.each([
    // 6 in core: D = 400 + 150 · 6 · 24 / 144 = 550; 1.2 · 550 + 1.6 · 300 + 0.5 · 150 = 1215 lb/ft; Mu = 1215 · 16² / 8 = 38 880 ft·lb, Vu = 9720 lb.
    // #6: d = 24 − 1.875 − 0.375 = 21.75, a = 26 400 / 15 300 = 1.72549, φMn = 23 760 · 20.88725 = 496 281 in·lb = 41 357 ft·lb; least steel 0.435 of 0.44 in².
    // 2-#4 is lighter, but d = 21.875, a = 1.56863, φMn = 21 600 · 21.09069 / 12 = 37 963 ft·lb. φVc / 2 = 5361 lb under Vu: d / 2, 10 in whole.
    ['6', 1215, 38_880, 9720, '1-#6', 496_281],
    // 8 in core: D = 600, 1275 lb/ft; Mu = 40 800 ft·lb, Vu = 10 200 lb. #6 carries 41 784 ft·lb but least steel is 200 / 60 000 · 8 · 21.75 = 0.58 in².
    // #7: d = 21.6875, a = 36 000 / 20 400 = 1.76471, φMn = 32 400 · 20.80515 = 674 087 in·lb; least 0.578 of 0.60. φVc / 2 = 7127 lb under Vu: 10 in.
    ['8', 1275, 40_800, 10_200, '1-#7', 674_087],
  ])('over a garage door of 16 ft in a %s in core: ordinary bars and no hold, worked by hand', (core, load, moment, shear, bars, strength) => {
    const [report] = house({ storey: LOADED, opening: { width: 192, height: 72 }, more: { walls: rectangle().walls.map((wall: object) => ({ ...wall, core })) } });
    const results = report?.places[0]?.results;
    expect(report?.findings).toEqual([]);
    expect(results).toMatchObject({ bars, stirrups: '#3', governs: 'stirrups-least' });
    const number = (key: string) => Number(results?.[key]);
    expect([number('factoredLbPerFt'), number('momentFtLb'), number('shearLb')].map((each) => Number(each.toPrecision(10)))).toEqual([load, moment, shear]);
    expect(number('depthMm')).toBeCloseTo(609.6, 9);
    expect(number('momentShare')).toBeCloseTo((moment * 12) / strength, 5);
    expect(number('stirrupSpacingMm')).toBeCloseTo(254, 9);
  });

  it('of openings one above another have the concrete between them, and carry the whole wall', () => {
    // Head at 40, sill of the upper one at 56: 16 in. To the top 56 in: 1.4 · 150 · 6 · 56 / 144 = 490 lb/ft. Over the upper one 16 in: 140 lb/ft.
    const [lower] = rectangle().openings;
    const openings = [{ ...lower, at: 60, sill: 0, width: 36, height: 40 }, { ...lower, mark: 'W2', at: 60, sill: 56, width: 36, height: 24 }];
    const results = house({ more: { openings } })[0]?.places.map(({ results }) => results) ?? [];
    expect(results.map((each) => [each['opening'], Number(Number(each['aboveMm']).toFixed(6)), Number(Number(each['factoredLbPerFt']).toFixed(6)), each['trimBelow']])).toEqual([
      ['D1', 406.4, 490, 0], ['W2', 406.4, 140, 1],
    ]);
  });

  it('with the head in the middle of a course have the rest of that course over them', () => {
    // Courses of 16 in: 88 in is the middle of the sixth.
    const results = house({ opening: { height: 88 } })[0]?.places[0]?.results;
    expect(results?.['aboveMm']).toBeCloseTo(203.2, 9);
    expect(results?.['depthMm']).toBeCloseTo(203.2, 9);
  });

  it('of a grid core are outside the method, which is for one solid core', () => {
    const grid = { ...range, cores: new Map([...range.cores].map(([code, core]) => [code, { ...core, family: 'screen-grid' as const }])) };
    const read = readScheduleDocument(rectangle(), HERON);
    if (!read.ok) throw new Error(JSON.stringify(read.error));
    const [report] = checkLintels({ schedule: read.value, range: grid, takeoff: takeOff(read.value, grid), materials: [], pressureOf: () => { throw new Error('lintels ask for no pressure'); } });
    expect(report?.findings).toMatchObject([{ code: 'lintel-load-not-stated' }, { code: 'outside-method', severity: 'hold', numbers: { family: 'screen-grid' } }]);
    expect(report?.places[0]?.results['bars']).toBeUndefined();
  });

  it('carry the walls of the storey above with their loads', () => {
    // Below 75 lb/ft, above 150 · 6 · 96 / 144 = 600, and 100 + 200 of floors: 1.4 · 975 = 1365 lb/ft.
    const document = rectangle();
    const storeys = [{ ...document.storeys[0], height: 96, storeyAbove: true, dead: '100 lb/ft' }, { ...document.storeys[0], id: 'S2', height: 96, on: 'S1', dead: '200 lb/ft' }];
    const walls = [...document.walls, ...document.walls.map((wall: { mark: string }) => ({ ...wall, mark: `${wall.mark}2`, storey: 'S2' }))];
    const [report] = house({ more: { storeys, walls } });
    expect(report?.places[0]?.results).toMatchObject({ loads: 'floors and roof' });
    expect(report?.places[0]?.results['factoredLbPerFt']).toBeCloseTo(1365, 6);
    // The upper storey's 200 left out: 1.4 · 775 = 1085 lb/ft, and said.
    const [first, { dead: _, ...second }] = storeys as [object, { dead?: string }];
    const [part] = house({ more: { storeys: [first, second], walls } });
    expect(part?.places[0]?.results).toMatchObject({ loads: 'in part' });
    expect(part?.places[0]?.results['factoredLbPerFt']).toBeCloseTo(1085, 6);
  });

  it('are as deep as keeps the span over four depths, 8 to 24 in, and no deeper than the wall', () => {
    expect([[36, 40], [37, 40], [24, 40], [192, 40], [192, 12], [36, 6]].map(([clear, least]) => lintelDepth(clear!, least!))).toEqual([8, 9, 8, 24, 12, 6]);
  });

  it('of a 4 in core have a bar without stirrups where the concrete alone carries twice the shear, and are held where it does not', () => {
    // d = 8 − 1.5 − 0.25 = 6.25; a = 12000 / (0.85 · 3000 · 4) = 1.176471; φMn = 10800 · 5.661765 = 61147.06 in·lb; Mu = 1.4 · 50 · 9 / 8 = 78.75 ft·lb.
    // φVc / 2 = 0.75 · √3000 · 4 · 6.25 = 1026.98 lb = wu · 1.5: wu = 684.65 = 1.2 · 50 + 1.6 · L: L = 390.4 lb/ft.
    const more = { walls: rectangle().walls.map((wall: object) => ({ ...wall, core: '4' })) };
    const results = house({ more })[0]?.places[0]?.results;
    expect(results).toMatchObject({ bars: '1-#4', stirrups: 'none' });
    expect(results?.['momentShare']).toBeCloseTo(945 / 61_147.06, 7);
    expect(house({ more, storey: { live: '390 lb/ft' } })[0]?.findings).toEqual([]);
    expect(house({ more, storey: { live: '391 lb/ft' } })[0]?.findings).toMatchObject([{ code: 'opening-too-wide', numbers: { core: '4' } }]);
  });

  it('hold nothing of the ordinary plans', () => {
    const found = ORDINARY_PLANS.flatMap((document) => {
      const schedule = canonicalSchedule(document);
      return checked(schedule).flatMap(({ findings }) => findings.filter(({ severity }) => severity !== 'note').map(({ code, numbers }) => [document.name, code, numbers]));
    });
    expect(found).toEqual([]);
  });
});
