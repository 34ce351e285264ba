import { describe, expect, it } from '@jest/globals';
import { measure } from '../../../src/domain/pipeline.js';
import { inches, toMm } from '../../../src/domain/quantity/length.js';
import { takeOff, type LaidWall, type Takeoff } from '../../../src/domain/takeoff/index.js';
import { chordsOf } from '../../../src/domain/takeoff/chords.js';
import { axisArcOf } from '../../../src/domain/takeoff/arc-axis.js';
import { arcPath, onLevel, pathArea } from '../../oracles/curved-footprint.js';
import { curvedSchedule, type CurvedWallInput } from '../../support/curved-plans.js';
import { heron } from '../../support/small-schedules.js';

// Figures are of the project's decision 21 or worked by hand beside the check (geometry), in inches.

const NM = 25_400_000;
const range = heron();
const gapOf = (value: number) => heron({ parameters: { radiusGap: value } });
const wallOf = (takeoff: Takeoff, mark = 'R'): LaidWall => takeoff.laid.storeys[0]!.walls.find((wall) => wall.mark === mark)!;
const cubicInches = (wall: LaidWall): number => Number(wall.concreteNm3) / NM ** 3;
const forms = (wall: LaidWall, course = 1) => wall.courses[course - 1]!.pieces.filter((piece) => !piece.inside);
const codes = (takeoff: Takeoff): string[] => takeoff.findings.map(({ code }) => code);
const found = (takeoff: Takeoff, code: string) => takeoff.findings.filter((each) => each.code === code);
/** Relative, of a float against a figure worked in floats. */
const near = (value: number, expected: number, relative = 1e-9): void => expect(Math.abs(value / expected - 1)).toBeLessThanOrEqual(relative);

/** A quarter circle round the origin from (radius, 0) to (0, radius), or walked the other way. */
const quarter = (radius: number, change: Partial<CurvedWallInput> = {}): CurvedWallInput =>
  ({ mark: 'R', from: [radius, 0], to: [0, radius], arc: { radius, turns: 'left' }, dimensionsTo: 'axis', ...change });
const quarterBack = (radius: number, change: Partial<CurvedWallInput> = {}): CurvedWallInput =>
  quarter(radius, { from: [0, radius], to: [radius, 0], arc: { radius, turns: 'right' }, ...change });

describe('the chord of a curve (decision 21)', () => {
  const of = (concave: number, thickness: number, gap: number) => {
    const [schedule] = curvedSchedule([quarter(concave + thickness / 2)]).walls;
    return chordsOf(axisArcOf(schedule!, false, 0)!, inches(thickness), gapOf(gap));
  };

  it('T 11, c 8, Ri 120 opens 11 · 8 / 120 = .733 in', () => {
    const chords = of(120, 11, 0.75);
    expect(chords.chord).toBe(inches(8));
    expect(chords.gap / NM).toBeCloseTo(88 / 120, 9);
  });

  it('is the largest module that fits: 1 in allows c ≤ 120/11 = 10.9, so 10', () => {
    expect(of(120, 11, 1).chord).toBe(inches(10));
  });

  it('fits exactly where the gap is met exactly: Ri 88, 1 in, c = 8', () => {
    expect(of(88, 11, 1).chord).toBe(inches(8));
    expect(of(87.99, 11, 1).chord).toBeNull();
  });

  it('is no longer than a form: Ri 1200, 1 in allows 109 in, forms are 48', () => {
    expect(of(1200, 11, 1).chord).toBe(inches(48));
  });
});

