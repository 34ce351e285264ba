import { describe, expect, it } from '@jest/globals';
import { inches } from '../../../src/domain/quantity/length.js';
import { layersOf, solveStack } from '../../../src/domain/takeoff/index.js';
import { heron } from '../../support/small-schedules.js';

const shape = ({ courses, strips, ripped, deviation }: { courses: number; strips: number; ripped: number | null; deviation: number }) => ({
  courses,
  strips,
  rippedIn: ripped === null ? null : ripped / 25_400_000,
  deviationIn: deviation / 25_400_000,
});
const solved = (heightIn: number, range = heron()) => {
  const { chosen, alternatives, withinTolerance } = solveStack(inches(heightIn), range);
  return { chosen: shape(chosen), alternatives: alternatives.map(shape), withinTolerance };
};

// Figures of the project's decision 11; strip heights and tolerances are common practice, no source.
describe('height stack', () => {
  it("lays 8'-0\" as six plain courses", () => {
    expect(solved(96).chosen).toEqual({ courses: 6, strips: 0, rippedIn: null, deviationIn: 0 });
  });

  it("lays 9'-0\" as six courses and one ripped to 12 in, and lists six courses with four 3 in strips beside it", () => {
    const { chosen, alternatives } = solved(108);
    expect(chosen).toEqual({ courses: 7, strips: 0, rippedIn: 12, deviationIn: 0 });
    expect(alternatives).toContainEqual({ courses: 6, strips: 4, rippedIn: null, deviationIn: 0 });
  });

  it("lays 9'-0\" with four strips where the range prefers strips, and lists the ripped course", () => {
    const { chosen, alternatives } = solved(108, heron({ parameters: { stackPrefers: 'strips' } }));
    expect(chosen).toEqual({ courses: 6, strips: 4, rippedIn: null, deviationIn: 0 });
    expect(alternatives).toContainEqual({ courses: 7, strips: 0, rippedIn: 12, deviationIn: 0 });
  });

  it('ranks 6 + 4 strips of 3 3/8 in (+1 1/2) before 6 + 3 (−1 7/8)', () => {
    const { alternatives } = solved(108, heron({ top: { strip: { height: 3.375 } } }));
    const strips = alternatives.filter((stack) => stack.rippedIn === null && stack.courses === 6);
    expect(strips.slice(0, 2)).toEqual([
      { courses: 6, strips: 4, rippedIn: null, deviationIn: 1.5 },
      { courses: 6, strips: 3, rippedIn: null, deviationIn: -1.875 },
    ]);
  });

  it('keeps a stack within a quarter inch and no farther', () => {
    expect(solved(96.25).chosen).toEqual({ courses: 6, strips: 0, rippedIn: null, deviationIn: -0.25 });
    expect(solved(96.5).chosen.deviationIn).toBe(0);
  });

  it('combines strips with a ripped course where the rip alone would be too low', () => {
    // 100 in = 5 x 16 + 2 x 3 + 14: a rip of 4 in over six courses is below the 8 in minimum.
    expect(solved(100).chosen).toEqual({ courses: 6, strips: 2, rippedIn: 14, deviationIn: 0 });
  });

  it('reports a height that no stack meets', () => {
    // One course and a remainder of 4 in: no strip fits over a single course and 4 in cannot be ripped.
    expect(solved(20)).toMatchObject({ withinTolerance: false, chosen: { courses: 1, deviationIn: -4 } });
  });

  it.each([96, 100, 108, 111, 117, 131, 240])('never puts a strip first, last, beside another or under the ripped course: %d in', (heightIn) => {
    const range = heron({ parameters: { stackPrefers: 'strips' } });
    const { chosen, alternatives } = solveStack(inches(heightIn), range);
    for (const stack of [chosen, ...alternatives]) {
      const layers = layersOf(stack, range);
      layers.forEach((layer, index) => {
        if (layer.kind === 'course') return;
        expect(layers[index - 1]).toMatchObject({ kind: 'course', ripped: false });
        expect(layers[index + 1]).toMatchObject({ kind: 'course', ripped: false });
      });
      expect(layers.reduce((sum, layer) => sum + layer.height, 0)).toBe(stack.height);
      expect(layers.filter((layer) => layer.kind === 'course')).toHaveLength(stack.courses);
      expect(layers.filter((layer) => layer.kind === 'strip')).toHaveLength(stack.strips);
    }
  });

  it('gives strips the highest bed joints', () => {
    const range = heron({ parameters: { stackPrefers: 'strips' } });
    const strips = layersOf(solveStack(inches(102), range).chosen, range).filter((layer) => layer.kind === 'strip');
    expect(strips.map((strip) => strip.course)).toEqual([4, 5]);
  });
});
