import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { inches } from '../../../src/domain/quantity/length.js';
import { readRange } from '../../../src/domain/range/read-range.js';
import { readScheduleDocument, type Schedule, type Wall } from '../../../src/domain/schedule/index.js';
import { planStorey } from '../../../src/domain/takeoff/storey-plan.js';
import { takeOff } from '../../../src/domain/takeoff/take-off.js';
import { scheduleDocument } from '../../../src/modules/schedules/schedule-document.js';
import { declaredRectangle, HERON, rectangle } from '../../support/schedule-documents.js';

// Figures: the demo range's panel is 2 1/2 in, so a 6 in core is 11 in over its foam faces, an 8 in core 13, a 4 in core 9.
// The dimension line lies on the right of the walk (decision 1), the building on the left (decision 2), a branch's end on the near
// foam face makes the tee (decision 8). Everything below follows from these by adding and taking away.

const range = (() => {
  const result = readRange(JSON.parse(readFileSync('shared/samples/heron-16.range.json', 'utf8')));
  if (!result.ok) throw new Error('the demo range is none');
  return result.value;
})();
const read = (document: unknown): Schedule => {
  const result = readScheduleDocument(document, HERON);
  if (!result.ok) throw new Error(JSON.stringify(result.error, null, 1));
  return result.value;
};
const errorsOf = (document: unknown, context = HERON) => {
  const result = readScheduleDocument(document, context);
  if (result.ok) throw new Error('the schedule was taken');
  return result.error;
};
const wall = (mark: string, length: unknown, more: object = {}) => ({ mark, storey: 'S1', core: '6', length, ...more });
const tee = (on: string, at: unknown, side = 'left') => ({ joint: 'tee', on, at, side });
const corner = (turn: number, mark: string, end = 'start') => ({ joint: 'corner', turn, with: { wall: mark, end } });
const withWalls = (...walls: object[]) => ({ ...rectangle(), walls: [...rectangle().walls, ...walls], openings: [] });
const only = (...walls: object[]) => ({ ...rectangle(), storeys: [{ id: 'S1', height: 108 }], walls, openings: [] });
const inIn = ({ x, y }: Wall['from']) => [x, y].map((each) => Math.round((each / inches(1)) * 1e6) / 1e6 || 0);
const endsOf = (schedule: Schedule, mark: string) => {
  const found = schedule.walls.find((each) => each.mark === mark);
  if (!found) throw new Error(`no wall ${mark}`);
  return [inIn(found.from), inIn(found.to)];
};
/** The tees that the take-off finds: branch, through wall, station on the through wall's axis from its own start [in]. */
const teesFound = (schedule: Schedule) =>
  schedule.storeys.flatMap((storey) => {
    const plan = planStorey(storey, schedule.walls.filter((each) => each.storey === storey.id && !each.arc), range);
    return plan.tees.map((found) => {
      const through = plan.walls[found.through]!;
      const station = through.reversed ? through.length - found.station : found.station;
      return [plan.walls[found.branch]!.wall.mark, through.wall.mark, Math.round((station / inches(1)) * 1e6) / 1e6];
    });
  });

