import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { inches } from '../../../src/domain/quantity/length.js';
import { formLines, lineStation, spacedAlong } from '../../../src/domain/reinforcement/form-lines.js';
import { formSegments } from '../../../src/domain/reinforcement/segments.js';
import type { LaidStorey } from '../../../src/domain/takeoff/laid.js';
import { coreChange, junction, laidArc, laidJob, parted, times, type StoreySketch, type WallSketch } from '../../support/laid.js';
import { CORES } from '../../support/rule-range.js';

const storeyOf = (sketch: StoreySketch): LaidStorey => laidJob(sketch).storeys[0] as LaidStorey;
const marks = (sketch: StoreySketch) => formLines(storeyOf(sketch)).map(({ walls }) => walls.map(({ wall, from }) => [wall.mark, from / inches(1)]));
const wall = (changes: Partial<WallSketch> = {}): WallSketch => ({ length: 100, courses: times(2), ...changes });

describe('lines of forms', () => {
  it.each<{ name: string; sketch: StoreySketch; lines: readonly (readonly (readonly [string, number])[])[] }>([
    { name: 'a wall by itself', sketch: { walls: [wall()] }, lines: [[['A', 0]]] },
    { name: 'straight on', sketch: parted(wall(), wall({ length: 140 })), lines: [[['A', 0], ['B', 100]]] },
    { name: 'straight on, drawn towards each other', sketch: parted(wall(), wall({ reversed: true })), lines: [[['A', 0], ['B', 100]]] },
    { name: 'another core', sketch: parted(wall(), wall({ core: CORES[8] })), lines: [[['A', 0]], [['B', 0]]] },
    { name: 'another height', sketch: parted(wall(), wall({ courses: times(3) })), lines: [[['A', 0]], [['B', 0]]] },
    {
      name: 'set off sideways or apart by more than the rounding of coordinates',
      sketch: { ...parted(wall(), wall()), walls: [wall({ end: 'M' }), wall({ mark: 'B', start: 'M', x: 100.5 })] },
      lines: [[['A', 0]], [['B', 0]]],
    },
    {
      name: 'a corner',
      sketch: { ...parted(wall(), wall()), junctions: [junction({ id: 'M', kind: 'corner', walls: ['A', 'B'], turn: 90 })] },
      lines: [[['A', 0]], [['B', 0]]],
    },
    {
      name: 'a tee at the mark of its through wall, whichever part is named first',
      sketch: {
        walls: [wall({ end: 'M' }), wall({ mark: 'B', start: 'M', x: 100 }), wall({ mark: 'P', start: 'M', x: 100 })],
        junctions: [junction({ id: 'M', kind: 'tee', walls: ['B', 'A', 'P'] })],
      },
      lines: [[['A', 0], ['B', 100]], [['P', 0]]],
    },
    {
      name: 'a tee on the side of one wall',
      sketch: { walls: [wall({ end: 'M' }), wall({ mark: 'P', start: 'M', x: 100 })], junctions: [junction({ id: 'M', kind: 'tee', walls: ['A', 'P'] })] },
      lines: [[['A', 0]], [['P', 0]]],
    },
    {
      name: 'a core that changes up one of two walls parts their line',
      sketch: parted(wall(), wall({ features: { coreChanges: [coreChange(2, CORES[4], 'outside', -1)] } })),
      lines: [[['A', 0]], [['B', 0]]],
    },
    {
      name: 'one that changes alike up both does not',
      sketch: parted(wall({ features: { coreChanges: [coreChange(2, CORES[4], 'outside', -1)] } }), wall({ features: { coreChanges: [coreChange(2, CORES[4], 'outside', -1)] } })),
      lines: [[['A', 0], ['B', 100]]],
    },
    {
      name: 'a curve that carries a straight wall on',
      sketch: parted(wall(), wall({ features: { arc: laidArc(105, 5) } })),
      lines: [[['A', 0]], [['B', 0]]],
    },
  ])('$name', ({ sketch, lines }) => expect(marks(sketch)).toEqual(lines));

  it('a line may begin with a wall listed last', () => {
    const { walls, junctions } = parted(wall(), wall());
    expect(marks({ walls: [...walls].reverse(), junctions })).toEqual([[['A', 0], ['B', 100]]]);
  });

  it('stations of a wall drawn the other way round run back', () => {
    const [line] = formLines(storeyOf(parted(wall(), wall({ length: 140, reversed: true }))));
    const member = line!.walls[1]!;
    expect([0, 40, 140].map((at) => lineStation(member, inches(at)) / inches(1))).toEqual([240, 200, 100]);
  });
});

describe('items at a spacing along a line', () => {
  const items = (sketch: StoreySketch): readonly number[] =>
    formLines(storeyOf(sketch)).flatMap((line) => spacedAlong(line, ({ courses }) => formSegments(courses[0]!), inches(16)).map((each) => each.items));

  it.each([
    { name: 'a whole number of spacings', sketch: { walls: [wall({ length: 160 })] }, expected: [10] },
    { name: 'a remainder takes one more', sketch: { walls: [wall({ length: 161 })] }, expected: [11] },
    { name: 'segments for themselves', sketch: { walls: [wall({ length: 160, courses: [{ voids: [[8, 152]] }] })] }, expected: [2] },
    { name: 'no forms', sketch: { walls: [wall({ length: 160, courses: [{ voids: [[0, 160]] }] })] }, expected: [0] },
    { name: 'a part within one spacing of the mark may take none', sketch: parted(wall({ length: 97 }), wall({ length: 15 })), expected: [7, 0] },
    { name: 'an opening at the mark parts the segment', sketch: parted(wall({ courses: [{ voids: [[90, 100]] }] }), wall({ length: 10 })), expected: [6, 1] },
  ])('$name', ({ sketch, expected }) => expect(items(sketch)).toEqual(expected));

  it('does not change with the place of a mark, nor with the way a part is drawn', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 600 }), fc.integer({ min: 1, max: 599 }), fc.boolean(), (length, cut, reversed) => {
        fc.pre(cut < length);
        const split = items(parted(wall({ length: cut }), wall({ length: length - cut, reversed })));
        expect(split.reduce((sum, each) => sum + each, 0)).toBe(Math.ceil(length / 16));
      }),
    );
  });
});
