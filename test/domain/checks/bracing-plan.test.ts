import { describe, expect, it } from '@jest/globals';
import { braceCalculator } from '../../../src/domain/checks/brace-calculator.js';
import { bracingPlan, type StoreyBracing } from '../../../src/domain/checks/bracing-plan.js';
import { inches, toFeet } from '../../../src/domain/quantity/length.js';
import type { Schedule, Site } from '../../../src/domain/schedule/schedule.js';
import { takeOff, type LaidStorey, type LaidWall } from '../../../src/domain/takeoff/index.js';
import { canonicalSchedule } from '../../support/canonical-schedule.js';
import { curvedSchedule } from '../../support/curved-plans.js';
import { reverse, split } from '../../support/plan-changes.js';
import { PLAN_KINDS, randomPlan } from '../../support/plans.js';
import type { OpeningRow, ScheduleDocument, WallRow } from '../../support/schedule-document.js';
import { seededRandom } from '../../support/seeded-random.js';
import { heron } from '../../support/small-schedules.js';
import { answerOf, valueOf } from './asked.js';

// Counts are of the project's decision 20, ⌈L/s⌉ + 1, worked by hand; s = 72 in and 24 in from corners are common practice, no source.

const range = heron();
const FT = 12;

const wallRow = (mark: string, from: [number, number], to: [number, number]): WallRow => ({ mark, storey: 'S1', core: '6', height: 96, from, to });
const scheduleOf = (walls: WallRow[], openings: OpeningRow[] = [], site: Site | null = null): Schedule => ({
  ...canonicalSchedule({
    format: 'wallcourse/schedule@1', name: 'braced', units: 'in', dimensionsTo: 'axis', range: 'HERON-16',
    storeys: [{ id: 'S1', height: 96, grade: 'above', storeyAbove: false, closed: false }], walls, openings,
  } as ScheduleDocument),
  site,
});
const braced = (schedule: Schedule): StoreyBracing => bracingPlan(schedule, range, takeOff(schedule, range).laid)[0]!;
const standing = (bracing: StoreyBracing, mark: string) => bracing.walls.find((wall) => wall.mark === mark)!.braces;
const inchesOf = (bracing: StoreyBracing, mark: string): number[] => standing(bracing, mark).map(({ at }) => at / 25_400_000);

const FREE = [wallRow('A', [0, 0], [20 * FT, 0])];
const RING = [
  wallRow('A', [0, 0], [24 * FT, 0]), wallRow('B', [24 * FT, 0], [24 * FT, 16 * FT]),
  wallRow('C', [24 * FT, 16 * FT], [0, 16 * FT]), wallRow('D', [0, 16 * FT], [0, 0]),
];

