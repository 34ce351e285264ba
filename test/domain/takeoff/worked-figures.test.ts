import { describe, expect, it } from '@jest/globals';
import { inches } from '../../../src/domain/quantity/length.js';
import { cubicYards, takeOff, type LaidWall, type Takeoff } from '../../../src/domain/takeoff/index.js';
import { pairBlanks } from '../../../src/domain/takeoff/units.js';
import { heron, loopOf, scheduleOf, type WallInput } from '../../support/small-schedules.js';

// Every figure here is of the project's decisions or worked by hand beside the check (geometry and counting; common practice, no source).

const free: WallInput = { mark: 'A', from: [0, 0], to: [240, 0] };
const rectangle = loopOf([[0, 0], [480, 0], [480, 336], [0, 336]]);
const wallOf = (takeoff: Takeoff, mark = 'A'): LaidWall => takeoff.laid.storeys.flatMap((storey) => storey.walls).find((wall) => wall.mark === mark)!;
const unit = (takeoff: Takeoff, sku: string) => takeoff.units.find((row) => row.sku === sku);
const spans = (wall: LaidWall, course: number): number[] =>
  wall.courses[course - 1]!.pieces.filter((piece) => !piece.inside).map((piece) => (piece.to - piece.from) / 25_400_000);
const cubicInches = (nm3: bigint): number => Number(nm3) / 25_400_000 ** 3;
const codes = (takeoff: Takeoff): string[] => takeoff.findings.map((found) => found.code);

describe('the free wall 20\'-0" × 8\'-0" (decision 13)', () => {
  const takeoff = takeOff(scheduleOf([free]), heron());

  it('is five whole forms on odd courses and half, four, half on even ones', () => {
    const wall = wallOf(takeoff);
    expect(spans(wall, 1)).toEqual([48, 48, 48, 48, 48]);
    expect(spans(wall, 2)).toEqual([24, 48, 48, 48, 48, 24]);
    expect(spans(wall, 5)).toEqual(spans(wall, 1));
    expect(spans(wall, 6)).toEqual(spans(wall, 2));
  });

  it('buys 30 forms and 12 end closures and wastes nothing', () => {
    expect(unit(takeoff, 'ST6')).toMatchObject({ pieces: 33, bought: 30, lowerBound: 30, spare: 1 });
    expect(unit(takeoff, 'EC6')).toMatchObject({ pieces: 12, bought: 12 });
    expect(takeoff.cuts.every((form) => form.offcut === 0)).toBe(true);
    expect(takeoff.bondBreaks).toEqual([]);
  });

  it('loses the closures inside its ends: 235 × 6 × 96 in³ (decision 10)', () => {
    expect(cubicInches(wallOf(takeoff).concreteNm3)).toBeCloseTo(235 * 6 * 96, 6);
  });

  it('is the same wall turned by 37° or given in the other direction (decisions 2 and 6)', () => {
    const [cos, sin] = [Math.cos((37 * Math.PI) / 180), Math.sin((37 * Math.PI) / 180)];
    for (const turned of [{ ...free, to: [240 * cos, 240 * sin] as const }, { ...free, from: free.to, to: free.from }]) {
      const same = takeOff(scheduleOf([turned]), heron());
      expect(wallOf(same).length).toBe(inches(240));
      expect(same.units.map(({ sku, bought }) => [sku, bought])).toEqual(takeoff.units.map(({ sku, bought }) => [sku, bought]));
    }
  });

  it('is laid through a mark that parts it: one piece across the mark, counted once', () => {
    const parted = takeOff(scheduleOf([{ ...free, to: [100, 0] }, { mark: 'B', from: [100, 0], to: [240, 0] }]), heron());
    expect(parted.units.map(({ sku, pieces, bought }) => [sku, pieces, bought])).toEqual(takeoff.units.map(({ sku, pieces, bought }) => [sku, pieces, bought]));
    const last = wallOf(parted, 'A').courses[0]!.pieces.filter((piece) => !piece.inside).at(-1)!;
    const first = wallOf(parted, 'B').courses[0]!.pieces[0]!;
    expect([last.id, last.to - last.from + first.to - first.from]).toEqual([first.id, inches(48)]);
    expect([last.counted, first.counted]).toEqual([true, false]);
  });

  it('has webs 4 in from each form\'s end and every 8 in (decision 15)', () => {
    const [first] = wallOf(takeoff).courses[0]!.pieces;
    expect(first!.webs!.map((web) => web / 25_400_000)).toEqual([4, 12, 20, 28, 36, 44]);
  });
});