describe('a branch that stands on a through wall', () => {
  // The outer face of A is y = 0, its inner one y = 11; the branch's centre line is x = 120.
  it.each<[string, object, number[][]]>([
    ['inside, from its start: walked away from A, its dimension line 5 1/2 in to the right of its centre line', wall('P', `12'-0"`, { start: tee('A', `10'-0"`) }), [[125.5, 11], [125.5, 155]]],
    ['inside, by its end: walked towards A, its dimension line on the other side', wall('P', `12'-0"`, { end: tee('A', `10'-0"`) }), [[114.5, 155], [114.5, 11]]],
    ['outside', wall('P', 144, { start: tee('A', 120, 'right') }), [[114.5, 0], [114.5, -144]]],
    ['of a thicker core', wall('P', 144, { core: '8', start: tee('A', 120) }), [[126.5, 11], [126.5, 155]]],
    ['dimensioned to its axis', wall('P', 144, { dimensionsTo: 'axis', start: tee('A', 120) }), [[120, 11], [120, 155]]],
    ['dimensioned to its concrete', wall('P', 144, { dimensionsTo: 'concrete-face', start: tee('A', 120) }), [[123, 11], [123, 155]]],
    ['on B, whose outer face is x = 480 and inner one x = 469', wall('P', 100, { start: tee('B', 60) }), [[469, 65.5], [369, 65.5]]],
    ['on C, walked towards the left: 120 from its start is x = 360', wall('P', 100, { start: tee('C', 120) }), [[354.5, 325], [354.5, 225]]],
  ])('%s', (_name, branch, ends) => {
    const schedule = read(withWalls(branch));
    expect(endsOf(schedule, 'P')).toEqual(ends);
    expect(teesFound(schedule)).toHaveLength(1);
  });

  // y = 0 is the dimension line of A; near face inside: + T for foam, + core + panel for concrete, + T/2 for the axis.
  it.each<[string, number, number]>([['foam-face', 11, 0], ['concrete-face', 8.5, -2.5], ['axis', 5.5, -5.5]])('on a wall dimensioned to its %s', (dimensionsTo, inside, outside) => {
    const on = (side: string) => read({ ...withWalls(wall('P', 100, { dimensionsTo: 'axis', start: tee('A', 120, side) })), dimensionsTo });
    expect(endsOf(on('left'), 'P')).toEqual([[120, inside], [120, inside + 100]]);
    expect(endsOf(on('right'), 'P')).toEqual([[120, outside], [120, outside - 100]]);
    for (const side of ['left', 'right']) expect(teesFound(on(side))).toHaveLength(1);
  });

  it('left and right are those of the wall as it was drawn, also where its loop runs clockwise and is turned round', () => {
    // A's building lies below it: its outer face is y = 0 and its inner one y = -11.
    const walls = (side: string) => [
      wall('A', 480, { from: [0, 0], to: [480, 0] }), wall('B', 336, { from: [480, 0], to: [480, -336] }),
      wall('C', 480, { from: [480, -336], to: [0, -336] }), wall('D', 336, { from: [0, -336], to: [0, 0] }),
      wall('P', 100, { dimensionsTo: 'axis', start: tee('A', 120, side) }),
    ];
    expect(endsOf(read(only(...walls('right'))), 'P')).toEqual([[120, -11], [120, -111]]);
    expect(endsOf(read(only(...walls('left'))), 'P')).toEqual([[120, 0], [120, 100]]);
    // 120 along the outer face is 120 - 5 1/2 along the axis, from A's own start.
    expect(teesFound(read(only(...walls('right'))))).toEqual([['P', 'A', 114.5]]);
  });

  it('a branch that is walked against its from→to has its dimension line on the other side', () => {
    // M comes first and is walked from its start: P is then walked to its start, on A, with the right-hand side towards -x.
    const chain = [wall('M', 60, { end: corner(90, 'P', 'end') }), wall('P', 100, { start: tee('A', 120) })];
    const schedule = read({ ...rectangle(), openings: [], walls: [...chain, ...rectangle().walls] });
    expect(endsOf(schedule, 'P')).toEqual([[114.5, 11], [114.5, 111]]);
    expect(teesFound(schedule)).toEqual([['P', 'A', 114.5]]);
  });

  it('the example of the design is read and laid, and the take-off finds the tee of P on A', () => {
    const example = {
      ...rectangle(),
      walls: [
        ...rectangle().walls,
        { mark: 'R', storey: 'S1', core: '8', from: [600, 0], to: [840, 240], arc: { radius: 240, turns: 'left' } },
        { mark: 'S', storey: 'S1', core: '10', from: [600, -120], to: [840, -120] },
        { mark: 'P', storey: 'S1', core: '6', length: `12'-0"`, start: { joint: 'tee', on: 'A', at: `10'-0"`, side: 'left' }, end: { joint: 'free' } },
      ],
      features: [
        { kind: 'ledge', wall: 'A', at: `4'-0"`, from: 0, to: 480, face: 'outside' },
        { kind: 'taper-top', wall: 'B', faces: 'one' },
        { kind: 'gable', wall: 'C', rise: 60, peakAt: 168 },
        { kind: 'core-change', wall: 'S', at: 64, core: '8', flush: 'outside' },
      ],
    };
    const schedule = read(example);
    expect(endsOf(schedule, 'P')).toEqual([[125.5, 11], [125.5, 155]]);
    expect(teesFound(schedule)).toEqual([['P', 'A', 114.5]]);
    const plain = read({ ...example, features: [] });
    const junctions = takeOff(plain, range).laid.storeys.flatMap((storey) => storey.junctions);
    expect(junctions.filter(({ kind }) => kind === 'tee').map(({ walls }) => walls)).toEqual([['A', 'P']]);
  });
});

