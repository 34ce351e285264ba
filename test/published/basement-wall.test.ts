import { describe, expect, it } from '@jest/globals';
import { soilWallFoot, soilWallMoment, soilWallMomentDepth, soilWallTop } from '../../src/domain/engineering/statics/soil-wall-moment.js';
import { itIsAsPublished, num, publishedRows, type Inputs } from './published-rows.js';

const of = (i: Inputs) => [num(i, 'w'), num(i, 'H'), num(i, 'L')] as const;
const ASKED: Readonly<Record<string, (inputs: Inputs) => number>> = {
  top: (i) => soilWallTop(...of(i)),
  foot: (i) => soilWallFoot(...of(i)),
  at: (i) => soilWallMomentDepth(num(i, 'H'), num(i, 'L')),
  moment: (i) => soilWallMoment(...of(i)),
};

describe('walls under soil', () => {
  itIsAsPublished(publishedRows('basement-wall/simple-span'), ASKED);

  /** A second way: the load in ten thousand slices, the greatest of the moments at their edges. */
  it.each([[30, 8, 8], [45, 7, 8], [60, 6, 9], [30, 4, 8], [45, 9, 10]] as const)('%d psf/ft, %d ft on %d ft: as slice by slice', (w, H, L) => {
    const n = 10_000;
    const slices = Array.from({ length: n }, (_, k) => ((k + 0.5) / n) * L);
    const load = (x: number): number => (w * Math.max(0, x - (L - H)) * L) / n;
    const top = slices.reduce((sum, x) => sum + (load(x) * (L - x)) / L, 0);
    let [shear, moment, greatest, at] = [top, 0, 0, 0];
    for (const x of slices) {
      moment += (shear - load(x) / 2) * (L / n);
      shear -= load(x);
      if (moment > greatest) [greatest, at] = [moment, x];
    }
    expect(Math.abs(soilWallTop(w, H, L) - top)).toBeLessThan(0.05);
    expect(Math.abs(soilWallMoment(w, H, L) - greatest)).toBeLessThan(0.05);
    expect(Math.abs(soilWallMomentDepth(H, L) - at)).toBeLessThan(0.02);
  });
});
