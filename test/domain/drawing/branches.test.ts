import { describe, expect, it } from '@jest/globals';
import { lengthLabel, renderDxf, storeyPlan, wallElevation } from '../../../src/domain/drawing/index.js';
import type { Drawing, PolygonShape } from '../../../src/domain/drawing/index.js';
import type { LineShape } from '../../../src/domain/drawing/shapes.js';
import { inches } from '../../../src/domain/quantity/length.js';
import type { LaidStorey, LaidWall } from '../../../src/domain/takeoff/index.js';
import { demoRange, drawnStorey } from '../../support/drawn-job.js';
import type { DrawnJob } from '../../support/drawn-job.js';
import { clippedTexts, overlappingTexts, separate, textOutline, textsOf } from '../../support/drawn-text.js';
import { SHEET_HEADER } from '../../support/drawn-wall.js';
import { readDxf } from './read-dxf.js';

const RANGE = demoRange();
const RING: DrawnJob['walls'] = [
  ['A', [0, 0], [480, 0]],
  ['B', [480, 0], [480, 336]],
  ['C', [480, 336], [0, 336]],
  ['D', [0, 336], [0, 0]],
];
const wallOf = (storey: LaidStorey, mark: string): LaidWall => {
  const wall = storey.walls.find((each) => each.mark === mark);
  if (wall === undefined) throw new Error(`wall ${mark} was not laid`);
  return wall;
};
const elevation = (storey: LaidStorey, mark: string): Drawing =>
  wallElevation(wallOf(storey, mark), storey, RANGE, 'in', SHEET_HEADER);
const words = (drawing: Drawing): string[] => textsOf(drawing).map(({ text }) => text);

/** A branch that rises from A at so many degrees, drawn along its axis; the other way round where `reversed`. */
function skewed(degrees: number, reversed = false): LaidStorey {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const [from, to] = [
    [200, 5.5],
    [200 + 200 * cos, 5.5 + 200 * sin],
  ] as const;
  const walls: DrawnJob['walls'] = [...RING, reversed ? ['P', to, from, '8'] : ['P', from, to, '8']];
  return drawnStorey({ walls, dimensionsTo: 'axis' }, RANGE);
}

