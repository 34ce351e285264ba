import { describe, expect, it } from '@jest/globals';
import { CORES, ruleRange } from '../../support/rule-range.js';
import { checkJob, formPressure } from '../../../src/domain/checks/check-job.js';
import { evaluateRules } from '../../../src/domain/reinforcement/evaluate.js';
import { designPressure } from '../../../src/domain/reinforcement/design-pressure.js';
import { closure, laidJob, times, type StoreySketch } from '../../support/laid.js';
import { HERON, rectangle } from '../../support/schedule-documents.js';
import { readScheduleDocument } from '../../../src/domain/schedule/index.js';
import { pourHeight } from '../../../src/domain/reinforcement/pour-height.js';
import type { FormRange } from '../../../src/domain/range/range.js';
import type { Pour, Schedule, Site } from '../../../src/domain/schedule/schedule.js';
import type { Takeoff } from '../../../src/domain/takeoff/takeoff.js';

const SITE: Site = { windMps: 50 };
/** 6 ft/h at 70 F: 150 + 54000/70 = 921.4 psf by equation A; 750 psf allow 70 · 600 / 9000 = 4.667 ft/h. */
const FAST: Pour = { riseMPerH: 1.8288, concreteC: 190 / 9, cement: 'I', retarder: false, slumpMm: 150, unitWeightKgPerM3: 2402.769506094024 };
const SLOW: Pour = { ...FAST, riseMPerH: 0.9144 };

const schedule = (pour: Pour | null, site: Site | null = SITE): Schedule => ({
  format: 'wallcourse/schedule@1', name: 'check', units: 'in', dimensionsTo: 'foam-face', range: 'HERON-16', storeys: [], walls: [], openings: [], features: [], site, pour, unknown: [],
});
const takeoff = (...storeys: readonly StoreySketch[]): Takeoff => ({ laid: laidJob(...storeys), units: [], cuts: [], bondBreaks: [], concrete: [], findings: [] });
const ONE: StoreySketch = { walls: [{ mark: 'A', length: 240, courses: times(6) }] };
const reportsOf = (of: Schedule, range: FormRange, laid: Takeoff) =>
  checkJob({ schedule: of, range, takeoff: laid, materials: [], pressureOf: () => { throw new Error('the pressure check works its own out'); } }, [formPressure]);
const check = (pour: Pour | null, site: Site | null = SITE, ...storeys: readonly StoreySketch[]) =>
  reportsOf(schedule(pour, site), ruleRange(), takeoff(...(storeys.length > 0 ? storeys : [ONE])));

