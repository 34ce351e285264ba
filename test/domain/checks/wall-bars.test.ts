import { describe, expect, it } from '@jest/globals';
import { wallBars } from '../../../src/domain/checks/wall-bars.js';
import { inches, millimetres, type Nm } from '../../../src/domain/quantity/length.js';
import { inSi } from '../../../src/domain/quantity/quantity.js';
import type { CheckReport } from '../../../src/domain/checks/check-report.js';
import type { Core, CoreFamily } from '../../../src/domain/range/range.js';
import type { LaidStorey, LaidWall } from '../../../src/domain/takeoff/laid.js';
import type { Schedule, Site, Storey } from '../../../src/domain/schedule/schedule.js';
import { laidJob, type WallSketch } from '../../support/laid.js';
import { ruleRange } from '../../support/rule-range.js';

/** irc-2018 Table R404.1.2(8) is read in a public transcription, (2) to (7) are FROM MEMORY; cells are read off shared reference pages by hand. */
const core = (width: Nm, family: CoreFamily = 'flat', code = 'C'): Core => ({ code, width, family, ratedPressurePsf: 750 });
const IN = (width: number, family: CoreFamily = 'flat'): Core => core(inches(width), family, String(width));
const ft = (feet: number, inch = 0): number => feet * 12 + inch;
const soil = (psfPerFt: number): number => inSi('fluid weight', 'psf/ft', psfPerFt);
const wind = (mph: number): number => inSi('speed', 'mph', mph);
const WINDY: Site = { windMps: wind(115), exposure: 'B', seismic: 'B' };
const dug = (backfillIn: number, psfPerFt: number, more: Site = {}): Site => ({ seismic: 'B', backfill: inches(backfillIn), soilKnPerM3: soil(psfPerFt), ...more });

interface Sketch { readonly id?: string; readonly grade: 'above' | 'below'; readonly on?: string; readonly storeyAbove?: boolean; readonly walls: readonly LaidOverride[] }
type LaidOverride = Partial<WallSketch> & { readonly heightIn: number; readonly laid?: Partial<LaidWall> };

const storeyOf = ({ id = 'S1', grade, on, storeyAbove = false }: Sketch): Storey => ({ id, height: inches(96), grade, storeyAbove, closed: false, on: on ?? null });
function laidStorey(sketch: Sketch): LaidStorey {
  const { id = 'S1', grade, on, storeyAbove = false } = sketch;
  const walls = sketch.walls.map(({ heightIn, laid: _laid, ...wall }, index) => ({ mark: `W${index + 1}`, length: 240, courses: [{ height: heightIn }], ...wall }));
  const [laid] = laidJob({ id, walls, onFooting: on === undefined, storeyAbove }).storeys;
  return { ...laid!, grade, walls: laid!.walls.map((wall, index) => ({ ...wall, ...sketch.walls[index]?.laid })) };
}
function check(site: Site | null, ...sketches: readonly Sketch[]): readonly CheckReport[] {
  const schedule: Schedule = {
    format: 'wallcourse/schedule@1', name: 'bars', units: 'in', dimensionsTo: 'foam-face', range: 'HERON-16', storeys: sketches.map(storeyOf), walls: [], openings: [], features: [], site, pour: null, unknown: [],
  };
  const takeoff = { laid: { storeys: sketches.map(laidStorey) }, units: [], cuts: [], bondBreaks: [], concrete: [], findings: [] };
  return wallBars({ schedule, range: ruleRange(), takeoff, materials: [], pressureOf: () => { throw new Error('no pressure is asked for'); } });
}
const one = (site: Site | null, grade: 'above' | 'below', wall: Core, heightIn: number, laid: Partial<LaidWall> = {}): CheckReport =>
  check(site, { grade, walls: [{ core: wall, heightIn, laid }] })[0]!;
const codes = ({ findings }: CheckReport): readonly string[] => findings.map(({ code, severity }) => `${severity} ${code}`);

