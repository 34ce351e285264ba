import { describe, expect, test } from '@jest/globals';
import { gableOnAxis, heightAt, stretchAbove } from '../../../src/domain/takeoff/gables.js';
import { nestedLength, sawnLengths, slopeShape, type SlopeShape } from '../../../src/domain/takeoff/slope-cutting.js';
import { takeOff, type LaidWall, type Takeoff } from '../../../src/domain/takeoff/index.js';
import { inches, toMm } from '../../../src/domain/quantity/length.js';
import type { Schedule } from '../../../src/domain/schedule/schedule.js';
import { brokenLaws } from '../../oracles/laid-laws.js';
import { heron, scheduleOf, type OpeningInput, type WallInput } from '../../support/small-schedules.js';

// Worked by hand from decisions 5, 7, 10 and 22; the demo range: T 11 and core 6, course 16, form 48, closure 2.5 in.

const RANGE = heron();
const place = { sheet: null, row: null, pointer: '' };
const CUBIC_INCH = 25_400_000 ** 3;

interface GableInput {
  readonly wall: string;
  readonly rise: number;
  readonly peakAt: number;
}

function gabled(walls: readonly WallInput[], gables: readonly GableInput[], openings: readonly OpeningInput[] = []): Schedule {
  const schedule = scheduleOf(walls, { openings });
  const features = gables.map(({ wall, rise, peakAt }) => ({ kind: 'gable' as const, wall, rise: inches(rise), peakAt: inches(peakAt), place }));
  return { ...schedule, features };
}

const laidWall = (takeoff: Takeoff, mark: string): LaidWall => takeoff.laid.storeys[0]!.walls.find((wall) => wall.mark === mark)!;
const cubicInches = (wall: LaidWall): number => Number(wall.concreteNm3) / CUBIC_INCH;
const FREE: readonly WallInput[] = [{ mark: 'A', from: [0, 0], to: [240, 0] }];
const SQUARE: readonly WallInput[] = [
  { mark: 'A', from: [0, 0], to: [240, 0] },
  { mark: 'B', from: [240, 0], to: [240, 240] },
  { mark: 'C', from: [240, 240], to: [0, 240] },
  { mark: 'D', from: [0, 240], to: [0, 0] },
];
const spans = (wall: LaidWall): readonly (readonly number[])[] =>
  wall.courses.filter(({ n }) => n > wall.stack.courses).map(({ from, to, height }) => [from, to, height].map((length) => length / 25_400_000));

describe('a free wall 20 ft long, 60 in rise in the middle', () => {
  const takeoff = takeOff(gabled(FREE, [{ wall: 'A', rise: 60, peakAt: 120 }]), RANGE);
  const wall = laidWall(takeoff, 'A');

  test('courses shorten by 32 in at each side and the last is what is left of the rise', () => {
    expect(spans(wall)).toEqual([[0, 240, 16], [32, 208, 16], [64, 176, 16], [96, 144, 12]]);
    expect(wall.courses.map(({ top }) => top)).toEqual([...Array<boolean>(9).fill(false), true]);
  });

  test('concrete: 235 × 96 × 6 below; above, the triangle of 7200 in² less 2.5 × 1.25 / 2 at each closure, × 6', () => {
    expect(cubicInches(wall)).toBeCloseTo(235 * 96 * 6 + (7200 - 3.125) * 6, 6);
    expect(Number(wall.faceNm2) / 25_400_000 ** 2).toBeCloseTo(235 * 96 + 7200 - 3.125, 6);
  });

  test('both slopes are √(120² + 60²) long at 26.565°, cap 6 in wide', () => {
    expect(wall.gable!.slopes.map(({ length, degrees, capMm2, rises }) => [toMm(length), degrees, capMm2, rises])).toEqual(
      ['with-stations', 'against-stations'].map((rises) => [
        expect.closeTo(Math.hypot(120, 60) * 25.4, 3), expect.closeTo(26.565051, 5), expect.closeTo(Math.hypot(120, 60) * 6 * 645.16, 3), rises,
      ]),
    );
  });

  test('below 30° no cap is asked for; every law of a laid job holds', () => {
    expect(takeoff.findings).toEqual([]);
    expect(brokenLaws(takeoff, RANGE)).toEqual([]);
  });

  test('forms: 30 for the wall; the gable takes 48s and pieces, offcuts of one slope serving the other', () => {
    const forms = takeoff.units.find(({ sku }) => sku === 'ST6')!;
    const pieces = wall.courses.filter(({ n }) => n > 6).map((course) => course.pieces.map((piece) => (piece.to - piece.from) / 25_400_000));
    expect(pieces.map((lengths) => lengths.reduce((sum, length) => sum + length, 0))).toEqual([240, 176, 112, 48]);
    // By area: (240 + 176)/2 + (176 + 112)/2 + (112 + 48)/2 + 24 × 12/16 = 450 in of forms 16 in high, 9.4 of them.
    expect(forms.lowerBound).toBeGreaterThanOrEqual(30 + Math.ceil(450 / 48));
    expect(forms.bought - forms.lowerBound).toBeLessThanOrEqual(1);
    // Laid without turning anything round, each piece takes its bottom length: the counts must differ by what the turning saves.
    const plain = takeOff(gabled(FREE, [{ wall: 'A', rise: 60, peakAt: 120 }]), heron({ top: { reversible: false } }));
    expect(plain.units.find(({ sku }) => sku === 'ST6')!.bought).toBeGreaterThan(forms.bought);
    expect(plain.cuts.every(({ parts }) => parts.every(({ turned }) => !turned))).toBe(true);
  });
});

