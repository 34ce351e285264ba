import { describe, expect, it } from '@jest/globals';
import { inches } from '../../../src/domain/quantity/length.js';
import { measure, type Measurement } from '../../../src/domain/pipeline.js';
import type { FormRange } from '../../../src/domain/range/range.js';
import type { Feature, Schedule } from '../../../src/domain/schedule/schedule.js';
import { ledge, rectangle, taper } from '../../support/features.js';
import { heron, loopOf, scheduleOf } from '../../support/small-schedules.js';

// Whole jobs worked by hand from the trade's table, decisions 9, 13 to 16, 18, 20 and 25 to 28 and the demo range's parameters: strips of tape
// of 24 in = 2 ft, a strip at every 2nd web = 16 in, both faces; T = 6 + 2 x 2.5 = 11 in, so a square corner takes 5.5 in off an axis end.

const place = { sheet: null, row: null, pointer: '' };
const gable = (wall: string, rise: number, peakAt: number): Feature => ({ kind: 'gable', wall, rise: inches(rise), peakAt: inches(peakAt), place });
const coreChange = (wall: string, at: number, core: string): Feature => ({ kind: 'core-change', wall, at: inches(at), core, flush: 'outside', place });

/** [rule, sku, quantity over the job, how it was worked] */
type Count = readonly [rule: string, sku: string, quantity: number, why: string];

interface Job {
  readonly name: string;
  readonly schedule: Schedule;
  readonly range?: FormRange;
  readonly counts: readonly Count[];
}

const taken = ({ materials }: Measurement, rule: string, sku: string): number =>
  materials.filter((line) => line.sku === sku).flatMap(({ because }) => because).filter((cause) => cause.rule === rule).reduce((sum, { quantity }) => sum + quantity, 0);

/** The demo range with the tape's strength stated [lb/in]. */
const taped = (strengthLbPerIn: number): FormRange => {
  const range = heron();
  return { ...range, materials: range.materials.map((material) => (material.kind === 'tape' ? { ...material, strengthLbPerIn } : material)) };
};

const WALL = scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }]);
const OPENINGS = (lining: 'buck' | 'end-closure') => [
  { mark: 'D1', wall: 'A', at: 60, sill: 0, width: 36, height: 80, lining },
  { mark: 'W1', wall: 'A', at: 144, sill: 32, width: 48, height: 48, lining },
];
const bent = (degrees: number): Schedule => {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return scheduleOf([
    { mark: 'A', from: [0, 0], to: [240, 0] },
    { mark: 'B', from: [240, 0], to: [240 + 240 * cos, 240 * sin] },
  ]);
};
const CURVE: Schedule = {
  ...WALL,
  walls: scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 240], dimensionsTo: 'axis' }]).walls.map((wall) => ({
    ...wall, length: Math.round(inches(120 * Math.PI)), arc: { radius: inches(240), turns: 'left' as const },
  })),
};
const TWO_STOREYS: Schedule = {
  ...WALL,
  storeys: [...WALL.storeys, { id: 'S2', height: inches(96), grade: 'above', storeyAbove: false, closed: false, on: 'S1' }],
  walls: [...WALL.walls, ...WALL.walls.map((wall) => ({ ...wall, mark: 'B', storey: 'S2' }))],
};

