import { describe, expect, it } from '@jest/globals';
import { inches } from '../../../src/domain/quantity/length.js';
import { formLengthOf, formSegments } from '../../../src/domain/reinforcement/segments.js';

const span = (from: number, to: number) => ({ from: inches(from), to: inches(to) });
const hole = (from: number, to: number) => ({ ...span(from, to), opening: 'W' });

describe('segments of forms in a course', () => {
  it.each([
    { name: 'no opening', course: { ...span(0, 240), voids: [] }, expected: [span(0, 240)] },
    { name: 'one opening', course: { ...span(0, 240), voids: [hole(60, 96)] }, expected: [span(0, 60), span(96, 240)] },
    { name: 'two openings, listed right to left', course: { ...span(0, 240), voids: [hole(180, 200), hole(60, 96)] }, expected: [span(0, 60), span(96, 180), span(200, 240)] },
    { name: 'openings jamb to jamb leave no segment between', course: { ...span(0, 240), voids: [hole(60, 96), hole(96, 120)] }, expected: [span(0, 60), span(120, 240)] },
    { name: 'an opening to the trimmed start', course: { ...span(12, 240), voids: [hole(12, 30)] }, expected: [span(30, 240)] },
    { name: 'an opening past the last form', course: { ...span(0, 100), voids: [hole(90, 110)] }, expected: [span(0, 90)] },
    { name: 'nothing but an opening', course: { ...span(0, 100), voids: [hole(0, 100)] }, expected: [] },
  ])('$name', ({ course, expected }) => {
    expect(formSegments(course)).toEqual(expected);
    expect(formLengthOf(course)).toBe(expected.reduce((sum, { from, to }) => sum + to - from, 0));
  });
});