describe('a gable in a closed ring of 20 ft by 20 ft', () => {
  test('the mitred footprint under the slope: core × (area − m·a²/6 … at each mitre)', () => {
    const wall = laidWall(takeOff(gabled(SQUARE, [{ wall: 'A', rise: 60, peakAt: 120 }]), RANGE), 'A');
    // Axis 229; dimension line 5.5 past each node. Mitre: faces at node ± 3. Width ramps from 0 to 6 over stations 2.5 .. 8.5 of the dimension line.
    // ∫ w·h = 6 · [area under h from 5.5 to 234.5] − corrections: over the ramp w = s − 2.5, h = s/2: ∫ = (8.5³ − 2.5³)/6 − 2.5·(8.5² − 2.5²)/4.
    const ramp = (8.5 ** 3 - 2.5 ** 3) / 6 - (2.5 * (8.5 ** 2 - 2.5 ** 2)) / 4;
    const middle = 6 * (7200 - 2 * ((8.5 * 4.25) / 2));
    expect(cubicInches(wall)).toBeCloseTo(229 * 96 * 6 + middle + 2 * ramp, 5);
  });

  test('no corner unit stands under a slope, and the junction knows it', () => {
    const takeoff = takeOff(gabled(SQUARE, [{ wall: 'A', rise: 60, peakAt: 120 }]), RANGE);
    expect(takeoff.units.filter(({ kind }) => kind === 'corner').reduce((sum, { pieces }) => sum + pieces, 0)).toBe(4 * 6);
    expect(takeoff.laid.storeys[0]!.junctions.map(({ courses }) => courses.length)).toEqual([6, 6, 6, 6]);
    expect(brokenLaws(takeoff, RANGE)).toEqual([]);
  });

  test('drawn the other way round, with the peak from the other end, it is the same job', () => {
    const turned = SQUARE.map(({ mark, from, to }) => ({ mark, from: to, to: from }));
    const [a, b] = [takeOff(gabled(SQUARE, [{ wall: 'A', rise: 60, peakAt: 90 }]), RANGE), takeOff(gabled(turned, [{ wall: 'A', rise: 60, peakAt: 150 }]), RANGE)];
    expect(b.units.map(({ sku, pieces, bought }) => [sku, pieces, bought])).toEqual(a.units.map(({ sku, pieces, bought }) => [sku, pieces, bought]));
    expect(laidWall(b, 'A').concreteNm3).toBe(laidWall(a, 'A').concreteNm3);
    expect(laidWall(b, 'A').gable!.peakAt).toBe(laidWall(a, 'A').length - laidWall(a, 'A').gable!.peakAt);
  });
});

describe('a lean-to: side walls slope up to a back wall as high as they get', () => {
  const walls = SQUARE.map((wall) => (wall.mark === 'C' ? { ...wall, height: 144 } : wall));
  const takeoff = takeOff(gabled(walls, [{ wall: 'B', rise: 48, peakAt: 240 }, { wall: 'D', rise: 48, peakAt: 0 }]), RANGE);

  test('the courses of the sloped walls are bonded into the back wall where they stand whole at it', () => {
    // Corners: 6 courses at each of four, and 3 more at the two ends of the back wall.
    expect(takeoff.units.filter(({ kind }) => kind === 'corner').reduce((sum, { pieces }) => sum + pieces, 0)).toBe(4 * 6 + 2 * 3);
    expect(brokenLaws(takeoff, RANGE)).toEqual([]);
    expect(takeoff.units.filter(({ kind }) => kind === 'end-closure')).toEqual([]);
  });

  test('concrete of a side wall: one mitre at the foot, one at the full height', () => {
    // Slope 48/240 = 0.2. Foot: ramp 2.5 .. 8.5; top: ramp 231.5 .. 237.5 falling.
    const foot = 0.2 * ((8.5 ** 3 - 2.5 ** 3) / 3 - (2.5 * (8.5 ** 2 - 2.5 ** 2)) / 2);
    const middle = 6 * 0.1 * (231.5 ** 2 - 8.5 ** 2);
    const top = 0.2 * ((237.5 * (237.5 ** 2 - 231.5 ** 2)) / 2 - (237.5 ** 3 - 231.5 ** 3) / 3);
    expect(cubicInches(laidWall(takeoff, 'B'))).toBeCloseTo(229 * 96 * 6 + foot + middle + top, 5);
    expect(cubicInches(laidWall(takeoff, 'D'))).toBeCloseTo(cubicInches(laidWall(takeoff, 'B')), 6);
  });
});

