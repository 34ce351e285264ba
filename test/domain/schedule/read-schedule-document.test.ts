import { describe, expect, it } from '@jest/globals';
import { inches } from '../../../src/domain/quantity/length.js';
import { MAX_OPENINGS, MAX_WALLS, readScheduleDocument, type Schedule } from '../../../src/domain/schedule/index.js';
import { HERON, rectangle } from '../../support/schedule-documents.js';

const read = (document: unknown): Schedule => {
  const result = readScheduleDocument(document, HERON);
  if (!result.ok) throw new Error(JSON.stringify(result.error, null, 1));
  return result.value;
};
const errorsOf = (document: unknown) => {
  const result = readScheduleDocument(document, HERON);
  if (result.ok) throw new Error('the schedule was taken');
  return result.error;
};
const changed = (change: (document: any) => unknown): any => {
  const document = rectangle();
  change(document);
  return document;
};

/** Nought in 36 characters. */
const NOUGHT = `${'0'.repeat(15)}.${'0'.repeat(20)}`;

describe('the canonical schedule', () => {
  it('has every length in nm, every default and every place', () => {
    const schedule = read(rectangle());
    expect(schedule).toMatchObject({ name: 'Rectangle', units: 'in', dimensionsTo: 'foam-face', range: 'HERON-16', site: null, pour: null, features: [], unknown: [] });
    expect(schedule.storeys).toEqual([{ id: 'S1', height: inches(108), grade: 'above', storeyAbove: false, closed: true, on: null }]);
    expect(schedule.walls[1]).toEqual({
      mark: 'B', storey: 'S1', core: '6', from: { x: inches(480), y: 0 }, to: { x: inches(480), y: inches(336) }, length: inches(336),
      dimensionsTo: 'foam-face', height: inches(108), base: 0, arc: null, start: null, end: null, place: { sheet: null, row: null, pointer: '/walls/1' },
    });
    expect(schedule.openings[0]).toEqual({
      mark: 'D1', wall: 'A', at: inches(60), sill: 0, width: inches(36), height: inches(84), lining: 'buck', measured: 'concrete',
      place: { sheet: null, row: null, pointer: '/openings/0' },
    });
  });

  it('fills defaults: lining buck, measured concrete, closed false, grade above, the only storey, the storey height', () => {
    const schedule = read(changed((d) => {
      d.storeys = [{ id: 'S1', height: 108 }];
      for (const wall of d.walls) delete wall.storey;
      d.openings = [{ wall: 'A', at: 60, sill: 0, width: 36, height: 84 }];
    }));
    expect(schedule.storeys[0]).toMatchObject({ grade: 'above', storeyAbove: false, closed: false, on: null });
    expect(schedule.openings[0]).toMatchObject({ mark: 'O1', lining: 'buck', measured: 'concrete' });
    expect(schedule.walls[0]).toMatchObject({ storey: 'S1', height: inches(108) });
  });

  it('takes a height that reaches the top of the storey where only a base is written', () => {
    expect(read(changed((d) => (d.walls[2].base = 16))).walls[2]).toMatchObject({ base: inches(16), height: inches(92) });
  });

  it('is the same in every unit but for the unit itself', () => {
    const inUnit = (units: string, perInch: number): Schedule => {
      const document = rectangle();
      const scaled = (value: number): number => Math.round(value * perInch * 1e9) / 1e9;
      document.units = units;
      for (const wall of document.walls) [wall.from, wall.to] = [wall.from.map(scaled), wall.to.map(scaled)];
      for (const key of ['at', 'sill', 'width', 'height']) document.openings[0][key] = scaled(document.openings[0][key]);
      return { ...read(document), units: 'in' };
    };
    const inInches = read(rectangle());
    expect(inUnit('ft', 1 / 12)).toEqual(inInches);
    expect(inUnit('mm', 25.4)).toEqual(inInches);
    expect(inUnit('m', 0.0254)).toEqual(inInches);
  });

  it('adds the buck to a rough opening at jambs and head, and at the sill unless that is 0', () => {
    const rough = (sill: number) => read(changed((d) => (d.openings = [{ mark: 'W', wall: 'A', at: 60, sill, width: 36, height: 48, measured: 'rough' }]))).openings[0];
    expect(rough(30)).toMatchObject({ at: inches(58.5), width: inches(39), sill: inches(28.5), height: inches(51), measured: 'rough' });
    expect(rough(0)).toMatchObject({ at: inches(58.5), width: inches(39), sill: 0, height: inches(49.5) });
  });

  it('knows that a storey carries the one that stands on it', () => {
    const { storeys } = read(changed((d) => d.storeys.push({ id: 'S2', height: 96, on: 'S1' })));
    expect(storeys.map(({ id, storeyAbove, on }) => [id, storeyAbove, on])).toEqual([['S1', true, null], ['S2', false, 'S1']]);
  });

  it('reads site and pour into SI, and only what is stated', () => {
    const schedule = read(changed((d) => {
      d.site = { wind: '115 mph', exposure: 'b', soil: '45 psf/ft', backfill: `6'-0"`, seismic: 'B', snow: '30 psf' };
      d.pour = { rise: '3 ft/h', concrete: '70 F', unitWeight: '150 pcf', cement: 'I', retarder: false, slump: '6.5 in', air: '75 F', humidity: 0.5, wind: '8 mph', pump: '40 yd3/h', truck: '10 yd3' };
    }));
    expect(schedule.site?.windMps).toBeCloseTo(115 * 0.44704, 12);
    expect(schedule.site?.soilKnPerM3).toBeCloseTo(7.068936, 6);
    expect(schedule.site?.snowKpa).toBeCloseTo(1.4364078, 6);
    expect(schedule.site).toMatchObject({ exposure: 'B', backfill: inches(72), seismic: 'B' });
    expect(schedule.pour?.riseMPerH).toBeCloseTo(0.9144, 12);
    expect(schedule.pour?.concreteC).toBeCloseTo(21.1111111, 6);
    expect(schedule.pour?.unitWeightKgPerM3).toBeCloseTo(2402.769506, 5);
    expect(schedule.pour).toMatchObject({ cement: 'I', retarder: false, slumpMm: 165.1, humidity: 0.5 });
    expect(Object.keys(read(changed((d) => (d.pour = { cement: 'II' }))).pour ?? {})).toEqual(['cement']);
    expect(read(changed((d) => (d.site = {}))).site).toBeNull();
  });

  it.each([
    { pour: { unitWeight: '30 pcf', rise: '1000 ft/h', concrete: '-40 F', slump: '12 in', air: '140 F', humidity: '100 %', wind: '150 mph', pump: '500 yd3/h', truck: '30 yd3', cement: 'Type II' } },
    { pour: { unitWeight: '500 pcf', concrete: '100 C', slump: '0 in', air: '-76 F', humidity: 0, wind: '0 mph', cement: 'blend-high' } },
    { site: { wind: '300 mph', soil: '200 psf/ft', snow: '1000 psf' } },
    { site: { snow: '0 psf' } },
  ])('takes quantities at the ends of what they may be: $pour $site', (stated) => {
    const { site, pour } = read(changed((d) => Object.assign(d, stated)));
    expect(Object.keys(site ?? pour ?? {})).toHaveLength(Object.keys(stated.site ?? stated.pour ?? {}).length);
  });

  it('reads arc walls with the length along the arc', () => {
    const wall = read(changed((d) => d.walls.push({ mark: 'R', storey: 'S1', core: '8', from: [600, 0], to: [840, 240], arc: { radius: 240, turns: 'left' } }))).walls[4];
    expect(wall?.arc).toEqual({ radius: inches(240), turns: 'left' });
    expect(wall?.length).toBe(Math.round((inches(240) * Math.PI) / 2));
  });

  it('reads features inside their walls', () => {
    const { features } = read(changed((d) => {
      d.walls.push({ mark: 'S', storey: 'S1', core: '10', from: [600, -120], to: [840, -120] });
      d.features = [
        { kind: 'ledge', wall: 'A', at: `4'-0"`, from: 0, to: 480, face: 'outside' },
        { kind: 'taper-top', wall: 'B', faces: 'one' },
        { kind: 'gable', wall: 'C', rise: 60, peakAt: 168 },
        { kind: 'core-change', wall: 'S', at: 64, core: '8', flush: 'outside' },
      ];
    }));
    expect(features.map(({ place: _, ...feature }) => feature)).toEqual([
      { kind: 'ledge', wall: 'A', at: inches(48), from: 0, to: inches(480), face: 'outside' },
      { kind: 'taper-top', wall: 'B', faces: 'one' },
      { kind: 'gable', wall: 'C', rise: inches(60), peakAt: inches(168) },
      { kind: 'core-change', wall: 'S', at: inches(64), core: '8', flush: 'outside' },
    ]);
  });

  it('snaps a length from coordinates to the length that was meant and keeps a written one exactly', () => {
    const turned = read(changed((d) => {
      d.walls = [{ mark: 'T', core: '6', from: ['0 in', 0], to: [`${240 * Math.cos(0.6)} in`, 240 * Math.sin(0.6)] }];
      d.openings = [];
    }));
    expect(turned.walls[0]?.length).toBe(inches(240));
    expect(read(changed((d) => (d.walls[0].length = 480.01))).walls[0]?.length).toBe(inches(480.01));
  });

  it('lists keys nobody knows, once for a list', () => {
    const { unknown } = read(changed((d) => {
      d.colour = 'blue';
      for (const wall of d.walls) wall.paint = 1;
      d.site = { rain: 1 };
      d.walls[0].__proto__x = 1;
    }));
    expect(unknown.map(({ name }) => name).sort()).toEqual(['colour', 'site.rain', 'walls[].__proto__x', 'walls[].paint']);
  });

  it('takes the figures of the range that the schedule names', () => {
    const other = { range: 'WREN-12', cores: ['5'], courseHeight: inches(12), buckThickness: inches(1) };
    expect(readScheduleDocument(rectangle(), [other, HERON]).ok).toBe(true);
    expect(readScheduleDocument(changed((d) => delete d.range), HERON)).toMatchObject({ ok: true, value: { range: 'HERON-16' } });
    expect(readScheduleDocument(rectangle(), [other])).toMatchObject({ ok: false, error: expect.arrayContaining([expect.objectContaining({ pointer: '/range', fix: 'a form range: WREN-12' })]) });
  });
});