describe('a quarter circle whose concave face has a radius of 120, core 6, gap .75', () => {
  // Walked clockwise the dimension line of the foam face is the concave side: R = Ri = 120, axis 125.5.
  const schedule = curvedSchedule([quarterBack(120, { dimensionsTo: 'foam-face' })]);
  const takeoff = takeOff(schedule, gapOf(0.75));
  const wall = wallOf(takeoff);

  it('has an axis of 125.5 · π/2 and radii of 125.5 and 120', () => {
    expect(Math.abs(wall.length - (125.5 * Math.PI * NM) / 2)).toBeLessThanOrEqual(1);
    expect(wall.arc).toMatchObject({ turns: 'right', axisRadius: inches(125.5), concaveRadius: inches(120) });
    near(wall.arc!.centre.x + NM, NM);
    expect(wall.outside).toBe('right');
  });

  it('is 23 chords of 8 and a last one of 4.4612', () => {
    // 8 in subtends 2·asin(4/120) = .0666790186 rad; π/2 holds 23 of them and .0371788990 rad, 240·sin(.0185894495) = 4.461211.
    expect(wall.arc).toMatchObject({ chord: inches(8), chords: 24 });
    expect(wall.arc!.lastChord! / NM).toBeCloseTo(4.461211, 5);
    expect(forms(wall).map(({ pieceLength }) => pieceLength)).toEqual([...Array.from({ length: 23 }, () => inches(8)), wall.arc!.lastChord]);
    expect(forms(wall).every(({ why, sku, kind }) => why === 'chord' && sku === 'ST6' && kind === 'straight')).toBe(true);
  });

  it('has its joints one above the other, none of them a bond break', () => {
    const joints = wall.courses.map(({ headJoints }) => headJoints);
    expect(joints[0]).toHaveLength(23);
    expect(joints[0]!.every(({ kind }) => kind === 'chord')).toBe(true);
    for (const course of joints) expect(course).toEqual(joints[0]);
    expect(takeoff.bondBreaks).toEqual([]);
  });

  it('buys 6 chords of 8 from a form: 23 forms, and one for the six short ones', () => {
    expect(takeoff.units.find(({ sku }) => sku === 'ST6')).toMatchObject({ pieces: 144, bought: 24, lowerBound: 24 });
    expect(takeoff.units.find(({ sku }) => sku === 'EC6')).toMatchObject({ pieces: 12, bought: 12 });
  });

  it('is the annular sector less its two closures: (125.5·π/2 − 5) · 6 · 96', () => {
    near(cubicInches(wall), ((125.5 * Math.PI) / 2 - 5) * 6 * 96);
    expect(wall.faceNm2 * BigInt(wall.core.width)).toBe(wall.concreteNm3);
  });

  it('tells the chords, the joints and the band', () => {
    // Joints: 23 a course, 6 courses of 16, two faces. Band: 131 · π/2.
    const [advice] = found(takeoff, 'radius-wall');
    expect(advice).toMatchObject({ severity: 'advise', wall: 'R', numbers: { radiusMm: 3048, core: '6', chordMm: 203.2, chords: 24, jointMm: 23 * 96 * 2 * 25.4, minPieceMm: 203.2 } });
    expect(advice!.numbers['gapMm']).toBeCloseTo((25.4 * 88) / 120, 5);
    expect(advice!.numbers['bandMm']).toBeCloseTo((25.4 * 131 * Math.PI) / 2, 5);
    expect(advice!.numbers['lastChordMm']).toBeCloseTo(25.4 * 4.461211, 4);
    expect(advice!.numbers['shortestMm']).toBe(advice!.numbers['lastChordMm']);
    expect(codes(takeoff)).toEqual(['radius-wall']);
    expect(wall.arc!.bandLength).toBe(Math.round(advice!.numbers['bandMm'] as number * 1e6));
  });

  it('is measured by every rule and check', () => {
    const whole = measure(schedule, gapOf(0.75));
    expect(whole.findings.map(({ code }) => code)).toContain('radius-wall');
    expect(whole.materials.length).toBeGreaterThan(0);
  });
});

