import { describe, expect, it } from '@jest/globals';
import { inches } from '../../../src/domain/quantity/length.js';
import { bendThrustLbPerFt, panelForceLb } from '../../../src/domain/reinforcement/thrust.js';

describe('force on a panel that has lost its webs: p · w · h', () => {
  it.each([
    { psf: 600, width: 6, height: 16, lb: 400, from: 'decision 9' },
    { psf: 600, width: 10, height: 16, lb: 2000 / 3, from: 'decision 27: 667 lb' },
    { psf: 144, width: 12, height: 12, lb: 144, from: 'one square foot' },
    { psf: 600, width: 0, height: 16, lb: 0, from: 'no width' },
  ])('$psf psf on $width x $height in = $lb lb ($from)', ({ psf, width, height, lb }) => {
    expect(panelForceLb(psf, inches(width), inches(height))).toBeCloseTo(lb, 9);
  });
});

describe('bend thrust: 2 · p · t · sin(turn / 2)', () => {
  it.each([
    { turn: 60, lbPerFt: 300 },
    { turn: -60, lbPerFt: 300 },
    { turn: 90, lbPerFt: 600 / Math.SQRT2 },
    { turn: 180, lbPerFt: 600 },
    { turn: 0, lbPerFt: 0 },
  ])('600 psf, 6 in, turn $turn = $lbPerFt lb/ft', ({ turn, lbPerFt }) => expect(bendThrustLbPerFt(600, inches(6), turn)).toBeCloseTo(lbPerFt, 9));

  it("agrees with the two legs' pressures added as vectors, which is how the formula comes about", () => {
    const [p, t] = [600, 0.5];
    for (const turn of [10, 45, 67.5, 90, 100]) {
      const a = (turn * Math.PI) / 180;
      const across = Math.hypot(p * t * (1 - Math.cos(a)), p * t * Math.sin(a));
      expect(bendThrustLbPerFt(p, inches(6), turn)).toBeCloseTo(across, 9);
    }
  });
});