describe('what is refused, with its pointer, what was read and what would do', () => {
  it.each<[string, (document: any) => unknown, string, string, string]>([
    ['no walls', (d) => (d.walls = []), '/walls', 'a list of 0', 'has no walls'],
    ['walls that are no list', (d) => (d.walls = 'A'), '/walls', 'A', 'has no walls'],
    ['no storeys', (d) => delete d.storeys, '/storeys', '', 'has no storeys'],
    ['another format', (d) => (d.format = 'schedule'), '/format', 'schedule', 'wallcourse/schedule@1'],
    ['no name', (d) => (d.name = '  '), '/name', '  ', '1 to 200 characters'],
    ['a name over 200 characters', (d) => (d.name = 'x'.repeat(201)), '/name', `${'x'.repeat(79)}…`, '1 to 200 characters'],
    ['a name with a NUL', (d) => (d.name = 'a\u0000b'), '/name', 'a\ufffdb', 'control characters'],
    ['a name with half a character', (d) => (d.name = 'a\ud800'), '/name', 'a\ufffd', 'control characters'],
    ['no units', (d) => delete d.units, '/units', '', 'in, ft, mm, m'],
    ['unknown units', (d) => (d.units = 'yd'), '/units', 'yd', 'in, ft, mm, m'],
    ['no dimension line', (d) => delete d.dimensionsTo, '/dimensionsTo', '', 'foam-face, concrete-face, axis'],
    ['another range', (d) => (d.range = 'WREN'), '/range', 'WREN', 'HERON-16'],
    ['a cell that is no length', (d) => (d.walls[1].to[1] = `12'-14"`), '/walls/1/to/1', `12'-14"`, `13'-2"`],
    ['1e309', (d) => (d.openings[0].at = '1e309'), '/openings/0/at', '1e309', 'written out in digits'],
    ['NaN', (d) => (d.openings[0].at = 'NaN'), '/openings/0/at', 'NaN', 'a length such as'],
    ['an infinite number', (d) => (d.openings[0].at = 1e309), '/openings/0/at', 'Infinity', 'a length such as'],
    ['a pressure for a height', (d) => (d.storeys[0].height = '8 psi'), '/storeys/0/height', '8 psi', 'psi is a unit of pressure'],
    ['an empty cell', (d) => (d.openings[0].sill = ''), '/openings/0/sill', '', 'a length such as'],
    ['a point of one coordinate', (d) => (d.walls[0].from = [0]), '/walls/0/from', 'a list of 1', '[x, y]'],
    ['one end only', (d) => delete d.walls[0].to, '/walls/0/to', '', 'both ends'],
    ['neither ends nor length', (d) => (delete d.walls[0].to, delete d.walls[0].from), '/walls/0/from', '', 'or its length'],
    ['an unknown storey', (d) => (d.walls[0].storey = 'S9'), '/walls/0/storey', 'S9', 'a storey of this schedule: S1'],
    ['a storey on an unknown one', (d) => (d.storeys[0].on = 'S0'), '/storeys/0/on', 'S0', 'a storey of this schedule: S1'],
    ['a storey on itself', (d) => (d.storeys[0].on = 'S1'), '/storeys/0/on', 'S1', 'stands on itself'],
    ['two storeys of one id', (d) => d.storeys.push(d.storeys[0]), '/storeys/1/id', 'S1', 'no other storey has'],
    ['an unknown wall of an opening', (d) => (d.openings[0].wall = 'Z'), '/openings/0/wall', 'Z', 'a wall of this schedule: A, B, C, D'],
    ['an unknown wall of a feature', (d) => (d.features = [{ kind: 'taper-top', wall: 'Z', faces: 'one' }]), '/features/0/wall', 'Z', 'a wall of this schedule'],
    ['an unknown core', (d) => (d.walls[2].core = '7'), '/walls/2/core', '7', 'a core of the range: 4, 6, 8, 10'],
    ['a duplicate mark', (d) => (d.walls[3].mark = 'A'), '/walls/3/mark', 'A', '/walls/0 has it already'],
    ['a duplicate opening mark', (d) => d.openings.push({ ...d.openings[0], at: 200 }), '/openings/1/mark', 'D1', '/openings/0 has it already'],
    ['a mark over 40 characters', (d) => (d.walls[3].mark = 'm'.repeat(41)), '/walls/3/mark', 'm'.repeat(41), '1 to 40 characters'],
    ['a wall of zero length', (d) => (d.walls[0].to = [0, 0]), '/walls/0/to', '[0, 0] to [0, 0]', 'no length'],
    ['a wall of zero length, written in feet and inches', (d) => ((d.walls[0].from = [`1'-0"`, 12]), (d.walls[0].to = [12, `1'-0"`])), '/walls/0/to', `[1'-0", 12] to [12, 1'-0"]`, 'no length'],
    ['a wall of zero length, written at length', (d) => (d.walls[0].from = d.walls[0].to = [NOUGHT, NOUGHT]), '/walls/0/to', `[${NOUGHT}, ${NOUGHT}] to…`, 'no length'],
    ['a wall below one course', (d) => (d.walls[0].height = 15.9), '/walls/0/height', '15.9', `at least one course, 1'-4"`],
    ['a wall too long to count', (d) => (d.walls[0].to = ['1001 m', 0]), '/walls/0/to', '[0, 0] to [1001 m, 0]', 'at most 1000 m'],
    ['a length that contradicts the ends', (d) => (d.walls[0].length = 479), '/walls/0/length', '479', `40'-0"`],
    ['an arc of less than half the chord', (d) => (d.walls[0].arc = { radius: 239, turns: 'left' }), '/walls/0/arc', 'radius too small', `20'-0"`],
    ['an opening before its wall', (d) => (d.openings[0].at = -1), '/openings/0/at', '-1', 'zero or more'],
    ['an opening beyond its wall', (d) => (d.openings[0].at = 445), '/openings/0/width', '36', `it ends at 40'-1"`],
    ['an opening above its wall', (d) => (d.openings[0].sill = 25), '/openings/0/height', '84', `it is at 9'-1"`],
    ['a rough opening whose buck leaves the wall', (d) => (d.openings[0] = { ...d.openings[0], at: 1, measured: 'rough' }), '/openings/0/at', '1', 'the buck included'],
    ['an opening of no width', (d) => (d.openings[0].width = 0), '/openings/0/width', '0', 'more than zero'],
    ['overlapping openings', (d) => d.openings.push({ mark: 'W1', wall: 'A', at: 95, sill: 40, width: 36, height: 40 }), '/openings/1/at', '95', 'it overlaps D1'],
    ['an unknown lining', (d) => (d.openings[0].lining = 'steel'), '/openings/0/lining', 'steel', 'buck, end-closure'],
    ['a ledge past its wall', (d) => (d.features = [{ kind: 'ledge', wall: 'A', at: 48, from: 0, to: 481, face: 'outside' }]), '/features/0/to', '481', `40'-0" long`],
    ['a core change above its wall', (d) => (d.features = [{ kind: 'core-change', wall: 'A', at: 108, core: '4', flush: 'outside' }]), '/features/0/at', '108', 'below the top'],
    ['a peak past its wall', (d) => (d.features = [{ kind: 'gable', wall: 'B', rise: 10, peakAt: 337 }]), '/features/0/peakAt', '337', 'a peak on wall B'],
    ['a slump without a unit', (d) => (d.pour = { slump: 6.5 }), '/pour/slump', '6.5', 'a number with its unit'],
    ['a rise that is a pressure', (d) => (d.pour = { rise: '600 psf' }), '/pour/rise', '600 psf', 'psf is a unit of pressure'],
    ['a unit weight no concrete has', (d) => (d.pour = { unitWeight: '1 pcf' }), '/pour/unitWeight', '1 pcf', 'between 30 and 500 pcf'],
    ['a unit weight past every concrete', (d) => (d.pour = { unitWeight: '500.1 pcf' }), '/pour/unitWeight', '500.1 pcf', 'between 30 and 500 pcf'],
    ['a rise of nothing', (d) => (d.pour = { rise: '0 ft/h' }), '/pour/rise', '0 ft/h', 'more than 0 and at most 1000 ft/h'],
    ['a rise below nothing', (d) => (d.pour = { rise: '-3 ft/h' }), '/pour/rise', '-3 ft/h', 'such as 3 ft/h'],
    ['a rise no pump makes', (d) => (d.pour = { rise: '1001 ft/h' }), '/pour/rise', '1001 ft/h', 'at most 1000 ft/h'],
    ['concrete that boils', (d) => (d.pour = { concrete: '213 F' }), '/pour/concrete', '213 F', '212 F'],
    ['concrete colder than ice', (d) => (d.pour = { concrete: '-41 C' }), '/pour/concrete', '-41 C', '-40 F'],
    ['a slump higher than its cone', (d) => (d.pour = { slump: '12.1 in' }), '/pour/slump', '12.1 in', 'the slump cone'],
    ['a slump below nothing', (d) => (d.pour = { slump: '-1 in' }), '/pour/slump', '-1 in', 'zero or more'],
    ['air nobody breathes', (d) => (d.pour = { air: '141 F' }), '/pour/air', '141 F', '140 F (60 C)'],
    ['a humidity over one', (d) => (d.pour = { humidity: 1.5 }), '/pour/humidity', '1.5', 'from 0 to 1'],
    ['a humidity below nought', (d) => (d.pour = { humidity: '-5 %' }), '/pour/humidity', '-5 %', 'from 0 to 1'],
    ['a storm at the pour', (d) => (d.pour = { wind: '151 mph' }), '/pour/wind', '151 mph', 'at most 150 mph'],
    ['a pump that gives nothing', (d) => (d.pour = { pump: '0 m3/h' }), '/pour/pump', '0 m3/h', 'more than 0'],
    ['a pump nobody built', (d) => (d.pour = { pump: '501 yd3/h' }), '/pour/pump', '501 yd3/h', 'at most 500 yd3/h'],
    ['an empty truck', (d) => (d.pour = { truck: '0 yd3' }), '/pour/truck', '0 yd3', 'more than 0'],
    ['a stone like a wall', (d) => (d.pour = { stone: '7 in' }), '/pour/stone', '7 in', 'at most 6 in'],
    ['a stone without its unit', (d) => (d.pour = { stone: 0.375 }), '/pour/stone', '0.375', 'unit'],
    ['a discharge after two days', (d) => (d.pour = { discharge: '2 d' }), '/pour/discharge', '2 d', 'at most 24 h'],
    ['a code without its tables', (d) => (d.site = { code: 'irc-1997' }), '/site/code', 'irc-1997', 'irc-2018, obc-2024'],
    ['a wall that stands for ever', (d) => (d.site = { duration: '101 yr' }), '/site/duration', '101 yr', 'at most 100 years'],
    ['a load that is a pressure', (d) => Object.assign((d.storeys as object[])[0] as object, { dead: '40 psf' }), '/storeys/0/dead', '40 psf', 'lb/ft'],
    ['a truck like a ship', (d) => (d.pour = { truck: '31 yd3' }), '/pour/truck', '31 yd3', 'at most 30 yd3'],
    ['a cement nobody knows', (d) => (d.pour = { cement: 'moon dust' }), '/pour/cement', 'moon dust', 'one of: I, I/II, II, III, IV, V, IL, blend-low, blend-high'],
    ['a design wind of nothing', (d) => (d.site = { wind: '0 mph' }), '/site/wind', '0 mph', 'more than 0'],
    ['a design wind past every map', (d) => (d.site = { wind: '301 mph' }), '/site/wind', '301 mph', 'at most 300 mph'],
    ['soil heavier than stone', (d) => (d.site = { soil: '201 psf/ft' }), '/site/soil', '201 psf/ft', 'at most 200 psf/ft'],
    ['soil without weight', (d) => (d.site = { soil: '0 pcf' }), '/site/soil', '0 pcf', 'more than 0'],
    ['snow as high as a house', (d) => (d.site = { snow: '1001 psf' }), '/site/snow', '1001 psf', 'at most 1000 psf'],
    ['a wall that is no object', (d) => d.walls.push(null), '/walls/4', '', 'an object with mark'],
  ])('%s', (_name, change, pointer, readAs, fix) => {
    const errors = errorsOf(changed(change));
    const error = errors.find((each) => each.pointer === pointer);
    expect(errors.map((each) => each.pointer)).toContain(pointer);
    expect(error).toMatchObject({ sheet: null, row: null, column: null, read: readAs, fix: expect.stringContaining(fix) });
  });

  it.each([null, undefined, 7, 'text', [], [[]]])('a document that is %p', (value) => expect(errorsOf(value)).toHaveLength(1));

  it('tells all errors at once and none twice', () => {
    const errors = errorsOf(changed((d) => {
      d.name = '';
      d.walls[0].core = '7';
      d.walls[1].to = [480, 'x'];
      d.openings.push({ mark: 'W1', wall: 'B', at: 1, sill: 1, width: 1, height: '?' });
    }));
    expect(errors.map(({ pointer }) => pointer)).toEqual(['/name', '/walls/0/core', '/walls/1/to/1', '/openings/1/height']);
  });

  it('tells a missing unit once, not for every number', () => expect(errorsOf(changed((d) => delete d.units)).map(({ pointer }) => pointer)).toEqual(['/units']));

  it('tells 199 errors and how many more there are', () => {
    const errors = errorsOf(changed((d) => (d.walls = Array.from({ length: 300 }, (_, index) => ({ mark: `W${index}`, storey: 'S1', core: '7', from: [0, index], to: [100, index] })))));
    expect(errors).toHaveLength(200);
    expect(errors[199]).toEqual({ sheet: null, row: null, column: null, pointer: null, read: '', fix: expect.stringContaining('102 more errors') });
  });

  it('allows openings that touch and openings one above the other', () => {
    const { openings } = read(changed((d) => d.openings.push({ mark: 'T', wall: 'A', at: 60, sill: 84, width: 36, height: 12 }, { mark: 'N', wall: 'A', at: 96, sill: 0, width: 36, height: 84 })));
    expect(openings).toHaveLength(3);
  });

  it('is bounded: walls, openings and face area', () => {
    const wall = (index: number) => ({ mark: `W${index}`, storey: 'S1', core: '6', from: [0, index], to: [100, index] });
    const many = errorsOf(changed((d) => (d.walls = Array.from({ length: MAX_WALLS + 1 }, (_, index) => wall(index)))));
    expect(many).toEqual([expect.objectContaining({ pointer: '/walls', fix: 'at most 10,000 walls: split the schedule into several jobs' })]);
    const openings = errorsOf(changed((d) => (d.openings = Array.from({ length: MAX_OPENINGS + 1 }, () => d.openings[0]))));
    expect(openings).toEqual([expect.objectContaining({ pointer: '/openings', fix: expect.stringContaining('at most 50,000 openings') })]);
    const large = errorsOf(changed((d) => ((d.openings = []), (d.walls = Array.from({ length: 600 }, (_, index) => ({ ...wall(index), to: ['900 m', index] }))))));
    expect(large).toEqual([expect.objectContaining({ pointer: '/walls', fix: expect.stringContaining('500,000 m²') })]);
  });

  it('a million-character name and 50,000 openings on one wall take bounded time', () => {
    const started = performance.now();
    expect(errorsOf(changed((d) => (d.name = 'x'.repeat(1_000_000))))[0]?.read).toHaveLength(80);
    const slits = Array.from({ length: MAX_OPENINGS }, (_, index) => ({ wall: 'A', at: 60, sill: `${index * 0.05} mm`, width: 36, height: '0.05 mm' }));
    expect(read(changed((d) => (d.openings = slits))).openings).toHaveLength(MAX_OPENINGS);
    expect(performance.now() - started).toBeLessThan(15_000);
  });
});