describe('the dimension line of a curve', () => {
  // Turning left the centre is on the left and the dimension line outside the axis; turning right inside it. T/2 = 5.5, core/2 = 3.
  it.each([
    { to: 'foam-face', turns: 'left', axis: 194.5 },
    { to: 'foam-face', turns: 'right', axis: 205.5 },
    { to: 'concrete-face', turns: 'left', axis: 197 },
    { to: 'concrete-face', turns: 'right', axis: 203 },
    { to: 'axis', turns: 'left', axis: 200 },
    { to: 'axis', turns: 'right', axis: 200 },
  ] as const)('to the $to, turning $turns, radius 200: axis $axis', ({ to, turns, axis }) => {
    const wall = wallOf(takeOff(curvedSchedule([(turns === 'left' ? quarter : quarterBack)(200, { dimensionsTo: to })]), range));
    expect(wall.arc).toMatchObject({ axisRadius: inches(axis), concaveRadius: inches(axis - 5.5) });
    near(cubicInches(wall), ((axis * Math.PI) / 2 - 5) * 6 * 96);
  });

  it('is the same wall from its other end where it is drawn on its axis', () => {
    const [one, other] = [quarter(200), quarterBack(200)].map((wall) => takeOff(curvedSchedule([wall]), range));
    expect(wallOf(other!).concreteNm3).toBe(wallOf(one!).concreteNm3);
    expect(other!.units).toEqual(one!.units);
  });

  it('is metric: R 3 m on the axis, core 6: 3·π/2 less two closures, by .1524 by 2.4384', () => {
    const metre = 1000 / 25.4;
    const wall = wallOf(takeOff(curvedSchedule([quarter(3 * metre)]), range));
    near(Number(wall.concreteNm3) / 1e27, ((3 * Math.PI) / 2 - 2 * 0.0635) * 0.1524 * 2.4384);
  });
});

describe('rings and half circles', () => {
  const half = (mark: string, from: number, radius: number, change: Partial<CurvedWallInput> = {}): CurvedWallInput =>
    ({ mark, from: [from, 0], to: [-from, 0], arc: { radius, turns: 'left' }, ...change });

  it('two half circles close: no end, no hold, 2π · 144.5 · 6 · 96 of concrete', () => {
    const takeoff = takeOff(curvedSchedule([half('R', 150, 150), half('S', -150, 150)], { closed: true }), range);
    near(cubicInches(wallOf(takeoff)) + cubicInches(wallOf(takeoff, 'S')), 2 * Math.PI * 144.5 * 6 * 96);
    expect(codes(takeoff)).toEqual(['radius-wall', 'radius-wall']);
    expect(takeoff.units.map(({ kind }) => kind)).toEqual(['straight']);
    expect(takeoff.laid.storeys[0]!.junctions.map(({ kind }) => kind)).toEqual(['straight', 'straight']);
  });

  it('a ring drawn clockwise is turned round: the building lies within', () => {
    const clockwise = ['R', 'S'].map((mark, index): CurvedWallInput => half(mark, index === 0 ? 150 : -150, 150, { arc: { radius: 150, turns: 'right' } }));
    const takeoff = takeOff(curvedSchedule(clockwise, { closed: true }), range);
    expect(wallOf(takeoff)).toMatchObject({ outside: 'left' });
    expect(wallOf(takeoff).arc).toMatchObject({ turns: 'right', axisRadius: inches(144.5) });
    near(cubicInches(wallOf(takeoff)) + cubicInches(wallOf(takeoff, 'S')), 2 * Math.PI * 144.5 * 6 * 96);
  });

  it('a half circle of rounded coordinates is one: however the sheet is turned it has one length', () => {
    const lengths = [0, 37, 101.3, 200.7].map((degrees) => {
      const [x, y] = [150 * Math.cos((degrees * Math.PI) / 180), 150 * Math.sin((degrees * Math.PI) / 180)];
      return wallOf(takeOff(curvedSchedule([{ mark: 'R', from: [x, y], to: [-x, -y], arc: { radius: 150, turns: 'left' } }]), range)).length;
    });
    expect(new Set(lengths)).toEqual(new Set([Math.round(144.5 * Math.PI * NM)]));
  });

  it('a half circle that stays open is told', () => {
    expect(codes(takeOff(curvedSchedule([half('R', 150, 150)], { closed: true }), range))).toContain('plan-open');
  });
});

