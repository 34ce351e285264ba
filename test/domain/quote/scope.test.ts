import { describe, expect, it } from '@jest/globals';
import { scopeOf } from '../../../src/domain/quote/scope.js';
import { material } from '../../support/priced-job.js';

const FOAM = material('FOAM-24', 'foam', 40, { quantity: 60, unit: 'ft' });
const BAR = material('BAR-4', 'bar', 4, { quantity: 20, unit: 'ft' });
const storey = (id: string, orderYd3: number) => ({ storey: id, nm3: 0n, orderYd3 });
const note = (scope: ReturnType<typeof scopeOf>, item: string) => scope.find((each) => each.item === item);

describe('what the quote holds and what it does not', () => {
  it('names every item of decision 32, each included, optional or by others', () => {
    const scope = scopeOf([FOAM], [storey('S1', 6.5)]);
    for (const item of [
      'footings', 'concrete', 'pump', 'bars', 'buck lumber', 'shores', 'braces with scaffold planks', 'adhesive foam', 'fasteners', 'ledgers and anchor bolts',
      'masonry ties', 'membrane', 'sleeves', 'labour', 'unloading',
    ]) expect(note(scope, item)).toMatchObject({ status: expect.stringMatching(/^(included|optional|by others)$/), note: expect.stringMatching(/\.$/) });
    expect(new Set(scope.map(({ item }) => item)).size).toBe(scope.length);
  });

  it('states the concrete to order: 6.5 + 5.75 = 12.25 yd³ = 9.37 m³', () => {
    expect(note(scopeOf([], [storey('S1', 6.5), storey('S2', 5.75)]), 'concrete')).toEqual({
      item: 'concrete', status: 'by others', note: 'Order 12.25 yd³ (9.37 m³): S1 6.5 yd³ (4.97 m³); S2 5.75 yd³ (4.40 m³).',
    });
    expect(note(scopeOf([], [storey('S1', 6.5)]), 'concrete')?.note).toBe('Order 6.5 yd³ (4.97 m³).');
    expect(note(scopeOf([], []), 'concrete')?.note).toBe('None counted.');
  });

  it('foam and pin bars as the rules of the job have it', () => {
    expect(note(scopeOf([FOAM], []), 'adhesive foam')?.status).toBe('included');
    expect(note(scopeOf([], []), 'adhesive foam')?.status).toBe('by others');
    expect(note(scopeOf([BAR], []), 'bars')?.note).toContain('only the pin bars at tees are listed');
    expect(note(scopeOf([], []), 'bars')?.note).toBe('Wall bars and dowels.');
  });
});