const JOBS: readonly Job[] = [
  {
    name: 'a free wall of 20 ft by 8 ft: 6 courses',
    schedule: WALL,
    counts: [
      ['footing-fix', 'FOAM-24', 40, '20 ft, a bead under both panels'],
      ['footing-corner', 'WIRE-16', 4, 'two free ends, a wire tie on each face'],
      ['end-closure', 'TAPE-4', 24, 'two ends x 6 courses x 24 in, both returns together'],
      ['end-closure', 'BOARD-1x4', 24, 'the strength of the tape is not stated: 24 in of board for each of 12 closures'],
      ['top-course-hold-down', 'TAPE-4', 60, '240 / 16 = 15 strips x 2 faces x 2 ft'],
      ['top-course-hold-down', 'CTIE-14', 5, 'course 6 is 24 + 4 x 48 + 24 (decision 13): 6 forms, 5 joints'],
      ['short-piece', 'TAPE-4', 0, 'no seam at a free end, every piece has a web'],
    ],
  },
  {
    name: 'a rectangle of 40 by 28 ft, 9 ft: 6 courses of 16 in and one ripped to 12; axes 480 - 11 = 469 and 336 - 11 = 325 in',
    schedule: scheduleOf(rectangle(480, 336), { height: 108 }),
    counts: [
      ['footing-fix', 'FOAM-24', (2 * (469 + 325) * 2) / 12, '1588 in of axis, two beads'],
      ['footing-corner', 'WIRE-16', 8, 'four corners, two faces'],
      ['ripped-edge', 'STRAP-1x3', (2 * 1588) / 12, 'both edges'],
      ['top-course-hold-down', 'TAPE-4', 408, '469 / 16 = 29.3: 30; 325 / 16 = 20.3: 21; (30 + 21) x 2 walls x 2 faces x 2 ft'],
      ['end-closure', 'TAPE-4', 0, 'no free end'],
      ['strip-course', 'TAPE-4', 0, 'no strip'],
    ],
  },
  {
    name: 'the same with strips: 6 x 16 + 4 x 3 = 108 in (decision 11)',
    schedule: scheduleOf(rectangle(480, 336), { height: 108 }),
    range: heron({ parameters: { stackPrefers: 'strips' } }),
    counts: [
      ['strip-course', 'TAPE-4', 1632, '51 strips of tape on two walls, 2 faces of 2 ft = 408 ft on each of 4 height strips'],
      ['top-course-hold-down', 'TAPE-4', 408, 'as above'],
      ['ripped-edge', 'STRAP-1x3', 0, 'nothing is ripped'],
    ],
  },
  {
    name: 'the free wall with a door of 36 x 80 from the floor and a window of 48 x 48 from 32 in, in bucks',
    schedule: scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }], { openings: OPENINGS('buck') }),
    counts: [
      ['footing-fix', 'FOAM-24', 34, '(240 - 36) x 2 = 408 in'],
      ['footing-corner', 'WIRE-16', 4, 'a jamb is not a free end'],
      ['end-closure', 'TAPE-4', 24, 'a buck closes its jambs itself: the two free ends alone'],
      ['top-course-hold-down', 'TAPE-4', 60, 'both heads lie at 80 in, under course 6, which is whole'],
    ],
  },
  {
    name: 'the same lined with end closures: the forms run 2.5 in into the hole on each side',
    schedule: scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }], { openings: OPENINGS('end-closure') }),
    counts: [
      ['footing-fix', 'FOAM-24', (2 * (240 - 31)) / 12, 'the door takes 36 - 2 x 2.5 = 31 in'],
      ['end-closure', 'TAPE-4', 56, '12 at the ends, 2 x 5 courses at the door, 2 x 3 at the window: 28 x 2 ft'],
      ['end-closure', 'BOARD-1x4', 56, '28 x 24 in'],
    ],
  },
  {
    name: 'a window from 34 to 90 in: courses 4 and 5 are interrupted, 3 keeps 2 in of foam under it and 6 keeps 6 in over it, less than 8 (decision 16)',
    schedule: scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }], { openings: [{ mark: 'W1', wall: 'A', at: 96, sill: 34, width: 48, height: 56, lining: 'end-closure' }] }),
    counts: [
      ['short-piece', 'TAPE-4', 8, 'two notches, two faces of 2 ft'],
      ['end-closure', 'TAPE-4', 40, '12 at the ends and 2 jambs x 4 courses, the notched ones too: 20 x 2 ft'],
      ['top-course-hold-down', 'TAPE-4', 60, 'a notched course is not interrupted'],
    ],
  },
  {
    name: 'an opening of 36 in through to the top, a segment on either side',
    schedule: scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }], { openings: [{ mark: 'D1', wall: 'A', at: 60, sill: 0, width: 36, height: 96 }] }),
    counts: [
      ['top-course-hold-down', 'TAPE-4', 52, '60 / 16 = 3.75: 4; 144 / 16 = 9; 13 x 2 faces x 2 ft'],
      ['footing-fix', 'FOAM-24', 34, '204 in, two beads'],
    ],
  },
  {
    name: 'one of 40 in at 70: segments of 70 and 130 in',
    schedule: scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }], { openings: [{ mark: 'D1', wall: 'A', at: 70, sill: 0, width: 40, height: 96 }] }),
    counts: [['top-course-hold-down', 'TAPE-4', 56, '70 / 16 = 4.4: 5; 130 / 16 = 8.1: 9; 14 x 2 x 2 ft, 200 / 16 would be 13']],
  },
  {
    name: 'the free wall drawn in two of 110 and 130 in: one run, whatever its marks (decision 13)',
    schedule: scheduleOf([{ mark: 'A', from: [0, 0], to: [110, 0] }, { mark: 'B', from: [110, 0], to: [240, 0] }]),
    counts: [
      ['top-course-hold-down', 'TAPE-4', 60, '15 strips; 110 and 130 by themselves would take 7 + 9 = 16'],
      ['top-course-hold-down', 'CTIE-14', 5, 'the mark is no joint'],
      ['footing-corner', 'WIRE-16', 4, 'nor a free end'],
    ],
  },
  {
    name: 'a rectangle of 40 ft 1/2 in by 28 ft: the runs of A and C, 421.5 in between legs, are off the module of 1 in and have a seam (decision 14)',
    schedule: scheduleOf(rectangle(480.5, 336)),
    counts: [['short-piece', 'TAPE-4', 48, 'two seams x 6 courses x 2 faces x 2 ft']],
  },
  {
    name: 'a tee: 10 ft on the middle of 20 ft, axes as drawn',
    schedule: scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0], dimensionsTo: 'axis' }, { mark: 'P', from: [120, 0], to: [120, 120], dimensionsTo: 'axis' }]),
    counts: [
      ['tee-cut-out', 'BAR-4', 23, 'a pin of 6 + 2 x 8 + 2 x 12 = 46 in in each of 6 courses'],
      ['tee-cut-out', 'WIRE-16', 6, 'one a course'],
      ['tee-cut-out', 'FOAM-24', 16, 'the butt joint: 96 in on both faces'],
      ['tee-cut-out', 'STRAP-1x3', 16, 'the same'],
      ['footing-fix', 'FOAM-24', (2 * (240 + 114.5)) / 12, 'the branch starts at the panel, 5.5 in from the axis'],
      ['footing-corner', 'WIRE-16', 6, 'three free ends'],
      ['end-closure', 'TAPE-4', 36, 'three ends x 6 courses x 2 ft'],
      ['top-course-hold-down', 'TAPE-4', 92, '15 strips, and 114.5 / 16 = 7.2: 8; 23 x 2 faces x 2 ft'],
    ],
  },
  {
    name: 'a skewed tee at 45 degrees: a cut-out of 6 / sin 45 = 8.49 in (decision 9)',
    schedule: scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0], dimensionsTo: 'axis' }, { mark: 'P', from: [120, 0], to: [220, 100], dimensionsTo: 'axis' }]),
    counts: [
      ['tee-cut-out', 'BAR-4', (6 * (6 * Math.SQRT2 + 40)) / 12, '8.49 + 2 x 8 + 2 x 12 in a course'],
      ['tee-cut-out', 'WIRE-16', 6, 'one a course'],
    ],
  },
  {
    name: 'the square tee 108 in high with four strips',
    schedule: scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0], dimensionsTo: 'axis' }, { mark: 'P', from: [120, 0], to: [120, 120], dimensionsTo: 'axis' }], { height: 108 }),
    range: heron({ parameters: { stackPrefers: 'strips' } }),
    counts: [
      ['tee-cut-out', 'BAR-4', 23, 'a strip has no pin: 6 courses'],
      ['tee-cut-out', 'FOAM-24', 18, 'the butt joint runs up 108 in, the strips with it, on both faces'],
      ['tee-cut-out', 'STRAP-1x3', 18, 'the same'],
    ],
  },
  {
    name: 'a corner of a wall of 8 ft with one of 5 ft 4: above 4 courses the higher one ends free (decision 7)',
    schedule: scheduleOf([{ mark: 'A', from: [0, 0], to: [245, 0] }, { mark: 'B', from: [245, 0], to: [245, 180], height: 64 }]),
    counts: [
      ['end-closure', 'TAPE-4', 24, '6 at the beginning of A, 2 at its end in courses 5 and 6, 4 at the end of B: 12 x 2 ft'],
      ['footing-corner', 'WIRE-16', 6, 'a corner and two free ends in course 1'],
      ['footing-fix', 'FOAM-24', (2 * (239.5 + 174.5)) / 12, 'axes less 5.5 in at the corner'],
      ['top-course-hold-down', 'TAPE-4', 108, 'course 6 of A is 245 in as drawn: 16; course 4 of B 174.5: 11; 27 x 2 x 2 ft'],
    ],
  },
  {
    name: 'an L with a re-entrant corner: axes 469, 189, 240, 136, 229 and 325 in (decision 1)',
    schedule: scheduleOf(loopOf([[0, 0], [480, 0], [480, 200], [240, 200], [240, 336], [0, 336]])),
    counts: [
      ['footing-corner', 'WIRE-16', 12, 'six corners, two faces'],
      ['footing-fix', 'FOAM-24', (2 * 1588) / 12, 'the sum of the axes, two beads'],
      ['top-course-hold-down', 'TAPE-4', 408, '30 + 12 + 15 + 9 + 15 + 21 = 102 strips, 2 faces of 2 ft'],
    ],
  },
  {
    name: 'the free wall with a tape of 65 lb/in: 2 x 65 x 4 = 520 lb hold 750 psf x 6 x 16 in = 500 lb',
    schedule: WALL,
    range: taped(65),
    counts: [['end-closure', 'TAPE-4', 24, 'as before'], ['end-closure', 'BOARD-1x4', 0, 'the tape holds']],
  },
  {
    name: 'and with one of 60 lb/in, which hold 480',
    schedule: WALL,
    range: taped(60),
    counts: [['end-closure', 'TAPE-4', 24, 'as before'], ['end-closure', 'BOARD-1x4', 24, '12 closures']],
  },
  {
    name: 'a corner of 45 degrees, paired blanks: 5.5 x tan 22.5 = 2.28 in off each axis of 240',
    schedule: bent(45),
    counts: [
      ['footing-corner', 'WIRE-16', 6, 'a corner and two free ends, two faces'],
      ['hinged-corner', 'TAPE-4', 0, 'no hinge'],
      ['top-course-hold-down', 'TAPE-4', 120, '237.7 / 16 = 14.9: 15 a wall, 2 faces of 2 ft'],
      ['footing-fix', 'FOAM-24', (4 * (240 - 5.5 * Math.tan(Math.PI / 8))) / 12, 'two walls, two beads'],
    ],
  },
  {
    name: 'a corner of 67.5 degrees on hinged units',
    schedule: bent(67.5),
    counts: [
      ['hinged-corner', 'TAPE-4', 48, '4 strips x 6 units x 2 ft'],
      ['footing-corner', 'WIRE-16', 6, 'hinged corners too (decision 25), and two free ends'],
      ['top-course-hold-down', 'TAPE-4', 120, '240 - 5.5 x tan 33.75 = 236.3; / 16 = 14.8: 15 a wall'],
    ],
  },
  {
    // Concave face at 240 - 5.5 = 234.5; chord: 11 x c / 234.5 <= 1, c = 21; one spans 2 asin(10.5 / 234.5) = 5.13 degrees: 90 / 5.13 = 17.5, 18 chords.
    name: 'a quarter of a circle of 20 ft to its axis',
    schedule: CURVE,
    counts: [
      ['radius-band', 'STRAP-1x3', (6 * 245.5 * (Math.PI / 2)) / 12, 'the convex face at 245.5 in, 6 courses'],
      ['radius-band', 'FOAM-24', (17 * 16 * 2 * 6) / 12, '17 joints of 16 in, two faces, 6 courses'],
      ['footing-fix', 'FOAM-24', (2 * 120 * Math.PI) / 12, 'two beads along the axis'],
      ['top-course-hold-down', 'TAPE-4', 96, '120 pi / 16 = 23.6: 24 x 2 faces x 2 ft'],
      ['top-course-hold-down', 'CTIE-14', 17, 'every joint of the top course'],
      ['short-piece', 'CTIE-14', 0, 'chords are banded'],
    ],
  },
  {
    name: 'a ledge round one corner of a rectangle of 20 by 15 ft',
    schedule: { ...scheduleOf(rectangle(240, 180)), features: [ledge('A', 48, 0, 240), ledge('B', 48, 0, 180)] },
    counts: [
      ['mitred-ledge', 'TAPE-4', 24, 'three corners that a ledge runs round or reaches into, 4 strips of 2 ft each'],
      ['footing-corner', 'WIRE-16', 8, 'the ledge is in course 3'],
    ],
  },
  {
    name: 'a free wall with a taper top on one face',
    schedule: { ...WALL, features: [taper('A')] },
    counts: [['taper-top-edge', 'STRAP-1x3', 20, 'one slim lip of 20 ft']],
  },
  {
    name: 'a free wall with a taper top on both faces',
    schedule: { ...WALL, features: [taper('A', 'both')] },
    counts: [['taper-top-edge', 'STRAP-1x3', 40, 'two lips']],
  },
  {
    name: 'a gable of 60 in over 240: two slopes of 26.6 degrees',
    schedule: { ...WALL, features: [gable('A', 60, 120)] },
    counts: [
      ['gable-edge', 'BOARD-1x4', (4 * Math.hypot(120, 60)) / 12, 'two slopes, both faces, too flat for a cap'],
      ['top-course-hold-down', 'TAPE-4', 60, 'courses 7, 8 and 9 lie open 32 in at either side, 4 strips each, course 10 over 48 in, 3: 15 strips, 2 x 2 ft'],
    ],
  },
  {
    name: 'a steep gable of 120 in over 120: two slopes of 63.4 degrees, capped by two boards of 3.5 in over 6 in',
    schedule: { ...scheduleOf([{ mark: 'A', from: [0, 0], to: [120, 0] }]), features: [gable('A', 120, 60)] },
    counts: [['gable-edge', 'BOARD-1x4', (2 * (2 + 2) * Math.hypot(120, 60)) / 12, 'two slopes, two faces and two boards over the core']],
  },
  {
    name: 'a core that changes from 8 to 6 in at 48 in',
    schedule: { ...scheduleOf([{ mark: 'A', core: '8', from: [0, 0], to: [240, 0] }]), features: [coreChange('A', 48, '6')] },
    counts: [
      ['footing-fix', 'FOAM-24', 40, 'two beads of 20 ft'],
      ['end-closure', 'TAPE-4', 24, '12 closures of either core'],
      ['top-course-hold-down', 'TAPE-4', 60, '15 strips, 2 faces of 2 ft'],
    ],
  },
  {
    name: 'a storey of the same wall on the first',
    schedule: TWO_STOREYS,
    counts: [
      ['top-protect', 'MASK-12', 40, 'one run over each panel of 20 ft, on the lower storey alone'],
      ['top-course-hold-down', 'TAPE-4', 120, 'the top course of each storey: 60 ft'],
      ['footing-fix', 'FOAM-24', 40, 'the lower storey alone stands on a footing'],
      ['footing-corner', 'WIRE-16', 4, 'likewise'],
    ],
  },
];

