import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { readRange } from '../../../src/domain/range/read-range.js';
import { readScheduleDocument, type Schedule } from '../../../src/domain/schedule/index.js';
import { scheduleDocument } from '../../../src/modules/schedules/schedule-document.js';
import { ScheduleAnswer } from '../../../src/modules/schedules/schedules.schemas.js';

const sample = (name: string): unknown => JSON.parse(readFileSync(`shared/samples/${name}`, 'utf8'));

const range = readRange(sample('heron-16.range.json'));
if (!range.ok) throw new Error('the demo range is none');
const { code, cores, panel, courseHeight, parameters } = range.value;
const coreWidths = new Map([...cores].map(([core, { width }]) => [core, width]));
const context = { range: code, cores: [...cores.keys()], coreWidths, panel, courseHeight, buckThickness: parameters.buckThickness };

function read(document: unknown): Schedule {
  const schedule = readScheduleDocument(document, context);
  if (!schedule.ok) throw new Error(JSON.stringify(schedule.error));
  return schedule.value;
}

/** Without where a row stood, and without whether a buck was added, which can only be said once. */
const meant = (schedule: Schedule): unknown =>
  JSON.parse(JSON.stringify(schedule), (key, value: unknown) => (key === 'place' || key === 'measured' ? undefined : value));

/** Every kind of thing that a schedule can hold, in lengths of every kind. */
const EVERYTHING = {
  format: 'wallcourse/schedule@1',
  name: 'Everything',
  units: 'ft',
  dimensionsTo: 'concrete-face',
  range: 'HERON-16',
  storeys: [
    { id: 'S1', height: '9\'-0 3/64"', grade: 'below', storeyAbove: true, closed: false },
    { id: 'S2', height: '2743.2 mm', grade: 'above', on: 'S1', dead: '400 lb/ft', live: '4.378 kN/m', snow: '150 plf' },
  ],
  walls: [
    {
      mark: 'A',
      storey: 'S1',
      core: '8',
      length: '20\'-0"',
      start: { joint: 'free' },
      end: { joint: 'corner', turn: 45, with: { wall: 'B', end: 'start' } },
    },
    { mark: 'B', storey: 'S1', core: '8', length: '7.35 m', dimensionsTo: 'axis' },
    { mark: 'C', storey: 'S2', core: '6', from: [100, 0], to: ['140.123 ft', '7 1/64"'], height: '8\'-0"', base: '1\'-0"' },
    { mark: 'T', storey: 'S1', core: '6', length: '8\'-0"', end: { joint: 'tee', on: 'A', at: '7\'-0 1/64"', side: 'right' } },
    {
      mark: 'U',
      storey: 'S2',
      core: '6',
      from: [110, 0],
      to: [110, 10],
      start: { joint: 'tee', on: 'C', at: '3.048 m', side: 'left' },
      end: { joint: 'free' },
      dimensionsTo: 'axis',
    },
    { mark: 'R', storey: 'S2', core: '8', from: [200, 0], to: [220, 20], arc: { radius: 20, turns: 'left' } },
  ],
  openings: [
    { mark: 'D1', wall: 'A', at: 5, sill: 0, width: 3, height: 7, lining: 'buck', measured: 'rough' },
    {
      mark: 'W1',
      wall: 'C',
      at: '10 ft',
      sill: '2 ft',
      width: '36"',
      height: '48"',
      lining: 'end-closure',
      measured: 'concrete',
    },
  ],
  features: [
    { kind: 'ledge', wall: 'A', at: '4\'-0"', from: 0, to: 10, face: 'outside' },
    { kind: 'taper-top', wall: 'B', faces: 'one' },
    { kind: 'gable', wall: 'C', rise: 5, peakAt: 14 },
    { kind: 'core-change', wall: 'A', at: '5\'-4"', core: '6', flush: 'outside' },
  ],
  site: { wind: '115 mph', exposure: 'B', soil: '45 psf/ft', backfill: '6\'-0"', seismic: 'B', snow: '30 psf', code: 'OBC 2024' },
  pour: {
    rise: '3 ft/h',
    concrete: '70 F',
    unitWeight: '150 pcf',
    cement: 'I',
    retarder: false,
    slump: '6.5 in',
    air: '75 F',
    humidity: 0.5,
    wind: '8 mph',
    pump: '40 yd3/h',
    truck: '10 yd3',
  },
};

describe('scheduleDocument', () => {
  it.each([
    { what: 'a store', document: sample('harbour-store.schedule.json') },
    { what: 'a house', document: sample('mill-lane-house.schedule.json') },
    { what: 'a workshop', document: sample('quay-workshop.schedule.json') },
    { what: 'everything at once', document: EVERYTHING },
  ])('$what: what is written can be read again, and means the same', ({ document }) => {
    const first = read(document);
    const written = scheduleDocument(first);
    expect(ScheduleAnswer.parse(written)).toEqual(written);
    expect(meant(read(JSON.parse(JSON.stringify(written))))).toEqual(meant(first));
  });

  it('the loads on a storey keep their size', () => {
    // 400 lb/ft · 4.4482216 N / 0.3048 m = 5.83756 kN/m; 150 lb/ft = 2.18909 kN/m.
    const { storeys: [, first] } = read(EVERYTHING);
    const { storeys: [, again] } = read(JSON.parse(JSON.stringify(scheduleDocument(read(EVERYTHING)))));
    for (const storey of [first, again]) {
      expect(storey?.deadKnPerM).toBeCloseTo(5.83756, 5);
      expect(storey?.liveKnPerM).toBeCloseTo(4.378, 9);
      expect(storey?.snowKnPerM).toBeCloseTo(2.18909, 5);
    }
  });

  it('a wall that came without coordinates is written without, one that was drawn keeps them beside its joints', () => {
    const walls = new Map(scheduleDocument(read(EVERYTHING)).walls.map((wall) => [wall.mark, wall]));
    expect(walls.get('T')).toMatchObject({ length: '8\'-0"', end: { joint: 'tee', on: 'A', at: '7\'-0 1/64"', side: 'right' } });
    expect(walls.get('T')).not.toHaveProperty('from');
    expect(walls.get('U')).toMatchObject({ from: ['110\'-0"', '0\'-0"'], start: { joint: 'tee', on: 'C' }, end: { joint: 'free' } });
  });

  it('writes the hole in the concrete, since the buck has been added', () => {
    const [door] = scheduleDocument(read(EVERYTHING)).openings;
    expect(door).toMatchObject({ mark: 'D1', measured: 'concrete', width: '3\'-3"', height: '7\'-1 1/2"' });
  });

  it('says which names nobody knew', () => {
    const { unknown } = scheduleDocument(read({ ...EVERYTHING, colour: 'grey' }));
    expect(unknown).toEqual([{ sheet: null, name: 'colour' }]);
  });
});
