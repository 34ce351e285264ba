import { describe, expect, it } from '@jest/globals';
import type { IDxf, IEntity, ILwpolylineEntity, ITextEntity } from 'dxf-parser';
import { renderDxf, storeyPlan, wallElevation } from '../../../src/domain/drawing/index.js';
import type { Drawing, Shape } from '../../../src/domain/drawing/index.js';
import { dxfText } from '../../../src/domain/drawing/dxf-text.js';
import { hatchStrokes } from '../../../src/domain/drawing/hatch-lines.js';
import { LAYERS } from '../../../src/domain/drawing/ink.js';
import { CAP_HEIGHT } from '../../../src/domain/drawing/text-width.js';
import { SHEET_HEADER } from '../../support/drawn-wall.js';
import { textsOf } from '../../support/drawn-text.js';
import { distance, entitiesOn as on, lineLengths, readDxf } from './read-dxf.js';
import { RANGE, detailsOf, elevationsOf, laidSample, plansOf } from './sample-drawings.js';

// Everything is read back by dxf-parser, a general-purpose reader that shares no code with the writer.

const SAMPLES = ['harbour-store', 'mill-lane-house'] as const;
/** A millionth of a millimetre, a nanometre. */
const EXACT = 1e-6;
const NM_PER_MM = 1e6;

const read = (drawing: Drawing): IDxf => readDxf(renderDxf(drawing));
const outlines = (entities: readonly IEntity[], subject: string): ILwpolylineEntity[] =>
  entities
    .filter((entity): entity is ILwpolylineEntity => entity.type === 'LWPOLYLINE')
    .filter((entity) => subjectOf(entity).startsWith(subject));
const subjectOf = (entity: IEntity): string =>
  (entity as { extendedData?: { customStrings?: string[] } }).extendedData?.customStrings?.[0] ?? '';
/** Lengths of the four sides, in order round. */
const sides = ({ vertices }: ILwpolylineEntity): number[] =>
  vertices.map((vertex, i) => distance(vertex, vertices[(i + 1) % vertices.length]));
const bounds = ({ vertices }: ILwpolylineEntity): { left: number; right: number; bottom: number; top: number } => {
  const [xs, ys] = [vertices.map(({ x }) => x), vertices.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), bottom: Math.min(...ys), top: Math.max(...ys) };
};

/** The worst difference between two lists of as many numbers, each in order of size. */
function worst(found: readonly number[], wanted: readonly number[]): number {
  expect(found).toHaveLength(wanted.length);
  const [a, b] = [found, wanted].map((list) => [...list].sort((first, second) => first - second));
  return Math.max(0, ...(a as number[]).map((value, i) => Math.abs(value - ((b as number[])[i] as number))));
}