describe('stations', () => {
  it('a free wall of 20 ft has ⌈20/6⌉ + 1 = 5, a foot from its ends and 4 1/2 ft apart', () => {
    const bracing = braced(scheduleOf(FREE));
    expect(inchesOf(bracing, 'A')).toEqual([12, 66, 120, 174, 228]);
    expect(standing(bracing, 'A').map(({ reason }) => reason)).toEqual(['free-end', 'between', 'between', 'between', 'free-end']);
    expect(bracing).toMatchObject({ storey: 'S1', side: 'inside', spacing: inches(72), count: 5, findings: [] });
  });

  it('a ring of 24 by 16 ft has 2 · (⌈24/6⌉ + 1) + 2 · (⌈16/6⌉ + 1) = 18, at corners', () => {
    const bracing = braced(scheduleOf(RING));
    expect(bracing.walls.map(({ braces }) => braces.length)).toEqual([5, 4, 5, 4]);
    expect(bracing.count).toBe(18);
    expect(new Set(standing(bracing, 'B').map(({ reason }) => reason))).toEqual(new Set(['corner', 'between']));
  });

  /** 7 ft, 3 ft of door, 10 ft: ⌈7/6⌉ + 1 = 3 and ⌈10/6⌉ + 1 = 3, one at each jamb. */
  it('a door has a brace at each jamb and none in it', () => {
    const bracing = braced(scheduleOf(FREE, [{ mark: 'D', wall: 'A', at: 84, sill: 0, width: 36, height: 80, lining: 'buck' }]));
    expect(inchesOf(bracing, 'A')).toEqual([12, 48, 84, 120, 174, 228]);
    expect(standing(bracing, 'A').filter(({ reason }) => reason === 'opening').map(({ at }) => at)).toEqual([inches(84), inches(120)]);
  });

  /** Half of 120 in of door and half of 36 in to the next brace: 78 in, over the 72 of the range. */
  it('the braces beside a wide door are made for the wall that they hold', () => {
    const bracing = braced(scheduleOf(FREE, [{ mark: 'D', wall: 'A', at: 84, sill: 0, width: 120, height: 80, lining: 'buck' }]));
    expect(standing(bracing, 'A').map(({ width }) => width / 25_400_000)).toEqual([72, 72, 78, 72, 72]);
  });

  it('an opening that takes no whole course does not part the wall', () => {
    const bracing = braced(scheduleOf(FREE, [{ mark: 'O', wall: 'A', at: 84, sill: 36, width: 36, height: 14, lining: 'buck' }]));
    expect(inchesOf(bracing, 'A')).toEqual([12, 66, 120, 174, 228]);
  });

  /** Wall A: two stretches of 12 ft, ⌈12/6⌉ + 1 = 3 each. The branch's forms begin at the panel face, 5 1/2 in from the axis: 114 1/2 in, 3. */
  it('a tee parts the through wall', () => {
    const bracing = braced(scheduleOf([...RING, wallRow('P', [12 * FT, 0], [12 * FT, 10 * FT])]));
    expect(standing(bracing, 'A').map(({ reason }) => reason)).toEqual(['corner', 'between', 'tee', 'tee', 'between', 'corner']);
    expect(inchesOf(bracing, 'A')).toEqual([12, 72, 132, 156, 216, 276]);
    expect(standing(bracing, 'P')).toHaveLength(3);
  });

  /** 40 by 28 ft to outside faces, panels 2 1/2 and core 6: the axis lies 5 1/2 in inside, so 39 ft 1 in and 27 ft 1 in: 2 · (⌈469/72⌉ + 1) + 2 · (⌈325/72⌉ + 1) = 2 · 8 + 2 · 6 = 28. */
  it('the rectangle of 40 by 28 ft has 28', () => {
    const [x, y] = [469, 325];
    const bracing = braced(scheduleOf([wallRow('N', [0, 0], [x, 0]), wallRow('E', [x, 0], [x, y]), wallRow('S', [x, y], [0, y]), wallRow('W', [0, y], [0, 0])]));
    expect(bracing.walls.map(({ mark, braces }) => [mark, braces.length])).toEqual([['N', 8], ['E', 6], ['S', 8], ['W', 6]]);
    expect(bracing.count).toBe(28);
  });

  /** As the free wall of 20 ft: 12, 66, 120, 174, 228 in; the mark stands at 90 in, so those of B are 30, 84 and 138 in from its own beginning. */
  it('two marks of one line are braced as one', () => {
    const bracing = braced(scheduleOf([wallRow('A', [0, 0], [90, 0]), wallRow('B', [90, 0], [240, 0])]));
    expect(inchesOf(bracing, 'A')).toEqual([12, 66]);
    expect(inchesOf(bracing, 'B')).toEqual([30, 84, 138]);
    expect(standing(bracing, 'B').map(({ reason }) => reason)).toEqual(['between', 'between', 'free-end']);
    expect(bracing.count).toBe(5);
  });

  /** B is drawn from the far end to the mark: 240 less 228, 174 and 120. */
  it('a mark drawn against the other has the stations of its own axis', () => {
    const bracing = braced(scheduleOf([wallRow('A', [0, 0], [90, 0]), wallRow('B', [240, 0], [90, 0])]));
    expect(inchesOf(bracing, 'A')).toEqual([12, 66]);
    expect(inchesOf(bracing, 'B')).toEqual([12, 66, 120]);
    expect(standing(bracing, 'B').map(({ reason }) => reason)).toEqual(['free-end', 'between', 'between']);
  });

  /** A brace at the mark itself stands in the wall that arrives there; a mark between two braces has none. */
  it('a brace on a mark is of one wall, and a short mark may have none', () => {
    const bracing = braced(scheduleOf([wallRow('A', [0, 0], [66, 0]), wallRow('B', [66, 0], [114, 0]), wallRow('C', [114, 0], [240, 0])]));
    expect(['A', 'B', 'C'].map((mark) => inchesOf(bracing, mark))).toEqual([[12, 66], [], [6, 60, 114]]);
  });

  /** The door of 7 to 10 ft with the mark at 12 ft: 12, 48, 84 | 120, 174, 228 in as in one wall. */
  it('a door beside a mark parts the line, the mark does not', () => {
    const bracing = braced(scheduleOf([wallRow('A', [0, 0], [144, 0]), wallRow('B', [144, 0], [240, 0])], [{ mark: 'D', wall: 'A', at: 84, sill: 0, width: 36, height: 80, lining: 'buck' }]));
    expect(inchesOf(bracing, 'A')).toEqual([12, 48, 84, 120]);
    expect(inchesOf(bracing, 'B')).toEqual([30, 84]);
  });

  /** 12 in inside what each ends at: ⌈90/72⌉ + 1 = 3 and ⌈150/72⌉ + 1 = 4. */
  it('a wall that goes on lower is braced by itself', () => {
    const bracing = braced(scheduleOf([wallRow('A', [0, 0], [90, 0]), { ...wallRow('B', [90, 0], [240, 0]), height: 64 }]));
    expect(inchesOf(bracing, 'A')).toEqual([12, 45, 78]);
    expect(inchesOf(bracing, 'B')).toEqual([12, 54, 96, 138]);
  });

  /** The tee of the job above, with the through wall drawn in two marks that meet in it. */
  it('a tee on a mark parts the line', () => {
    const [, ...others] = RING;
    const bracing = braced(scheduleOf([wallRow('A', [0, 0], [144, 0]), wallRow('F', [144, 0], [288, 0]), ...others, wallRow('P', [144, 0], [144, 120])]));
    expect(inchesOf(bracing, 'A')).toEqual([12, 72, 132]);
    expect(inchesOf(bracing, 'F')).toEqual([12, 72, 132]);
    expect(standing(bracing, 'F').map(({ reason }) => reason)).toEqual(['tee', 'between', 'corner']);
  });

  /** Arc of the axis: π/2 · 240 = 377.0 in, ⌈377.0/72⌉ + 1 = 7 along it. */
  it('a radius wall is braced along its arc', () => {
    const schedule = curvedSchedule([{ mark: 'R', from: [240, 0], to: [0, 240], arc: { radius: 240, turns: 'left' }, dimensionsTo: 'axis' }]);
    const bracing = bracingPlan(schedule, range, takeOff(schedule, range).laid)[0]!;
    const reasons = standing(bracing, 'R').map(({ reason }) => reason);
    expect(reasons).toEqual(['free-end', ...Array.from({ length: 5 }, () => 'radius-wall'), 'free-end']);
    expect(standing(bracing, 'R').at(-1)!.at / 25_400_000).toBeCloseTo((Math.PI / 2) * 240 - 12, 6);
  });
});

