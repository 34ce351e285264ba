import { describe, expect, it } from '@jest/globals';
import { CAUTIONS } from '../../../src/domain/evidence/cautions.js';

describe('CAUTIONS', () => {
  it.each([/not engineering/, /codes.*licensed design professional/, /Bracing, scaffolds.*pour.*contractor/, /Nobody.*wall.*filled/, /moves, stop.*call/])('warn once: %s', (subject) => {
    expect(CAUTIONS.filter((caution) => subject.test(caution))).toHaveLength(1);
  });
});