describe.each(JOBS)('$name', ({ schedule, range, counts }) => {
  const measured = measure(schedule, range ?? heron());

  it.each(counts)('%s takes %s: %d, %s', (rule, sku, quantity) => expect(taken(measured, rule, sku)).toBeCloseTo(quantity, 5));
});

describe('end closures to buy', () => {
  const bought = (schedule: Schedule, range = heron()): number => measure(schedule, range).takeoff.units.filter(({ kind }) => kind === 'end-closure').reduce((sum, unit) => sum + unit.bought, 0);
  const free = (height: number) => scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }], { height });

  it.each([
    { closures: 12, why: 'two ends of 6 courses', schedule: WALL },
    { closures: 28, why: '12 and the jambs: 2 x 5 at the door, 2 x 3 at the window', schedule: scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }], { openings: OPENINGS('end-closure') }) },
    {
      closures: 20, why: '12 and a window from 34 to 90 in: 2 x 2 whole, 2 of 14 in and 2 of 10, of which no two come out of one of 16',
      schedule: scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }], { openings: [{ mark: 'W1', wall: 'A', at: 96, sill: 34, width: 48, height: 56, lining: 'end-closure' }] }),
    },
    { closures: 14, why: '12 and 8 of 3 in at the strips, five out of one', schedule: free(108), range: heron({ parameters: { stackPrefers: 'strips' } }) },
    { closures: 14, why: 'two ends of 7 courses, the ripped one of 12 in takes a whole closure', schedule: free(108) },
    { closures: 0, why: 'a closed loop', schedule: scheduleOf(rectangle(480, 336)) },
  ])('$closures: $why', ({ closures, schedule, range }) => expect(bought(schedule, range)).toBe(closures));
});

it('the 45 degree corner takes 3 left and 3 right halves of paired blanks in 6 courses: 3 blanks (decision 18)', () => {
  expect(measure(bent(45), heron()).takeoff.units.filter(({ kind }) => kind === 'corner-pair').map(({ bought }) => bought)).toEqual([3]);
});

it('in the top course of a closed loop there are as many head joints as pieces, each with a cable tie', () => {
  const measured = measure(scheduleOf(rectangle(480, 336), { height: 108 }), heron());
  const top = measured.takeoff.laid.storeys[0]!.walls.flatMap(({ courses }) => courses.find((course) => course.top)!.pieces);
  const pieces = new Set(top.filter(({ inside }) => !inside).map(({ id }) => id)).size;
  expect(taken(measured, 'top-course-hold-down', 'CTIE-14')).toBe(pieces);
});