describe('openings in a curve', () => {
  const door = { mark: 'D', wall: 'R', at: 100, sill: 0, width: 36, height: 84 } as const;
  const schedule = curvedSchedule([quarter(200, { dimensionsTo: 'foam-face' })], { openings: [door] });
  const takeoff = takeOff(schedule, range);
  const wall = wallOf(takeoff);

  it('stand at their angle: station and width by 194.5/200', () => {
    expect(wall.openings[0]!.from).toBe(Math.round(inches(100) * 0.9725));
    expect(wall.openings[0]!.to).toBe(Math.round(inches(136) * 0.9725));
  });

  it('take a hole between radial planes: 36 · .9725 · 6 · 84', () => {
    near(Number(wall.openingNm2) / NM ** 2, 36 * 0.9725 * 84);
    near(cubicInches(wall), ((194.5 * Math.PI) / 2 - 5) * 6 * 96 - 36 * 0.9725 * 6 * 84);
  });

  it('cut the chords at their jambs in the courses they take whole', () => {
    const { from, to } = wall.courses[0]!.voids[0]!;
    const [left] = forms(wall).filter((piece) => piece.to === from);
    const [right] = forms(wall).filter((piece) => piece.from === to);
    for (const piece of [left!, right!]) {
      expect(piece.pieceLength).toBe(Math.round(2 * inches(189) * Math.sin((piece.to - piece.from) / (2 * inches(194.5)))));
    }
    // Course 6 stands from 80 to 96: the door takes four inches of it, and its chords are those of the whole curve.
    expect(wall.courses[5]!.voids).toEqual([]);
    expect(forms(wall, 6)).toHaveLength(wall.arc!.chords);
  });

  it('count the same from the other end', () => {
    const axis = curvedSchedule([quarter(200)], { openings: [door] });
    const back = curvedSchedule([quarterBack(200)], { openings: [{ ...door, at: (200 * Math.PI) / 2 - 136 }] });
    const [one, other] = [axis, back].map((each) => takeOff(each, range));
    const figures = ({ units }: Takeoff) => units.map(({ sku, pieces, bought, lowerBound }) => ({ sku, pieces, bought, lowerBound }));
    expect(figures(other!)).toEqual(figures(one!));
    near(cubicInches(wallOf(other!)), cubicInches(wallOf(one!)));
  });
});

describe('openings at the very end of a curve', () => {
  it('leave no sliver beside them, drawn either way: the half circle less 36 in is laid', () => {
    for (let radius = 140; radius <= 160; radius += 1) {
      const ring = (turned: boolean): CurvedWallInput[] => [
        { mark: 'R', from: [radius, 0], to: [-radius, 0], arc: { radius, turns: 'left' } },
        turned
          ? { mark: 'S', from: [radius, 0], to: [-radius, 0], arc: { radius, turns: 'right' } }
          : { mark: 'S', from: [-radius, 0], to: [radius, 0], arc: { radius, turns: 'left' } },
      ];
      const last = Math.PI * radius - 36;
      const doors = [{ mark: 'D', wall: 'S', at: 0, sill: 0, width: 36, height: 96 }, { mark: 'E', wall: 'R', at: last, sill: 0, width: 36, height: 96 }];
      for (const turned of [false, true]) {
        const takeoff = takeOff(curvedSchedule(ring(turned), { openings: doors }), range);
        for (const wall of takeoff.laid.storeys[0]!.walls) {
          expect(Math.min(...forms(wall).map(({ from, to }) => to - from))).toBeGreaterThan(inches(0.01));
          near(forms(wall).reduce((sum, { from, to }) => sum + to - from, 0) / NM, ((Math.PI * radius - 36) * (radius - 5.5)) / radius, 1e-8);
        }
      }
    }
  });
});

