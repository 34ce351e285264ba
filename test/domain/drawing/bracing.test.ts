import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { bracingPlan, type StoreyBracing } from '../../../src/domain/checks/bracing-plan.js';
import { renderDxf, storeyPlan, wallElevation, type Drawing, type DrawingPoint } from '../../../src/domain/drawing/index.js';
import { runsOf } from '../../../src/domain/drawing/drawn-bracing.js';
import { inches } from '../../../src/domain/quantity/length.js';
import type { FormRange } from '../../../src/domain/range/range.js';
import { readScheduleDocument, type Schedule } from '../../../src/domain/schedule/index.js';
import { takeOff, type LaidStorey, type LaidWall } from '../../../src/domain/takeoff/index.js';
import { drawnSchedule, type DrawnJob, type PlanRow } from '../../support/drawn-job.js';
import { clippedTexts, overlappingTexts, separate, textOutline, textsOf } from '../../support/drawn-text.js';
import { SHEET_HEADER } from '../../support/drawn-wall.js';
import { RANGE } from './sample-drawings.js';

// Stations are the bracing plan's; where they stand on the sheet is worked here from the corners of the plan, in inches.

const INCH = 25_400_000;
const IN_WALLS: readonly PlanRow[] = [
  ['A', [0, 0], [480, 0]], ['B', [480, 0], [480, 336]], ['C', [480, 336], [0, 336]], ['D', [0, 336], [0, 0]],
];
const turned = ([mark, from, to]: PlanRow): PlanRow => [mark, to, from];
const RING: DrawnJob = { walls: IN_WALLS, height: 112 };
const CLOCKWISE: DrawnJob = { ...RING, walls: IN_WALLS.map(turned).reverse() };
const ONE_TURNED: DrawnJob = { ...RING, walls: IN_WALLS.map((row, i) => (i === 0 ? turned(row) : row)) };

interface Braced {
  readonly storey: LaidStorey;
  readonly bracing: StoreyBracing;
  readonly units: Schedule['units'];
}

function braced(schedule: Schedule, range: FormRange = RANGE): Braced {
  const { laid } = takeOff(schedule, range);
  return { storey: laid.storeys[0] as LaidStorey, bracing: bracingPlan(schedule, range, laid)[0] as StoreyBracing, units: schedule.units };
}

function sample(name: string, range: FormRange = RANGE): Braced {
  const context = {
    range: RANGE.code, panel: RANGE.panel, courseHeight: RANGE.courseHeight, buckThickness: RANGE.parameters.buckThickness,
    cores: [...RANGE.cores.keys()], coreWidths: new Map([...RANGE.cores.values()].map(({ code, width }) => [code, width])),
  };
  const read = readScheduleDocument(JSON.parse(readFileSync(new URL(`../../../shared/samples/${name}.schedule.json`, import.meta.url), 'utf8')), context);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return braced(read.value, range);
}

const planOf = ({ storey, bracing, units }: Braced): Drawing => storeyPlan(storey, RANGE, units, SHEET_HEADER, bracing);
const wallOf = ({ storey }: Braced, mark: string): LaidWall => storey.walls.find((wall) => wall.mark === mark) as LaidWall;
const elevationOf = (job: Braced, mark: string, range: FormRange = RANGE): Drawing =>
  wallElevation(wallOf(job, mark), job.storey, range, job.units, SHEET_HEADER, job.bracing);
const stationsOf = ({ bracing }: Braced, mark: string): number[] => (bracing.walls.find((wall) => wall.mark === mark)?.braces ?? []).map(({ at }) => at);
const words = (drawing: Drawing): string[] => textsOf(drawing).map(({ text }) => text);

type Line = { readonly from: DrawingPoint; readonly to: DrawingPoint };

/** Lines of the model on the layer of braces: on a plan from the form to the foot. */
const braceLines = ({ shapes, paperFrom }: Drawing): Line[] =>
  shapes.slice(0, paperFrom).flatMap((shape) => (shape.kind === 'line' && shape.layer === 'brace' ? [shape] : []));

/** Uprights of an elevation from left to right: place and height over the wall's foot [in]. */
const uprights = (drawing: Drawing): { x: number; height: number }[] =>
  braceLines(drawing)
    .filter(({ from, to }) => from.x === to.x)
    .map(({ from, to }) => ({ x: from.x / INCH, height: (to.y - from.y) / INCH }))
    .sort((a, b) => a.x - b.x);

/** Lines of a plan in inches from the lower left corner of its panels. */
function feet(drawing: Drawing): (readonly [number, number, number, number])[] {
  const points = drawing.shapes.slice(0, drawing.paperFrom).flatMap((shape) => (shape.kind === 'polygon' && shape.layer === 'piece' ? shape.points : []));
  const [x, y] = [Math.min(...points.map((point) => point.x)), Math.min(...points.map((point) => point.y))];
  return braceLines(drawing).map(({ from, to }) => [from.x - x, from.y - y, to.x - x, to.y - y].map((length) => Math.round((length / INCH) * 1e4) / 1e4) as never);
}

