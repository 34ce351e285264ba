import { describe, expect, it } from '@jest/globals';
import { courseOf, laidPlaces, wallFinder } from '../../../src/domain/reinforcement/laid-places.js';
import type { LaidStorey } from '../../../src/domain/takeoff/laid.js';
import { laidJob, times } from '../../support/laid.js';

const JOB = laidJob(
  { id: 'S1', walls: [{ mark: 'A', length: 48, courses: times(2) }, { mark: 'B', length: 48, courses: times(1) }] },
  { id: 'S2', walls: [{ mark: 'C', length: 48, courses: times(1) }] },
);
const S1 = JOB.storeys[0] as LaidStorey;

describe('places of a laid job', () => {
  it('are all courses of all walls of all storeys, from the bottom up', () => {
    expect([...laidPlaces(JOB)].map(({ place }) => `${place.storey} ${place.wall} ${place.course}`)).toEqual(['S1 A 1', 'S1 A 2', 'S1 B 1', 'S2 C 1']);
  });

  it('a junction finds its wall and its course', () => expect(courseOf(wallFinder(S1)('A'), 2).n).toBe(2));

  it('a junction that names what is not there is a defect', () => {
    expect(() => wallFinder(S1)('C')).toThrow('storey S1 has a junction on wall C');
    expect(() => courseOf(wallFinder(S1)('B'), 2)).toThrow('course 2 of wall B, which has 1');
  });
});
