import { describe, expect, it } from '@jest/globals';
import { priceListInForce } from '../../../src/domain/quote/price-list.js';

const LISTS = [
  { name: 'spring', inForceFrom: '2026-03-01' },
  { name: 'new year', inForceFrom: '2026-01-01' },
  { name: 'new year, put right', inForceFrom: '2026-01-01' },
];

describe('the price list in force', () => {
  it.each([
    { date: '2025-12-31', name: undefined },
    { date: '2026-01-01', name: 'new year, put right' },
    { date: '2026-02-28', name: 'new year, put right' },
    { date: '2026-03-01', name: 'spring' },
    { date: '2030-01-01', name: 'spring' },
  ])('on $date: $name', ({ date, name }) => expect(priceListInForce(LISTS, date)?.name).toBe(name));
});