describe('chains that hang on tees', () => {
  it('a branch on a branch, whatever the order of the rows', () => {
    // P stands at x = 120, its faces x = 114 1/2 and 125 1/2; Q at 40 from P's start is y = 51, on the right of P: from x = 125 1/2.
    const rows = [wall('Q', 50, { dimensionsTo: 'axis', start: tee('P', 40, 'right') }), wall('P', 144, { dimensionsTo: 'axis', start: tee('A', 120) })];
    for (const walls of [rows, rows.toReversed()]) {
      const schedule = read(withWalls(...walls));
      expect(endsOf(schedule, 'Q')).toEqual([[125.5, 51], [175.5, 51]]);
      expect(new Set(teesFound(schedule).map(String))).toEqual(new Set(['P,A,114.5', 'Q,P,45.5']));
    }
  });

  it('a chain of corners behind the branch, and a branch on that', () => {
    // Axis dimensions: P up from (120, 11) to (120, 111); its left turn goes to -x; N at 20 of M, right of M is +y, from y = 116.5.
    const dimensionsTo = 'axis';
    const schedule = read(withWalls(
      wall('P', 100, { dimensionsTo, start: tee('A', 120), end: corner(90, 'M') }),
      wall('M', 60, { dimensionsTo }),
      wall('N', 30, { dimensionsTo, end: tee('M', 20, 'right') }),
    ));
    expect(['P', 'M', 'N'].map((mark) => endsOf(schedule, mark))).toEqual([[[120, 11], [120, 111]], [[120, 111], [60, 111]], [[100, 146.5], [100, 116.5]]]);
    expect(teesFound(schedule).map(([branch, through]) => [branch, through])).toEqual([['P', 'A'], ['N', 'M']]);
  });

  it('on a ring that has no coordinates itself, and on a wall by itself', () => {
    const ring = declaredRectangle();
    const schedule = read({ ...ring, openings: [], walls: [...ring.walls, wall('P', 144, { start: tee('A', 120) }), wall('F', 240), wall('G', 60, { start: tee('F', 240, 'right') })] });
    expect(endsOf(schedule, 'P')).toEqual([[125.5, 11], [125.5, 155]]);
    expect(teesFound(schedule)).toEqual([['P', 'A', 114.5], ['G', 'F', 240]]);
  });

  it('a partition from wall to wall: its length is the clear one between the near foam faces', () => {
    // 336 less 11 at A and 11 at C; 120 from A's start is 360 from C's, which is walked the other way.
    const partition = (length: number, at = 360) => withWalls(wall('P', length, { start: tee('A', 120), end: tee('C', at) }));
    expect(teesFound(read(partition(314)))).toEqual([['P', 'A', 114.5], ['P', 'C', 354.5]]);
    expect(errorsOf(partition(311))).toEqual([expect.objectContaining({ pointer: '/walls/4/end/on', read: 'C', fix: `an end that reaches wall C: the end of P lies 0'-3" short of its near foam face` })]);
    expect(errorsOf(partition(314.5))).toEqual([expect.objectContaining({ pointer: '/walls/4/end/on', fix: `an end on wall C: the end of P runs 0'-0 1/2" past its near foam face` })]);
    expect(errorsOf(partition(314, 350))).toEqual([expect.objectContaining({ pointer: '/walls/4/end/at', read: '350', fix: `the station at which the centre line of P crosses C, 30'-0"` })]);
  });

  it('within 1 mm is there, at 1 mm it is not', () => {
    const partition = (length: string) => withWalls(wall('P', length, { start: tee('A', 120), end: tee('C', 360) }));
    expect(read(partition('7974.601 mm')).walls).toHaveLength(5); // 314 in = 7975.6 mm
    expect(errorsOf(partition('7974.6 mm'))[0]?.fix).toContain('short of its near foam face');
    expect(errorsOf(partition('7976.6 mm'))[0]?.fix).toContain('past its near foam face');
  });

  it('a chain from wall to wall with a corner between: checked at its second tee', () => {
    // P up from A to y = 111, then right turns are -: M to +x as far as B's inner face x = 469. Axis dimensions: 469 - 120 = 349.
    const chain = (length: number, at = 111) => withWalls(
      wall('P', 100, { dimensionsTo: 'axis', start: tee('A', 120), end: corner(-90, 'M') }),
      wall('M', length, { dimensionsTo: 'axis', end: tee('B', at) }),
    );
    expect(teesFound(read(chain(349)))).toEqual([['P', 'A', 114.5], ['M', 'B', 105.5]]);
    expect(errorsOf(chain(340))[0]).toMatchObject({ pointer: '/walls/5/end/on', fix: expect.stringContaining(`the end of M lies 0'-9" short`) });
    expect(errorsOf(chain(349, 100))[0]).toMatchObject({ pointer: '/walls/5/end/at', fix: expect.stringContaining(`9'-3"`) });
  });

  it('a branch whose other end is a corner with a drawn wall stands where that puts it, and its tee is checked', () => {
    // Z runs along y = 200 from x = 200 to 120 (axis); a left turn takes P down from (120, 200) to A's inner face y = 11: 189 long.
    const chain = (length: number, at = 120) => withWalls(
      wall('Z', 80, { dimensionsTo: 'axis', from: [200, 200], to: [120, 200] }),
      wall('P', length, { dimensionsTo: 'axis', start: corner(90, 'Z', 'end'), end: tee('A', at) }),
    );
    expect(teesFound(read(chain(189)))).toEqual([['P', 'A', 114.5]]);
    expect(errorsOf(chain(187))[0]?.fix).toContain(`0'-2" short`);
    expect(errorsOf(chain(189, 130))[0]?.fix).toContain(`10'-0"`);
  });
});

