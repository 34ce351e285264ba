import { describe, expect, it } from '@jest/globals';
import { measure, measureEach } from '../../src/domain/pipeline.js';
import { canonicalSchedule } from '../support/canonical-schedule.js';
import { randomPlan } from '../support/plans.js';
import { heron } from '../support/small-schedules.js';

const JOBS = 6;

describe('jobs measured one after the other', () => {
  it('are each measured as alone, though lines laid before are remembered, those of the job itself among them', () => {
    const range = heron();
    const once = Array.from({ length: JOBS }, (_, index) => canonicalSchedule(randomPlan(index + 1).document));
    const schedules = [...once, ...once.toReversed()];
    const together = [...measureEach(schedules, range)];
    expect(together).toEqual(schedules.map((schedule) => measure(schedule, range)));
  });
});
