import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { inches } from '../../../src/domain/quantity/length.js';
import { readSchedule, readScheduleDocument } from '../../../src/domain/schedule/index.js';
import { HERON, rectangle } from '../../support/schedule-documents.js';

// The rectangle's walls are 480 and 336 in long and 108 in high; R is a quarter circle of radius 240 in.
const ARC = { mark: 'R', storey: 'S1', core: '8', from: [600, 0], to: [840, 240], arc: { radius: 240, turns: 'left' } };
const job = (features: object[], openings: object[] = []) => ({ ...rectangle(), walls: [...rectangle().walls, ARC], features, openings });
const errorsOf = (document: unknown) => {
  const result = readScheduleDocument(document, HERON);
  if (result.ok) throw new Error('the schedule was taken');
  return result.error;
};
const taken = (document: unknown) => {
  const result = readScheduleDocument(document, HERON);
  if (!result.ok) throw new Error(JSON.stringify(result.error, null, 1));
  return result.value;
};

const taper = (wall: string) => ({ kind: 'taper-top', wall, faces: 'one' });
const gable = (wall: string, more: object = {}) => ({ kind: 'gable', wall, rise: 60, peakAt: 168, ...more });
const change = (wall: string, at: number, core: string) => ({ kind: 'core-change', wall, at, core, flush: 'outside' });
const ledge = (wall: string, more: object = {}) => ({ kind: 'ledge', wall, at: 48, face: 'outside', ...more });

describe('features that cannot stand on one wall together', () => {
  it.each<[string, object[], string, unknown, string]>([
    ['a taper top under a gable', [gable('C'), taper('C')], '/features/1/kind', 'taper-top', 'a taper top or a gable on wall C, not both: /features/0 is the other, a taper top needs a level top course'],
    ['a gable over a taper top', [taper('C'), gable('C')], '/features/1/kind', 'gable', 'not both: /features/0'],
    ['two taper tops', [taper('B'), taper('B')], '/features/1/kind', 'taper-top', 'one taper top on wall B: /features/0 is that already'],
    ['two gables', [gable('C'), gable('C')], '/features/1/kind', 'gable', 'one gable on wall C'],
    ['two core changes at one height', [change('A', 64, '4'), change('A', 64, '8')], '/features/1/at', '64', `one core change at a height of wall A: /features/0 is at 5'-4" already`],
    ['a change to the core of the wall', [change('A', 64, '6')], '/features/0/core', '6', 'a core other than the one below, 6: the wall has it from its foot'],
    ['a change to the core below, whatever the order of rows', [change('A', 80, '4'), change('A', 64, '4')], '/features/0/core', '4', `a core other than the one below, 4: /features/1 changes it to that at 5'-4"`],
    ['ledges that overlap', [ledge('A', { from: 0, to: 200 }), ledge('A', { from: 199, to: 480 })], '/features/1/from', '199', `clear of the others on the outside face of wall A at 4'-0": /features/0 runs on to 16'-8"`],
    ['a ledge inside another', [ledge('A'), ledge('A', { from: 100, to: 200 })], '/features/1/from', '100', `/features/0 runs on to 40'-0"`],
    ['one ledge twice', [ledge('A'), ledge('A')], '/features/1/from', `0'-0"`, 'clear of the others'],
    ['a third ledge over the first, past the second', [ledge('A', { from: 0, to: 300 }), ledge('A', { from: 300, to: 310 }), ledge('A', { from: 305, to: 320 })], '/features/2/from', '305', '/features/1 runs on'],
    ['a gable on an arc wall', [gable('R')], '/features/0/wall', 'R', 'a straight wall for a gable: R is an arc wall, and its units are straight'],
    ['a ledge on an arc wall', [ledge('R', { at: 16 })], '/features/0/wall', 'R', 'a straight wall for a ledge'],
    ['a taper top on an arc wall', [taper('R')], '/features/0/wall', 'R', 'a straight wall for a taper top'],
    ['a feature of a wall that is nearly named', [taper('a')], '/features/0/wall', 'a', 'a wall of this schedule: A, B, C, D, R'],
  ])('%s', (_name, features, pointer, readAs, fix) => {
    const errors = errorsOf(job(features));
    expect(errors).toEqual([expect.objectContaining({ pointer, read: readAs, fix: expect.stringContaining(fix) })]);
  });

  it.each<[string, object[]]>([
    ['several core changes at rising heights', [change('A', 80, '6'), change('A', 32, '8'), change('A', 64, '4')]],
    ['a core change on an arc wall', [change('R', 64, '6')]],
    ['ledges that touch, on two faces, at two heights, on two walls', [ledge('A', { from: 0, to: 200 }), ledge('A', { from: 200, to: 480 }), ledge('A', { face: 'inside' }), ledge('A', { at: 64 }), ledge('B')]],
    ['a taper top and a gable on two walls', [taper('B'), gable('C')]],
    ['a taper top over a core change and a ledge', [taper('A'), change('A', 64, '4'), ledge('A')]],
  ])('%s are taken', (_name, features) => expect(taken(job(features)).features).toHaveLength(features.length));

  it('a table names the rows', async () => {
    const csv = {
      job: 'key,value\nname,x\nunits,in\ndimensionsTo,foam-face\nrange,HERON-16\n',
      storeys: 'id,height\nS1,108\n',
      walls: 'mark,core,length\nA,6,480\n',
      features: 'Kind,Wall,Rise,Peak,Faces\n\ngable,A,60,168,\nTaper top,A,,,one\n',
    };
    const result = await readSchedule(Object.entries(csv).map(([name, text]) => ({ name, bytes: new TextEncoder().encode(text) })), HERON);
    expect(result).toMatchObject({ ok: false, error: { errors: [{ sheet: 'features', row: 4, column: 'A (Kind)', read: 'Taper top', fix: expect.stringContaining('row 3 is the other') }] } });
  });
});