describe('a declared tee at a drawn end', () => {
  // Axis dimensions at x = 120; the body of A is y = 0 to 11.
  const drawn = (y: number, more: object = {}) => withWalls({ mark: 'P', storey: 'S1', core: '6', dimensionsTo: 'axis', from: [120, y], to: [120, 155], start: tee('A', 120), ...more });

  it.each([0, 5.5, 11, 11.03])('is right where the end lies in the body of the wall or within 1 mm: y = %d', (y) => {
    expect(teesFound(read(drawn(y)))).toEqual([['P', 'A', 114.5]]);
  });

  it.each<[string, object, string, string]>([
    ['short of it', drawn(14), '/walls/4/start/on', `lies 0'-3" short of its near foam face`],
    ['through it', drawn(-1), '/walls/4/start/on', `runs 1'-0" past its near foam face`],
    ['at another station', drawn(11, { start: tee('A', 121) }), '/walls/4/start/at', `10'-0"`],
    ['on the other side', drawn(11, { start: tee('A', 120, 'right') }), '/walls/4/start/side', 'left of A'],
    ['along it', withWalls({ mark: 'P', core: '6', from: [100, 5.5], to: [200, 5.5], start: tee('A', 100) }), '/walls/4/start/on', 'it runs along A'],
  ])('%s: told', (_name, document, pointer, fix) => expect(errorsOf(document)).toContainEqual(expect.objectContaining({ pointer, fix: expect.stringContaining(fix) })));

  it('on the skew: the station is where the centre line crosses the dimension line', () => {
    // From (131, 11) at 45 degrees back to y = 0 at x = 120.
    const skew = (at: number) => withWalls({ mark: 'P', core: '6', dimensionsTo: 'axis', from: [131, 11], to: [231, 111], start: tee('A', at) });
    expect(read(skew(120)).walls).toHaveLength(5);
    expect(errorsOf(skew(131))[0]?.fix).toContain(`10'-0"`);
  });

  it('of an arc wall: by its tangent', () => {
    // A quarter circle of radius 100 about (220, 11) that leaves A straight up: from (120, 11), turning right to (220, 111).
    const arc = (at: number) => withWalls({ mark: 'P', core: '6', dimensionsTo: 'axis', from: [120, 11], to: [220, 111], arc: { radius: 100, turns: 'right' }, start: tee('A', at) });
    expect(read(arc(120)).walls).toHaveLength(5);
    expect(errorsOf(arc(118))[0]?.fix).toContain(`10'-0"`);
  });
});

