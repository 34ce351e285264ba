import { describe, expect, it } from '@jest/globals';
import { inches } from '../../../src/domain/quantity/length.js';
import { readScheduleDocument, type Schedule, type Wall } from '../../../src/domain/schedule/index.js';
import { declaredRectangle, HERON, rectangle } from '../../support/schedule-documents.js';

const read = (document: unknown): Schedule => {
  const result = readScheduleDocument(document, HERON);
  if (!result.ok) throw new Error(JSON.stringify(result.error, null, 1));
  return result.value;
};
const fixesOf = (document: unknown): readonly string[] => {
  const result = readScheduleDocument(document, HERON);
  if (result.ok) throw new Error('the schedule was taken');
  return result.error.map(({ fix }) => fix);
};
const wall = (mark: string, length: unknown, more: object = {}) => ({ mark, storey: 'S1', core: '6', length, ...more });
const corner = (turn: number, mark: string, end = 'start') => ({ joint: 'corner', turn, with: { wall: mark, end } });
const chain = (...walls: object[]) => ({ ...rectangle(), walls, openings: [] });
const ends = ({ from, to }: Wall) => [from, to].map(({ x, y }) => [x / inches(1), y / inches(1)]);

describe('walls with declared corners', () => {
  it('a closed rectangle lies where its coordinates would, with written lengths kept exactly', () => {
    const declared = read(declaredRectangle());
    const drawn = read(rectangle());
    expect(declared.walls.map(({ from, to, length }) => ({ from, to, length }))).toEqual(drawn.walls.map(({ from, to, length }) => ({ from, to, length })));
    expect(declared.walls[0]?.end).toEqual({ joint: 'corner', turn: 90, with: { wall: 'B', end: 'start' } });
  });

  it('turns left for plus and right for minus', () => {
    const { walls } = read(chain(wall('A', 100, { end: corner(90, 'B') }), wall('B', 50, { end: corner(-90, 'C') }), wall('C', 30)));
    expect(walls.map(ends)).toEqual([[[0, 0], [100, 0]], [[100, 0], [100, 50]], [[100, 50], [130, 50]]]);
    expect(walls[2]).toMatchObject({ start: { joint: 'corner', turn: -90, with: { wall: 'B', end: 'end' } }, end: { joint: 'free' } });
  });

  it('places a wall that is written against the walking direction, its turn with the sign of its own walk', () => {
    const { walls } = read(chain(wall('A', 100, { end: corner(90, 'B', 'end') }), wall('B', 50)));
    expect(walls.map(ends)).toEqual([[[0, 0], [100, 0]], [[100, 50], [100, 0]]]);
    expect(walls[1]?.end).toEqual({ joint: 'corner', turn: -90, with: { wall: 'A', end: 'end' } });
  });

  it('walks back from a start as well as on from an end', () => {
    const { walls } = read(chain(wall('A', 100, { start: corner(90, 'Z', 'end') }), wall('Z', 40)));
    expect(walls.map(ends)).toEqual([[[0, 0], [100, 0]], [[0, 40], [0, 0]]]);
  });

  it('makes a bay of 45 degree turns', () => {
    const { walls } = read(chain(wall('A', 100, { end: corner(-45, 'B') }), wall('B', 60, { end: corner(45, 'C') }), wall('C', 80, { end: corner(45, 'D') }), wall('D', 60)));
    expect(walls[3]?.to.y).toBeCloseTo(0, 3);
    expect((walls[3]?.to.x ?? 0) / inches(1)).toBeCloseTo(180 + 120 * Math.SQRT1_2, 6);
  });

  it('keeps the gap of a chain that misses itself: that is a finding, not an input error', () => {
    const document = declaredRectangle();
    document.walls[3].length = `27'-0"`;
    const { walls } = read(document);
    expect(walls[3]?.to).toEqual({ x: 0, y: inches(12) });
    expect(walls[0]?.from).toEqual({ x: 0, y: 0 });
  });

  it('places separate chains and drawn walls clear of each other', () => {
    const { walls } = read({ ...rectangle(), walls: [...rectangle().walls, wall('F', 240), wall('G', 240, { end: corner(90, 'H') }), wall('H', 9000)] });
    const [f, g, h] = walls.slice(4) as [Wall, Wall, Wall];
    const right = Math.max(...walls.slice(0, 4).flatMap(({ from, to }) => [from.x, to.x]));
    expect(f.from.x).toBeGreaterThan(right + inches(240));
    expect(g.from.x - f.to.x).toBeGreaterThan(inches(9000));
    expect(h.from).toEqual(g.to);
  });

  it('hangs a declared wall on a drawn one', () => {
    const document = { ...rectangle(), walls: [...rectangle().walls.slice(0, 3), wall('D', 336, { start: corner(90, 'C', 'end') })] };
    expect(read(document).walls.map(ends)[3]).toEqual([[0, 336], [0, 0]]);
  });

  it('a free wall needs a length and nothing else', () => {
    expect(read(chain(wall('F', `20'-0"`))).walls[0]).toMatchObject({ from: { x: 0, y: 0 }, to: { x: inches(240), y: 0 }, start: { joint: 'free' }, end: { joint: 'free' } });
  });
});