describe.each(SAMPLES)('%s in DXF, measured by an independent reader', (name) => {
  const sample = laidSample(name);

  it('plan: every wall has its axis from node to node, and every opening its width and the wall’s thickness', () => {
    for (const storey of sample.storeys) {
      const dxf = read(storeyPlan(storey, RANGE, sample.units, SHEET_HEADER));
      const axes = lineLengths(dxf, 'axes');
      expect(worst(axes, storey.walls.map(({ length }) => length / NM_PER_MM))).toBeLessThan(EXACT);
      const openings = storey.walls.flatMap((wall) => wall.openings.map((opening) => ({ wall, opening })));
      expect(openings.length).toBeGreaterThan(0);
      for (const { wall, opening } of openings) {
        const [outline, ...more] = outlines(on(dxf, 'openings'), `opening:${opening.mark}`).filter(
          (candidate) => subjectOf(candidate) === `opening:${opening.mark}`,
        );
        expect(more).toEqual([]);
        const [width, thickness] = [(opening.to - opening.from) / NM_PER_MM, wall.thickness / NM_PER_MM];
        expect(worst(sides(outline as ILwpolylineEntity), [width, thickness, width, thickness])).toBeLessThan(EXACT);
      }
    }
  });

  it('plan: a wall between two corners that are not by advice has panels as long as its foam faces', () => {
    let measured = 0;
    for (const storey of sample.storeys) {
      const panels = outlines(on(read(storeyPlan(storey, RANGE, sample.units, SHEET_HEADER)), 'pieces'), '').flatMap(sides);
      for (const wall of storey.walls) {
        const ends = [wall.startJunction, wall.endJunction].map((id) => storey.junctions.find((junction) => junction.id === id));
        if (ends.some((junction) => junction?.kind !== 'corner' || junction.walls.length !== 2)) continue;
        // closed form of decision 1: a face runs past the node by (T/2)·tan(turn/2), signed, equal thickness on both sides
        const past = ends.reduce((sum, junction) => sum + Math.tan(((junction?.turn ?? 0) * Math.PI) / 360), 0);
        for (const side of [1, -1]) {
          const wanted = (wall.length + (side * past * wall.thickness) / 2) / NM_PER_MM;
          const off = Math.min(...panels.map((length) => Math.abs(length - wanted)));
          expect([wall.mark, side, off < EXACT ? 0 : off]).toEqual([wall.mark, side, 0]);
          measured += 1;
        }
      }
    }
    expect(measured).toBeGreaterThan(3);
  });

  it('elevation: every piece has its own edges, every opening its size, and the rows of dimensions their lengths', () => {
    for (const storey of sample.storeys) {
      for (const wall of storey.walls) {
        const dxf = read(wallElevation(wall, storey, RANGE, sample.units, SHEET_HEADER));
        const laid = wall.courses.flatMap((course) => course.pieces.map((piece) => ({ course, piece })));
        const drawn = [...outlines(on(dxf, 'pieces'), 'piece:'), ...outlines(on(dxf, 'end-closures'), 'piece:')].map(
          (outline) => ({ subject: subjectOf(outline), ...bounds(outline) }),
        );
        expect(drawn).toHaveLength(laid.length);
        const foot = Math.min(...drawn.map(({ bottom }) => bottom));
        const boxOf = ({ course, piece }: (typeof laid)[number]): (typeof drawn)[number] | undefined =>
          drawn.find(
            ({ subject, bottom }) =>
              subject === `piece:${piece.id}` && Math.abs(bottom - foot - course.bottom / NM_PER_MM) < EXACT,
          );
        // where station 0 lies on the sheet, from the first piece; every other piece must agree
        const [first] = laid;
        const origin = first === undefined ? undefined : boxOf(first);
        if (first === undefined || origin === undefined) throw new Error(`wall ${wall.mark} has no first piece`);
        const mirrored = wall.outside === 'left';
        const node = mirrored ? origin.right + first.piece.from / NM_PER_MM : origin.left - first.piece.from / NM_PER_MM;
        for (const { course, piece } of laid) {
          const box = boxOf({ course, piece });
          const [from, to] = [piece.from / NM_PER_MM, piece.to / NM_PER_MM];
          const edges = mirrored ? [node - to, node - from] : [node + from, node + to];
          const found = [box?.left ?? NaN, box?.right ?? NaN, (box?.top ?? NaN) - (box?.bottom ?? NaN)];
          const wanted = [...edges, course.height / NM_PER_MM];
          expect([piece.id, found.every((value, i) => Math.abs(value - (wanted[i] as number)) < EXACT)]).toEqual([piece.id, true]);
        }
        for (const opening of wall.openings) {
          const outline = outlines(on(dxf, 'openings'), 'opening:').find((each) => subjectOf(each) === `opening:${opening.mark}`);
          const [width, height] = [(opening.formsTo - opening.formsFrom) / NM_PER_MM, (opening.head - opening.sill) / NM_PER_MM];
          expect(worst(sides(outline as ILwpolylineEntity), [width, height, width, height])).toBeLessThan(EXACT);
        }
        const measured = lineLengths(dxf, 'dimensions');
        for (const length of [wall.length, wall.dimensionLength, wall.stack.height])
          expect(Math.min(...measured.map((each) => Math.abs(each - length / NM_PER_MM)))).toBeLessThan(EXACT);
      }
    }
  });
});

/** How many entities a shape is, counted from what the neutral shape says of itself. */
function entitiesOf(shape: Shape): number {
  if (shape.kind === 'hatch') return hatchStrokes(shape).length;
  if (shape.kind !== 'dimension') return 1;
  const extensions = [
    [shape.from, shape.a],
    [shape.to, shape.b],
  ].filter(([from, to]) => Math.hypot((to?.x ?? 0) - (from?.x ?? 0), (to?.y ?? 0) - (from?.y ?? 0)) > shape.tick).length;
  // dimension line, two ticks, text
  return extensions + 4;
}

const total = (shapes: readonly Shape[]): number => shapes.reduce((sum, shape) => sum + entitiesOf(shape), 0);

