import { describe, expect, it } from '@jest/globals';
import { inches } from '../../../src/domain/quantity/length.js';
import { measure, type Measurement } from '../../../src/domain/pipeline.js';
import type { FormRange } from '../../../src/domain/range/range.js';
import type { Schedule } from '../../../src/domain/schedule/schedule.js';
import { ledge, rectangle, taper } from '../../support/features.js';
import { heron, scheduleOf } from '../../support/small-schedules.js';

// Where along the wall each rule acts, worked by hand from the drawing and the demo range: T = 11 in, a square corner takes 5.5 in off an axis
// end, webs stand at 4 in and every 8 from the end of a form. Stations are the axis's, in inches here, from the wall's own `from`.

const place = { sheet: null, row: null, pointer: '' };

const stations = ({ materials }: Measurement, rule: string, sku: string, wall: string, course: number): number[] =>
  materials.filter((line) => line.sku === sku).flatMap(({ because }) => because)
    .filter((cause) => cause.rule === rule && cause.wall === wall && cause.course === course)
    .flatMap(({ atMm = [] }) => atMm.map((mm) => Number((mm / 25.4).toFixed(3))));
const every = (step: number, from: number, to: number): number[] => Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, n) => from + n * step);

const free = (to: [number, number] = [240, 0], from: [number, number] = [0, 0]) => [{ mark: 'A', from, to }];
const opening = (lining: 'buck' | 'end-closure', height = 80) => ({ mark: 'D1', wall: 'A', at: 60, sill: 0, width: 36, height, lining });

type Where = readonly [rule: string, sku: string, wall: string, course: number, at: readonly number[], why: string];

const JOBS: readonly { readonly name: string; readonly schedule: Schedule; readonly range?: FormRange; readonly where: readonly Where[] }[] = [
  {
    name: 'a free wall of 20 ft with a door at 60 to 96 in, lined with end closures',
    schedule: scheduleOf(free(), { openings: [opening('end-closure')] }),
    where: [
      ['end-closure', 'TAPE-4', 'A', 1, [0, 62.5, 93.5, 240], 'both ends, and the jambs, where the forms run 2.5 in into the hole'],
      ['end-closure', 'BOARD-1x4', 'A', 6, [0, 240], 'over the door the free ends alone'],
      ['footing-fix', 'FOAM-24', 'A', 1, [0, 62.5, 93.5, 240], 'the ends of both beads'],
      ['footing-corner', 'WIRE-16', 'A', 1, [0, 240], 'free ends'],
    ],
  },
  {
    name: 'a free wall of 20 ft',
    schedule: scheduleOf(free()),
    where: [
      ['top-course-hold-down', 'TAPE-4', 'A', 6, every(16, 4, 228), 'every 2nd web from the first, at 4 in: course 6 is 24 + 4 x 48 + 24 (decision 13)'],
      ['top-course-hold-down', 'CTIE-14', 'A', 6, [24, 72, 120, 168, 216], 'its head joints'],
    ],
  },
  {
    name: 'a rectangle of 480 by 336, 108 in high with strips, wall C drawn from the other end',
    schedule: scheduleOf(rectangle(480, 336).map((wall) => (wall.mark === 'C' ? { ...wall, from: wall.to, to: wall.from } : wall)), { height: 108 }),
    range: heron({ parameters: { stackPrefers: 'strips' } }),
    where: [
      ['footing-corner', 'WIRE-16', 'A', 1, [469], 'arriving at B: 480 - 2 x 5.5'],
      ['footing-corner', 'WIRE-16', 'C', 1, [0], 'drawn against the walk, it arrives at its own from'],
      ['strip-course', 'TAPE-4', 'B', 5, [...every(16, 8, 312), 322.5], '325 in: 20 parts of 16, each in its middle, and one of 5'],
    ],
  },
  {
    name: 'ripped to 12 in and with a storey above',
    schedule: scheduleOf(rectangle(480, 336), { height: 108, storey: { storeyAbove: true } }),
    where: [
      ['ripped-edge', 'STRAP-1x3', 'A', 7, [0, 469], 'from node to node'],
      ['top-protect', 'MASK-12', 'D', 7, [0, 325], 'likewise'],
    ],
  },
  {
    name: 'a tee on the middle of 20 ft',
    schedule: scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0], dimensionsTo: 'axis' }, { mark: 'P', from: [120, 0], to: [120, 120], dimensionsTo: 'axis' }]),
    where: [
      ['tee-cut-out', 'BAR-4', 'A', 3, [120], 'the middle of the cut-out'],
      ['tee-cut-out', 'WIRE-16', 'A', 1, [120], 'the wire at the pin'],
      ['footing-fix', 'FOAM-24', 'P', 1, [5.5, 120], 'the branch begins at the panel'],
    ],
  },
  {
    name: 'a hinged corner of 67.5 degrees: 240 - 5.5 x tan 33.75',
    schedule: scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }, { mark: 'B', from: [240, 0], to: [240 + 240 * Math.cos((67.5 * Math.PI) / 180), 240 * Math.sin((67.5 * Math.PI) / 180)] }]),
    where: [['hinged-corner', 'TAPE-4', 'A', 4, [236.325], 'the node']],
  },
  {
    name: 'a rectangle of 480.5 by 336',
    schedule: scheduleOf(rectangle(480.5, 336)),
    where: [['short-piece', 'TAPE-4', 'B', 1, [], '325 - 48 = 277 in between its legs is on the module of 1 in: no seam']],
  },
  {
    name: 'a window from 34 to 90 in at 96 to 144',
    schedule: scheduleOf(free(), { openings: [{ mark: 'W1', wall: 'A', at: 96, sill: 34, width: 48, height: 56 }] }),
    where: [
      ['short-piece', 'TAPE-4', 'A', 3, [120], '2 in of foam under the notch, in the middle of the window'],
      ['short-piece', 'TAPE-4', 'A', 6, [120], '6 in over it'],
    ],
  },
  {
    name: 'a ledge round the corner of A and B at 48 in',
    schedule: { ...scheduleOf(rectangle(240, 180)), features: [ledge('A', 48, 0, 240), ledge('B', 48, 0, 180)] },
    where: [['mitred-ledge', 'TAPE-4', 'A', 3, [229], 'the node, 240 - 11, not the tip']],
  },
  {
    name: 'a taper top',
    schedule: { ...scheduleOf(free()), features: [taper('A')] },
    where: [['taper-top-edge', 'STRAP-1x3', 'A', 6, [0, 240], 'the whole lip']],
  },
  {
    name: 'a gable of 60 in over 240: 16 in of it are 32 in on plan a side',
    schedule: { ...scheduleOf(free()), features: [{ kind: 'gable', wall: 'A', rise: inches(60), peakAt: inches(120), place }] },
    where: [
      ['gable-edge', 'BOARD-1x4', 'A', 7, [0, 32, 208, 240], 'both slopes in the first course of the gable'],
      ['gable-edge', 'BOARD-1x4', 'A', 10, [96, 120, 144], 'the last 12 in of the rise, to the peak'],
    ],
  },
  {
    name: 'a quarter of a circle of 240 in to its axis',
    schedule: {
      ...scheduleOf(free()),
      walls: scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 240], dimensionsTo: 'axis' }]).walls.map((wall) => ({
        ...wall, length: Math.round(inches(120 * Math.PI)), arc: { radius: inches(240), turns: 'left' as const },
      })),
    },
    where: [
      ['radius-band', 'STRAP-1x3', 'A', 1, [0, 376.991], '120 pi'],
      ['top-course-hold-down', 'CTIE-14', 'A', 1, [], 'the top course alone'],
    ],
  },
];