describe('a rectangle 40\'-0" × 28\'-0" to the foam face, 6 in core', () => {
  const takeoff = takeOff(scheduleOf(rectangle), heron());

  it('has axes 11 in shorter than its faces (decision 1)', () => {
    expect(['A', 'B', 'C', 'D'].map((mark) => wallOf(takeoff, mark).length / 25_400_000)).toEqual([469, 325, 469, 325]);
    expect(wallOf(takeoff).startOffset).toBe(inches(5.5));
  });

  it('holds axis length × core × height of concrete (decision 5)', () => {
    const total = takeoff.concrete[0]!.nm3;
    expect(cubicInches(total)).toBeCloseTo(2 * (469 + 325) * 6 * 96, 6);
    // 2 × 794 × 6 × 96 in³ = 19.605 yd³; × 1.05 + 0.5 = 21.085, up to the next quarter (decision 5, parameters common practice)
    expect(cubicYards(total)).toBeCloseTo(19.6049382716, 9);
    expect(takeoff.concrete[0]!.orderYd3).toBe(21.25);
  });

  it('alternates hands: three of each at every corner over six courses', () => {
    expect([unit(takeoff, 'SQ6-L')!.bought, unit(takeoff, 'SQ6-R')!.bought]).toEqual([12, 12]);
    expect(wallOf(takeoff).courses.map((course) => course.pieces[0]!.to / 25_400_000)).toEqual([16, 32, 16, 32, 16, 32]);
  });

  it('loses exactly its openings', () => {
    const door = { mark: 'D1', wall: 'A', at: 60, sill: 0, width: 36, height: 84 };
    const open = takeOff(scheduleOf(rectangle, { openings: [door] }), heron());
    expect(cubicInches(takeoff.concrete[0]!.nm3 - open.concrete[0]!.nm3)).toBeCloseTo(36 * 84 * 6, 6);
  });

  it('is the same drawn clockwise, with stations still from the user\'s own end (decision 2)', () => {
    const clockwise = rectangle.map((wall) => ({ ...wall, from: wall.to, to: wall.from })).reverse();
    const door = { mark: 'D1', wall: 'A', at: 60, sill: 0, width: 36, height: 84 };
    const ahead = wallOf(takeOff(scheduleOf(rectangle, { openings: [door] }), heron()));
    const back = wallOf(takeOff(scheduleOf(clockwise, { openings: [{ ...door, at: 480 - 60 - 36 }] }), heron()));
    expect(back.outside).toBe('left');
    expect(back.openings[0]!.from).toBe(ahead.length - ahead.openings[0]!.to);
    expect(back.openings[0]!.from + back.startOffset).toBe(inches(384));
    expect(back.concreteNm3).toBe(ahead.concreteNm3);
  });
});

