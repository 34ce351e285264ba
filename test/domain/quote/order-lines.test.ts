import { describe, expect, it } from '@jest/globals';
import { inLineOrder } from '../../../src/domain/quote/order-lines.js';

describe('the order of unit lines', () => {
  it('is kind, then core from thin to thick with names after numbers, then sku', () => {
    const lines = [
      { kind: 'end-closure', core: '6', sku: 'EC6' },
      { kind: 'straight', core: 'grid', sku: 'STgrid' },
      { kind: 'corner', core: '6', sku: 'SQ6-R' },
      { kind: 'straight', core: '10', sku: 'ST10' },
      { kind: 'corner', core: '6', sku: 'SQ6-L' },
      { kind: 'straight', core: '6', sku: 'ST6' },
      { kind: 'straight', core: 'dome', sku: 'STdome' },
      { kind: 'strip', core: '4', sku: 'HS4' },
    ] as const;
    const expected = ['ST6', 'ST10', 'STdome', 'STgrid', 'SQ6-L', 'SQ6-R', 'HS4', 'EC6'];
    expect(inLineOrder(lines).map(({ sku }) => sku)).toEqual(expected);
    expect(inLineOrder([...lines].reverse()).map(({ sku }) => sku)).toEqual(expected);
  });
});
