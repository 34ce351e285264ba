import { describe, expect, test } from '@jest/globals';
import { takeOff, type LaidCarried } from '../../../src/domain/takeoff/index.js';
import { inches } from '../../../src/domain/quantity/length.js';
import type { Schedule } from '../../../src/domain/schedule/schedule.js';
import { heron, scheduleOf, type WallInput } from '../../support/small-schedules.js';

const RANGE = heron();
const LOWER: WallInput = { mark: 'L', from: [0, 0], to: [240, 0], core: '10' };

/** One wall below, one above it drawn from its outer foam face. */
function twoStoreys(upper: Omit<WallInput, 'mark' | 'storey'>, lower: WallInput = LOWER): readonly LaidCarried[] {
  const schedule = scheduleOf([lower, { ...upper, mark: 'U', storey: 'S2' }]);
  const storey = schedule.storeys[0]!;
  const both: Schedule = { ...schedule, storeys: [{ ...storey, storeyAbove: true }, { ...storey, id: 'S2', on: 'S1' }] };
  return takeOff(both, RANGE).laid.storeys[0]!.walls[0]!.carries;
}

describe('a wall of the storey above on a wall of this one (seats by hand from decision 24)', () => {
  test('10 in carries 6 in, outer faces in line: 4 in set back inside less the 2 1/2 in panel', () => {
    expect(twoStoreys({ from: [0, 0], to: [240, 0], core: '6' })).toEqual([
      { storey: 'S2', wall: 'U', from: 0, to: inches(240), core: '6', seatOutside: 0, seatInside: inches(1.5) },
    ]);
  });

  test('drawn the other way round it is the same wall: the outside of a line is on the right of its from to its to', () => {
    // An open chain follows its own row, so the upper wall's outside lies on the other side, 15 in less 11 in further in.
    const [carried] = twoStoreys({ from: [240, 0], to: [0, 0], core: '6' });
    expect(carried).toBeUndefined();
  });

  test('it stands on part of it only', () => {
    expect(twoStoreys({ from: [60, 0], to: [180, 0], core: '10' })).toMatchObject([{ from: inches(60), to: inches(180), seatInside: 0, seatOutside: 0 }]);
  });

  test('a wall beside it, and one across it, do not stand on it', () => {
    expect(twoStoreys({ from: [0, 40], to: [240, 40], core: '6' })).toEqual([]);
    expect(twoStoreys({ from: [100, -100], to: [100, 100], core: '6' })).toEqual([]);
  });
});