describe('strips on a curve', () => {
  // 82 high: three courses, a strip from 48 to 51, a course and a ripped one of 15. A window from 40 to 56 takes the strip whole, no course.
  const [at, width] = [10, 24.5];
  const stripped = (turns: 'left' | 'right'): Takeoff => {
    const wall = (turns === 'left' ? quarter : quarterBack)(200);
    return takeOff(curvedSchedule([wall], { height: 82, openings: [{ mark: 'W', wall: 'R', at: turns === 'left' ? at : (200 * Math.PI) / 2 - at - width, sill: 40, width, height: 16 }] }), range);
  };

  it('are sawn to the chords of the courses; a hole that takes only them picks the end that leaves fewer pieces', () => {
    const [one, other] = [stripped('left'), stripped('right')];
    const strips = (takeoff: Takeoff) => takeoff.units.find(({ kind }) => kind === 'strip')!;
    expect(wallOf(one).courses.map(({ voids }) => voids.length)).toEqual([0, 0, 0, 0, 0]);
    expect(wallOf(one).strips.map(({ bottom }) => bottom)).toEqual([inches(48)]);
    // Ri 194.5, chords of 17, 17.4863 along the axis of 314.1593: 17 whole ones and a rest of 16.8921. From the near end the joints are
    // at 17.486, 34.973: the hole from 10 to 34.5 leaves parts of chords 1 and 2, 18 pieces. From the far end they are at 16.892, 34.378:
    // parts of chords 1 and 3, 17 pieces.
    expect(strips(one).pieces).toBe(17);
    expect(strips(other)).toEqual(strips(one));
    expect(wallOf(one).courses[0]!.headJoints[0]!.at / NM).toBeCloseTo(16.8921, 3);
  });
});