describe('openings under a gable', () => {
  // The slope of C rises 60 in 168 and falls 60 in 312: 30 over the wall at 84 and at 324, so 138 in = 11'-6" above its foot.
  const opening = (at: number, width: number, head: number | string, more: object = {}) => ({ mark: 'W', wall: 'C', at, sill: 0, width, height: head, measured: 'concrete', ...more });

  it.each<[string, object, object]>([
    ['up the slope', opening(84, 84, 138), {}],
    ['down the slope', opening(168, 156, 138), {}],
    ['over the peak, as high as its lower side', opening(84, 240, 138), {}],
    ['at the peak itself, a hair wide', opening(168, 0.001, 167.999), {}],
    ['down a slope that starts at its peak: 60 × 240 ÷ 480 at the middle', opening(0, 240, 138), { peakAt: 0 }],
    ['up a slope that ends at its peak', opening(240, 240, 138), { peakAt: 480 }],
    ['with its buck: 82 1/2 to 85 1/2 past the jamb, 1 1/2 at the head', opening(85.5, 81, 136.5, { measured: 'rough' }), {}],
  ])('%s are taken', (_name, each, more) => expect(taken(job([gable('C', more)], [each])).openings).toHaveLength(1));

  it.each<[string, object, object, string]>([
    ['a head over the slope', opening(84, 84, 138.01), {}, `a head at or below the slope over it, which is at 11'-6" there; it is at 11'-6`],
    ['past the slope at its far jamb', opening(168, 156.01, 138), {}, `which is at 11'-5`],
    ['at the wall’s end, where the slope is nought', opening(0, 36, 108.01), {}, `which is at 9'-0" there`],
    ['above the peak', opening(168, 0.001, 169), {}, 'which is at'],
    ['at the foot of a one-sided slope', opening(440, 40, 109), { peakAt: 0 }, `which is at 9'-0" there`],
  ])('%s is told', (_name, each, more, fix) => {
    expect(errorsOf(job([gable('C', more)], [each]))).toEqual([expect.objectContaining({ pointer: '/openings/0/height', fix: expect.stringContaining(fix) })]);
  });

  it('a gable of another wall is of no help, and one that is wrong is told alone', () => {
    expect(errorsOf(job([gable('B')], [opening(84, 84, 138)]))[0]?.fix).toContain(`the top of wall C, 9'-0" high`);
    expect(errorsOf(job([gable('C', { rise: 0 })], [opening(84, 84, 138)])).map(({ pointer }) => pointer)).toEqual(['/features/0/rise']);
    expect(errorsOf(job([gable('C')], [opening(400, 100, 200)])).map(({ pointer }) => pointer)).toEqual(['/openings/0/width']);
  });

  it('a hole is taken exactly where all its top lies under the slope, looked at station by station', () => {
    // A slow second reading: the slope by its two straight lines, at eight stations a metre.
    const nm = (value: number) => `${value / 1e6} mm`;
    fc.assert(
      fc.property(fc.nat(40), fc.integer({ min: 1, max: 60 }), fc.nat(40), fc.integer({ min: 1, max: 40 }), fc.nat(70), (peak, rise, at, width, over) => {
        // Stations count in steps of 1/40 of 40 m; heights in millimetres over 3 m.
        const step = 1e9;
        fc.pre(at + width <= 40);
        const document = {
          ...rectangle(), units: 'mm', storeys: [{ id: 'S1', height: 3000 }],
          walls: [{ mark: 'C', core: '6', length: nm(40 * step) }],
          features: [{ kind: 'gable', wall: 'C', rise: nm(rise * 1e6), peakAt: nm(peak * step) }],
          openings: [{ mark: 'W', wall: 'C', at: nm(at * step), sill: 0, width: nm(width * step), height: 3000 + over }],
        };
        const slope = (station: number) => (station <= peak && peak > 0 ? (rise * station) / peak : (rise * (40 - station)) / (40 - peak));
        const stations = Array.from({ length: width * 8 + 1 }, (_, index) => at + index / 8);
        const under = stations.every((station) => slope(Math.min(station, at + width)) >= over - 1e-9);
        expect(readScheduleDocument(document, HERON).ok).toBe(under);
      }),
      { numRuns: 500 },
    );
  });
});