describe('corners', () => {
  it('buys nine blanks for nine and six halves: five courses, three convex 45° corners (decision 18)', () => {
    expect(pairBlanks(9, 6)).toBe(9);
    const d = 100 * Math.SQRT1_2;
    const chain: WallInput[] = [[0, 0], [200, 0], [200 + d, d], [200 + d, 200 + d], [200, 200 + 2 * d]].map((from, index, all) => ({
      mark: `W${index}`,
      from: from as [number, number],
      to: (all[index + 1] ?? [100, 200 + 2 * d]) as [number, number],
    }));
    const takeoff = takeOff(scheduleOf(chain.slice(0, 4), { height: 80 }), heron());
    expect(unit(takeoff, 'DP6')).toMatchObject({ pieces: 15, bought: 9 });
  });

  it('leaves no trace of the corner units\' two cores: a hold, and the wall loses its own share (decision 4)', () => {
    const takeoff = takeOff(scheduleOf([{ mark: 'A', core: '8', from: [0, 0], to: [240, 0] }, { mark: 'B', core: '4', from: [240, 0], to: [240, 240] }]), heron());
    expect(takeoff.findings.find((found) => found.code === 'core-change')).toMatchObject({ severity: 'hold', walls: ['A', 'B'] });
    // wall A: 240 − 4.5 to the node (9 − 13·cos 90°)/2, wall B: 240 − 6.5
    expect([wallOf(takeoff, 'A').length, wallOf(takeoff, 'B').length]).toEqual([inches(235.5), inches(233.5)]);
  });

  it('asks about corners that no unit makes', () => {
    const acute = takeOff(scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }, { mark: 'B', from: [240, 0], to: [100, 140] }]), heron());
    expect(acute.findings.find((found) => found.code === 'turn-acute')).toMatchObject({ severity: 'hold', numbers: { turnDeg: 135, core: '6' } });
    const slight = takeOff(scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }, { mark: 'B', from: [240, 0], to: [480, 21] }]), heron());
    expect(codes(slight)).toContain('turn-not-made');
  });
});

describe('tees (decisions 8 and 9)', () => {
  const partition = (to: number): WallInput => ({ mark: 'P', from: [200, to], to: [200, 325] });

  it.each([{ depth: 0 }, { depth: 5.5 }, { depth: 11 }])('trims a branch drawn $depth in into the through wall to its panel face', ({ depth }) => {
    const takeoff = takeOff(scheduleOf([...rectangle, partition(depth)]), heron());
    const branch = wallOf(takeoff, 'P');
    expect([branch.trimStart, branch.trimEnd, branch.length]).toEqual([inches(5.5), inches(5.5), inches(325)]);
    expect(spans(branch, 1).reduce((sum, length) => sum + length, 0)).toBe(314);
    // concrete from core face to core face: 325 − 2 × 3
    expect(cubicInches(branch.concreteNm3)).toBeCloseTo(319 * 6 * 96, 6);
    const tee = takeoff.laid.storeys[0]!.junctions.find((junction) => junction.kind === 'tee' && junction.tee!.through === 'A')!;
    // The branch's axis stands 5.5 in left of its dimension line x = 200, the node 5.5 in in from the corner.
    expect(tee.tee).toMatchObject({ cutFrom: inches(200 - 5.5 - 5.5 - 3), cutTo: inches(200 - 5.5 - 5.5 + 3), side: 'left' });
    expect(takeoff.findings.filter((found) => found.severity !== 'note')).toEqual([]);
  });

  it('keeps head joints of the through wall out of the cut-out and one web beside it', () => {
    const takeoff = takeOff(scheduleOf([...rectangle, partition(11)]), heron());
    for (const course of wallOf(takeoff, 'A').courses) {
      for (const joint of course.headJoints) expect(Math.abs(joint.at / 25_400_000 - 189)).toBeGreaterThanOrEqual(11);
    }
    expect(takeoff.bondBreaks).toEqual([]);
  });

  it('cuts 8.49 in for a 6 in core at 45° and starts the branch (T/2)/sin φ from the node', () => {
    const takeoff = takeOff(scheduleOf([{ mark: 'A', from: [0, 0], to: [480, 0] }, { mark: 'P', from: [200, 5.5], to: [320, 125.5] }]), heron());
    const found = takeoff.findings.find((entry) => entry.code === 'tee-skewed')!;
    expect(found.severity).toBe('advise');
    expect((found.numbers['cutOutMm'] as number) / 25.4).toBeCloseTo(8.49, 2);
    expect((found.numbers['formTrimMm'] as number) / 25.4).toBeCloseTo(5.5 * Math.SQRT2, 6);
    // The piece at the skew counts at its longer face: (T/2)·cot 45° = 5.5 in more than on the axis.
    const first = wallOf(takeoff, 'P').courses[0]!.pieces.find((piece) => !piece.inside)!;
    expect(first.pieceLength - (first.to - first.from)).toBe(inches(5.5));
    expect(takeoff.cuts.flatMap((form) => form.parts).every((part) => part.offset + part.length <= inches(48))).toBe(true);
  });

  it('lets the straightest pair of three through and holds where none is straight', () => {
    const through = takeOff(scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }, { mark: 'B', from: [240, 0], to: [480, 0] }, { mark: 'P', from: [240, 0], to: [240, 200] }]), heron());
    const tee = through.laid.storeys[0]!.junctions.find((junction) => junction.kind === 'tee')!;
    // P's axis stands 5.5 in left of its line x = 240, so the cut-out lies in A.
    expect([tee.tee!.through, tee.tee!.branch, tee.tee!.cutFrom, tee.tee!.cutTo]).toEqual(['A', 'P', inches(231.5), inches(237.5)]);
    expect(spans(wallOf(through, 'A'), 1).concat(spans(wallOf(through, 'B'), 1)).reduce((sum, length) => sum + length, 0)).toBe(480);
    const star = takeOff(scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }, { mark: 'B', from: [240, 0], to: [360, 200] }, { mark: 'C', from: [240, 0], to: [360, -200] }]), heron());
    expect(star.findings.find((found) => found.code === 'turn-not-made')).toMatchObject({ severity: 'hold' });
  });

  it('holds where walls cross', () => {
    const crossing = takeOff(scheduleOf([{ mark: 'A', from: [0, 0], to: [480, 0] }, { mark: 'B', from: [240, -200], to: [240, 200] }]), heron());
    expect(crossing.findings.find((found) => found.code === 'walls-cross')).toMatchObject({ severity: 'hold', walls: ['A', 'B'] });
    const four = takeOff(
      scheduleOf([
        { mark: 'A', from: [0, 0], to: [240, 0] },
        { mark: 'B', from: [240, 0], to: [480, 0] },
        { mark: 'C', from: [240, -200], to: [240, 0] },
        { mark: 'D', from: [240, 0], to: [240, 200] },
      ]),
      heron(),
    );
    expect(four.findings.some((found) => found.code === 'walls-cross' && found.severity === 'hold')).toBe(true);
  });

  it('holds where walls lie in each other', () => {
    const takeoff = takeOff(scheduleOf([{ mark: 'A', from: [0, 0], to: [480, 0] }, { mark: 'B', from: [100, 4], to: [300, 4] }]), heron());
    expect(takeoff.findings.find((found) => found.code === 'wall-overlap')).toMatchObject({ severity: 'hold', walls: ['A', 'B'] });
  });
});