describe('straight to curve', () => {
  // A bay: 120 along x, a quarter turn of radius 100 to the left, 60 up.
  const bay: readonly CurvedWallInput[] = [
    { mark: 'A', from: [0, 0], to: [120, 0] },
    { mark: 'R', from: [120, 0], to: [220, 100], arc: { radius: 100, turns: 'left' } },
    { mark: 'B', from: [220, 100], to: [220, 160] },
  ];
  const takeoff = takeOff(curvedSchedule(bay), range);

  it('runs on square at tangents: no unit, no leg, no seam, no question but the curve', () => {
    expect(codes(takeoff)).toEqual(['radius-wall']);
    expect(takeoff.laid.storeys[0]!.junctions.map(({ kind, unit }) => [kind, unit])).toEqual([['free-end', null], ['straight', null], ['straight', null], ['free-end', null]]);
    expect(takeoff.units.map(({ kind }) => kind).sort()).toEqual(['end-closure', 'straight']);
  });

  it('has chord joints at its marks', () => {
    expect(wallOf(takeoff, 'A').courses[0]!.headJoints.at(-1)).toEqual({ at: inches(120), kind: 'chord' });
    expect(wallOf(takeoff, 'R').courses[0]!.headJoints.at(-1)).toEqual({ at: wallOf(takeoff).length, kind: 'chord' });
    expect(takeoff.bondBreaks).toEqual([]);
  });

  it('adds up: 117.5 + 94.5 · π/2 + 57.5, by 6 by 96', () => {
    expect(cubicInches(wallOf(takeoff, 'A'))).toBeCloseTo(117.5 * 6 * 96, 6);
    near(cubicInches(wallOf(takeoff)), ((94.5 * Math.PI) / 2) * 6 * 96);
    expect(cubicInches(wallOf(takeoff, 'B'))).toBeCloseTo(57.5 * 6 * 96, 6);
  });

  it('counts the joints at both marks to foam', () => {
    const joints = wallOf(takeoff).arc!.chords + 1;
    expect(found(takeoff, 'radius-wall')[0]!.numbers['jointMm']).toBeCloseTo(joints * 96 * 2 * 25.4, 6);
  });

  it('meets at 53.13° as a corner no unit makes, its concrete to where the faces meet', () => {
    // A circle of radius 100 round the origin from (100, 0) to (80, 60), then level to (−80, 60): the tangent turns atan(4/3).
    const sharp = takeOff(curvedSchedule([
      { mark: 'R', from: [100, 0], to: [80, 60], arc: { radius: 100, turns: 'left' } },
      { mark: 'A', from: [80, 60], to: [-80, 60] },
    ]), range);
    expect(found(sharp, 'turn-not-made')).toMatchObject([{ severity: 'hold', walls: ['R', 'A'], numbers: { turnDeg: 53.1, core: '6' } }]);
    expect(codes(sharp)).not.toContain('wall-overlap');
    expect(forms(wallOf(sharp, 'A')).every(({ kind }) => kind === 'straight')).toBe(true);
    // Axis 94.5, core faces 97.5 and 91.5; the level wall's core between y = 51.5 and 57.5, its end closed at x = −77.5.
    const [outer, inner] = [onLevel(97.5, 57.5, 1), onLevel(91.5, 51.5, 1)];
    const start = 2.5 / 94.5;
    const curve = [...arcPath([0, 0], 97.5, start, Math.atan2(outer[1], outer[0])), ...arcPath([0, 0], 91.5, Math.atan2(inner[1], inner[0]), start)];
    near(cubicInches(wallOf(sharp)), pathArea(curve) * 96, 1e-8);
    near(cubicInches(wallOf(sharp, 'A')), pathArea([outer, [-77.5, 57.5], [-77.5, 51.5], inner]) * 96);
    // Both run to where the axes meet: y = 54.5.
    near(wallOf(sharp, 'A').length / NM, 80 + onLevel(94.5, 54.5, 1)[0]);
    near(wallOf(sharp).length / NM, 94.5 * Math.asin(54.5 / 94.5));
    expect(forms(wallOf(sharp)).at(-1)!.to).toBe(wallOf(sharp).length);
  });

  it('tells an opening near such a corner by its distance along the outside face, which is where it is drawn', () => {
    // The same walls; 10 in either side of the corner on the dimension line, which is the outside face (decision 31).
    const arc = 100 * Math.asin(0.6);
    const takeoff = takeOff(curvedSchedule([
      { mark: 'R', from: [100, 0], to: [80, 60], arc: { radius: 100, turns: 'left' } },
      { mark: 'A', from: [80, 60], to: [-80, 60] },
    ], { openings: [{ mark: 'D', wall: 'A', at: 10, sill: 0, width: 30, height: 60 }, { mark: 'E', wall: 'R', at: arc - 30, sill: 0, width: 20, height: 60 }] }), range);
    const distances = Object.fromEntries(found(takeoff, 'opening-near-corner').map(({ numbers }) => [numbers['opening'], numbers['distanceMm'] as number]));
    expect(distances['D']).toBeCloseTo(254, 4);
    expect(distances['E']).toBeCloseTo(254, 4);
  });

  it('closes a D: a half circle on its diameter, square corners no unit makes', () => {
    const plan = curvedSchedule([
      { mark: 'A', from: [-150, 0], to: [150, 0] },
      { mark: 'R', from: [150, 0], to: [-150, 0], arc: { radius: 150, turns: 'left' } },
    ], { closed: true });
    const closed = takeOff(plan, range);
    expect(codes(closed).filter((code) => code !== 'seam').sort()).toEqual(['radius-wall', 'turn-not-made', 'turn-not-made']);
    // Core faces of the curve 147.5 and 141.5, of the diameter y = 2.5 and 8.5: a D less the D within it.
    const [outer, inner] = [onLevel(147.5, 2.5, 1), onLevel(141.5, 8.5, 1)];
    const bearing = ([x, y]: readonly [number, number]): number => Math.atan2(y, x);
    const dArea = (radius: number, corner: readonly [number, number]): number => pathArea(arcPath([0, 0], radius, bearing(corner), Math.PI - bearing(corner)));
    near(cubicInches(wallOf(closed)) + cubicInches(wallOf(closed, 'A')), (dArea(147.5, outer) - dArea(141.5, inner)) * 96, 1e-8);
    expect(() => measure(plan, range)).not.toThrow();
  });
});

