import { describe, expect, test } from '@jest/globals';
import { inches } from '../../../src/domain/quantity/length.js';
import type { Feature } from '../../../src/domain/schedule/schedule.js';
import { takeOff } from '../../../src/domain/takeoff/index.js';
import { wallAnswer } from '../../../src/modules/takeoffs/takeoff-answer.js';
import { WallAnswer } from '../../../src/modules/takeoffs/takeoffs.schemas.js';
import { heron, scheduleOf } from '../../support/small-schedules.js';

const place = { sheet: null, row: null, pointer: '' };
const answerWith = (feature: Feature, core = '6'): WallAnswer => {
  const schedule = { ...scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0], core }]), features: [feature] };
  return wallAnswer(takeOff(schedule, heron()).laid.storeys[0]!.walls[0]!, true);
};

describe('a wall with features, as the contract shows it', () => {
  test('a gable with its slopes, and what they leave of a piece', () => {
    const answer = WallAnswer.parse(answerWith({ kind: 'gable', wall: 'A', rise: inches(60), peakAt: inches(120), place }));
    expect(answer.gable).toMatchObject({ riseMm: 1524, peakAtMm: 3048, courses: 4 });
    expect(answer.gable!.slopes.map(({ fromMm, toMm, rises }) => [fromMm, toMm, rises])).toEqual([[0, 3048, 'with-stations'], [3048, 6096, 'against-stations']]);
    expect(answer.courses!.at(-1)!.pieces).toEqual([
      expect.objectContaining({ fromMm: 2438.4, toMm: 3657.6, lengthMm: 1219.2, slope: { fromHeightMm: 0, toHeightMm: 0, peakAtMm: 3048, peakHeightMm: 304.8 } }),
    ]);
  });

  test('another core further up, with the seat it leaves', () => {
    const answer = WallAnswer.parse(answerWith({ kind: 'core-change', wall: 'A', at: inches(64), core: '6', flush: 'outside', place }, '10'));
    expect(answer.coreChanges).toEqual([{ course: 5, atMm: 1625.6, core: '6', flush: 'outside', seatOutsideMm: 0, seatInsideMm: 38.1 }]);
    expect(answer.courses!.map(({ core }) => core)).toEqual(['10', '10', '10', '10', '6', '6']);
  });
});