describe('checkJob', () => {
  it('finds nothing where the pour is within the rating, and says how fast it might go', () => {
    const [report, ...more] = check(SLOW);
    expect(more).toEqual([]);
    expect(report).toMatchObject({
      check: 'form-pressure', storey: 'S1', core: '6', findings: [], defaults: [], notes: [], source: 'aci-347-04 §2.2.2',
      results: { basis: 'pour', governs: 'minimum', heightMm: 2438.4, pressurePsf: 600, ratedPsf: 750, hydrostaticDepthMm: 1219.2, riseFtPerH: 3, riseLimitBy: 'equation-a' },
    });
    expect(report?.results['riseLimitFtPerH']).toBeCloseTo(14 / 3, 9);
    expect(report?.results['pressureKpa']).toBeCloseTo(28.728, 3);
  });

  it('holds a pour that presses harder than the form is rated for, with the rate that would do', () => {
    const [report] = check(FAST);
    expect(report?.findings).toHaveLength(1);
    const [found] = report?.findings ?? [];
    expect(found).toMatchObject({ code: 'pressure-over-rating', severity: 'hold', storey: 'S1', wall: null, source: 'aci-347-04 §2.2.2' });
    expect(found?.numbers).toMatchObject({ core: '6', ratedPsf: 750, riseFtPerH: 6, riseLimitBy: 'equation-a' });
    expect(found?.numbers['pressurePsf']).toBeCloseTo(150 + 54_000 / 70, 8);
    expect(found?.numbers['riseLimitFtPerH']).toBeCloseTo(14 / 3, 9);
  });

  it('a pressure of exactly the rating is not over it', () => {
    const exact: Pour = { ...FAST, riseMPerH: (14 / 3) * 0.3048 };
    const [report] = check(exact);
    expect(report?.results['pressurePsf']).toBeCloseTo(750, 8);
    expect(report?.findings).toEqual([]);
  });

  it('judges each core by its own rating and each storey by its own height', () => {
    const reports = check(
      { ...FAST, riseMPerH: 1.3716 },
      SITE,
      { id: 'S1', walls: [{ mark: 'A', length: 240, courses: times(6) }, { mark: 'B', core: CORES[10], length: 240, courses: times(6) }] },
      { id: 'S2', walls: [{ mark: 'C', core: CORES[10], length: 240, courses: times(2) }] },
    );
    // 4.5 ft/h at 70 F: 728.6 psf, over 700 and under 750; two courses are 32 in of liquid: 400 psf.
    expect(reports.map(({ storey, core, findings }) => [storey, core, findings.map(({ code }) => code)])).toEqual([
      ['S1', '6', []],
      ['S1', '10', ['pressure-over-rating']],
      ['S2', '10', []],
    ]);
    expect(reports[2]?.results).toMatchObject({ pressurePsf: 400, governs: 'liquid-head', riseLimit: 'any' });
  });

  it('takes the tallest wall of the core as the height of the pour', () => {
    const [report] = check({ ...FAST, slumpMm: 200 }, SITE, { walls: [{ mark: 'A', length: 96, courses: times(3) }, { mark: 'B', length: 96, courses: times(6) }] });
    expect(report?.results).toMatchObject({ pressurePsf: 1200, governs: 'liquid-head', riseLimit: 'none', riseLimitBy: 'slump' });
    expect(report?.findings).toMatchObject([
      { code: 'full-liquid-head', severity: 'note', storey: 'S1' },
      { code: 'pressure-over-rating', numbers: { riseLimit: 'none', riseLimitBy: 'slump' } },
    ]);
    expect(report?.notes).toHaveLength(1);
  });

  it('notes a full liquid head once per storey and core, with the limit that was passed', () => {
    const both = [{ mark: 'A', length: 96, courses: times(2) }, { mark: 'B', length: 96, courses: times(2) }, { mark: 'C', core: CORES[10], length: 96, courses: times(3) }];
    const reports = check({ ...SLOW, slumpMm: 203.2 }, SITE, { id: 'S1', walls: both }, { id: 'S2', walls: both });
    const notes = reports.flatMap(({ findings }) => findings);
    // Two courses are 32 in of liquid, three are 48: 400 and 600 psf, within every rating.
    expect(notes.map(({ code, severity, storey, numbers, source }) => ({ code, severity, storey, numbers, source }))).toEqual(
      ['S1', 'S2'].flatMap((storey) => [['6', 400] as const, ['10', 600] as const].map(([core, pressurePsf]) => ({
        code: 'full-liquid-head', severity: 'note', storey, numbers: { slumpIn: 8, limitIn: 7, pressurePsf, core }, source: 'aci-347-04 §2.2.2',
      }))),
    );
  });

  it('notes a rate over 15 ft/h too, and neither at the limit itself', () => {
    const codes = (pour: Pour) => check(pour, SITE, { walls: [{ mark: 'A', length: 96, courses: times(2) }] }).flatMap(({ findings }) => findings);
    expect(codes({ ...SLOW, riseMPerH: 6.096 })).toMatchObject([{ code: 'full-liquid-head', numbers: { riseFtPerH: 20, limitFtPerH: 15, pressurePsf: 400, core: '6' } }]);
    expect(codes({ ...SLOW, riseMPerH: 6.096, slumpMm: 203.2 })).toMatchObject([{ numbers: { riseFtPerH: 20, limitFtPerH: 15, slumpIn: 8, limitIn: 7 } }]);
    expect(codes({ ...SLOW, riseMPerH: 4.572, slumpMm: 177.8 })).toEqual([]);
  });

  it('gives one pressure whatever units the schedule was typed in', () => {
    const pressed = (pour: object) => {
      const read = readScheduleDocument({ ...rectangle(), pour: { cement: 'I', retarder: false, ...pour } }, HERON);
      if (!read.ok) throw new Error(JSON.stringify(read.error));
      return check(read.value.pour)[0]?.results;
    };
    const us = pressed({ rise: '6 ft/h', concrete: '77 F', unitWeight: '150 pcf', slump: '7 in' });
    const si = pressed({ rise: '1.8288 m/h', concrete: '25 C', unitWeight: '2402.769506094 kg/m3', slump: '177.8 mm' });
    expect(us?.['pressurePsf']).toBeCloseTo(150 + 54_000 / 77, 8);
    expect(Number(si?.['pressurePsf']) / Number(us?.['pressurePsf'])).toBeCloseTo(1, 9);
    expect(Number(si?.['riseLimitFtPerH']) / Number(us?.['riseLimitFtPerH'])).toBeCloseTo(1, 9);
  });

  it('notes once for the job that no pour and no site are stated', () => {
    const reports = check(null, null, ONE, { ...ONE, id: 'S2' });
    expect(reports).toHaveLength(2);
    expect(reports.flatMap(({ findings }) => findings)).toMatchObject([
      { code: 'pour-not-stated', severity: 'note', storey: null },
      { code: 'site-not-stated', severity: 'note', storey: null },
    ]);
    expect(reports[1]?.results).toMatchObject({ basis: 'rated', pressurePsf: 750, ratedPsf: 750 });
  });

  it('holds a pour outside the method, at every storey it is poured in', () => {
    const reports = check({ ...FAST, concreteC: 0 }, SITE, ONE, { ...ONE, id: 'S2' });
    expect(reports.map(({ findings }) => findings.map(({ code, storey }) => [code, storey]))).toEqual([[['outside-method', 'S1']], [['outside-method', 'S2']]]);
  });

  it('no lift over the rating passes, however slowly it is poured', () => {
    const range = ruleRange({ parameters: { liftHeight: 6 * 304_800_000 } });
    const [report] = reportsOf(schedule(SLOW), range, takeoff(ONE));
    expect(report).toMatchObject({ results: { pressurePsf: 900, governs: 'lift-height', riseLimit: 'none', riseLimitBy: 'lift-height' }, findings: [{ code: 'pressure-over-rating' }] });
  });

  it('uses the pressure that the rules use', () => {
    const laid = laidJob({ walls: [{ mark: 'A', length: 240, courses: times(6, { pieces: [closure(0, 'end')] }) }] });
    const range = ruleRange();
    const seen = new Set<number>();
    evaluateRules(laid, range, (storey, core) => {
      const of = laid.storeys.find(({ id }) => id === storey);
      const { psf, basis } = designPressure(FAST, core, of ? pourHeight(of, core.code) : 0, range.parameters);
      seen.add(psf);
      return { psf, basis };
    });
    const [report] = check(FAST);
    expect([...seen]).toEqual([report?.results['pressurePsf']]);
  });
});