describe('every DXF of the samples', () => {
  const drawings = [...SAMPLES, 'quay-workshop'].flatMap((name) => {
    const sample = laidSample(name);
    return [...plansOf(sample), ...elevationsOf(sample), ...detailsOf(sample)];
  });

  it('opens with as many entities as the drawing has: the model’s in the model, the paper’s in one block', () => {
    expect(drawings.length).toBeGreaterThan(60);
    for (const drawing of drawings) {
      const dxf = read(drawing);
      const [model, paper] = [drawing.shapes.slice(0, drawing.paperFrom), drawing.shapes.slice(drawing.paperFrom)];
      expect([drawing.name, dxf.entities.filter(({ type }) => type !== 'INSERT').length]).toEqual([drawing.name, total(model)]);
      expect(dxf.entities.filter(({ type }) => type === 'INSERT')).toHaveLength(1);
      expect([drawing.name, dxf.blocks['sheet']?.entities?.length]).toEqual([drawing.name, total(paper)]);
    }
  });

  it('says its unit is the millimetre and lists every layer that an entity lies on', () => {
    for (const drawing of drawings) {
      const dxf = read(drawing);
      // $INSUNITS 4 = millimetres, $MEASUREMENT 1 = metric: the published table of the format, from memory
      expect([dxf.header['$INSUNITS'], dxf.header['$MEASUREMENT'], dxf.header['$ACADVER']]).toEqual([4, 1, 'AC1015']);
      const listed = Object.keys(dxf.tables.layer.layers);
      const used = new Set([...dxf.entities, ...(dxf.blocks['sheet']?.entities ?? [])].map(({ layer }) => layer));
      expect([...used].filter((layer) => !listed.includes(layer))).toEqual([]);
      expect(listed).toHaveLength(LAYERS.length + 1);
    }
  });

  it('is plain ASCII, and its handles are unlike each other', () => {
    for (const drawing of drawings) {
      const text = renderDxf(drawing);
      expect(text).toMatch(/^[\n -~]*$/);
      const rows = text.split('\n');
      const handles = rows.filter((_, i) => i % 2 === 1 && rows[i - 1] === '5' && rows[i - 2] !== '$HANDSEED');
      expect(new Set(handles).size).toBe(handles.length);
      expect(handles.length).toBeGreaterThan(drawing.shapes.length);
    }
  });
});

describe('text in DXF', () => {
  it('stands where the neutral drawing has it: alignment, angle, height of the capitals', () => {
    const [plan] = plansOf(laidSample('mill-lane-house'));
    if (plan === undefined) throw new Error('no plan');
    const dxf = read(plan);
    const found = [...dxf.entities, ...(dxf.blocks['sheet']?.entities ?? [])].filter(
      (entity): entity is ITextEntity => entity.type === 'TEXT',
    );
    const wanted = textsOf(plan);
    expect(found).toHaveLength(wanted.length);
    expect(new Set(wanted.map(({ angle }) => angle)).size).toBeGreaterThan(2);
    wanted.forEach((text, i) => {
      const entity = found[i] as ITextEntity;
      expect([entity.text, entity.halign, entity.valign]).toEqual([
        dxfText(text.text),
        { start: 0, middle: 1, end: 2 }[text.anchor],
        2,
      ]);
      expect(distance(entity.endPoint, { x: text.at.x / NM_PER_MM, y: text.at.y / NM_PER_MM, z: 0 })).toBeLessThan(EXACT);
      expect(Math.abs(entity.textHeight - (text.size * CAP_HEIGHT) / NM_PER_MM)).toBeLessThan(EXACT);
      expect(entity.rotation ?? 0).toBeCloseTo(text.angle, 6);
    });
  });

  it.each([
    // the format's own escapes, from memory: \U+XXXX a sign, %%% a per cent sign, "^ " a caret
    ['8′ × 45°', '8\\U+2032 \\U+00D7 45\\U+00B0'],
    ['50 %', '50 %'],
    ['a%%db', 'a%%%%%%db'],
    ['a^Jb', 'a^ Jb'],
    ['C:\\U+0041', 'C:\\U+005CU+0041'],
    ['one\r\n  0\nEOF', 'one   0 EOF'],
    ['🏠', '\\U+D83C\\U+DFE0'],
    ['', ''],
  ])('%j is written %j', (text, wanted) => {
    expect(dxfText(text)).toBe(wanted);
  });

  it('from a schedule can neither end a group nor start one', () => {
    const sample = laidSample('harbour-store');
    const [storey] = sample.storeys;
    const [wall] = storey?.walls ?? [];
    if (storey === undefined || wall === undefined) throw new Error('no wall');
    const header = { ...SHEET_HEADER, jobName: 'Quay\n  0\nENDSEC\n  0\nEOF\n' };
    const plain = read(wallElevation(wall, storey, RANGE, 'in', SHEET_HEADER));
    const dxf = read(wallElevation(wall, storey, RANGE, 'in', header));
    expect(dxf.entities).toHaveLength(plain.entities.length);
    expect(dxf.blocks['sheet']?.entities).toHaveLength(plain.blocks['sheet']?.entities?.length ?? NaN);
  });
});
