import { describe, expect, it } from '@jest/globals';
import { inches, toInches } from '../../../src/domain/quantity/length.js';
import { axisRuns, lengthOf } from '../../../src/domain/reinforcement/axis-runs.js';
import { courseBeside, mitredCorners } from '../../../src/domain/reinforcement/mitred-corners.js';
import type { Junction, LaidStorey } from '../../../src/domain/takeoff/laid.js';
import { coreChange, junction, laidArc, laidJob, laidLedge, laidTaper, times, type WallSketch } from '../../support/laid.js';
import { CORES } from '../../support/rule-range.js';

const corner = (units: readonly number[], rest: Partial<Junction> = {}): Junction =>
  junction({
    id: 'S1-J2', kind: 'corner', walls: ['A', 'B'], turn: 90, courses: [1, 2, 3], sku: 'SQ6', unit: 'corner',
    units: units.map((course) => ({ course, hand: 'left', sku: 'SQ6-L', piece: `c${course}` })), ...rest,
  });
const storey = (A: Partial<WallSketch>, B: Partial<WallSketch>, ...junctions: readonly Junction[]): LaidStorey =>
  laidJob({ walls: [{ mark: 'A', length: 240, courses: times(3), ...A }, { mark: 'B', length: 120, courses: times(3), ...B }], junctions }).storeys[0] as LaidStorey;
const told = (each: LaidStorey) =>
  mitredCorners(each).map(({ by, arriving, leaving }) => [by, ...[arriving, leaving].flatMap(({ course, end, node }) => [course.n, end, toInches(node)])]);

describe('mitred corners', () => {
  const ledge = { ledges: [laidLedge(2, [[0, 246]])] };

  it('stand where a ledge of either wall is and no unit', () => {
    expect(told(storey({ features: ledge }, {}, corner([1, 3])))).toEqual([['ledge', 2, 'end', 240, 2, 'start', 0]]);
    expect(told(storey({}, { features: ledge }, corner([1, 3])))).toEqual([['ledge', 2, 'end', 240, 2, 'start', 0]]);
  });

  it('stand where both walls are tapered, not where one is', () => {
    const taper = { taper: laidTaper('one', 3, [[0, 240]]) };
    expect(told(storey({ features: taper }, { features: taper }, corner([1, 2])))).toEqual([['taper-top', 3, 'end', 240, 3, 'start', 0]]);
    expect(told(storey({ features: taper }, {}, corner([1, 2])))).toEqual([]);
  });

  it('are at the other end of a wall drawn against the walk', () => {
    expect(told(storey({ reversed: true, features: ledge }, { reversed: true }, corner([1, 3])))).toEqual([['ledge', 2, 'start', 0, 2, 'end', 120]]);
  });

  it('stand in another course of a wall on a raised footing', () => {
    const { walls, ...rest } = storey({ features: ledge }, {}, corner([3], { courses: [2, 3] }));
    const raised = { ...rest, walls: walls.map((wall) => (wall.mark === 'B' ? { ...wall, base: inches(16) } : wall)) };
    expect(told(raised)).toEqual([['ledge', 2, 'end', 240, 1, 'start', 0]]);
    expect(courseBeside(raised.walls[0]!, 1, raised.walls[1]!)).toBeUndefined();
  });

  it('have their node where courses of the same level end at their units', () => {
    const changes = { coreChanges: [coreChange(2, CORES[4], 'outside', -1)] };
    const upper = corner([3], { id: 'S1-J2-L2', courses: [2, 3] });
    const A = { courses: [{}, { to: 247 }, { to: 241 }], features: { ...changes, ...ledge } };
    const B = { courses: [{}, { from: -6 }, { from: -1 }], features: changes };
    expect(told(storey(A, B, corner([1], { courses: [1] }), upper))).toEqual([['ledge', 2, 'end', 241, 2, 'start', -1]]);
  });

  it('are none where no unit makes the turn', () => expect(told(storey({ features: ledge }, {}, corner([], { unit: null })))).toEqual([]));

  it('have nothing to do with a curve too tight for chords, on which no form stands', () => {
    const each = storey({ features: { arc: laidArc(250, 0, null) } }, { features: { arc: laidArc(125, 15) } });
    expect(each.walls.map((wall) => toInches(lengthOf(axisRuns(each).segmentsOf(wall.courses[0]!))))).toEqual([0, 120]);
  });

  it('draw the axis length of a course in to their nodes, openings out; a free end past its node is not drawn in', () => {
    const each = storey({ courses: [{}, { from: -5.5, to: 245.5, voids: [[100, 136]] }, {}], features: ledge }, { courses: [{}, { from: -5.5 }, {}] }, corner([1, 3]));
    const { segmentsOf } = axisRuns(each);
    expect(each.walls.map((wall) => toInches(lengthOf(segmentsOf(wall.courses[1]!))))).toEqual([209.5, 120]);
    expect(toInches(lengthOf(segmentsOf(each.walls[0]!.courses[0]!)))).toBe(240);
  });
});
