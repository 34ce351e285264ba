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

  const ANNEX: DrawnJob['walls'] = [
    ['T', [480, 60], [640, 60]],
    ['U', [640, 60], [640, 260]],
    ['V', [640, 260], [480, 260]],
  ];

  it('are those of an annex that ends on the ring from outside, and of an annex on the annex', () => {
    expect(marks([...RING, ...ANNEX])).toEqual(['A', 'B', 'C', 'D', 'T', 'U', 'V']);
    const further: DrawnJob['walls'] = [
      ['X', [640, 110], [760, 110]],
      ['Y', [760, 110], [760, 200]],
      ['Z', [760, 200], [640, 200]],
    ];
    expect(marks([...RING, ...ANNEX, ...further])).toEqual(['A', 'B', 'C', 'D', 'T', 'U', 'V', 'X', 'Y', 'Z']);
    // about the ring's corner: from the end of A round to the side of C
    const about: DrawnJob['walls'] = [
      ['X', [300, 0], [300, -120]],
      ['Y', [300, -120], [600, -120]],
      ['Z', [600, -120], [600, 200]],
      ['W', [600, 200], [480, 200]],
    ];
    // drawn so that the outside is on the right of each: X goes down from A with the annex on its left
    expect(marks([...RING, ...about])).toEqual(['A', 'B', 'C', 'D', 'W', 'X', 'Y', 'Z']);
  });

  it('are not those of an annex drawn inside out: what is drawn of it is the side to its room', () => {
    const insideOut = [...ANNEX].reverse().map(([mark, from, to]) => [mark, to, from] as const);
    expect(marks([...RING, ...insideOut])).toEqual(['A', 'B', 'C', 'D']);
  });

  it('are not the walls of a room within the ring, nor a wall from one side of the ring to the other', () => {
    const room: DrawnJob['walls'] = [
      ['P', [480, 200], [300, 200]],
      ['Q', [300, 200], [300, 336]],
    ];
    expect(marks([...RING, ...room])).toEqual(['A', 'B', 'C', 'D']);
    expect(marks([...RING, ...ANNEX, ['R', [560, 60], [560, 260]]])).toEqual(['A', 'B', 'C', 'D', 'T', 'U', 'V']);
  });

  it('are those of a courtyard too, whether or not partitions lead to it', () => {
    const court: DrawnJob['walls'] = [
      ['E', [150, 100], [150, 240]],
      ['F', [150, 240], [330, 240]],
      ['G', [330, 240], [330, 100]],
      ['H', [330, 100], [150, 100]],
    ];
    expect(marks([...RING, ...court])).toEqual(['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H']);
    expect(marks([...RING, ...court, ['P', [240, 240], [240, 336]]])).toEqual(['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H']);
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
