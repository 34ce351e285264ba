import { describe, expect, it } from '@jest/globals';
import type { ILwpolylineEntity } from 'dxf-parser';
import { junctionDetail, renderDxf, renderSvg, storeyPlan, wallElevation } from '../../../src/domain/drawing/index.js';
import type { Drawing } from '../../../src/domain/drawing/index.js';
import { extentOf } from '../../../src/domain/drawing/shape-extent.js';
import { pieceOutline } from '../../../src/domain/drawing/slope-outline.js';
import { takeOff } from '../../../src/domain/takeoff/index.js';
import type { LaidStorey, LaidWall } from '../../../src/domain/takeoff/index.js';
import { FEATURED_JOBS, featuredSchedule } from '../../support/drawn-features.js';
import type { FeaturedJob } from '../../support/drawn-features.js';
import { clippedTexts, overlappingTexts, textsOf } from '../../support/drawn-text.js';
import { SHEET_HEADER } from '../../support/drawn-wall.js';
import { entitiesOn, lineLengths, readDxf } from './read-dxf.js';
import { RANGE } from './sample-drawings.js';

/** Exact to a millionth of a millimetre. */
const EXACT = 1e-6;
const MM = 25.4;
const job = (name: string): FeaturedJob => FEATURED_JOBS[name] as FeaturedJob;
const laid = (featured: FeaturedJob): LaidStorey => takeOff(featuredSchedule(featured), RANGE).laid.storeys[0] as LaidStorey;
const wallOf = (storey: LaidStorey, mark: string): LaidWall => storey.walls.find((wall) => wall.mark === mark) as LaidWall;
const elevation = (storey: LaidStorey, mark: string): Drawing => wallElevation(wallOf(storey, mark), storey, RANGE, 'in', SHEET_HEADER);
const words = (drawing: Drawing): string[] => textsOf(drawing).map(({ text }) => text);
const pieces = (drawing: Drawing): ILwpolylineEntity[] =>
  entitiesOn(readDxf(renderDxf(drawing)), 'pieces').filter((entity): entity is ILwpolylineEntity =>
    ((entity as { extendedData?: { customStrings?: string[] } }).extendedData?.customStrings?.[0] ?? '').startsWith('piece:'),
  );
/** Area by Green's theorem. */
const area = ({ vertices }: ILwpolylineEntity): number =>
  Math.abs(vertices.reduce((sum, { x, y }, i) => sum + x * (vertices[(i + 1) % vertices.length]?.y ?? 0) - y * (vertices[(i + 1) % vertices.length]?.x ?? 0), 0)) / 2;

describe.each(Object.keys(FEATURED_JOBS))('%s', (name) => {
  it('is drawn whole: no label over another, nothing off the sheet, readable as SVG and DXF', () => {
    const { units = 'in' } = job(name);
    const storey = laid(job(name));
    const drawings = [
      storeyPlan(storey, RANGE, units, SHEET_HEADER),
      ...storey.walls.map((wall) => wallElevation(wall, storey, RANGE, units, SHEET_HEADER)),
      ...storey.junctions.map((junction) => junctionDetail(junction, storey, RANGE, units, SHEET_HEADER, 600)),
    ];
    for (const drawing of drawings) {
      expect([drawing.name, overlappingTexts(drawing), clippedTexts(drawing)]).toEqual([drawing.name, [], []]);
      const { left, bottom, right, top } = extentOf(drawing.shapes);
      expect([drawing.name, left >= 0, bottom >= 0, right <= drawing.width, top <= drawing.height]).toEqual([drawing.name, true, true, true, true]);
      expect(renderSvg(drawing)).not.toMatch(/NaN|Infinity/);
      expect(readDxf(renderDxf(drawing)).entities.length).toBeGreaterThan(2);
    }
  });
});