describe('tees of curves', () => {
  it('a curve that ends square on a straight wall begins at its core face', () => {
    // Round (100, 0) from (100, 100) to (0, 0), where it comes down upright on a wall along the x axis.
    const plan = curvedSchedule([
      { mark: 'A', from: [-120, 0], to: [120, 0], dimensionsTo: 'axis' },
      { mark: 'R', from: [100, 100], to: [0, 0], arc: { radius: 100, turns: 'left' }, dimensionsTo: 'axis' },
    ]);
    const takeoff = takeOff(plan, range);
    const tee = takeoff.laid.storeys[0]!.junctions.find(({ kind }) => kind === 'tee')!;
    expect(tee).toMatchObject({ walls: ['A', 'R'], tee: { through: 'A', branch: 'R', cutFrom: inches(117), cutTo: inches(123), side: 'left' } });
    expect(tee.turn).toBeCloseTo(90, 6);
    expect(codes(takeoff)).not.toContain('tee-skewed');
    // Faces of the core 103 and 97 about (100, 0), down to y = 3; closed 2.5 along the axis from its free end at (100, 100).
    const bearing = (radius: number): number => Math.PI - Math.asin(3 / radius);
    const free = Math.PI / 2 + 2.5 / 100;
    near(cubicInches(wallOf(takeoff)), pathArea([...arcPath([100, 0], 103, free, bearing(103)), ...arcPath([100, 0], 97, bearing(97), free)]) * 96, 1e-8);
    expect(wallOf(takeoff).trimEnd).toBe(Math.round(100 * Math.asin(5.5 / 100) * NM));
    expect(() => measure(plan, range)).not.toThrow();
  });

  it('a straight wall on a curve is a hold; its concrete ends on the curve\'s core face', () => {
    const plan = curvedSchedule([
      { mark: 'R', from: [0, -150], to: [0, 150], arc: { radius: 150, turns: 'left' }, dimensionsTo: 'axis' },
      { mark: 'P', from: [0, 30], to: [150, 30], dimensionsTo: 'axis' },
    ]);
    const takeoff = takeOff(plan, range);
    expect(found(takeoff, 'outside-method')).toMatchObject([{ severity: 'hold', walls: ['R', 'P'], numbers: { feature: 'tee on a radius wall', angleDeg: 78.5 } }]);
    // Its faces y = 27 and 33 run to the curve's concave core face, 147.
    const [low, high] = [onLevel(147, 27, 1), onLevel(147, 33, 1)];
    const area = pathArea([[2.5, 33], [2.5, 27], ...arcPath([0, 0], 147, Math.atan2(low[1], low[0]), Math.atan2(high[1], high[0]))]);
    near(cubicInches(wallOf(takeoff, 'P')), area * 96, 1e-8);
    expect(() => measure(plan, range)).not.toThrow();
  });
});

describe('a wall that ends where a curve begins', () => {
  it('is a hold whatever the order of the rows: half of its cut-out is the curve\'s', () => {
    const [a, r, p]: readonly CurvedWallInput[] = [
      { mark: 'A', from: [0, 0], to: [120, 0] },
      { mark: 'R', from: [120, 0], to: [220, 100], arc: { radius: 100, turns: 'left' } },
      { mark: 'P', from: [120, 0], to: [120, -100] },
    ];
    const takeoffs = [[a!, r!, p!], [r!, a!, p!], [p!, r!, a!]].map((walls) => takeOff(curvedSchedule(walls), range));
    const figures = ({ units }: Takeoff) => units.map(({ sku, pieces, bought }) => ({ sku, pieces, bought }));
    for (const takeoff of takeoffs) {
      expect(found(takeoff, 'outside-method')).toMatchObject([{ severity: 'hold', numbers: { feature: 'tee on a radius wall' } }]);
      expect(takeoff.concrete[0]!.nm3).toBe(takeoffs[0]!.concrete[0]!.nm3);
      expect(figures(takeoff)).toEqual(figures(takeoffs[0]!));
    }
  });
});

