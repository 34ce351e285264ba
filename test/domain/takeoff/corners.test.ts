import { describe, expect, it } from '@jest/globals';
import { inches } from '../../../src/domain/quantity/length.js';
import { cornerUnitFor, handOf, legOnAxis } from '../../../src/domain/takeoff/index.js';
import { heron } from '../../support/small-schedules.js';

describe('corner units', () => {
  it.each([
    { turn: 90, kind: 'corner' },
    { turn: -90, kind: 'corner' },
    { turn: 90.5, kind: 'corner' },
    { turn: 45, kind: 'corner-pair' },
    { turn: -44.5, kind: 'corner-pair' },
    { turn: 67.5, kind: 'corner-hinged' },
    { turn: 10, kind: 'corner-hinged' },
    { turn: 91, kind: 'corner-hinged' },
    { turn: 100, kind: 'corner-hinged' },
  ])('makes a turn of $turn with the $kind unit', ({ turn, kind }) => {
    expect(cornerUnitFor(turn, '6', heron())).toMatchObject({ kind });
  });

  it.each([
    { turn: 5, why: 'turn-not-made' },
    { turn: 9.4, why: 'turn-not-made' },
    { turn: 112, why: 'turn-acute' },
    { turn: -135, why: 'turn-acute' },
  ])('makes no unit for a turn of $turn: $why', ({ turn, why }) => {
    expect(cornerUnitFor(turn, '6', heron())).toBe(why);
  });

  // Geometry, worked by hand: T/2 of a 6 in core is 5.5 in, tan 45° = 1, tan 22.5° = √2 − 1.
  it.each([
    { leg: 37.5, turn: 90, takesIn: 32 },
    { leg: 21.5, turn: -90, takesIn: 16 },
    { leg: 24, turn: 45, takesIn: 24 - 5.5 * (Math.SQRT2 - 1) },
  ])('a leg of $leg in at a turn of $turn takes $takesIn in of the axis', ({ leg, turn, takesIn }) => {
    expect(legOnAxis(inches(leg), inches(11), inches(11), turn)).toBe(inches(takesIn));
  });

  it('takes 4.5 in, not 6.5, off the leg where a 13 in wall meets a 9 in one squarely (decision 4)', () => {
    expect(inches(38.5) - legOnAxis(inches(38.5), inches(13), inches(9), 90)).toBe(inches(4.5));
    expect(inches(36.5) - legOnAxis(inches(36.5), inches(9), inches(13), 90)).toBe(inches(6.5));
  });

  it('reads the hand from the convex side, so that it flips at a re-entrant corner', () => {
    expect([handOf(90, true), handOf(90, false), handOf(-90, true), handOf(-90, false)]).toEqual(['left', 'right', 'right', 'left']);
  });
});