describe('closed plans', () => {
  it('holds a plan that claims to close and does not', () => {
    const open = takeOff(scheduleOf(rectangle.slice(0, 3), { storey: { closed: true } }), heron());
    expect(open.findings.find((found) => found.code === 'plan-open')).toMatchObject({ severity: 'hold', numbers: { gapMm: expect.any(Number) } });
    expect(codes(takeOff(scheduleOf(rectangle, { storey: { closed: true } }), heron()))).not.toContain('plan-open');
    expect(codes(takeOff(scheduleOf(rectangle.slice(0, 3)), heron()))).not.toContain('plan-open');
  });
});

describe('seams (decision 14)', () => {
  const odd = loopOf([[0, 0], [480.375, 0], [480.375, 336], [0, 336]]);
  const takeoff = takeOff(scheduleOf(odd), heron());

  it('puts one off-module joint at one station in every course and says which lengths avoid it', () => {
    const wall = wallOf(takeoff, 'A');
    const seams = wall.courses.map((course) => course.headJoints.filter((joint) => joint.kind === 'seam').map((joint) => joint.at));
    expect(seams).toEqual(seams.map(() => [seams[0]![0]]));
    const note = takeoff.findings.find((found) => found.code === 'seam' && found.wall === 'A')!;
    expect([note.severity, note.numbers['remainderMm'], note.numbers['shorterMm'], note.numbers['longerMm']]).toEqual(['note', 9.525, 12192, 12217.4]);
  });

  it('cuts exactly one piece off the module in each course', () => {
    const off = wallOf(takeoff, 'A').courses.map((course) => course.pieces.filter((piece) => piece.kind === 'straight' && (piece.to - piece.from) % inches(1) !== 0));
    expect(off.map((pieces) => pieces.length)).toEqual([1, 1, 1, 1, 1, 1]);
    expect(off.every(([piece]) => piece!.why === 'seam')).toBe(true);
  });

  it('needs none where a run ends at a jamb, at a free end, or where the interlock is continuous', () => {
    const ended = takeOff(scheduleOf([{ mark: 'A', from: [0, 0], to: [240.375, 0] }, { mark: 'B', from: [240.375, 0], to: [240.375, 200] }]), heron());
    expect(codes(ended)).not.toContain('seam');
    expect(codes(takeOff(scheduleOf(odd), heron({ top: { interlock: 'continuous' } })))).not.toContain('seam');
  });
});

