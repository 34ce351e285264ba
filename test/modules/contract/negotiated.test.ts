import { describe, expect, it } from '@jest/globals';
import { negotiated } from '../../../src/modules/contract/negotiated.js';

const OFFERS = ['application/json', 'application/pdf'] as const;

describe('negotiated', () => {
  it.each([
    { accept: undefined, told: 'application/json' },
    { accept: '', told: 'application/json' },
    { accept: '*/*', told: 'application/json' },
    { accept: 'application/*', told: 'application/json' },
    { accept: 'application/pdf', told: 'application/pdf' },
    { accept: 'APPLICATION/PDF', told: 'application/pdf' },
    { accept: 'text/html, application/pdf;q=0.5', told: 'application/pdf' },
    { accept: 'application/json;q=0.2, application/pdf;q=0.8', told: 'application/pdf' },
    { accept: 'application/json;q=0, */*', told: 'application/pdf' },
    { accept: 'application/pdf;q=0.5, */*;q=0.5', told: 'application/json' },
  ])('$accept gets $told', ({ accept, told }) => {
    expect(negotiated(accept, OFFERS)).toBe(told);
  });

  it.each(['text/html', 'image/*', 'application/pdf;q=0', 'application/json;q=0, application/pdf;q=0'])(
    '%s is not acceptable',
    (accept) => {
      expect(() => negotiated(accept, OFFERS)).toThrow('not-acceptable');
    },
  );
});
