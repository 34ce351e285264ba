import { describe, expect, it } from '@jest/globals';
import { priceListInForce } from '../../../src/domain/quote/price-list.js';
import { overlapping } from '../../../src/domain/quote/price-list-periods.js';

const list = (code: string, inForceFrom: string, inForceTo: string | null = null) => ({ code, inForceFrom, inForceTo });

describe('lists whose periods overlap', () => {
  it.each([
    { name: 'two without an end: the later takes over', lists: [list('A', '2026-01-01'), list('B', '2026-06-01')], found: [] },
    { name: 'one ends on the day before the other begins', lists: [list('A', '2026-01-01', '2026-05-31'), list('B', '2026-06-01')], found: [] },
    { name: 'one ends on the day on which the other begins', lists: [list('A', '2026-01-01', '2026-06-01'), list('B', '2026-06-01')], found: ['A B 2026-06-01 2026-06-01'] },
    { name: 'a summer list over one without an end', lists: [list('B', '2026-06-01', '2026-08-31'), list('A', '2026-01-01')], found: ['A B 2026-06-01 2026-08-31'] },
    { name: 'both with an end, one within the other', lists: [list('A', '2026-01-01', '2026-12-31'), list('B', '2026-03-01', '2026-04-30')], found: ['A B 2026-03-01 2026-04-30'] },
    { name: 'an ended list before one without an end', lists: [list('A', '2026-02-01', '2026-02-28'), list('B', '2026-02-15')], found: ['A B 2026-02-15 2026-02-28'] },
    { name: 'versions of one code never do', lists: [list('A', '2026-01-01', '2026-12-31'), list('A', '2026-03-01', '2026-12-31')], found: [] },
    { name: 'a version that a later one has taken over is no longer in the way', lists: [list('A', '2026-01-01', '2026-12-31'), list('A', '2026-01-01', '2026-05-31'), list('B', '2026-06-01', '2026-12-31')], found: [] },
    { name: 'three, pair by pair', lists: [list('A', '2026-01-01', '2026-01-20'), list('C', '2026-01-15', '2026-01-31'), list('B', '2026-01-10', '2026-01-16')], found: ['A B 2026-01-10 2026-01-16', 'A C 2026-01-15 2026-01-20', 'B C 2026-01-15 2026-01-16'] },
  ])('$name', ({ lists, found }) => {
    expect(overlapping(lists).map((each) => `${each.list.code} ${each.other.code} ${each.from} ${each.to}`)).toEqual(found);
    expect(overlapping(lists).every(({ fix }) => /inForceTo|begin/.test(fix))).toBe(true);
  });

  it('says what would do', () => {
    expect(overlapping([list('A', '2026-01-01', '2026-06-10'), list('B', '2026-06-01')])[0]?.fix).toBe('end A with inForceTo 2026-05-31 or earlier, or begin B on 2026-06-11 or later');
  });
});

describe('a list that has ended', () => {
  const lists = [list('A', '2026-01-01'), list('B', '2026-03-01', '2026-03-31')];
  it.each([['2026-03-31', 'B'], ['2026-04-01', 'A'], ['2026-02-28', 'A']])('on %s %s is in force', (date, code) => expect(priceListInForce(lists, date)?.code).toBe(code));
});