describe('forces', () => {
  const asked = (fields: Record<string, string>) => {
    const answer = answerOf(braceCalculator, { spacing: '72 in', braceTop: '8 ft', braceFoot: '6 ft', ...fields });
    return { axial: valueOf(answer, 'axial').si.value, horizontal: valueOf(answer, 'horizontal').si.value, uplift: valueOf(answer, 'uplift').si.value };
  };
  const near = (brace: { axial: number | null; horizontal: number | null; uplift: number | null }, expected: ReturnType<typeof asked>): void => {
    for (const name of ['axial', 'horizontal', 'uplift'] as const) expect(Math.abs(brace[name]! / expected[name] - 1)).toBeLessThan(1e-9);
  };

  it('equal those of the brace calculator in the stated wind', () => {
    const bracing = braced(scheduleOf(RING, [], { windMps: 53.6448, exposure: 'C' }));
    const expected = asked({ height: '96 in', speed: '120 mph', exposure: 'C' });
    for (const { braces } of bracing.walls) for (const brace of braces) near(brace, expected);
    expect(bracing.defaults).toContain('duration: not stated, no reduction of the speed');
  });

  it('of a stated construction period have its factor', () => {
    const bracing = braced(scheduleOf(RING, [], { windMps: 53.6448, exposure: 'C', durationH: 4 * 168 }));
    near(standing(bracing, 'A')[0]!, asked({ height: '96 in', speed: '120 mph', exposure: 'C', duration: '4 weeks' }));
  });

  it('without an exposure are those of the highest', () => {
    near(standing(braced(scheduleOf(FREE, [], { windMps: 53.6448 })), 'A')[0]!, asked({ height: '96 in', speed: '120 mph', exposure: 'D' }));
  });

  /** max( 15 · 8 / 2, 100 ) = 100 lb/ft; a brace of 8 and 6 ft takes 100 · 8 · 10 / 48 · 6 = 1000 lb, 600 along and 800 up. */
  it('without a wind are the least, and it is said', () => {
    const bracing = braced(scheduleOf(FREE));
    const [brace] = standing(bracing, 'A');
    const POUND_KN = 0.004_448_221_615_260_5;
    near(brace!, { axial: 1000 * POUND_KN, horizontal: 600 * POUND_KN, uplift: 800 * POUND_KN });
    expect(bracing.notes.join(' ')).toContain('No wind is stated');
    expect(bracing.cases).toEqual(['empty', 'filled'].map((forms) => ({ forms, topLoad: expect.closeTo(100 * POUND_KN / 0.3048, 9), governs: 'minimum-load' })));
  });

  it('beyond the longest construction period are not told', () => {
    const bracing = braced(scheduleOf(FREE, [], { windMps: 50, exposure: 'C', durationH: 20 * 8760 }));
    expect(bracing.findings.map(({ code }) => code)).toEqual(['outside-method']);
    expect(standing(bracing, 'A')[0]).toMatchObject({ axial: null, horizontal: null, uplift: null });
  });

  /** A gable of 6 ft over 20: a foot from its end 6 · 1/10 ft = 7.2 in over the 96, at the middle all of it. */
  it('under a gable are for the height at the brace', () => {
    const base = scheduleOf(FREE);
    const place = { sheet: null, row: null, pointer: '/features/0' };
    const schedule: Schedule = { ...base, features: [{ kind: 'gable', wall: 'A', rise: inches(72), peakAt: inches(120), place }] };
    const braces = standing(braced(schedule), 'A');
    expect(braces.map(({ height }) => Number((toFeet(height) * 12).toFixed(4)))).toEqual([103.2, 135.6, 168, 135.6, 103.2]);
    near(braces[2]!, asked({ height: '168 in', pressure: '15 psf' }));
  });

  it('of a storey on another one see the wind at their own height', () => {
    const below = scheduleOf(RING, [], { windMps: 60, exposure: 'C' });
    const above = below.walls.map((wall) => ({ ...wall, mark: `U${wall.mark}`, storey: 'S2' }));
    const [first] = below.storeys;
    const schedule: Schedule = { ...below, storeys: [{ ...first!, storeyAbove: true }, { ...first!, id: 'S2', height: inches(192), on: 'S1' }], walls: [...below.walls, ...above] };
    const [lower, upper] = bracingPlan(schedule, range, takeOff(schedule, range).laid);
    // Kz of exposure C: 0.85 up to 15 ft and 0.90 at 20 ft, so 0.86 at the 16 ft of the upper forms' top (asce-7-16 Table 26.10-1, from memory).
    const ratio = (0.85 + (0.9 - 0.85) / 5) / 0.85;
    expect(standing(upper!, 'UA')[0]!.axial! / standing(lower!, 'A')[0]!.axial!).toBeCloseTo(ratio, 9);
  });
});