describe('a branch on the skew', () => {
  // decision 9: forms start (T_through/2)/sin φ on the axis, the end is cut ±(T_branch/2)·cot φ at the faces.
  // T = 11" for the 6" core of A, 13" for the 8" core of P.
  it.each([
    // P rises at φ from A, which runs to the right: of its two faces the right one starts later where φ < 90°
    { degrees: 60, reversed: false, seen: 'shorter' },
    { degrees: 45, reversed: false, seen: 'shorter' },
    { degrees: 120, reversed: false, seen: 'longer' },
    // drawn from its far end its right face is the other one
    { degrees: 60, reversed: true, seen: 'longer' },
    { degrees: 120, reversed: true, seen: 'shorter' },
  ])('at $degrees°, reversed $reversed: a dashed line for each face, the one seen $seen', ({ degrees, reversed, seen }) => {
    const storey = skewed(degrees, reversed);
    const wall = wallOf(storey, 'P');
    const drawing = elevation(storey, 'P');
    const phi = (degrees * Math.PI) / 180;
    const [trim, cut] = [5.5 / Math.sin(phi), Math.abs(6.5 / Math.tan(phi))].map(inches) as [number, number];
    const dashed = drawing.shapes
      .filter((shape): shape is LineShape => shape.kind === 'line' && shape.layer === 'hidden')
      .filter(({ from, to }) => from.x === to.x && to.y - from.y === wall.stack.height)
      .map(({ from }) => from.x)
      .sort((a, b) => a - b);
    expect(dashed).toHaveLength(2);
    expect(Math.abs((dashed[1] as number) - (dashed[0] as number) - 2 * cut)).toBeLessThanOrEqual(2);
    const first = wall.courses[0]?.pieces.filter((piece) => !piece.inside);
    const end = reversed ? wall.length - (first?.at(-1)?.to ?? NaN) : (first?.[0]?.from ?? NaN);
    expect(Math.abs(end - trim)).toBeLessThanOrEqual(1);
    const which = reversed ? 'End' : 'Start';
    const other = seen === 'longer' ? 'shorter' : 'longer';
    expect(words(drawing)).toContain(
      `${which} cut on the skew at wall A: face seen ${lengthLabel(Math.round(cut), 'in')} ${seen} than the axis, the other ${other}`,
    );
    expect(words(drawing)).toContain('faces of an end on the skew');
    const label = new RegExp(`^${which.toLowerCase()} S1-J\\d: tee ${Math.min(degrees, 180 - degrees)}°, wall A$`);
    expect(words(drawing).filter((text) => label.test(text))).toHaveLength(1);
    expect([overlappingTexts(drawing), clippedTexts(drawing)]).toEqual([[], []]);
    expect(readDxf(renderDxf(drawing)).entities.length).toBeGreaterThan(50);
  });

  it('the through wall’s section is its thickness over the sine of the angle', () => {
    const section = elevation(skewed(45), 'P').shapes.find(
      (shape): shape is PolygonShape => shape.kind === 'polygon' && shape.fill === '#d9dde0',
    );
    const xs = (section?.points ?? []).map(({ x }) => x);
    // 11" / sin 45° = 15.556"
    expect(Math.abs(Math.max(...xs) - Math.min(...xs) - inches(11 * Math.SQRT2))).toBeLessThanOrEqual(2);
  });

  it('is dimensioned within its rooms, not across other walls', () => {
    // from wall to wall at 60° and at 45°: the line of its length starts beside the through walls, not beyond them
    for (const [from, to] of [
      [[150, 5.5], [337.639, 330.5]],
      [[60, 5.5], [385, 330.5]],
    ] as const) {
      const storey = drawnStorey({ walls: [...RING, ['P', from, to]], dimensionsTo: 'axis' }, RANGE);
      const plan = storeyPlan(storey, RANGE, 'in', SHEET_HEADER);
      const axes = plan.shapes.filter((shape): shape is LineShape => shape.kind === 'line' && shape.layer === 'node');
      const ring = axes.slice(0, 4).flatMap((axis) => [axis.from, axis.to]);
      const text = textsOf(plan).find((each) => each.text === lengthLabel(wallOf(storey, 'P').dimensionLength, 'in'));
      const [xs, ys] = [ring.map(({ x }) => x), ring.map(({ y }) => y)];
      expect(text).toBeDefined();
      expect(textOutline(text as NonNullable<typeof text>).every(({ x, y }) => x > Math.min(...xs) && x < Math.max(...xs) && y > Math.min(...ys) && y < Math.max(...ys))).toBe(true);
    }
  });

  it('a square one has neither', () => {
    const drawing = elevation(skewed(90), 'P');
    expect(words(drawing).some((text) => text.includes('skew'))).toBe(false);
    expect(drawing.shapes.some(({ layer, kind }) => layer === 'hidden' && kind === 'line')).toBe(false);
  });
});

describe('letters and the lines of a tee', () => {
  it.each([96, 100, 120, 133, 150, 177, 200, 240, 271])('a branch at %d": no sku stands on a cut-out or across its edges', (x) => {
    const storey = drawnStorey({ walls: [...RING, ['X', [x, 0], [x, -100]], ['Y', [x + 60, 0], [x + 60, 200]]] }, RANGE);
    const drawing = elevation(storey, 'A');
    const model = { ...drawing, shapes: drawing.shapes.slice(0, drawing.paperFrom) };
    const rows = model.shapes.filter(
      (shape): shape is PolygonShape => shape.kind === 'polygon' && (shape.subject?.startsWith('cut-out:') ?? false),
    );
    expect(rows.map(({ subject }) => subject).sort()).toEqual(['cut-out:X', 'cut-out:Y']);
    for (const { points, subject, fill } of rows) {
      const letters = textsOf(model).filter((text) => !separate(textOutline(text), points));
      // X stands on the side that is seen and takes the panel out; behind the panel letters may stand within the dashes
      const crossing = letters.filter((text) =>
        textOutline(text).some(({ x: at }) => at < Math.min(...points.map((p) => p.x)) || at > Math.max(...points.map((p) => p.x))),
      );
      expect([subject, (fill === null ? crossing : letters).map(({ text }) => text)]).toEqual([subject, []]);
    }
    expect(words(drawing).filter((text) => text === 'ST6').length).toBeGreaterThan(30);
  });
});