describe('a gable', () => {
  // 20 ft long, 60 in rise in the middle: each sawn edge √(120² + 60²) at atan 1/2; above the stack a triangle of 120 × 60 in²
  const drawing = elevation(laid(job('free-gable')), 'A');

  it('has slopes of their true length, measured by an independent reader, and tells them with their angle', () => {
    const slopes = lineLengths(readDxf(renderDxf(drawing)), 'slopes');
    expect(slopes).toHaveLength(2);
    for (const length of slopes) expect(Math.abs(length - Math.hypot(120, 60) * MM)).toBeLessThan(EXACT);
    expect(words(drawing)).toEqual(expect.arrayContaining(['~11\'-2 3/16" at 26.6°', '13\'-0" peak', '8\'-0" foot of slope', '5\'-0" rise']));
    expect(words(drawing).filter((text) => text === '10\'-0" to the peak')).toHaveLength(2);
  });

  it('has pieces that fill the wall under the slope and no more', () => {
    const covered = pieces(drawing).reduce((sum, piece) => sum + area(piece), 0);
    // closures lie on a layer of their own; a piece's corner on a slope is rounded to a nanometre: 1e-6 mm times its edges
    expect(Math.abs(covered - (240 * 96 + 7200) * MM * MM)).toBeLessThan(0.05);
  });

  it('has every corner of a piece on its course or on the slope', () => {
    const wall = wallOf(laid(job('gable-ring')), 'B');
    // from the drawn figures: foot at the dimension line's ends 5.5 in past the nodes, 112 in over 168 in on either side
    const top = (at: number): number => 96 + (112 / 168) * Math.min(at / 25_400_000 + 5.5, 336 - 5.5 - at / 25_400_000);
    for (const course of wall.courses.filter(({ n }) => n > wall.stack.courses)) {
      for (const piece of course.pieces.filter(({ slope }) => slope !== null)) {
        for (const { at, height } of pieceOutline(wall, course, piece)) {
          const level = [course.bottom, course.bottom + course.height].includes(height);
          expect([piece.id, level || Math.abs(height / 25_400_000 - top(at)) < 1e-7]).toEqual([piece.id, true]);
          expect(height / 25_400_000).toBeLessThan(top(at) + 1e-7);
        }
      }
    }
  });

  it('of one slope stands upright at its high end: 48 in over 28 ft', () => {
    const slopes = lineLengths(readDxf(renderDxf(elevation(laid(job('lean-to')), 'B'))), 'slopes').sort((a, b) => a - b);
    expect(Math.abs((slopes[0] as number) - 48 * MM)).toBeLessThan(EXACT);
    expect(Math.abs((slopes[1] as number) - Math.hypot(48, 336) * MM)).toBeLessThan(EXACT);
  });
});

describe('ledges, tapers and changes of the core', () => {
  it('a ledge all round: bearing drawn over its forms, mitred at both ends, its height and face told', () => {
    const drawing = elevation(laid(job('ledge-all-round')), 'B');
    // decision 23: from tip to tip, 336 in and the projection of 5 in past each foam corner
    expect(Math.max(...lineLengths(readDxf(renderDxf(drawing)), 'ledges'))).toBeCloseTo(346 * MM, 6);
    expect(words(drawing)).toEqual(expect.arrayContaining(['5\'-4" ledge outside', '5\'-4" to ledge', 'ledge form LG6', 'end mitred, no corner unit']));
    expect(drawing.shapes.filter((shape) => shape.kind === 'polygon' && shape.subject === 'mitre:4')).toHaveLength(2);
  });

  it('a ledge inside is told so and its section stands in dashes', () => {
    const drawing = elevation(laid(job('ledge-part')), 'C');
    expect(words(drawing)).toEqual(expect.arrayContaining(['6\'-8" ledge inside', 'section of a ledge on the far side']));
    expect(words(drawing)).not.toContain('section of a ledge on this side');
  });

  it('a taper tells its faces and what the seat gains', () => {
    expect(words(elevation(laid(job('taper')), 'A'))).toContain('Taper top, course 6: both faces, seat 4" wider at the top');
  });

  it('a change of the core is a line at its bed, with the cores and the seat of decision 24', () => {
    const drawing = elevation(laid(job('core-change')), 'S');
    expect(lineLengths(readDxf(renderDxf(drawing)), 'core-changes')[0]).toBeCloseTo(240 * MM, 6);
    expect(words(drawing)).toEqual(
      expect.arrayContaining([
        '5\'-4" core 6" above', '5\'-4" to bed', 'From course 5 at 5\'-4" core 6", flush outside, 1 1/2" seat inside',
        'Elevation from the right of start to end, S1, core 10" then 6"',
      ]),
    );
  });

  it('a corner whose cores differ further up is told to be made by advice there', () => {
    const texts = words(elevation(laid(job('core-change-alone')), 'A'));
    expect(texts).toEqual(expect.arrayContaining(['end S1-J2: corner 90° left, wall B, by advice above 5\'-4"', 'formed as support advises']));
  });

  it('a plain wall has none of it in its legend', () => {
    const texts = words(elevation(laid({ walls: [{ mark: 'A', from: [0, 0], to: [240, 0] }] }), 'A')).join('|');
    expect(texts).not.toMatch(/slope|ledge|taper|core changes|chord|mitre/);
  });
});

