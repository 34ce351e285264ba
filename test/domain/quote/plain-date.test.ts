import { describe, expect, it } from '@jest/globals';
import { addDays, isPlainDate } from '../../../src/domain/quote/plain-date.js';

describe('plain dates', () => {
  it.each([
    { date: '2026-01-01', days: 30, later: '2026-01-31' },
    { date: '2026-01-31', days: 30, later: '2026-03-02' },
    { date: '2024-02-28', days: 1, later: '2024-02-29' },
    { date: '2026-02-28', days: 1, later: '2026-03-01' },
    { date: '1900-02-28', days: 1, later: '1900-03-01' },
    { date: '2000-02-28', days: 1, later: '2000-02-29' },
    { date: '2026-12-31', days: 1, later: '2027-01-01' },
    { date: '2026-03-01', days: -1, later: '2026-02-28' },
    { date: '2026-06-15', days: 0, later: '2026-06-15' },
  ])('$date + $days = $later', ({ date, days, later }) => expect(addDays(date, days)).toBe(later));

  it('agrees with the calendar of the runtime on every day of 200 years', () => {
    const start = Date.UTC(1890, 0, 1);
    const days = Array.from({ length: 73_050 }, (_, day) => new Date(start + day * 86_400_000).toISOString().slice(0, 10));
    expect(days.filter((day, index) => addDays('1890-01-01', index) !== day || !isPlainDate(day))).toEqual([]);
  });

  it.each(['2026-02-29', '2026-13-01', '2026-00-10', '2026-01-00', '2026-1-1', '26-01-01', '2026-01-01T00:00:00Z', '', '0999-01-01'])('%j is no day', (text) => {
    expect(isPlainDate(text)).toBe(false);
    expect(() => addDays(text, 1)).toThrow(RangeError);
  });
});