describe('openings (decision 16)', () => {
  const window = { mark: 'W1', wall: 'A', at: 96, sill: 36, width: 48, height: 40 };
  const takeoff = takeOff(scheduleOf([free], { openings: [window] }), heron());
  const wall = wallOf(takeoff);

  it('interrupts only the courses it takes whole and notches the others', () => {
    // 36 to 76 in: course 4 (48 to 64) whole; courses 3 (32 to 48) and 5 (64 to 80) in part.
    expect(wall.courses.map((course) => course.voids.length)).toEqual([0, 0, 0, 1, 0, 0]);
    const notched = wall.courses.map((course) => course.pieces.reduce((sum, piece) => sum + piece.notches.reduce((width, notch) => width + notch.to - notch.from, 0), 0));
    expect(notched).toEqual([0, 0, inches(48), 0, inches(48), 0]);
    expect(wall.courses[2]!.pieces.flatMap((piece) => piece.notches)[0]).toMatchObject({ bottom: inches(4), top: inches(16) });
  });

  it('runs forms the closure\'s thickness into a hole lined with end closures: clear width less two closures', () => {
    const lined = wallOf(takeOff(scheduleOf([free], { openings: [{ ...window, lining: 'end-closure' }] }), heron()));
    expect(lined.openings[0]!.formsTo - lined.openings[0]!.formsFrom).toBe(inches(48 - 2 * 2.5));
    expect(lined.concreteNm3).toBe(wall.concreteNm3);
    // jambs of courses 3, 4 and 5 are closed, two each, beside the twelve of the wall's ends
    expect(lined.courses.flatMap((course) => course.pieces).filter((piece) => piece.why === 'jamb')).toHaveLength(6);
  });

  it('asks about a jamb less than 24 in from a foam-face corner and a pier under 24 in', () => {
    const at = (station: number) => codes(takeOff(scheduleOf(rectangle, { openings: [{ ...window, at: station }] }), heron()));
    expect([at(23.9).includes('opening-near-corner'), at(24).includes('opening-near-corner')]).toEqual([true, false]);
    const pier = (between: number) =>
      codes(takeOff(scheduleOf(rectangle, { openings: [{ ...window, at: 100 }, { ...window, mark: 'W2', at: 148 + between }] }), heron())).includes('pier-narrow');
    expect([pier(23), pier(24)]).toEqual([true, false]);
  });
});

describe('heights in one storey (decision 7)', () => {
  const step = [...rectangle.slice(0, 1), { ...rectangle[1]!, height: 64 }, ...rectangle.slice(2)];
  const takeoff = takeOff(scheduleOf(step), heron());

  it('leaves the higher wall a closed free end above the lower one\'s top', () => {
    const wall = wallOf(takeoff, 'A');
    expect(wall.courses.map((course) => course.pieces.filter((piece) => piece.kind === 'end-closure').length)).toEqual([0, 0, 0, 0, 1, 1]);
    // it runs to its end as drawn, 5.5 in past the node
    expect(wall.courses.map((course) => (course.to - wall.length) / 25_400_000)).toEqual([0, 0, 0, 0, 5.5, 5.5]);
  });

  it('mitres the concrete below and ends it at the closure above', () => {
    expect(cubicInches(wallOf(takeoff, 'A').concreteNm3)).toBeCloseTo(469 * 6 * 64 + (469 + 5.5 - 2.5) * 6 * 32, 6);
  });

  it('lays a lower wall on the courses of the walls it meets', () => {
    const lower = takeOff(scheduleOf([...rectangle.slice(0, 1), { ...rectangle[1]!, height: 88 }, ...rectangle.slice(2)], { height: 108 }), heron());
    expect(wallOf(lower, 'B').stack).toMatchObject({ courses: 6, ripped: inches(8), deviation: 0 });
    expect(codes(lower)).not.toContain('height-not-coursed');
  });
});