describe('a radius wall unrolled', () => {
  it('is as long as its axis, measured along the dimension line where it was drawn', () => {
    // a quarter of a circle: dimension line 240·π/2, axis 234.5·π/2, an opening of 48 at 150 along the dimension line
    const drawing = elevation(laid(job('radius-free')), 'R');
    expect(words(drawing)).toEqual(expect.arrayContaining(['12\'-6"', '4\'-0"', '~31\'-5" along the dimension line', '4\'-0" × 4\'-0"']));
    expect(words(drawing)).toContain('W1: 4\'-0" × 4\'-0", sill 3\'-0", 12\'-6" from the start, buck');
    const measured = lineLengths(readDxf(renderDxf(drawing)), 'dimensions');
    expect(Math.min(...measured.map((length) => Math.abs(length - (234.5 * Math.PI * MM) / 2)))).toBeLessThan(EXACT);
  });

  it('has one upright joint between two chords in every course that has both', () => {
    const storey = laid(job('bay'));
    const wall = wallOf(storey, 'B');
    const joints = entitiesOn(readDxf(renderDxf(elevation(storey, 'B'))), 'chord-joints');
    expect(joints).toHaveLength(wall.courses.reduce((sum, { headJoints }) => sum + headJoints.filter(({ kind }) => kind === 'chord').length, 0));
    expect(joints.length).toBeGreaterThan(100);
  });
});

describe('opposite branches', () => {
  it('whose cut-outs overlap are dimensioned in rows of their own, each with its whole width', () => {
    const walls = [
      { mark: 'A', from: [0, 0], to: [480, 0] }, { mark: 'X', from: [200, 11], to: [200, 150] }, { mark: 'Y', from: [203, 0], to: [203, -150] },
    ] as const;
    const drawing = elevation(laid({ walls }), 'A');
    expect(words(drawing).filter((text) => text === '6" cut-out')).toHaveLength(2);
    expect(words(drawing)).not.toContain('3" cut-out');
    expect(overlappingTexts(drawing)).toEqual([]);
  });
});

describe('junction details', () => {
  const detail = (name: string, id: string): Drawing => {
    const storey = laid(job(name));
    const junction = storey.junctions.find((each) => each.id === id);
    if (junction === undefined) throw new Error(`no junction ${id}`);
    return junctionDetail(junction, storey, RANGE, 'in', SHEET_HEADER);
  };

  it('name the course that has no corner unit, and why', () => {
    expect(words(detail('ledge-all-round', 'S1-J2'))).toEqual(
      expect.arrayContaining(['Courses 2, 6: SQ6-L', 'Course 4: ledge forms to the mitre, no corner unit', 'Ledge on A, outside: bears at 5\'-4", 5" out']),
    );
    expect(words(detail('taper-ring', 'S1-J2'))).toContain('Course 6: taper forms to the mitre, no corner unit');
    expect(words(detail('taper-ring', 'S1-J1')).join('|')).not.toContain('mitre');
  });

  it('of a corner over a change of cores show the walls as they stand there', () => {
    expect(words(detail('core-change-ring', 'S1-J1-L2'))).toContain('Wall A: core 8", panels 2 1/2", 1\'-1" over the forms');
    const alone = words(detail('core-change-alone', 'S1-J1-L2'));
    expect(alone).toEqual(expect.arrayContaining(['Courses 5, 6: no unit of the range, by advice', 'Wall A: core 8", panels 2 1/2", 1\'-1" over the forms', 'Wall D: core 10", panels 2 1/2", 1\'-3" over the forms']));
  });

});

