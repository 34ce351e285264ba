import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { readScheduleDocument } from '../../../src/domain/schedule/index.js';
import { takeOff } from '../../../src/domain/takeoff/index.js';
import { wallBars } from '../../../src/domain/checks/wall-bars.js';
import { wallsInside } from '../../../src/domain/checks/walls-inside.js';
import type { CheckReport } from '../../../src/domain/checks/check-report.js';
import type { LaidStorey } from '../../../src/domain/takeoff/laid.js';
import { ORDINARY_PLANS } from '../../support/ordinary-plans.js';
import { HERON } from '../../support/schedule-documents.js';
import { heron } from '../../support/small-schedules.js';

const range = heron();
function laid(document: unknown): { readonly reports: readonly CheckReport[]; readonly storeys: readonly LaidStorey[] } {
  const read = readScheduleDocument(document, HERON);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  const takeoff = takeOff(read.value, range);
  const job = { schedule: read.value, range, takeoff, materials: [], pressureOf: () => { throw new Error('no pressure is asked for'); } };
  return { reports: wallBars(job), storeys: takeoff.laid.storeys };
}
const sample = (name: string): Record<string, unknown> => JSON.parse(readFileSync(`shared/samples/${name}.schedule.json`, 'utf8')) as Record<string, unknown>;
const ring = (core: string, width: number, depth: number, storey = 'S1', prefix = 'A') =>
  [[0, 0], [width, 0], [width, depth], [0, depth]].map((from, at, all) => ({ mark: `${prefix}${at + 1}`, storey, core, from, to: all[(at + 1) % 4] }));
const house = (units: 'in' | 'mm', [width, depth, height]: readonly number[], site: object) => ({
  format: 'wallcourse/schedule@1', name: 'house', units, dimensionsTo: 'foam-face', range: 'HERON-16',
  storeys: [{ id: 'B', height, grade: 'below', storeyAbove: true, closed: true }, { id: 'S1', height, grade: 'above', closed: true, on: 'B' }],
  walls: [...ring('8', width!, depth!, 'B', 'B'), ...ring('6', width!, depth!, 'S1', 'A')], openings: [], features: [], site,
});
const shown = (reports: readonly CheckReport[]) => reports.map(({ storey, core, results, findings }) => [storey, core, results['cell'] ?? results['status'], findings.map(({ code }) => code).join()]);

describe('the samples, read in the tables by hand', () => {
  /** R608.6(1): 8 in at 9'-4", so the 10 ft row, 115 mph in B: #4 @ 48; 6 in at 8 ft likewise. Q1 is a partition. */
  it('Mill Lane house', () => {
    const { reports } = laid(sample('mill-lane-house'));
    expect(shown(reports)).toEqual([['S1', '8', '#4 @ 48', 'bars-not-checked'], ['S2', '6', '#4 @ 48', '']]);
    expect(reports[0]?.findings[0]).toMatchObject({ severity: 'note', walls: ['Q1'], numbers: { inside: expect.stringContaining('soil or wind') } });
    expect(reports[0]?.places.filter(({ results }) => String(results['horizontal']).startsWith('2 ×')).map(({ wall }) => wall)).toEqual(['G1', 'G2', 'G3', 'G4']);
    expect(reports[0]?.notes.join()).toContain('the row of 115 mph and 10 ft is taken');
    expect(reports[0]?.notes.join()).toContain('At most 18 in of soil');
  });

  /** 110 mph in B is read in the row of 115: #4 @ 48 for 8 and 6 in. Gables rise to 13'-10"; Bank, 10 in below and 6 above, is read as 6. */
  it('Lantern Hall', () => {
    const { reports } = laid(sample('lantern-hall'));
    expect(shown(reports)).toEqual([['Hall', '8', '#4 @ 48', 'bars-not-checked'], ['Hall', '6', '#4 @ 48', ''], ['Hall', '10', '#4 @ 48', '']]);
    expect(reports[0]?.findings[0]?.walls).toEqual(['East', 'West', 'Vestry']);
    expect(Object.keys(reports[0]?.findings[0]?.numbers ?? {})).toEqual(['inside', 'gable']);
    expect(reports[2]?.results).toMatchObject({ coreRead: '6', nominalIn: 6 });
  });

  it.each(['harbour-store', 'quay-workshop'])('%s states no site', (name) => {
    const { reports } = laid(sample(name));
    expect(shown(reports)).toEqual([['S1', '6', 'not checked', 'bars-not-checked']]);
    expect(reports[0]?.findings[0]?.numbers['missing']).toBe('wind, exposure');
  });
});

