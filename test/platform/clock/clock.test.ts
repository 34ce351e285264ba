import { describe, expect, it } from '@jest/globals';
import { FixedClock } from '../../../src/platform/clock/clock.js';

describe('Clock', () => {
  it.each([
    ['2026-03-02T05:59:59Z', 'America/Chicago', '2026-03-01'],
    ['2026-03-02T06:00:00Z', 'America/Chicago', '2026-03-02'],
    ['2026-07-02T04:59:59Z', 'America/Chicago', '2026-07-01'],
    ['2026-12-31T23:30:00Z', 'Pacific/Auckland', '2027-01-01'],
    ['2026-01-05T00:00:00Z', 'UTC', '2026-01-05'],
  ])('at %s it is, in %s, the day %s', (moment, zone, day) => {
    expect(new FixedClock(new Date(moment)).today(zone)).toBe(day);
  });
});
