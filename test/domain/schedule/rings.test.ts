import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { measure } from '../../../src/domain/pipeline.js';
import { readRange } from '../../../src/domain/range/read-range.js';
import { readScheduleDocument } from '../../../src/domain/schedule/index.js';
import { declaredRectangle, HERON, rectangle } from '../../support/schedule-documents.js';

const range = (() => {
  const result = readRange(JSON.parse(readFileSync('shared/samples/heron-16.range.json', 'utf8')));
  if (!result.ok) throw new Error('the demo range is none');
  return result.value;
})();
const errorsOf = (document: unknown) => {
  const result = readScheduleDocument(document, HERON);
  if (result.ok) throw new Error('the schedule was taken');
  return result.error;
};
/** Walls joined end to start all round, with the turn at each one's end. */
function ring(sides: readonly (readonly [number, number])[], both = true, closed = true): any {
  const mark = (index: number) => `W${((index + sides.length) % sides.length) + 1}`;
  const corner = (turn: number, wall: string, end: string) => ({ joint: 'corner', turn, with: { wall, end } });
  return {
    ...rectangle(),
    storeys: [{ id: 'S1', height: 108, closed }],
    openings: [],
    walls: sides.map(([length, turn], index) => ({
      mark: mark(index), storey: 'S1', core: '6', length,
      ...(both ? { start: corner(sides[(index + sides.length - 1) % sides.length]![1], mark(index - 1), 'end') } : {}),
      end: corner(turn, mark(index + 1), 'start'),
    })),
  };
}
/** What the take-off holds of a plan that stays open: walls and gap [mm]. */
function gapsOf(document: unknown) {
  const result = readScheduleDocument(document, HERON);
  if (!result.ok) throw new Error(JSON.stringify(result.error, null, 1));
  return measure(result.value, range).findings.filter(({ code }) => code === 'plan-open').map(({ severity, walls, numbers }) => ({ severity, walls, gapMm: numbers['gapMm'] }));
}

describe('rings of walls that are declared all round', () => {
  it('close where lengths and turns do: a rectangle, an L, a bay, either way about', () => {
    expect(gapsOf(declaredRectangle())).toEqual([]);
    const L = [[480, 90], [200, 90], [240, -90], [136, 90], [240, 90], [336, 90]] as const;
    expect(gapsOf(ring(L))).toEqual([]);
    expect(gapsOf(ring(L.map(([length, turn]) => [length, -turn] as const), false))).toEqual([]);
  });

  // A wall 12 in short leaves 12 in; one side 5 and its neighbour 12 in short leave 13 (5-12-13).
  it.each<[string, readonly (readonly [number, number])[], number]>([
    ['one wall a foot short', [[480, 90], [336, 90], [480, 90], [324, 90]], 304.8],
    ['two walls short, 5 and 12 in', [[480, 90], [336, 90], [475, 90], [324, 90]], 330.2],
    ['1.1 mm', [[480, 90], [336, 90], [480, 90], [336 - 1.1 / 25.4, 90]], 1.1],
  ])('that miss themselves are held, with the gap: %s', (_name, sides, gapMm) => {
    expect(gapsOf(ring(sides))).toEqual([{ severity: 'hold', walls: ['W4', 'W1'], gapMm }]);
  });

  it('a gap of less than 1 mm is none', () => expect(gapsOf(ring([[480, 90], [336, 90], [480, 90], [336 - 0.9 / 25.4, 90]]))).toEqual([]));

  it('turns written to a tenth close within half a degree, and the gap is that of the walk', () => {
    // Seven sides s with turns t end s·sin(7t/2)/sin(t/2) from their start (sum of a geometric series): 10.22 mm for 100 in at 51.4°.
    const half = (51.4 / 2) * (Math.PI / 180);
    const gap = (2540 * Math.sin(7 * half)) / Math.sin(half);
    expect(gapsOf(ring(Array.from({ length: 7 }, () => [100, 51.4] as const)))).toEqual([{ severity: 'hold', walls: ['W7', 'W1'], gapMm: Math.round(gap * 1e3) / 1e3 }]);
  });

  it.each<[string, readonly (readonly [number, number])[], boolean, string, string]>([
    ['a turn that is another', [[480, 90], [336, 90], [480, 90], [336, 45]], true, '/walls/3/end/turn', 'the ring of walls W1, W2, W3, W4 round: they must sum to 360 or -360, and theirs sum to 315'],
    ['a turn to the wrong side', [[480, 90], [336, 90], [480, -90], [336, 90]], false, '/walls/3/end/turn', 'theirs sum to 180'],
    ['a ring that crosses itself', [[100, 90], [100, 90], [100, -90], [100, -90]], true, '/walls/3/end/turn', 'theirs sum to 0'],
    ['twice round', Array.from({ length: 8 }, () => [100, 90] as const), true, '/walls/7/end/turn', 'theirs sum to 720'],
    ['0.6 degrees too little', [[480, 90], [336, 90], [480, 90], [336, 89.4]], true, '/walls/3/end/turn', 'theirs sum to 359.4'],
  ])('whose turns do not bring them round are told: %s', (_name, sides, both, pointer, fix) => {
    expect(errorsOf(ring(sides, both))).toEqual([expect.objectContaining({ pointer, fix: expect.stringContaining(fix) })]);
  });

  it('with walls written against the walk: each turn has the sign of its own wall', () => {
    const corner = (turn: number, wall: string, end: string) => ({ joint: 'corner', turn, with: { wall, end } });
    const side = (mark: string, length: number, more: object) => ({ mark, storey: 'S1', core: '6', length, ...more });
    const against = (turn: number) => ({ ...rectangle(), openings: [], walls: [
      side('A', 480, { end: corner(90, 'B', 'end') }), side('B', 336, { start: corner(-turn, 'C', 'start') }),
      side('C', 480, { end: corner(90, 'D', 'start') }), side('D', 336, { end: corner(90, 'A', 'start') })] });
    expect(gapsOf(against(90))).toEqual([]);
    expect(errorsOf(against(45))).toEqual([expect.objectContaining({ fix: expect.stringContaining('theirs sum to 315') })]);
  });

  it('a chain that comes back to drawn walls with another turn than it says is told', () => {
    // B and C are drawn and turn by 90; A is walked back from B's start, D back from A: D and C then turn by what is left of 360.
    const document = rectangle();
    const [, b, c] = document.walls;
    const corner = (turn: number, wall: string, end = 'start') => ({ joint: 'corner', turn, with: { wall, end } });
    const chain = (last: number) => ({ ...document, openings: [], walls: [b, c,
      { mark: 'D', core: '6', length: 336, start: corner(90, 'C', 'end'), end: corner(90, 'A') },
      { mark: 'A', core: '6', length: 470, end: corner(last, 'B') }] });
    expect(errorsOf(chain(45))).toEqual([expect.objectContaining({ pointer: '/walls/2/start/turn', read: '90', fix: 'the turn that the coordinates and the other turns leave: there D and C turn by 135.0' })]);
    expect(gapsOf(chain(90))).toEqual([{ severity: 'hold', walls: ['C', 'D'], gapMm: 254 }]);
  });

  it('a chain of thousands that never closes is walked once', () => {
    const sides = Array.from({ length: 9_000 }, (_, index) => [40, index % 2 ? 90 : -90] as const);
    const document = ring(sides, false);
    delete document.walls[8_999].end;
    const started = performance.now();
    expect(readScheduleDocument(document, HERON).ok).toBe(true);
    expect(performance.now() - started).toBeLessThan(10_000);
  });
});