describe('neighbours of another height', () => {
  const square = (heights: Readonly<Record<string, number>>): readonly WallInput[] =>
    SQUARE.map((wall) => (heights[wall.mark] === undefined ? wall : { ...wall, height: heights[wall.mark]! }));
  const jobInches = ({ laid }: Takeoff): number => laid.storeys[0]!.walls.reduce((sum, wall) => sum + cubicInches(wall), 0);

  test('above a lower neighbour the gable stands on the free end: 3 more inches of core than the mitre, at the height of the slope there', () => {
    // B's axis is 229; its end at A lies 5.5 past the node, the closure 2.5 inside it. Above 48 in the wall itself runs 3 past the node there.
    const wall = laidWall(takeOff(gabled(square({ A: 48 }), [{ wall: 'B', rise: 60, peakAt: 120 }]), RANGE), 'B');
    const far = (8.5 ** 3 - 2.5 ** 3) / 6 - (2.5 * (8.5 ** 2 - 2.5 ** 2)) / 4;
    const middle = 6 * (7200 - (2.5 * 1.25) / 2 - (8.5 * 4.25) / 2);
    expect(cubicInches(wall)).toBeCloseTo(229 * 96 * 6 + 3 * 48 * 6 + middle + far, 5);
  });

  test('beside higher walls the gable ends at their cores: nothing is poured twice', () => {
    // A is 48 high between B and D of 96, which run free above it over its whole thickness. Slope 36 in 120 = 0.3, from 8.5 to 231.5 of the dimension line.
    const takeoff = takeOff(gabled(square({ A: 48 }), [{ wall: 'A', rise: 36, peakAt: 120 }]), RANGE);
    const under = 6 * (36 * 120 - 0.3 * 8.5 ** 2);
    expect(cubicInches(laidWall(takeoff, 'A'))).toBeCloseTo(229 * 48 * 6 + under, 5);
    // B: mitred up to 48, then 3 past the node at A; C between them is mitred all the way.
    expect(jobInches(takeoff)).toBeCloseTo(229 * 48 * 6 + under + 2 * (229 * 96 + 3 * 48) * 6 + 229 * 96 * 6, 5);
    expect(laidWall(takeoff, 'A').courses.at(-1)!.pieces.length).toBeGreaterThan(0);
    expect(laidWall(takeoff, 'A').courses[3]!.from).toBe(inches(5.5));
    expect(brokenLaws(takeoff, RANGE)).toEqual([]);
  });

  test('a lean-to is poured once: the back wall is mitred as far as the side walls are built into it', () => {
    const takeoff = takeOff(gabled(square({ C: 144 }), [{ wall: 'B', rise: 48, peakAt: 240 }, { wall: 'D', rise: 48, peakAt: 0 }]), RANGE);
    expect(cubicInches(laidWall(takeoff, 'C'))).toBeCloseTo(229 * 144 * 6, 5);
  });
});

describe('what else stands in a gable', () => {
  test('a window that reaches into it takes its own area, and interrupts the course it takes whole', () => {
    const openings = [{ mark: 'W', wall: 'A', at: 102, sill: 64, width: 36, height: 52 }];
    const wall = laidWall(takeOff(gabled(FREE, [{ wall: 'A', rise: 60, peakAt: 120 }], openings), RANGE), 'A');
    expect(Number(wall.openingNm2) / 25_400_000 ** 2).toBeCloseTo(36 * 52, 6);
    expect(wall.courses[6]!.voids.map(({ from, to }) => [from, to])).toEqual([[inches(102), inches(138)]]);
    expect(wall.courses[7]!.pieces.flatMap(({ notches }) => notches.map(({ bottom, top }) => [bottom, top]))[0]).toEqual([0, inches(4)]);
  });

  test('45° is steep: advice with the cap between the panels', () => {
    const { findings } = takeOff(gabled(FREE, [{ wall: 'A', rise: 120, peakAt: 120 }]), RANGE);
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([['gable-steep', 'advise'], ['gable-steep', 'advise']]);
    expect(findings[0]!.numbers).toMatchObject({ slopeDeg: 45, core: '6', fromDeg: 30, capM2: expect.closeTo(Math.SQRT2 * 120 * 6 * 0.00064516, 5) as unknown });
  });

  test('an upright end of a one-sided slope on a free wall is closed, course by course', () => {
    const takeoff = takeOff(gabled(FREE, [{ wall: 'A', rise: 48, peakAt: 240 }]), RANGE);
    const wall = laidWall(takeoff, 'A');
    expect(spans(wall)).toEqual([[0, 240, 16], [80, 240, 16], [160, 240, 16]]);
    expect(takeoff.units.find(({ sku }) => sku === 'EC6')!.pieces).toBe(12 + 3);
    expect(cubicInches(wall)).toBeCloseTo(235 * 96 * 6 + 6 * 0.1 * (237.5 ** 2 - 2.5 ** 2), 5);
    expect(brokenLaws(takeoff, RANGE)).toEqual([]);
  });
});