describe('short walls (decision 31)', () => {
  it('holds a wall whose legs leave less than the smallest piece, and counts its units all the same', () => {
    // 37.5 + 21.5 = 59 in of legs; 64 in leaves 5.
    const short = takeOff(scheduleOf(loopOf([[0, 0], [64, 0], [64, 336], [0, 336]])), heron());
    const found = short.findings.filter((entry) => entry.code === 'run-too-short');
    expect(found.map((entry) => [entry.wall, entry.severity, entry.numbers['remainderMm']])).toEqual([['A', 'hold', 127], ['C', 'hold', 127]]);
    expect(unit(short, 'SQ6-L')!.pieces + unit(short, 'SQ6-R')!.pieces).toBe(24);
    expect(codes(takeOff(scheduleOf(loopOf([[0, 0], [59, 0], [59, 336], [0, 336]])), heron()))).not.toContain('run-too-short');
  });
});

describe('strips (decision 12)', () => {
  it('counts them by the form length to the outer apex of each corner', () => {
    const takeoff = takeOff(scheduleOf(rectangle, { height: 108 }), heron({ parameters: { stackPrefers: 'strips' } }));
    const wall = wallOf(takeoff, 'A');
    expect(wall.strips.map((strip) => [strip.afterCourse, strip.runs])).toEqual([2, 3, 4, 5].map((course) => [course, [{ from: inches(-5.5), to: inches(474.5) }]]));
    // 480 and 336 in are 10 and 7 forms: 4 strips × 2 × 17
    expect(unit(takeoff, 'HS6')).toMatchObject({ pieces: 136, bought: 136 });
  });
});

describe('ends that meet where they should not', () => {
  const through: WallInput = { mark: 'A', from: [0, 0], to: [480, 0], dimensionsTo: 'axis' };
  const axis = (mark: string, from: [number, number], to: [number, number]): WallInput => ({ mark, from, to, dimensionsTo: 'axis' });
  const holds = (walls: WallInput[]): string[] =>
    takeOff(scheduleOf(walls), heron()).findings.filter((found) => found.severity === 'hold').map((found) => `${found.code} ${found.walls.join(' ')}`);

  it.each([
    { name: 'straight through', walls: [through, axis('P', [240, 0], [240, 150]), axis('Q', [240, 0], [240, -150])] },
    { name: 'two inches off the axis', walls: [through, axis('P', [240, 2], [240, 150]), axis('Q', [240, 2], [240, -150])] },
    { name: 'as a V on one side', walls: [through, axis('P', [240, 0], [340, 100]), axis('Q', [240, 0], [140, 100])] },
  ])('holds two ends that meet inside a third wall, $name, as a crossing (decision 8)', ({ walls }) => {
    expect(holds(walls)).toEqual(['walls-cross A P Q']);
  });

  it('counts the concrete of such a crossing once', () => {
    const takeoff = takeOff(scheduleOf([through, axis('P', [240, 0], [240, 150]), axis('Q', [240, 0], [240, -150])]), heron());
    // 480 and two of 150 less three free ends' closures and half the through core each: 475 + 2 × (150 − 3 − 2.5)
    expect(cubicInches(takeoff.concrete[0]!.nm3)).toBeCloseTo((475 + 2 * 144.5) * 6 * 96, 6);
  });

  it('holds a corner drawn apart: each end stops in the other wall', () => {
    expect(holds([{ mark: 'A', from: [0, 0], to: [240, 0] }, { mark: 'B', from: [240, 0.5], to: [240, 240] }])).toEqual(['plan-open A B']);
  });

  it('holds bodies that share ground without meeting', () => {
    expect(holds([axis('A', [0, 0], [239.5, 0]), axis('B', [240, 0.5], [240, 240])]).length).toBe(1);
    expect(holds([axis('A', [0, 0], [234, 0]), axis('B', [240, 0.5], [240, 240])])).toEqual([]);
  });

  it('holds a branch that lands in a hole', () => {
    const window = { mark: 'W1', wall: 'A', at: 220, sill: 36, width: 40, height: 40 };
    const takeoff = takeOff(scheduleOf([through, axis('P', [240, 0], [240, 150])], { openings: [window] }), heron());
    expect(takeoff.findings.find((found) => found.code === 'outside-method')?.numbers).toMatchObject({ feature: 'opening over a tee', opening: 'W1', branch: 'P' });
  });
});