/** A line of walls as a tape measure along its axis sees it [nm]. */
interface Taped {
  readonly name: string;
  readonly first: number;
  readonly last: number;
  readonly holes: readonly { readonly from: number; readonly to: number }[];
  readonly tees: readonly number[];
  readonly stations: readonly number[];
}

/** Walls that meet straight on in one core, height and base, by what the junctions join: again and again until nothing more joins. */
function marksTogether({ walls, junctions }: LaidStorey): string[][] {
  const like = ({ core, base, askedHeight, arc }: LaidWall): string => (arc ? 'curved' : `${core.code} ${base} ${askedHeight}`);
  const kindOf = new Map(walls.map((wall) => [wall.mark, like(wall)]));
  return junctions.filter(({ kind, walls: [a, b] }) => kind === 'straight' && kindOf.get(a!) !== 'curved' && kindOf.get(a!) === kindOf.get(b!)).reduce(
    (groups, { walls: [a, b] }) => {
      const [one, other] = [groups.find((group) => group.includes(a!))!, groups.find((group) => group.includes(b!))!];
      return one === other ? groups : [...groups.filter((group) => group !== one && group !== other), [...one, ...other]];
    },
    walls.map(({ mark }) => [mark]),
  );
}

/** Every station of every wall, measured from where the first of them begins on the sheet. */
function taped(storey: LaidStorey, marks: readonly string[], bracing: StoreyBracing): Taped {
  const walls = marks.map((mark) => storey.walls.find((wall) => wall.mark === mark)!);
  const [{ axisFrom: zero, axisTo: ahead, length }] = walls as [LaidWall];
  const away = ({ x, y }: Point): number => ((x - zero.x) * (ahead.x - zero.x) + (y - zero.y) * (ahead.y - zero.y)) / length;
  const along = (wall: LaidWall, at: number): number => Math.round(marks.length === 1 ? at : away(wall.axisFrom) + Math.sign(away(wall.axisTo) - away(wall.axisFrom)) * at);
  const span = (wall: LaidWall, from: number, to: number) => ({ from: Math.min(along(wall, from), along(wall, to)), to: Math.max(along(wall, from), along(wall, to)) });
  const forms = walls.map((wall) => span(wall, wall.trimStart, wall.length - wall.trimEnd));
  const [first, last] = [Math.min(...forms.map(({ from }) => from)), Math.max(...forms.map(({ to }) => to))];
  const cuts = walls.flatMap((wall) => storey.junctions.flatMap(({ tee }) => (tee?.through === wall.mark ? [span(wall, tee.cutFrom, tee.cutTo)] : [])));
  return {
    name: marks.join('+'), first, last,
    holes: walls.flatMap((wall) => wall.courses.flatMap(({ voids }) => voids.map(({ from, to }) => span(wall, from, to)))),
    tees: cuts.filter(({ from, to }) => from > first && to < last).map(({ from, to }) => Math.round((from + to) / 2)),
    stations: walls.flatMap((wall) => standing(bracing, wall.mark).map(({ at }) => along(wall, at))),
  };
}

