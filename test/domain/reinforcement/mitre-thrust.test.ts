import { describe, expect, it } from '@jest/globals';
import { mitreThrustLb } from '../../../src/domain/reinforcement/mitre-thrust.js';
import { mitredCorners } from '../../../src/domain/reinforcement/mitred-corners.js';
import { bendThrustLbPerFt } from '../../../src/domain/reinforcement/thrust.js';
import type { LaidLedge } from '../../../src/domain/takeoff/laid.js';
import { junction, laidJob, laidLedge, times } from '../../support/laid.js';
import { CORES, ruleRange } from '../../support/rule-range.js';

/** Thrust at the corner of A and B, whose course 1 is mitred, at 600 psf. */
function thrust(turn: number, a: readonly LaidLedge[], b: readonly LaidLedge[], extraIn2 = 0): number {
  const { storeys } = laidJob({
    walls: [{ mark: 'A', length: 240, courses: times(1), features: { ledges: a } }, { mark: 'B', length: 120, courses: times(1), features: { ledges: b } }],
    junctions: [junction({ id: 'S1-J2', kind: 'corner', walls: ['A', 'B'], turn, courses: [1], sku: 'SQ6', unit: 'corner' })],
  });
  return mitreThrustLb(mitredCorners(storeys[0]!)[0]!, 'S1', ruleRange({ ledgeIn2: extraIn2 }), () => ({ psf: 600, basis: 'pour' }));
}

describe('thrust of a mitred course', () => {
  const all = laidLedge(1, [[0, 240]]);

  // Statics: with nothing beside the core it is the bend thrust of the same turn over the course's height.
  it.each([10, 45, 67.5, 90, -90, -30])('of a ledge that adds nothing is the bend thrust over 16 in, turn %p', (turn) => {
    expect(thrust(turn, [all], [laidLedge(1, [[0, 120]])])).toBeCloseTo((bendThrustLbPerFt(600, CORES[6].width, turn) * 16) / 12, 9);
  });

  it.each([
    { name: 'both sections of 2/3 + 1/3 ft2 at 90 degrees: 600 x sqrt 2', a: [all], b: [laidLedge(1, [[0, 120]])], worked: 600 * Math.SQRT2 },
    { name: 'one ledge inside and one outside on the first wall: sections 4/3 and 2/3, 600 x sqrt(16/9 + 4/9)', a: [all, { ...all, face: 'inside' as const }], b: [], worked: 600 * Math.sqrt(20 / 9) },
    { name: 'a ledge that ends short of the corner adds nothing there: 600 x 2/3 x sqrt 2', a: [laidLedge(1, [[0, 239]])], b: [], worked: 400 * Math.SQRT2 },
    { name: 'nor does one that reaches the other end of its wall', a: [], b: [laidLedge(1, [[40, 120]])], worked: 400 * Math.SQRT2 },
  ])('$name', ({ a, b, worked }) => expect(thrust(90, a, b, 48)).toBeCloseTo(worked, 9));

  it('of a mitre straight on is none', () => expect(thrust(0, [all], [laidLedge(1, [[0, 120]])], 48)).toBeCloseTo(0, 6));
});