describe('a house on a basement', () => {
  /**
   * (3), from memory: 8 in, 8 ft, 7 ft, 45 psf/ft: #6 @ 36; (8), found: #5 @ 41; R608.6(1): 6 in, 8 ft, 115 mph in B: #4 @ 48.
   * 0.44 / 36 is more than 0.20 / 48, so the soil governs.
   */
  const expected = [
    ['B', { cell: '#6 @ 36', bar: '#6', spacingIn: 36, insideFaceCell: '#5 @ 41', aboveGradeCell: '#4 @ 48', strengthAgrees: 'yes' }],
    ['S1', { cell: '#4 @ 48', status: 'found' }],
  ];
  const site = { exposure: 'B', seismic: 'B', code: 'irc-2018' };

  it('in inches and pounds', () => {
    const { reports } = laid(house('in', [480, 336, 96], { ...site, wind: '115 mph', soil: '45 psf/ft', backfill: "7'-0\"" }));
    expect(reports.map(({ storey, results }) => [storey, results])).toEqual(expected.map(([storey, results]) => [storey, expect.objectContaining(results as object)]));
    expect(reports.flatMap(({ findings }) => findings)).toEqual([]);
  });

  /** 45 psf/ft is 7.069 kN/m3; 7.06 stands in its column, 7.08 is beyond it and has the next. 51.4 m/s is 115 mph. */
  it('in millimetres and newtons', () => {
    const metric = (soil: string) => laid(house('mm', [12_192, 8_534.4, 2438.4], { ...site, wind: '51.4 m/s', soil, backfill: '2133.6 mm' })).reports;
    expect(metric('7.06 kN/m3').map(({ storey, results }) => [storey, results])).toEqual(expected.map(([storey, results]) => [storey, expect.objectContaining(results as object)]));
    // (3) 8 ft, 7 ft, 60: #6 @ 35.
    expect(metric('7.08 kN/m3')[0]?.results['cell']).toBe('#6 @ 35');
  });
});

describe('ordinary plans', () => {
  const site = (below: boolean) => ({ wind: '115 mph', exposure: 'B', soil: '45 psf/ft', backfill: below ? "6'-0\"" : "1'-0\"", seismic: 'B', snow: '30 psf' });

  it.each(ORDINARY_PLANS.map((plan) => [plan.name, plan] as const))('%s', (name, plan) => {
    const below = plan.storeys.some(({ grade }) => grade === 'below');
    const loud = (reports: readonly CheckReport[]) => reports.flatMap(({ findings }) => findings.filter(({ severity }) => severity !== 'note').map(({ code, walls }) => `${code} ${walls.join()}`));
    expect(loud(laid(plan).reports)).toEqual([]);
    // 128 in of house wall stand over a garage floor: 10'-8", and the code's limit is 10 ft.
    expect(loud(laid({ ...plan, site: site(below) }).reports)).toEqual(name === 'house with a lower garage' ? ['wall-beyond-tables A1,A2,A3,A4'] : []);
  });
});

describe('walls that stand inside', () => {
  const insideOf = (walls: readonly object[]) => {
    const { storeys } = laid({ ...house('in', [480, 336, 96], {}), storeys: [{ id: 'S1', height: 96 }], walls });
    return [...wallsInside(storeys[0]!)];
  };

  it('a partition from wall to wall and one that ends free; not the wing outside', () => {
    const partitions = [
      { mark: 'P', storey: 'S1', core: '6', from: [220, 11], to: [220, 325] }, { mark: 'Q', storey: 'S1', core: '4', from: [100, 11], to: [100, 160] },
      { mark: 'G1', storey: 'S1', core: '6', from: [469, 60], to: [700, 60] }, { mark: 'G2', storey: 'S1', core: '6', from: [700, 60], to: [700, 260] }, { mark: 'G3', storey: 'S1', core: '6', from: [700, 260], to: [469, 260] },
    ];
    expect(insideOf([...ring('6', 480, 336), ...partitions])).toEqual(['P', 'Q']);
  });

  it('none where the ring is open', () => {
    expect(insideOf([...ring('6', 480, 336).slice(0, 3), { mark: 'Q', storey: 'S1', core: '6', from: [100, 11], to: [100, 160] }])).toEqual([]);
  });

  it('not the walls of a courtyard, nor what stands in it', () => {
    const court = [[200, 90], [200, 250], [380, 250], [380, 90]].map((from, at, all) => ({ mark: `C${at + 1}`, storey: 'S1', core: '6', from, to: all[(at + 1) % 4] }));
    expect(insideOf([...ring('6', 600, 336), ...court, { mark: 'F', storey: 'S1', core: '6', from: [260, 170], to: [330, 170] }, { mark: 'P', storey: 'S1', core: '6', from: [100, 11], to: [100, 160] }])).toEqual(['P']);
  });
});