describe('declared corners that do not fit', () => {
  it.each<[string, object[], string]>([
    ['a partner that is missing', [wall('A', 100, { end: corner(90, 'Q') })], 'Q is none'],
    ['a partner that says free', [wall('A', 100, { end: corner(90, 'B') }), wall('B', 50, { start: { joint: 'free' } })], 'the end of A says a corner with the start of B, which says a free end'],
    ['a partner that names another', [wall('A', 100, { end: corner(90, 'B') }), wall('B', 50, { start: corner(90, 'C', 'end') }), wall('C', 9)], 'the start of B, which says a corner with the end of C'],
    ['turns that disagree', [wall('A', 100, { end: corner(90, 'B') }), wall('B', 50, { start: corner(-90, 'A', 'end') })], 'the end of A says 90, so the start of B must say 90, and it says -90'],
    ['two ends with one sign', [wall('A', 100, { end: corner(90, 'B', 'end') }), wall('B', 50, { end: corner(90, 'A', 'end') })], 'must say -90, and it says 90'],
    ['an end taken twice', [wall('A', 100, { end: corner(90, 'B') }), wall('B', 50), wall('C', 50, { end: corner(90, 'B') })], 'is joined to the end of A already'],
    ['a wall with itself', [wall('A', 100, { end: corner(90, 'A') })], 'does not meet itself'],
    ['a turn of 180', [wall('A', 100, { end: corner(180, 'B') }), wall('B', 50)], 'between -180 and 180'],
    ['a corner without a partner', [wall('A', 100, { end: { joint: 'corner', turn: 90 } })], 'the wall and end this corner is made with'],
    ['an arc without ends', [wall('A', 100, { arc: { radius: 200, turns: 'left' } })], 'the ends of an arc wall'],
    ['drawn ends that lie apart', [...rectangle().walls.slice(1), { ...rectangle().walls[0], to: [470, 0], end: corner(90, 'B') }], `lie 0'-10" apart`],
    ['a drawn turn that is another', [...rectangle().walls.slice(1), { ...rectangle().walls[0], end: corner(45, 'B') }], 'turn by 90.0'],
    ['a tee on a wall that is none', [{ ...rectangle().walls[0], start: { joint: 'tee', on: 'Q', at: 1, side: 'left' } }], 'Q is none'],
  ])('%s', (_name, walls, fix) => expect(fixesOf(chain(...walls)).join('\n')).toContain(fix));

  it('a partner in another storey', () => {
    const document = chain(wall('A', 100, { end: corner(90, 'B') }), { ...wall('B', 50), storey: 'S2' });
    expect(fixesOf({ ...document, storeys: [{ id: 'S1', height: 96 }, { id: 'S2', height: 96, on: 'S1' }] })[0]).toContain('A is in S1, B in S2');
  });
});