describe('braces on the plan', () => {
  /** Axis 5 1/2 in inside the foam face, inner face 11 in, feet 72 in from it: A stands at y = 11, B at x = 469, C at y = 325, D at x = 11. */
  const expected = (job: Braced, ways: Record<string, 1 | -1>): number[][] => {
    const near = (mark: string, long: number): number[] => stationsOf(job, mark).map((at) => 5.5 + (ways[mark] === 1 ? at / INCH : long - 11 - at / INCH));
    const far = (mark: string, long: number): number[] => near(mark, long).map((along) => long - along);
    return [
      ...near('A', 480).map((x) => [x, 11, x, 83]), ...near('B', 336).map((y) => [469, y, 397, y]),
      ...far('C', 480).map((x) => [x, 325, x, 253]), ...far('D', 336).map((y) => [11, y, 83, y]),
    ].map((line) => line.map((value) => Math.round(value * 1e4) / 1e4));
  };
  const sorted = (lines: readonly (readonly number[])[]): string[] => lines.map((line) => line.join(' ')).sort();

  it.each([
    ['counter-clockwise', RING, { A: 1, B: 1, C: 1, D: 1 }],
    ['clockwise', CLOCKWISE, { A: -1, B: -1, C: -1, D: -1 }],
    ['with one wall turned round', ONE_TURNED, { A: -1, B: 1, C: 1, D: 1 }],
  ] as const)('stand inside a ring drawn %s, at the stations of the plan, their feet to scale', (_, drawn, ways) => {
    const job = braced(drawnSchedule(drawn));
    const lines = feet(planOf(job));
    // 469 in of axis, ⌈469/72⌉ + 1 = 8, twice; 325 in, ⌈325/72⌉ + 1 = 6, twice
    expect([lines.length, job.bracing.count]).toEqual([28, 28]);
    expect(sorted(lines)).toEqual(sorted(expected(job, ways)));
  });

  /** Between two on a radius wall: chords 2·r·sin(Δ/2R) at the concave face and at the feet, Δ along the axis of radius R (234 1/2 in; the face 229, the feet 157). */
  it('stand along the arc of a radius wall', () => {
    const job = sample('lantern-hall');
    const stations = stationsOf(job, 'Garden');
    const { paperFrom, shapes } = planOf(job);
    const bars = shapes.slice(0, paperFrom).flatMap((shape, i) => (shape.kind === 'polygon' && shape.subject?.startsWith('brace:Garden:') ? [i] : []));
    const lines = bars.map((i) => shapes[i - 1] as unknown as Line);
    expect(lines).toHaveLength(stations.length);
    const chord = (a: DrawingPoint, b: DrawingPoint): number => Math.hypot(a.x - b.x, a.y - b.y) / INCH;
    lines.slice(1).forEach(({ from, to }, i) => {
      const last = lines[i] as Line;
      const half = Math.sin(((stations[i + 1] as number) - (stations[i] as number)) / INCH / 2 / 234.5);
      expect(chord(from, last.from)).toBeCloseTo(2 * 229 * half, 5);
      expect(chord(to, last.to)).toBeCloseTo(2 * 157 * half, 5);
    });
  });

  it('are counted in the legend and by wall', () => {
    const texts = words(planOf(braced(drawnSchedule(RING))));
    expect(texts).toContain(`braces on the inside, foot 6'-0" from the form: 28 braces, 6'-0" apart at most`);
    expect(texts).toContain('Braces by wall, numbered from its start: A 8, B 6, C 8, D 6');
    expect(texts.some((text) => text.startsWith('Another wall'))).toBe(false);
  });

  /** 80 in over the forms leave 58 in between them: no foot of A or C stands 72 in from its form; those of B and D do. */
  it('are named where another wall stands nearer than their foot', () => {
    const walls: PlanRow[] = [['A', [0, 0], [480, 0]], ['B', [480, 0], [480, 80]], ['C', [480, 80], [0, 80]], ['D', [0, 80], [0, 0]]];
    const note = words(planOf(braced(drawnSchedule({ walls })))).find((text) => text.startsWith('Another wall'));
    expect(note?.endsWith(': A 1 to 8; C 1 to 8')).toBe(true);
  });
});