describe('runs too short to part at a seam', () => {
  it('counts the off-module joint at the leg in the bond and lists what it breaks', () => {
    // axis 57.5 − 16 − 32 leaves 9.5 in: joints at 16 and 25.5, above them 32 and 41.5: 6.5 in apart.
    const takeoff = takeOff(scheduleOf(loopOf([[0, 0], [57.5, 0], [57.5, 300], [0, 300]]).map((wall) => ({ ...wall, dimensionsTo: 'axis' as const }))), heron());
    const own = takeoff.bondBreaks.filter((found) => found.wall === 'A');
    expect(own.length).toBeGreaterThanOrEqual(5);
    expect(own.every((found) => found.distance === inches(6.5) && found.cause === 'corner-legs')).toBe(true);
    expect(takeoff.findings.find((found) => found.code === 'seam' && found.wall === 'A')?.atMm).toBeNull();
  });
});

describe('causes', () => {
  it('sum to what is bought: laid pieces less what cutting saves', () => {
    for (const row of takeOff(scheduleOf(rectangle), heron()).units) {
      expect(row.because.reduce((sum, cause) => sum + cause.quantity, 0)).toBe(row.bought);
    }
  });
});

describe('marks, ends and steps', () => {
  const holds = (walls: WallInput[]): string[] =>
    takeOff(scheduleOf(walls), heron()).findings.filter((found) => found.severity !== 'note').map((found) => `${found.code} ${found.walls.join(' ')}`);

  it.each([6, 8, 10, 12, 294])('raises nothing for a mark %d in from a corner: straight-on walls are one run', (at) => {
    const corners: [number, number][] = [[0, 0], [at, 0], [300, 0], [300, 200], [0, 200]];
    expect(holds(loopOf(corners))).toEqual([]);
  });

  it('keeps every bond of a wall between two tees where a placement keeps it', () => {
    // Worked by hand: with the legs at 16 and 317 (odd) and 32 and 333 (even), joints 42 90 138 186 234 282 over 50 98 146 194 242 290 keep all.
    const branch = (mark: string, x: number): WallInput => ({ mark, from: [x, 5.5], to: [x, 174.5], dimensionsTo: 'axis' });
    const walls = [...loopOf([[0, 0], [360, 0], [360, 180], [0, 180]]), branch('P', 180), branch('Q', 260)];
    expect(takeOff(scheduleOf(walls), heron()).bondBreaks).toEqual([]);
  });

  it('closes no end that an opening takes, and deducts of an opening only what is there', () => {
    const door = { mark: 'D', wall: 'A', at: 0, sill: 0, width: 36, height: 84 };
    const takeoff = takeOff(scheduleOf([free], { openings: [door] }), heron());
    // the right end six times, the left only over the door
    expect(unit(takeoff, 'EC6')!.pieces).toBe(7);
    expect(cubicInches(wallOf(takeoff).concreteNm3)).toBeCloseTo(235 * 6 * 96 - 33.5 * 6 * 84, 6);
  });

  it('closes the strips of a free end: two ends of 108 in from closures of 16 in', () => {
    const takeoff = takeOff(scheduleOf([free], { height: 108 }), heron({ parameters: { stackPrefers: 'strips' } }));
    // 12 whole closures, and 8 of 3 in, five to a closure
    expect(unit(takeoff, 'EC6')).toMatchObject({ pieces: 20, bought: 14 });
  });

  it('closes the part of a course above a lower neighbour at the end as drawn', () => {
    const takeoff = takeOff(scheduleOf([{ mark: 'M', from: [0, 0], to: [200, 0] }, { mark: 'N', from: [200, 0], to: [200, 150], height: 88 }]), heron());
    const closures = wallOf(takeoff, 'M').courses[5]!.pieces.filter((piece) => piece.kind === 'end-closure');
    expect(closures.map((piece) => [piece.from / 25_400_000, piece.to / 25_400_000])).toEqual([[0, 2.5], [197.5, 200]]);
  });

  it('holds a wall that its own closures use up', () => {
    expect(holds([{ mark: 'A', from: [0, 0], to: [4, 0] }])).toEqual(['run-too-short A']);
  });

  it('holds walls whose beds miss each other', () => {
    expect(holds([{ mark: 'A', from: [0, 0], to: [240, 0] }, { mark: 'B', from: [240, 0], to: [240, 200], base: 10, height: 80 }])).toEqual(['height-not-coursed A B']);
  });
});