describe('what cannot be laid', () => {
  it('a curve too tight for the shortest chord: a hold with the gap, no forms, concrete all the same', () => {
    // Ri 60 − 5.5 − 5.5 = 49: 8 in opens 11 · 8 / 49 = 1.796 in.
    const takeoff = takeOff(curvedSchedule([quarter(60, { dimensionsTo: 'foam-face' })]), range);
    expect(found(takeoff, 'radius-tight')).toMatchObject([{ severity: 'hold', wall: 'R', numbers: { radiusMm: 49 * 25.4, core: '6', gapMm: 25.4 } }]);
    expect(found(takeoff, 'radius-tight')[0]!.numbers['smallestGapMm']).toBeCloseTo((25.4 * 88) / 49, 5);
    expect(codes(takeoff)).not.toContain('radius-wall');
    expect(takeoff.units.some(({ kind }) => kind === 'straight')).toBe(false);
    expect(wallOf(takeoff).arc).toMatchObject({ chord: null, lastChord: null, chords: 0 });
    near(cubicInches(wallOf(takeoff)), ((54.5 * Math.PI) / 2 - 5) * 6 * 96);
    expect(() => measure(curvedSchedule([quarter(60)]), range)).not.toThrow();
  });

  it('a curve tighter than the wall is thick says so without a gap', () => {
    const takeoff = takeOff(curvedSchedule([quarter(6)]), range);
    expect(found(takeoff, 'radius-tight')[0]!.numbers).toEqual({ radiusMm: 12.7, core: '6', gapMm: 25.4, smallestGapMm: toMm(inches(176)) });
    expect(found(takeOff(curvedSchedule([quarter(5)]), range), 'radius-tight')[0]!.numbers).toEqual({ radiusMm: -12.7, core: '6', gapMm: 25.4 });
  });

  it('another core further up a curve: a hold that names both', () => {
    const plain = curvedSchedule([quarter(200, { core: '8' })]);
    const change = { kind: 'core-change', wall: 'R', at: inches(64), core: '6', flush: 'outside', place: { sheet: null, row: null, pointer: '' } } as const;
    const takeoff = takeOff({ ...plain, features: [change] }, range);
    expect(found(takeoff, 'outside-method')).toMatchObject([{ severity: 'hold', wall: 'R', numbers: { feature: 'core change of a radius wall', core: '8', otherCore: '6' } }]);
  });
});

describe('curves that stand in other walls', () => {
  const arc = quarter(200);
  const with_ = (other: CurvedWallInput): Takeoff => takeOff(curvedSchedule([arc, { ...other, dimensionsTo: 'axis' }]), range);

  it('are crossed where the axes meet: a level wall at y = 120 meets a circle of 200 at x = 160', () => {
    const takeoff = with_({ mark: 'A', from: [60, 120], to: [260, 120] });
    expect(found(takeoff, 'walls-cross')).toMatchObject([{ severity: 'hold', walls: ['R', 'A'] }]);
    expect(found(takeoff, 'walls-cross')[0]!.atMm).toBeCloseTo(25.4 * 200 * Math.asin(0.6), 4);
  });

  it('overlap a wall that runs into their bodies, and not one that keeps clear inside their box', () => {
    // Level walls 11 in thick under the top of the circle, body 194.5 to 205.5 off the centre.
    expect(codes(with_({ mark: 'A', from: [-60, 206], to: [20, 206] }))).toContain('wall-overlap');
    expect(codes(with_({ mark: 'A', from: [20, 40], to: [130, 40] }))).not.toContain('wall-overlap');
    // Its far corner (130, 140.5) is 191.4 from the centre, 3 in clear; at (134, 140.5) it is .35 in clear, at (135, 140.5) .34 in deep.
    expect(codes(with_({ mark: 'A', from: [20, 135], to: [130, 135] }))).not.toContain('wall-overlap');
    expect(codes(with_({ mark: 'A', from: [20, 135], to: [134, 135] }))).not.toContain('wall-overlap');
    expect(codes(with_({ mark: 'A', from: [20, 135], to: [135, 135] }))).toContain('wall-overlap');
  });

  it('overlap a curve about the same centre by the length they share', () => {
    const [cos, sin] = [Math.cos(Math.PI / 4), Math.sin(Math.PI / 4)];
    const takeoff = with_({ mark: 'S', from: [205 * cos, 205 * sin], to: [-205 * cos, 205 * sin], arc: { radius: 205, turns: 'left' } });
    expect(found(takeoff, 'wall-overlap')[0]!.numbers['sharedMm']).toBeCloseTo((25.4 * 200 * Math.PI) / 4, 3);
  });
});
