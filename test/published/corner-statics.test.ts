import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { bendThrust } from '../../src/domain/engineering/statics/bend-thrust.js';
import { faceHoopTension } from '../../src/domain/engineering/statics/face-hoop-tension.js';
import { hoopTension } from '../../src/domain/engineering/statics/hoop-tension.js';
import { teeForce } from '../../src/domain/engineering/statics/tee-force.js';
import { twoCoreThrust } from '../../src/domain/engineering/statics/two-core-thrust.js';
import { wireBreakingLoad } from '../../src/domain/engineering/en5151-forms/wire-breaking-load.js';
import { itIsAsPublished, num, publishedRows, type Inputs } from './published-rows.js';

const area = (i: Inputs): number => (Math.PI * num(i, 'od_in') ** 2) / 4;
const wire = (i: Inputs): number => wireBreakingLoad(String(i['gauge']), num(i, 'strands'));

describe('thrust of bends', () => {
  itIsAsPublished([...publishedRows('pipe-bend-thrust/bends'), ...publishedRows('statics/corners')], {
    deadEnd: (i) => num(i, 'p_psi') * area(i),
    pipeBend: (i) => bendThrust(num(i, 'p_psi'), area(i), num(i, 'turn')),
    bend: (i) => bendThrust(num(i, 'straight'), 1, num(i, 'turn')),
    faceHoop: (i) => faceHoopTension(num(i, 'p_psf'), num(i, 'R_ft')),
    tee: (i) => teeForce(num(i, 'p_psf'), num(i, 't_in') / 12, num(i, 'c_in') / 12),
  });
});

describe('tie wire', () => {
  itIsAsPublished(publishedRows('en5151-forms/tie-wire'), {
    wire,
    tieSpacing: (i) => (wire(i) * 12) / num(i, 'load_lbPerFt'),
  });
});

describe('thrust against its components', () => {
  /** Rx = p · A · (1 − cos θ), Ry = p · A · sin θ, R = √(Rx² + Ry²): engineering reference page on bends of pipes, found. */
  it('is the resultant of the two components, by one core and by two alike', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 179, noNaN: true }), fc.double({ min: 1, max: 100, noNaN: true }), (turn, p) => {
        const b = (turn * Math.PI) / 180;
        const resultant = Math.hypot(p * 0.5 * (1 - Math.cos(b)), p * 0.5 * Math.sin(b));
        expect(bendThrust(p, 0.5, turn)).toBeCloseTo(resultant, 8);
        expect(twoCoreThrust(p, 0.5, 0.5, turn)).toBeCloseTo(resultant, 5);
      }),
    );
  });

  it('straight on, two cores leave the step between them; at 90 degrees a 3-4-5 triangle', () => {
    expect(twoCoreThrust(10, 0.2, 0.3, 0)).toBeCloseTo(1, 12);
    expect(twoCoreThrust(10, 0.3, 0.4, 90)).toBeCloseTo(5, 12);
  });

  /** A regular polygon round a circle: the corner thrusts are held by the tension of two sides, T · 2 · sin(θ/2). */
  it('hoop tension is the tension that holds the corners of a polygon of any number of sides', () => {
    for (const sides of [4, 8, 90]) {
      const turn = 360 / sides;
      expect(2 * hoopTension(30, 0.15) * Math.sin((turn * Math.PI) / 360)).toBeCloseTo(bendThrust(30, 0.15, turn), 12);
    }
  });

  it('hoop tension is what the outer face gains over the inner one', () => {
    expect(faceHoopTension(30, 3.15) - faceHoopTension(30, 3)).toBeCloseTo(hoopTension(30, 0.15), 10);
  });
});