describe('below grade, bars at the center govern (Tables (2) to (7), from memory) and the cell near the inside face stands beside (Table (8), found)', () => {
  it.each([
    { core: IN(6), height: 8, fill: 6, psf: 45, table: 2, cell: '#6 @ 48', inside: '#5 @ 37', agrees: 'yes' },
    { core: IN(8), height: 9, fill: 8, psf: 30, table: 3, cell: '#6 @ 36', inside: '#5 @ 41', agrees: 'yes' },
    { core: IN(8), height: 9, fill: 6, psf: 60, table: 3, cell: '#6 @ 35', inside: '#6 @ 39', agrees: 'yes' },
    { core: IN(10), height: 10, fill: 9, psf: 60, table: 4, cell: '#6 @ 21', inside: '#6 @ 27', agrees: 'yes' },
    // Recalled with bars where the rule says that plain concrete would do: the safe side.
    { core: IN(10), height: 8, fill: 8, psf: 30, table: 4, cell: '#6 @ 48', inside: 'NR l', agrees: 'no' },
    { core: IN(6, 'waffle-grid'), height: 8, fill: 8, psf: 30, table: 5, cell: '#6 @ 32', inside: undefined, agrees: 'yes' },
    { core: IN(8, 'waffle-grid'), height: 9, fill: 7, psf: 45, table: 6, cell: '#6 @ 38', inside: undefined, agrees: 'yes' },
    { core: IN(8, 'waffle-grid'), height: 8, fill: 4, psf: 45, table: 6, cell: 'NR', inside: undefined, agrees: 'not told' },
    // The table gives bars where the shear at the foot is over that of the concrete.
    { core: IN(6, 'screen-grid'), height: 8, fill: 6, psf: 60, table: 7, cell: '#6 @ 32', inside: undefined, agrees: 'no' },
  ])('($table) $core.code in $core.family, $height ft, $fill ft of fill, $psf psf/ft: $cell; (8): $inside', ({ core: of, height, fill, psf, table, cell, inside, agrees }) => {
    const report = one(dug(ft(fill), psf), 'below', of, ft(height));
    expect(report).toMatchObject({ check: 'wall-bars', storey: 'S1', places: [], findings: [], source: `irc-2018 Table R404.1.2(${table}), from memory` });
    expect(report.results).toMatchObject({ cell, centerCell: cell, table: `R404.1.2(${table})`, status: 'from memory', position: 'center', strengthAgrees: agrees, grade: 'below', code: 'irc-2018' });
    expect([report.results['insideFaceCell'], report.results['insideFaceStatus']]).toEqual(inside === undefined ? [undefined, undefined] : [inside, 'found']);
    expect(report.notes.join()).toContain('from memory');
    expect(report.trace.length).toBeGreaterThan(1);
  });

  it('says by how much cell and rule miss each other', () => {
    expect(one(dug(ft(8), 30), 'below', IN(10), ft(8)).notes.join()).toContain('The cell is #6 @ 48 and the strength rule gives NR');
  });

  /** Only Table (8) has 12 in: 10 ft, 10 ft of fill, 45 psf/ft. */
  it('12 in walls are in Table (8) alone', () => {
    const report = one(dug(ft(10), 45), 'below', IN(12), ft(10));
    expect(report.results).toMatchObject({ cell: '#6 @ 38', table: 'R404.1.2(8)', status: 'found', position: 'inside-face' });
    expect(report.results['centerCell']).toBeUndefined();
  });

  it.each([
    ["a 7'-1\" wall has the 8 ft row in both", ft(7, 1), ft(6), 45, '#6 @ 48', '#5 @ 37'],
    ["a 7'-0\" wall has the 7 ft row of (8); (2) begins at 8 ft", ft(7), ft(6), 45, '#6 @ 48', '#5 @ 42'],
    ["5'-1\" of fill has the row of 6 ft", ft(8), ft(5, 1), 45, '#6 @ 48', '#5 @ 37'],
    ['31 psf/ft has the column of 45', ft(8), ft(6), 31, '#6 @ 48', '#5 @ 37'],
  ] as const)('nothing between rows: %s', (_words, height, fill, psf, center, inside) => {
    const { results, notes } = one(dug(fill, psf), 'below', IN(6), height);
    expect([results['centerCell'], results['insideFaceCell']]).toEqual([center, inside]);
    expect(notes.join()).toContain('Nothing lies between rows');
  });

  it('less than 4 ft of fill has the row of 4 ft, and a 6 in wall in stay-in-place forms takes #4 @ 48 all the same', () => {
    expect(one(dug(ft(2), 45), 'below', IN(6), ft(8)).results).toMatchObject({ cell: 'NR', bar: '#4', spacingIn: 48, spacingMm: 1219.2, strengthRule: 'NR', strengthAgrees: 'yes' });
    expect(one(dug(ft(2), 45), 'below', IN(8), ft(8)).results).toMatchObject({ cell: 'NR', bar: 'none' });
  });

  /** Table R608.5.4(2), row 36, columns #6 to …: 16, 25 at Grade 60; 11, 17, 24 at Grade 40. */
  it('names other bars and grades in place of #6 @ 36, on flat walls with 4 ft of fill or more', () => {
    expect(one(dug(ft(8), 30), 'below', IN(8), ft(9)).results['alternates']).toBe('#4 Grade 60 @ 16, #5 Grade 60 @ 25, #4 Grade 40 @ 11, #5 Grade 40 @ 17, #6 Grade 40 @ 24');
    expect(one(dug(ft(8), 30), 'below', IN(6, 'waffle-grid'), ft(8)).results['alternates']).toBeUndefined();
    expect(one(dug(ft(3), 30), 'below', IN(6), ft(8)).results['alternates']).toBeUndefined();
  });

  it('two horizontal bars to 8 ft, three above', () => {
    expect(one(dug(ft(6), 30), 'below', IN(8), ft(8)).results['horizontal']).toMatch(/^2 × #4/);
    expect(one(dug(ft(6), 30), 'below', IN(8), ft(8, 1)).results['horizontal']).toMatch(/^3 × #4/);
  });

  it('a core is read by its nominal thickness: half an inch less, a quarter more (from memory)', () => {
    const cellOf = (width: Nm) => one(dug(ft(8), 30), 'below', core(width), ft(8)).results['cell'];
    expect([millimetres(150), millimetres(200), inches(5.5), inches(8.25)].map(cellOf)).toEqual(['#6 @ 39', '#6 @ 41', '#6 @ 39', '#6 @ 41']);
    expect(codes(one(dug(ft(8), 30), 'below', core(inches(7)), ft(8)))).toEqual(['hold wall-beyond-tables']);
  });
});

describe('what no table covers is a hold for a licensed engineer, and no bars', () => {
  it.each([
    ['a wall over 10 ft', dug(ft(7), 45), IN(8), ft(10, 1), 'wall-beyond-tables'],
    ['a wall of 4 in with soil against it', dug(ft(4), 45), IN(4), ft(8), 'wall-beyond-tables'],
    ['a waffle of 10 in', dug(ft(4), 45), IN(10, 'waffle-grid'), ft(8), 'wall-beyond-tables'],
    ['soil over the wall', dug(ft(8, 1), 45), IN(8), ft(8), 'backfill-beyond-tables'],
    ['9 ft of soil on a waffle, whose rows end at 8', dug(ft(9), 30), IN(6, 'waffle-grid'), ft(10), 'backfill-beyond-tables'],
    ['soil over 60 psf/ft', dug(ft(6), 61), IN(8), ft(8), 'soil-not-listed'],
    ['category D0', dug(ft(6), 45, { seismic: 'D0' }), IN(8), ft(8), 'site-beyond-method'],
    ['71 psf of snow (limit from memory)', dug(ft(6), 45, { snowKpa: inSi('pressure', 'psf', 71) }), IN(8), ft(8), 'site-beyond-method'],
  ] as const)('below grade: %s', (_words, site, of, height, code) => {
    const report = one(site, 'below', of, height);
    expect(codes(report)).toEqual([`hold ${code}`]);
    expect([report.results['bar'], report.results['status']]).toEqual([undefined, 'beyond the tables']);
  });

  /** Table (2) 9 ft, 9 ft, 60: DR, from memory; Table (8) there: #6 @ 19. */
  it('design required at the center is a hold that says what bars near the inside face would take', () => {
    const report = one(dug(ft(9), 60), 'below', IN(6), ft(9));
    expect(report.findings).toMatchObject([{ code: 'wall-beyond-tables', severity: 'hold', storey: 'S1', wall: 'W1', numbers: { core: '6', heightMm: 2743.2, backfillMm: 2743.2, cell: 'DR, design required', insideFaceCell: '#6 @ 19' } }]);
    expect(report.results).toMatchObject({ cell: 'DR', insideFaceCell: '#6 @ 19', strengthRule: 'DR', strengthAgrees: 'yes' });
    expect(report.results['bar']).toBeUndefined();
  });

  it.each([
    ['161 mph in B', { windMps: wind(161), exposure: 'B' }, IN(6), ft(8), 'site-beyond-method'],
    ['126 mph in D', { windMps: wind(126), exposure: 'D' }, IN(6), ft(8), 'site-beyond-method'],
    ['a wall over 10 ft', WINDY, IN(6), ft(10, 1), 'wall-beyond-tables'],
    ['a wall of 12 in', WINDY, IN(12), ft(8), 'wall-beyond-tables'],
    ['a screen over 10 ft, though its page is not at hand', WINDY, IN(6, 'screen-grid'), ft(10, 1), 'wall-beyond-tables'],
  ] as const)('above grade: %s', (_words, site, of, height, code) => expect(codes(one({ seismic: 'B', ...site }, 'above', of, height))).toEqual([`hold ${code}`]));

  it('a third storey above grade, once for each storey of the pile', () => {
    const wall = { core: IN(8), heightIn: 96 };
    const pile = (...ids: readonly string[]) => ids.map((id, at): Sketch => ({ id, grade: 'above', ...(at === 0 ? {} : { on: ids[at - 1]! }), walls: [wall] }));
    expect(check(WINDY, ...pile('S1', 'S2')).flatMap(codes)).toEqual([]);
    expect(check(WINDY, ...pile('S1', 'S2', 'S3')).flatMap(codes)).toEqual(['hold wall-beyond-tables', 'hold wall-beyond-tables', 'hold wall-beyond-tables']);
    expect(check(dug(ft(4), 45, WINDY), { id: 'B', grade: 'below', walls: [wall] }, { id: 'S1', grade: 'above', on: 'B', walls: [wall] }, { id: 'S2', grade: 'above', on: 'S1', walls: [wall] }).flatMap(codes)).toEqual([]);
  });
});

/** irc-2018 Table R608.6(1), read in a web copy; (2) FROM MEMORY. */
describe('above grade', () => {
  it.each([
    { core: IN(4), mph: 130, exposure: 'B', height: 9, cell: '#4 @ 34', top: '#4 @ 39', status: 'found' },
    { core: IN(4), mph: 117, exposure: 'D', height: 10, cell: '#4 @ 27', top: '#4 @ 31', status: 'found' },
    { core: IN(6), mph: 115, exposure: 'B', height: 9, cell: '#4 @ 48', top: undefined, status: 'found' },
    { core: IN(6), mph: 160, exposure: 'B', height: 8, cell: '#4 @ 48', top: undefined, status: 'found' },
    { core: IN(6, 'waffle-grid'), mph: 150, exposure: 'B', height: 10, cell: '#6 @ 44', top: '#5 @ 36', status: 'from memory' },
  ] as const)('$core.code in $core.family, $mph mph in $exposure, $height ft: $cell with the floor on the side, $top on top ($status)', ({ core: of, mph, exposure, height, cell, top, status }) => {
    const report = one({ windMps: wind(mph), exposure, seismic: 'B' }, 'above', of, ft(height));
    expect(report.results).toMatchObject({ cell, status, grade: 'above', windMph: mph });
    expect([report.results['topBearingCell'], report.findings]).toEqual([top, []]);
    expect(report.defaults.join()).toContain('bearing: side');
  });

  it.each([
    ['a row that breaks off', { windMps: wind(155), exposure: 'B' }, IN(6), ft(9), 'R608.6(1)'],
    ['8 in at the last wind', { windMps: wind(155), exposure: 'B' }, IN(8), ft(8), 'R608.6(1)'],
    ['a waffle at a wind that was not recalled', { windMps: wind(155), exposure: 'B' }, IN(6, 'waffle-grid'), ft(8), 'R608.6(2)'],
    ['screen grids', WINDY, IN(6, 'screen-grid'), ft(8), 'R608.6(3)'],
  ] as const)('a page that is not at hand is a note and no hold: %s', (_words, site, of, height, table) => {
    const report = one({ seismic: 'B', ...site }, 'above', of, height);
    expect(codes(report)).toEqual(['note bars-not-checked']);
    expect(report.findings[0]?.numbers['notAtHand']).toContain(table);
    expect(report.results['bar']).toBeUndefined();
  });

  it('18 in of soil leaves a wall to these tables; more asks for a storey below grade', () => {
    expect(codes(one({ ...WINDY, backfill: inches(18) }, 'above', IN(8), ft(8)))).toEqual([]);
    expect(one({ ...WINDY, backfill: inches(19) }, 'above', IN(8), ft(8)).findings).toMatchObject([{ code: 'bars-not-checked', severity: 'note', numbers: { missing: 'a storey below grade for more than 18 in of backfill' } }]);
  });

  it('a gable counts with its rise to 10 ft; beyond, the slope is said not to be read', () => {
    const gable = (riseIn: number) => ({ gable: { rise: inches(riseIn), peakAt: 0, courses: 0, slopes: [] } });
    // 4 in at 115 mph in B, side: 8 ft #4 @ 48, 10 ft #4 @ 34.
    expect(one(WINDY, 'above', IN(4), ft(8), gable(18))).toMatchObject({ results: { cell: '#4 @ 34', heightMm: 2895.6 }, findings: [] });
    expect(one(WINDY, 'above', IN(4), ft(8), gable(54))).toMatchObject({ results: { cell: '#4 @ 48', heightMm: 2438.4 }, findings: [{ code: 'bars-not-checked', severity: 'note' }] });
  });

  it('a stack within the tolerance of the asked height is that height; a taller one counts as laid', () => {
    const asked = { askedHeight: inches(108) };
    expect(one(WINDY, 'above', IN(4), 108.25, asked).results).toMatchObject({ cell: '#4 @ 39', heightMm: 2743.2 });
    expect(one(WINDY, 'above', IN(4), 109.5, asked).results).toMatchObject({ cell: '#4 @ 34', heightMm: 2781.3 });
  });

  it('a wall whose core changes up it is read by the thinnest', () => {
    const change = { coreChanges: [{ course: 2, at: inches(64), core: IN(4), flush: 'inside', seatOutside: 0, seatInside: 0, axisShift: 0 }] } as const;
    expect(one(WINDY, 'above', IN(8), ft(10), change)).toMatchObject({ core: '8', results: { cell: '#4 @ 34', nominalIn: 4, coreRead: '4' } });
  });
});

describe('a basement wall with concrete on it takes the greater of both tables', () => {
  const carries = [{ storey: 'S1', wall: 'W1', from: 0, to: inches(240), core: '4', seatOutside: 0, seatInside: 0 }];
  const pile = (site: Site, fill = IN(8)) => check(site, { id: 'B', grade: 'below', storeyAbove: true, walls: [{ core: fill, heightIn: 96, laid: { carries } }] }, { id: 'S1', grade: 'above', on: 'B', walls: [{ core: IN(4), heightIn: 108 }] })[0]!;

  /** (3) 8 ft, 4 ft, 45: NR; R608.6(1) 4 in, 9 ft, 130 mph in B, side: #4 @ 34. */
  it('the wall above has more', () => {
    expect(pile(dug(ft(4), 45, { windMps: wind(130), exposure: 'B' })).results).toMatchObject({ cell: 'NR', bar: '#4', spacingIn: 34, governs: 'the wall above, W1', aboveGradeCell: '#4 @ 34', aboveGradeTable: 'R608.6(1)' });
  });

  /** (3) 8 ft, 8 ft, 45: #6 @ 35 is 0.44 in2 every 35 in, #4 @ 34 is 0.20 every 34. */
  it('the basement has more', () => {
    expect(pile(dug(ft(8), 45, { windMps: wind(130), exposure: 'B' })).results).toMatchObject({ cell: '#6 @ 35', bar: '#6', spacingIn: 35, aboveGradeCell: '#4 @ 34' });
  });

  it('without wind the table of the soil is answered, and that it is half of it', () => {
    const report = pile(dug(ft(8), 45));
    expect(report.results).toMatchObject({ cell: '#6 @ 35', aboveGradeCell: 'not checked' });
    expect(report.findings).toMatchObject([{ code: 'bars-not-checked', severity: 'note', numbers: { missing: 'wind, exposure' } }]);
  });
});

describe('what is not stated is a note once a storey and never a default', () => {
  it.each([
    ['below', null, 'backfill, soil'],
    ['below', { backfill: inches(72) }, 'soil'],
    ['below', { soilKnPerM3: soil(45), windMps: wind(115), exposure: 'B' }, 'backfill'],
    ['above', null, 'wind, exposure'],
    ['above', { windMps: wind(115) }, 'exposure'],
    ['above', { exposure: 'C', backfill: inches(12), soilKnPerM3: soil(45) }, 'wind'],
  ] as const)('%s grade with %j: %s', (grade, site, missing) => {
    const reports = check(site, { grade, walls: [{ core: IN(6), heightIn: 96 }, { core: IN(8), heightIn: 96 }] });
    expect(reports.map(({ core: of }) => of)).toEqual(['6', '8']);
    expect(reports.flatMap(({ findings }) => findings)).toMatchObject([{ code: 'bars-not-checked', severity: 'note', storey: 'S1', walls: [], numbers: { missing } }]);
    expect(reports.map(({ results }) => results['status'])).toEqual(['not checked', 'not checked']);
  });

  it('a seismic category is read as people write it, and one that is none is said to be', () => {
    const of = (seismic: string) => one({ ...WINDY, seismic }, 'above', IN(6), 96);
    expect(['SDC D1', 'd0', 'Category E'].map((seismic) => codes(of(seismic)))).toEqual([['hold site-beyond-method'], ['hold site-beyond-method'], ['hold site-beyond-method']]);
    expect(codes(of('SDC C'))).toEqual([]);
    expect(of('zone 4')).toMatchObject({ results: { cell: '#4 @ 48' }, findings: [{ code: 'bars-not-checked', numbers: { missing: 'seismic design category, A to F (written: zone 4)' } }] });
    expect(of('zone 4').defaults.join()).toContain('A to C');
  });

  it('code and seismic category are defaults, and listed', () => {
    expect(one({ backfill: inches(72), soilKnPerM3: soil(45) }, 'below', IN(8), 96).defaults).toEqual(['code: irc-2018', 'seismic: a design category of A to C, where the tables hold']);
    expect(one({ code: 'irc-2018', ...dug(72, 45) }, 'below', IN(8), 96).defaults).toEqual([]);
  });
});

describe('places', () => {
  it('a place for each wall where answers differ, none where they do not; walls alike are one finding', () => {
    const tall = { core: IN(6), heightIn: ft(10, 1) };
    const [report] = check(WINDY, { grade: 'above', walls: [{ core: IN(6), heightIn: 96 }, tall, tall] });
    expect(report?.places.map(({ wall, course, atMm, results }) => [wall, course, atMm, results['cell'] ?? results['status']])).toEqual([['W1', null, null, '#4 @ 48'], ['W2', null, null, 'beyond the tables'], ['W3', null, null, 'beyond the tables']]);
    expect(report?.findings).toMatchObject([{ code: 'wall-beyond-tables', walls: ['W2', 'W3'], numbers: { core: '6', heightMm: 3073.4, limitFt: 10 } }]);
    expect(check(WINDY, { grade: 'above', walls: [{ core: IN(6), heightIn: 96 }, { core: IN(6), heightIn: 96 }] })[0]?.places).toEqual([]);
  });
});

/** obc-2024 Tables 9.15.4.5.-A to -C and 9.20.17, read in a parsed transcription. */
describe('the metric code', () => {
  const metric = (groundMm: number): Site => ({ code: 'obc-2024', backfill: millimetres(groundMm) });

  it.each([
    { core: core(millimetres(190)), height: 2750, ground: 2300, cell: '10M @ 300', mm: 300 },
    { core: core(millimetres(240)), height: 3000, ground: 2400, cell: '15M @ 400', mm: 400 },
    { core: core(millimetres(150)), height: 2440, ground: 1350, cell: '10M @ 400', mm: 400 },
  ])('$cell: a wall of $height mm with $ground mm of ground', ({ core: of, height, ground, cell, mm }) => {
    expect(one(metric(ground), 'below', of, height / 25.4)).toMatchObject({ results: { cell, spacingMm: mm, status: 'found', code: 'obc-2024' }, findings: [], defaults: [] });
  });

  it('a core in inches is read in the next thinner table, and says so', () => {
    const report = one(metric(2286), 'below', IN(8), ft(9));
    expect(report.results).toMatchObject({ cell: '10M @ 300', thicknessMm: 203.2, tableThicknessMm: 190 });
    expect(report.notes.join()).toContain('203.2 mm thick and is read in the table for 190 mm');
  });

  it.each([
    ['12 in', 2000, IN(12), ft(8), 'wall-beyond-tables'],
    ['4 in', 2000, IN(4), ft(8), 'wall-beyond-tables'],
    ['10 ft', 2000, IN(8), ft(10), 'wall-beyond-tables'],
    ['a waffle', 2000, IN(8, 'waffle-grid'), ft(8), 'wall-beyond-tables'],
    ['2.3 m of ground at a 2.44 m wall', 2300, core(millimetres(190)), 96, 'backfill-beyond-tables'],
  ] as const)('%s is beyond it', (_words, ground, of, height, code) => expect(codes(one(metric(ground), 'below', of, height))).toEqual([`hold ${code}`]));

  it('asks for the ground below grade and for nothing above it', () => {
    expect(one({ code: 'obc-2024' }, 'below', IN(8), 96).findings).toMatchObject([{ code: 'bars-not-checked', numbers: { missing: 'backfill' } }]);
    expect(one({ code: 'obc-2024', seismic: 'D2' }, 'above', IN(6), 96)).toMatchObject({ results: { cell: '10M @ 400', status: 'found' }, findings: [] });
  });
});