describe('sawing slopes', () => {
  const shape = (rises: SlopeShape['rises'], length: number, low: number, high: number, topLength: number): SlopeShape => ({
    rises, length: inches(length), low: inches(low), high: inches(high), topLength: inches(topLength), area: 0,
  });

  test('two halves of one form: 40 in long at the bottom and 8 at the top, twice', () => {
    const half = shape('ahead', 40, 0, 16, 8);
    expect(nestedLength(half, { ...half, rises: 'back' }, inches(16))).toBe(inches(48));
  });

  test('a triangle of 24 × 12 fits beside a 48 that rises over 32', () => {
    expect(nestedLength(shape('ahead', 48, 0, 16, 16), shape('back', 24, 0, 12, 0), inches(16))).toBe(inches(48));
  });

  test('a piece is paired with one of the opposite slope or of its own; none where forms cannot be turned', () => {
    const pieces = [{ id: 'a', slope: shape('ahead', 40, 0, 16, 8) }, { id: 'b', slope: shape('ahead', 40, 0, 16, 8) }, { id: 'c', slope: shape('back', 40, 0, 16, 8) }];
    const frame = { formLength: inches(48), courseHeight: inches(16) };
    const sawn = sawnLengths(pieces, { ...frame, reversible: true });
    expect(sawn.map(({ parts }) => parts.map(({ id, turned, reversed }) => [id, turned, reversed]))).toEqual([
      [['b', true, true], ['a', false, false]], [['c', false, false]],
    ]);
    expect(sawnLengths(pieces, { ...frame, reversible: false }).every(({ parts }) => parts.length === 1)).toBe(true);
  });

  test('ten wedges of one long slope are five forms, each sawn once along its diagonal', () => {
    // 40 ft, rise 16 in at its end: wedge k rises from 1.6 (k − 1) to 1.6 k, and with wedge 11 − k turned end for end fills a form.
    const takeoff = takeOff(gabled([{ mark: 'A', from: [0, 0], to: [480, 0] }], [{ wall: 'A', rise: 16, peakAt: 480 }]), RANGE);
    const forms = takeoff.units.find(({ sku }) => sku === 'ST6')!;
    expect([forms.bought, forms.lowerBound]).toEqual([65, 65]);
    expect(brokenLaws(takeoff, RANGE)).toEqual([]);
  });

  test('two halves of one gable, drawn as two marks, meet at the ridge without closures', () => {
    const halves: readonly WallInput[] = [{ mark: 'A', from: [0, 0], to: [120, 0] }, { mark: 'B', from: [120, 0], to: [240, 0] }];
    const takeoff = takeOff(gabled(halves, [{ wall: 'A', rise: 60, peakAt: 120 }, { wall: 'B', rise: 60, peakAt: 0 }]), RANGE);
    expect(takeoff.units.find(({ sku }) => sku === 'EC6')!.pieces).toBe(12);
    expect(brokenLaws(takeoff, RANGE)).toEqual([]);
  });

  test('the shape of a piece: area under the slope, length left at its top', () => {
    const gable = { rise: inches(60), foot: 0, peak: inches(120), end: inches(240) };
    expect(slopeShape(gable, 0, inches(48), 0, inches(16))).toEqual({
      length: inches(48), low: 0, high: inches(16), topLength: inches(16), rises: 'ahead', area: (32 * 16) / 2 * 25_400_000 ** 2 + 16 * 16 * 25_400_000 ** 2,
    });
    expect(slopeShape(gable, inches(48), inches(96), 0, inches(16))).toBeNull();
    expect(stretchAbove(gable, inches(16))).toEqual({ from: inches(32), to: inches(208) });
    expect(heightAt(gable, inches(180))).toBe(inches(30));
  });

  test('the peak is where the user drew it, whichever way the wall is walked', () => {
    const wall = { drawn: inches(240), back: { start: inches(5.5), end: inches(2) }, reversed: true } as Parameters<typeof gableOnAxis>[1];
    expect(gableOnAxis({ rise: inches(10), peakAt: inches(60) }, wall)).toEqual({ rise: inches(10), foot: inches(-5.5), peak: inches(174.5), end: inches(234.5) });
  });
});