describe.each(JOBS)('$name', ({ schedule, range, where }) => {
  const measured = measure(schedule, range ?? heron());

  it.each(where)('%s, %s on %s course %d stands at %j: %s', (rule, sku, wall, course, at) => expect(stations(measured, rule, sku, wall, course)).toEqual(at));

  it('every cause has stations, in order, each once, none off its wall', () => {
    const lengths = new Map(measured.takeoff.laid.storeys.flatMap(({ walls }) => walls.map(({ mark, length }) => [mark, length / 1e6])));
    const bad = measured.materials.flatMap(({ because }) => because).filter(({ wall, atMm = [] }) => {
      const ordered = atMm.every((at, n) => n === 0 || at > atMm[n - 1]!);
      return atMm.length === 0 || !ordered || atMm[0]! < 0 || atMm.at(-1)! > (lengths.get(wall!) ?? NaN);
    });
    expect(bad).toEqual([]);
  });

  it('ties stand at head joints', () => {
    const joints = new Map(measured.takeoff.laid.storeys.flatMap(({ walls }) => walls.flatMap(({ mark, courses }) => courses.map(({ n, headJoints }) => [`${mark}/${n}`, new Set(headJoints.map(({ at }) => at / 1e6))]))));
    const tied = measured.materials.filter(({ kind }) => kind === 'cable-tie').flatMap(({ because }) => because);
    for (const { wall, course, atMm = [] } of tied) expect(atMm.filter((at) => !joints.get(`${wall}/${course}`)?.has(at))).toEqual([]);
  });

  it('a strip of tape on each face, and one tie, for each of its stations', () => {
    const spaced = measured.materials.flatMap(({ kind, because }) => because.filter(({ rule }) => rule === 'strip-course' || rule === 'top-course-hold-down').map((cause) => ({ kind, ...cause })));
    for (const { kind, quantity, atMm = [] } of spaced) expect(kind === 'tape' ? quantity / 4 : quantity).toBeCloseTo(atMm.length, 6);
  });
});