describe('arc walls', () => {
  const arc = (more: object, wall: object = {}) => ({ ...rectangle(), walls: [{ ...ARC, ...wall, arc: { radius: 240, turns: 'left', ...more } }], openings: [], storeys: [{ id: 'S1', height: 108 }] });
  // 240·π/2 = 376.99 in along the quarter circle; the chord is 240·√2 = 339.41, the smallest radius half of that, 169.706.
  const QUARTER = Math.round((inches(240) * Math.PI) / 2);

  it('are as long as their minor arc, either hand, and openings stand along it', () => {
    for (const turns of ['left', 'right']) expect(taken(arc({ turns })).walls[0]?.length).toBe(QUARTER);
    const opening = (at: number) => ({ ...arc({}), openings: [{ mark: 'W', wall: 'R', at, sill: 0, width: 36, height: 80, measured: 'concrete' }] });
    expect(taken(opening(340.98)).openings).toHaveLength(1);
    expect(errorsOf(opening(341))).toEqual([expect.objectContaining({ pointer: '/openings/0/width', fix: expect.stringContaining('it ends at') })]);
  });

  it('may have their length written, along the arc and not along the chord', () => {
    expect(taken(arc({}, { length: 377 })).walls[0]?.length).toBe(inches(377));
    expect(errorsOf(arc({}, { length: 339.41 }))[0]).toMatchObject({ pointer: '/walls/0/length' });
  });

  it('a half circle is the least radius: its length is radius times π', () => {
    const half = arc({ radius: 120 }, { from: [600, 0], to: [840, 0] });
    expect(taken(half).walls[0]?.length).toBe(Math.round(inches(120) * Math.PI));
  });

  it.each<[string, object, string, string]>([
    ['a radius of less than half the chord', arc({ radius: 169.7 }), '/walls/0/arc', `half the distance of the ends, 14'-1`],
    ['no radius at all', arc({ radius: undefined }), '/walls/0/arc/radius', 'a length such as'],
    ['a radius of nought', arc({ radius: 0 }), '/walls/0/arc/radius', 'more than zero'],
    ['no hand', arc({ turns: undefined }), '/walls/0/arc/turns', 'left, right'],
    ['another hand', arc({ turns: 'up' }), '/walls/0/arc/turns', 'left, right'],
  ])('%s', (_name, document, pointer, fix) => expect(errorsOf(document)).toEqual([expect.objectContaining({ pointer, fix: expect.stringContaining(fix) })]));
});