describe('offcuts serve their own storey unless the job says otherwise (decision 19)', () => {
  // One wall of 24 in on one course in each of two storeys: half a form each.
  const storeys = (offcuts?: 'job') => {
    const schedule = scheduleOf([{ mark: 'A', from: [0, 0], to: [24, 0] }, { mark: 'B', from: [0, 0], to: [24, 0], storey: 'S2' }], { height: 16 });
    const storey = schedule.storeys[0]!;
    return takeOff({ ...schedule, storeys: [storey, { ...storey, id: 'S2', on: 'S1' }], ...(offcuts ? { offcuts } : {}) }, heron());
  };
  const forms = (offcuts?: 'job') => storeys(offcuts).units.find(({ sku }) => sku === 'ST6')!;

  it('a form for each storey, or one sawn in two', () => {
    expect(forms()).toMatchObject({ pieces: 2, bought: 2, lowerBound: 2 });
    expect(forms('job')).toMatchObject({ pieces: 2, bought: 1, lowerBound: 1 });
    expect(storeys('job').cuts.map(({ storey, parts }) => [storey, parts.map(({ wall }) => wall)])).toEqual([['S1', ['A', 'B']]]);
  });

  it('its causes sum to what is bought', () => {
    expect(forms('job').because.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(1);
  });
});

describe('an opening in a corner', () => {
  // Core 6: the corner's own concrete reaches 3 in past the node, 8.5 in from the foam-face corner.
  it.each([[0, true], [8, true], [8.5, false], [9, false]] as const)('at %d in from the foam-face corner: held is %s', (at, held) => {
    const openings = [{ mark: 'W', wall: 'A', at, sill: 32, width: 30, height: 48 }];
    const takeoff = takeOff(scheduleOf(loopOf([[0, 0], [240, 0], [240, 240], [0, 240]]), { openings }), heron());
    expect(takeoff.findings.some(({ code, severity, numbers }) => code === 'outside-method' && severity === 'hold' && numbers.feature === 'opening in a corner')).toBe(held);
  });
});

describe('a skewed branch drawn to the foam face', () => {
  it('is a tee though its axis ends short of the through wall: 60 in along and 120 in up, its right-hand face drawn (decision 8)', () => {
    const takeoff = takeOff(scheduleOf([
      { mark: 'A', from: [0, 0], to: [480, 0] },
      { mark: 'P', from: [200, 11], to: [260, 131] },
    ]), heron());
    expect(takeoff.laid.storeys[0]!.junctions.filter(({ kind }) => kind === 'tee').map(({ walls }) => walls)).toEqual([['A', 'P']]);
    expect(takeoff.findings.map(({ code, severity }) => [code, severity])).toEqual([['tee-skewed', 'advise']]);
  });
});
