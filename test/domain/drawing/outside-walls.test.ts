import { describe, expect, it } from '@jest/globals';
import { wallElevation } from '../../../src/domain/drawing/index.js';
import { outsideWalls } from '../../../src/domain/drawing/outside-walls.js';
import { demoRange, drawnStorey } from '../../support/drawn-job.js';
import type { DrawnJob } from '../../support/drawn-job.js';
import { textsOf } from '../../support/drawn-text.js';
import { SHEET_HEADER } from '../../support/drawn-wall.js';

const RANGE = demoRange();
const RING: DrawnJob['walls'] = [
  ['A', [0, 0], [480, 0]],
  ['B', [480, 0], [480, 336]],
  ['C', [480, 336], [0, 336]],
  ['D', [0, 336], [0, 0]],
];
const marks = (walls: DrawnJob['walls']): string[] => [...outsideWalls(drawnStorey({ walls }, RANGE))].sort();

describe('outsideWalls', () => {
  it('are those of a ring, in whatever order and direction they are drawn', () => {
    expect(marks(RING)).toEqual(['A', 'B', 'C', 'D']);
    expect(marks([...RING].reverse())).toEqual(['A', 'B', 'C', 'D']);
    expect(marks(RING.map(([mark, from, to]) => [mark, to, from] as const))).toEqual(['A', 'B', 'C', 'D']);
  });

  it('are not partitions, nor a wall that stands alone, nor a chain with loose ends', () => {
    expect(marks([...RING, ['P', [120, 0], [120, 336]], ['R', [120, 150], [480, 150]]])).toEqual(['A', 'B', 'C', 'D']);
    expect(marks([...RING, ['S', [600, 0], [840, 0]]])).toEqual(['A', 'B', 'C', 'D']);
    expect(marks([...RING, ['P', [120, 336], [120, 500]], ['Q', [120, 500], [400, 500]]])).toEqual(['A', 'B', 'C', 'D']);
    expect(marks(RING.slice(0, 3))).toEqual([]);
  });

  it('alone are titled as seen from outside', () => {
    const storey = drawnStorey({ walls: [...RING, ['P', [120, 0], [120, 336]]] }, RANGE);
    const details = storey.walls.map((wall) =>
      textsOf(wallElevation(wall, storey, RANGE, 'in', SHEET_HEADER)).map(({ text }) => text).find((text) => text.startsWith('Elevation')),
    );
    expect(details).toEqual([
      ...Array.from({ length: 4 }, () => 'Elevation from outside, storey S1, core 6"'),
      'Elevation from the right of start to end, storey S1, core 6"',
    ]);
  });
});
