import { describe, it } from '@jest/globals';
import fc from 'fast-check';
import { wallFormPressure } from '../../../../src/domain/engineering/aci-347-04/wall-form-pressure.js';
import type { CementGroup } from '../../../../src/domain/engineering/aci-347-04/chemistry-coefficient.js';
import type { FreshConcreteWall } from '../../../../src/domain/engineering/aci-347-04/fresh-concrete-wall.js';

const CEMENTS: readonly CementGroup[] = ['portland-i-ii-iii', 'other-or-low-blend', 'high-blend'];
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const pours = fc.record({
  heightFt: between(0.5, 40),
  riseFtPerH: between(0.05, 25),
  concreteF: between(40, 95),
  unitWeightPcf: between(70, 250),
  cement: fc.constantFrom(...CEMENTS),
  retarder: fc.boolean(),
  slumpIn: between(0, 11),
});
const psf = (pour: FreshConcreteWall): number => {
  const answer = wallFormPressure(pour);
  return answer.kind === 'pressure' ? answer.pressurePsf : Number.NaN;
};
const NOISE = 1e-9;

describe('wallFormPressure, properties', () => {
  it('is finite, positive and never over the liquid head', () => {
    fc.assert(fc.property(pours, (pour) => psf(pour) > 0 && psf(pour) <= pour.unitWeightPcf * pour.heightFt));
  });

  it('never falls under the minimum or the liquid head, whichever is less', () => {
    fc.assert(fc.property(pours, (pour) => psf(pour) >= Math.min(480, pour.unitWeightPcf * pour.heightFt) - NOISE));
  });

  it.each(['riseFtPerH', 'heightFt', 'unitWeightPcf', 'slumpIn'] as const)('never falls when %s grows', (field) => {
    fc.assert(fc.property(pours, between(0, 5), (pour, more) => psf({ ...pour, [field]: pour[field] + more }) >= psf(pour) - NOISE), { numRuns: 500 });
  });

  it('never grows when the concrete is warmer', () => {
    fc.assert(fc.property(pours, between(40, 95), (pour, T) => psf({ ...pour, concreteF: Math.max(T, pour.concreteF) }) <= psf({ ...pour, concreteF: Math.min(T, pour.concreteF) }) + NOISE));
  });

  it('never falls with a retarder', () => {
    fc.assert(fc.property(pours, (pour) => psf({ ...pour, retarder: true }) >= psf({ ...pour, retarder: false })));
  });

  it('is continuous in the rate at 7 ft/h, where A hands over to B', () => {
    fc.assert(
      fc.property(pours, (pour) => {
        const below = psf({ ...pour, riseFtPerH: 7 - 1e-9 });
        const above = psf({ ...pour, riseFtPerH: 7 });
        return Math.abs(above - below) < 1e-5;
      }),
    );
  });
});