/** Nodes of the sheet are whole nanometres: two ways of measuring one point may differ by a few. */
const NEAR = 10;
const isAt = (a: number, b: number): boolean => Math.abs(a - b) <= NEAR;

/** Where a brace may stand: a point is held, or an opening of a whole course is beside it. */
function faultsOf({ name, first, last, holes, stations }: Taped, spacing: number): string[] {
  const inHole = (at: number) => holes.some(({ from, to }) => at > from + NEAR && at < to - NEAR);
  // A hole that reaches the end of the forms leaves none there: the wall it ends on stands for itself.
  const endsInHole = (at: number) => (at === first || at === last) && holes.some(({ from, to }) => isAt(at, from) || isAt(at, to));
  const held = (at: number) => stations.some((station) => Math.abs(station - at) <= spacing / 2 + NEAR);
  const samples = Array.from({ length: 201 }, (_, index) => first + ((last - first) * index) / 200);
  return [
    ...stations.filter((at) => at < first || at > last || inHole(at)).map((at) => `${name}: stands at ${at}`),
    ...samples.filter((at) => !inHole(at) && !endsInHole(at) && !held(at)).map((at) => `${name}: ${at} is not held`),
    ...holes.flatMap(({ from, to }) => [from, to]).filter((jamb) => jamb > first + NEAR && jamb < last - NEAR && !inHole(jamb) && !stations.some((at) => isAt(at, jamb))).map((jamb) => `${name}: no brace at the jamb ${jamb}`),
  ];
}