describe('declared tees that are refused', () => {
  const P = (more: object) => withWalls(wall('P', 144, more));
  it.each<[string, object, string, unknown, string]>([
    ['on a wall that is none', P({ start: tee('Q', 1) }), '/walls/4/start/on', 'Q', 'Q is none: A, B, C, D, P'],
    ['on a mark that is nearly one', P({ start: tee('p', 1) }), '/walls/4/start/on', 'p', 'p is none: P, A, B, C, D'],
    ['on itself', P({ start: tee('P', 1) }), '/walls/4/start/on', 'P', 'does not stop on its own side'],
    ['beyond the through wall', P({ start: tee('A', `40'-1"`) }), '/walls/4/start/at', `40'-1"`, `wall A, 40'-0" long`],
    ['before the through wall', P({ start: tee('A', -1) }), '/walls/4/start/at', '-1', 'zero or more'],
    ['on no side', P({ start: { joint: 'tee', on: 'A', at: 1 } }), '/walls/4/start/side', '', 'left, right'],
    ['at no station', P({ start: { joint: 'tee', on: 'A', side: 'left' } }), '/walls/4/start/at', '', 'a length such as'],
    ['on an arc wall', withWalls({ mark: 'R', core: '6', from: [600, 0], to: [840, 240], arc: { radius: 240, turns: 'left' } }, wall('P', 144, { start: tee('R', 10) })), '/walls/5/start/on', 'R', 'R is an arc wall'],
    ['on a wall of another storey', { ...withWalls(wall('P', 144, { storey: 'S2', start: tee('A', 10) })), storeys: [...rectangle().storeys, { id: 'S2', height: 108, on: 'S1' }] }, '/walls/4/start/on', 'A', 'P is in S2, A in S1'],
    ['of an arc wall without coordinates', P({ arc: { radius: 200, turns: 'left' }, start: tee('A', 10) }), '/walls/4/from', '', 'the ends of an arc wall'],
    ['on each other', only(wall('X', 100, { start: tee('Y', 10) }), wall('Y', 100, { start: tee('X', 10) })), '/walls/0/start', 'tee on Y', 'from and to coordinates for one of the walls: X hangs on Y'],
    ['a corner with an end that is a tee', withWalls(wall('P', 144, { start: tee('A', 120) }), wall('M', 10, { end: corner(90, 'P') })), '/walls/5/end/with/wall', 'corner of the end of M with the start of P', 'the start of P, which says a tee on A'],
  ])('%s', (_name, document, pointer, readAs, fix) => {
    expect(errorsOf(document)).toContainEqual(expect.objectContaining({ pointer, read: readAs, fix: expect.stringContaining(fix) }));
  });

  it('without the widths of the range', () => {
    const { coreWidths: _, ...unknown } = HERON;
    expect(errorsOf(P({ start: tee('A', 120) }), unknown)).toEqual([expect.objectContaining({ pointer: '/walls/4/start', read: 'tee on A', fix: expect.stringContaining('from and to coordinates') })]);
    expect(readScheduleDocument(withWalls({ mark: 'P', core: '6', from: [120, 11], to: [120, 99], start: tee('A', 125.5) }), unknown).ok).toBe(true);
  });
});

describe('whatever tees are declared', () => {
  const cores = ['4', '6', '8', '10'];
  const dims = fc.constantFrom('foam-face', 'concrete-face', 'axis');
  const branch = fc.record({ on: fc.nat(3), share: fc.double({ min: 0, max: 1, noNaN: true }), side: fc.constantFrom('left', 'right'), end: fc.constantFrom('start', 'end'), core: fc.constantFrom(...cores), dimensionsTo: dims });

  it('the take-off finds each where its station says, and the schedule that is handed back is the same', () => {
    fc.assert(
      fc.property(dims, fc.constantFrom(...cores), fc.boolean(), fc.array(branch, { minLength: 1, maxLength: 5 }), (dimensionsTo, core, left, branches) => {
        // A large ring, left or right about, with short branches well apart: one a side, at a tenth of an inch from 5 ft off its corners.
        const sides = branches.filter(({ on }, index) => branches.findIndex((other) => other.on === on) === index);
        const marks = ['A', 'B', 'C', 'D'];
        const ring = declaredRectangle().walls.map((each: any, index: number) => ({
          ...each, core, start: corner(left ? 90 : -90, marks[(index + 3) % 4]!, 'end'), end: corner(left ? 90 : -90, marks[(index + 1) % 4]!),
        }));
        const at = ({ on, share }: (typeof sides)[number]) => Math.round((60 + share * ((on % 2 ? 336 : 480) - 120)) * 10) / 10;
        const hung = sides.map((each) => wall(`T${each.on}`, 40, { core: each.core, dimensionsTo: each.dimensionsTo, [each.end]: tee(marks[each.on]!, at(each), each.side) }));
        const schedule = read({ ...declaredRectangle(), openings: [], dimensionsTo, walls: [...ring, ...hung] });
        // Decision 1: the axis begins (T/2)·tan 45° or core/2 later than the dimension line, or with it.
        const back = { 'foam-face': (Number(core) + 5) / 2, 'concrete-face': Number(core) / 2, axis: 0 }[dimensionsTo];
        const expected = sides.map((each) => [`T${each.on}`, marks[each.on]!, Math.round((at(each) - back) * 1e6) / 1e6]);
        const sorted = (tees: unknown[]) => tees.map(String).sort();
        expect(sorted(teesFound(schedule))).toEqual(sorted(expected));
        const bare = (each: Schedule) => JSON.parse(JSON.stringify(each, (key, value) => (key === 'place' ? undefined : value)));
        expect(bare(read(JSON.parse(JSON.stringify(scheduleDocument(schedule)))))).toEqual(bare(schedule));
      }),
      { numRuns: 150 },
    );
  });
});
