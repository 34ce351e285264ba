import { beforeAll, describe, expect, test } from '@jest/globals';
import type { Feature, Schedule } from '../../src/domain/schedule/schedule.js';
import { inches } from '../../src/domain/quantity/length.js';
import { loopOf, scheduleOf, type WallInput } from '../support/small-schedules.js';
import { faceAreas } from './face-areas.js';
import { solidWalls } from './solid-lines.js';
import { SolidKernel, solidVolumes, type SolidVolumes } from './solid-volumes.js';

// Figures of the reference worked by hand, in inches: foam 2.5 each side, closures of 2.5; decisions 1, 4, 5, 9, 10, 21 to 24.

let kernel: SolidKernel;
beforeAll(async () => {
  kernel = await SolidKernel.load();
});

const place = { sheet: null, row: null, pointer: '' };
const volumes = (schedule: Schedule): SolidVolumes => solidVolumes(schedule, kernel);
const withFeatures = (schedule: Schedule, ...features: readonly Feature[]): Schedule => ({ ...schedule, features });
const FREE: readonly WallInput[] = [{ mark: 'A', from: [0, 0], to: [240, 0] }];
const net = (schedule: Schedule, mark: string): number => {
  const wall = solidWalls(schedule).find((each) => each.mark === mark)!;
  return faceAreas(wall, volumes(schedule).slabs.get(mark)!, schedule).net;
};

/** A quarter ring from the x axis to the y axis about (0, 0), dimensioned to its axis. */
function quarter(): Schedule {
  const schedule = scheduleOf([{ mark: 'R', from: [120, 0], to: [0, 120], core: '8', height: 48, dimensionsTo: 'axis' }]);
  return { ...schedule, walls: schedule.walls.map((wall) => ({ ...wall, arc: { radius: inches(120), turns: 'left' } })) };
}

describe('solids in closed forms', () => {
  test('a box: a free wall of 20 ft less its closures, with a door of 36 × 84', () => {
    const schedule = scheduleOf(FREE, { openings: [{ mark: 'D', wall: 'A', at: 60, sill: 0, width: 36, height: 84 }] });
    expect(volumes(schedule).ofWall.get('A')).toBeCloseTo(6 * (235 * 96 - 36 * 84), 6);
    expect(net(schedule, 'A')).toBeCloseTo(235 * 96 - 36 * 84, 3);
  });

  test('an annular sector: (124² − 116²) / 2 over a quarter less two closures on the axis, and a hole between radial jambs', () => {
    const sweep = Math.PI / 2 - 5 / 120;
    const ring = ((124 ** 2 - 116 ** 2) / 2) * sweep * 48;
    expect(volumes(quarter()).ofWall.get('R')! / ring).toBeCloseTo(1, 9);
    expect(net(quarter(), 'R') / (120 * sweep * 48)).toBeCloseTo(1, 7);
    const opening = { ...scheduleOf(FREE, { openings: [{ mark: 'O', wall: 'R', at: 60, sill: 8, width: 30, height: 20 }] }).openings[0]! };
    const hole = ((124 ** 2 - 116 ** 2) / 2) * (30 / 120) * 20;
    expect(volumes({ ...quarter(), openings: [opening] }).ofWall.get('R')! / (ring - hole)).toBeCloseTo(1, 7);
  });

  test('a mitred ring: four axes of 240 − 11, as one body the square between its core faces', () => {
    const ring = volumes(scheduleOf(loopOf([[0, 0], [240, 0], [240, 240], [0, 240]])));
    for (const mark of ['A', 'B', 'C', 'D']) expect(ring.ofWall.get(mark)).toBeCloseTo(229 * 6 * 96, 6);
    expect(ring.ofStorey.get('S1')).toBeCloseTo((235 ** 2 - 223 ** 2) * 96, 5);
    expect(ring.overlapOf.get('S1')).toBeCloseTo(0, 5);
  });

  test('a skewed tee: the branch loses half the through core over sin 60° on its axis, and the closure at its free end', () => {
    const [x, y] = [50, 50 * Math.sqrt(3)];
    const tee = volumes(scheduleOf([{ ...FREE[0]!, dimensionsTo: 'axis' }, { mark: 'P', from: [100, 0], to: [100 + x, y], dimensionsTo: 'axis' }]));
    expect(tee.ofWall.get('P')).toBeCloseTo((100 - 3 / Math.sin(Math.PI / 3) - 2.5) * 6 * 96, 4);
    expect(tee.overlapOf.get('S1')).toBeCloseTo(0, 5);
  });

  test('a gable on a free wall: a triangle less its two corners under the closures, a hole through the slope cut by it', () => {
    const gable: Feature = { kind: 'gable', wall: 'A', rise: inches(60), peakAt: inches(120), place };
    const slope = 60 / 120;
    const triangle = (240 * 60) / 2 - 2.5 * 2.5 * slope;
    expect(volumes(withFeatures(scheduleOf(FREE), gable)).ofWall.get('A')).toBeCloseTo(6 * (235 * 96 + triangle), 5);
    // From station 20 to 40 and 20 up into the gable: under a slope of 10 to 20 all of it is open.
    const open = scheduleOf(FREE, { openings: [{ mark: 'O', wall: 'A', at: 20, sill: 90, width: 20, height: 26 }] });
    expect(volumes(withFeatures(open, gable)).ofWall.get('A')).toBeCloseTo(6 * (235 * 96 + triangle - 20 * (6 + 15)), 5);
    expect(net(withFeatures(open, gable), 'A')).toBeCloseTo(235 * 96 + triangle - 20 * (6 + 15), 3);
  });

  test('a core of 10 in below and 6 in above 64 in', () => {
    const change: Feature = { kind: 'core-change', wall: 'A', at: inches(64), core: '6', flush: 'outside', place };
    expect(volumes(withFeatures(scheduleOf([{ ...FREE[0]!, core: '10' }]), change)).ofWall.get('A')).toBeCloseTo(235 * (64 * 10 + 32 * 6), 6);
  });

  test('a ledge all round a ring, mitred to its tips: 40 in² over four lengths of 240 + 2 × 5; over one wall alone, 240', () => {
    const ring = scheduleOf(loopOf([[0, 0], [240, 0], [240, 240], [0, 240]]));
    const ledge = (wall: string): Feature => ({ kind: 'ledge', wall, at: inches(32), from: 0, to: inches(240), face: 'outside', place });
    expect(volumes(withFeatures(ring, ...['A', 'B', 'C', 'D'].map(ledge))).sweptOf.get('B')).toBeCloseTo(40 * 250, 6);
    expect(volumes(withFeatures(ring, ledge('B'))).sweptOf.get('B')).toBeCloseTo(40 * 240, 6);
  });

  test('walls that cross do overlap, by the square of the core', () => {
    const crossing = volumes(scheduleOf([{ ...FREE[0]!, dimensionsTo: 'axis' }, { mark: 'P', from: [100, -60], to: [100, 60], dimensionsTo: 'axis' }]));
    expect(crossing.overlapOf.get('S1')).toBeCloseTo(6 * 6 * 96, 6);
  });
});