/** Count by decision 20: the forms parted at openings of a whole course and at the middles of tees along them. */
function countOf({ first, last, holes, tees }: Taped, spacing: number): number {
  const all = [first, last, ...tees, ...holes.flatMap(({ from, to }) => [from, to])].filter((at) => at >= first && at <= last).sort((a, b) => a - b);
  const ends = all.filter((at, index) => index === 0 || !isAt(at, all[index - 1]!));
  let count = 0;
  for (const [index, from] of ends.slice(0, -1).entries()) {
    const to = ends[index + 1]!;
    const middle = (from + to) / 2;
    if (!holes.some((hole) => hole.from < middle && hole.to > middle)) count += Math.ceil((to - from - NEAR) / spacing) + 1;
  }
  return count;
}

describe('random plans', () => {
  it.each(PLAN_KINDS)('%s: every point is held, none stands in an opening, counts are those of the decision', (kind) => {
    const faults: string[] = [];
    for (const seed of [1, 2]) {
      const schedule = canonicalSchedule(randomPlan(seed, { kind, tight: seed % 2 === 0 }).document);
      const { laid } = takeOff(schedule, range);
      for (const [index, bracing] of bracingPlan(schedule, range, laid).entries()) {
        const storey = laid.storeys[index]!;
        for (const marks of marksTogether(storey)) {
          const line = taped(storey, marks, bracing);
          const expected = countOf(line, inches(72));
          if (line.stations.length !== expected) faults.push(`${kind} ${seed}, ${line.name}: ${line.stations.length} of ${expected}`);
          faults.push(...faultsOf(line, inches(72)).map((fault) => `${kind} ${seed}, ${fault}`));
        }
      }
    }
    expect(faults).toEqual([]);
  });

  /** On the sheet, in order: where a brace stands does not depend on where a mark is set nor on which way a wall is drawn. */
  it.each(['rectangle', 'partitions', 'straightStep'])('%s: a wall drawn in two marks keeps its braces', (kind) => {
    const plan = randomPlan(3, { kind });
    const parted = split(plan, seededRandom(5));
    const chains = plan.chains.map(({ marks, closed }) => ({ closed, marks: parted.walls.map(({ mark }) => mark).filter((mark) => marks.includes(mark.replace(/b$/, ''))) }));
    const drawn = reverse({ ...plan, document: parted, chains }, seededRandom(5));
    expect(drawn.walls.length).toBe(plan.document.walls.length + 1);
    const [whole, marks] = [plan.document, drawn].map((document) => pointsOf(canonicalSchedule(document))) as [Point[], Point[]];
    expect(marks.length).toBe(whole.length);
    expect(marks.filter(({ x, y }) => !whole.some((point) => Math.hypot(point.x - x, point.y - y) < 1_000))).toEqual([]);
  });
});

interface Point { readonly x: number; readonly y: number }

/** Where the braces stand on the sheet [nm]. */
function pointsOf(schedule: Schedule): Point[] {
  const { laid } = takeOff(schedule, range);
  const walls = new Map(laid.storeys.flatMap((storey) => storey.walls.map((wall) => [`${storey.id} ${wall.mark}`, wall])));
  return bracingPlan(schedule, range, laid).flatMap(({ storey, walls: planned }) => planned.flatMap(({ mark, braces }) => {
    const { axisFrom, axisTo, length } = walls.get(`${storey} ${mark}`)!;
    return braces.map(({ at }): Point => ({ x: axisFrom.x + ((axisTo.x - axisFrom.x) * at) / length, y: axisFrom.y + ((axisTo.y - axisFrom.y) * at) / length }));
  }));
}