describe('braces on the elevation', () => {
  it.each([['outside on the right', RING, 1], ['outside on the left', CLOCKWISE, -1]] as const)('%s: an upright at each station of the plan', (_, drawn, way) => {
    const job = braced(drawnSchedule(drawn));
    const stations = stationsOf(job, 'A').map((at) => (way * at) / INCH).sort((a, b) => a - b);
    const drawing = elevationOf(job, 'A');
    const lines = uprights(drawing);
    expect(lines.map(({ x }) => x - (lines[0]?.x ?? 0)).map((x) => x.toFixed(4))).toEqual(stations.map((at) => (at - (stations[0] ?? 0)).toFixed(4)));
    // seven courses of 16 in stand over the 8 ft at which a brace meets the wall
    expect(new Set(lines.map(({ height }) => height))).toEqual(new Set([96]));
    const numbers = textsOf(drawing).filter(({ layer }) => layer === 'brace').sort((a, b) => a.at.x - b.at.x).map(({ text }) => text);
    expect(numbers).toEqual(way === 1 ? ['1', '2', '3', '4', '5', '6', '7', '8'] : ['8', '7', '6', '5', '4', '3', '2', '1']);
  });

  /** Braces to 12 ft: East stands 112 in high at its corners and rises 54 in over 168 in, so 18 1/2 in in 112 + 54·18.5/168 = 117.9464, 84 1/4 in in 139.0804, 150 in in 144. */
  it('follow the slope of a gable and the top of a low wall', () => {
    const range = { ...RANGE, parameters: { ...RANGE.parameters, braceTop: inches(144) } };
    const job = sample('lantern-hall', range);
    const heights = (mark: string): string[] => uprights(elevationOf(job, mark, range)).map(({ height }) => height.toFixed(3));
    expect(heights('East')).toEqual(['117.946', '139.080', '144.000', '144.000', '139.080', '117.946']);
    expect(heights('Garden')).toEqual(Array.from({ length: 8 }, () => '48.000'));
  });

  /**
   * No wind is stated, so 100 lb/ft at the top (hanna-formwork, the least): of 9 ft held at 8 ft, 6 ft wide, foot 6 ft out:
   * horizontal 100·9/8·6 = 675 lb, uplift 100·9/6·6 = 900 lb, axial √(675² + 900²) = 1125 lb; in kN 3.00, 4.00 and 5.00.
   */
  it('lists stations and forces in the units of the schedule', () => {
    const job = sample('harbour-store');
    const texts = words(elevationOf(job, 'B'));
    expect(texts).toContain(`Braces from the start: 1 at 1'-5 1/2", 2 at 6'-8 3/4", 3 at 12'-0", 4 at 16'-0", 5 at 21'-3 1/4", 6 at 26'-6 1/2"`);
    expect(texts).toContain('Braces 1 to 6, each: 1125 lb axial, 675 lb horizontal, 900 lb uplift');
    expect(texts).toContain(`brace on the inside, behind the wall, to 8'-0" up it, foot 6'-0" from the form`);
    expect(words(elevationOf({ ...job, units: 'mm' }, 'B'))).toContain('Braces 1 to 6, each: 5.00 kN axial, 3.00 kN horizontal, 4.00 kN uplift');
  });

  it('says it where the wind leaves the method', () => {
    const job = braced(drawnSchedule(RING));
    const walls = job.bracing.walls.map((wall) => ({ ...wall, braces: wall.braces.map((brace) => ({ ...brace, axial: null, horizontal: null, uplift: null })) }));
    expect(words(elevationOf({ ...job, bracing: { ...job.bracing, walls } }, 'B'))).toContain('Braces 1 to 6, each: no force, the wind is outside the method');
  });
});

describe('drawings with braces', () => {
  const HALL = sample('lantern-hall');
  const SHEETS = [
    ['the plan of many short walls', () => planOf(sample('mill-lane-house'))],
    ['the plan of a curve', () => planOf(HALL)],
    ['the elevation of a gable', () => elevationOf(HALL, 'East')],
    ['the elevation of a wall with a tee', () => elevationOf(HALL, 'South')],
    ['the elevation of a curve', () => elevationOf(HALL, 'Garden')],
  ] as const;

  it.each(SHEETS)('%s: no text touches another, no letters lie on a brace, nothing leaves the sheet', (_, draw) => {
    const drawing = draw();
    expect([overlappingTexts(drawing), clippedTexts(drawing)]).toEqual([[], []]);
    const lines = braceLines(drawing);
    expect(lines.length).toBeGreaterThan(0);
    for (const { from, to } of lines) {
      for (const { x, y } of [from, to]) expect(x >= 0 && y >= 0 && x <= drawing.width && y <= drawing.height).toBe(true);
    }
    const crossed = textsOf(drawing).filter((text) => lines.some(({ from, to }) => !separate(textOutline(text), [from, to])));
    expect(crossed.map(({ text }) => text)).toEqual([]);
  });

  it('have them on a layer of their own in DXF; without a bracing plan nothing lies on it', () => {
    const job = braced(drawnSchedule(RING));
    const on = (drawing: Drawing): number => renderDxf(drawing).split('\n8\nbraces\n').length - 1;
    // 28 lines, 28 bars, 28 plates, the numbers, two shapes of the legend
    expect(on(planOf(job))).toBe(28 * 3 + textsOf(planOf(job)).filter(({ layer }) => layer === 'brace').length + 2);
    expect(on(storeyPlan(job.storey, RANGE, 'in', SHEET_HEADER))).toBe(0);
    expect(on(wallElevation(wallOf(job, 'A'), job.storey, RANGE, 'in', SHEET_HEADER))).toBe(0);
  });
});

describe('runsOf', () => {
  it('tells three in a row by their ends', () => expect(runsOf([1, 2, 4, 5, 6, 9])).toBe('1, 2, 4 to 6, 9'));
});
