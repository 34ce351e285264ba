import { describe, expect, it } from '@jest/globals';
import type { IArcEntity, IEntity, ILwpolylineEntity } from 'dxf-parser';
import { junctionDetail, renderDxf, renderSvg, storeyPlan, wallElevation } from '../../../src/domain/drawing/index.js';
import type { Drawing, PolygonShape } from '../../../src/domain/drawing/index.js';
import { extentOf } from '../../../src/domain/drawing/shape-extent.js';
import { besideLines } from '../../../src/domain/drawing/label-tiers.js';
import { takeOff } from '../../../src/domain/takeoff/index.js';
import type { LaidStorey } from '../../../src/domain/takeoff/index.js';
import { featuredSchedule, randomFeatured } from '../../support/drawn-features.js';
import { clippedTexts, overlappingTexts } from '../../support/drawn-text.js';
import { SHEET_HEADER } from '../../support/drawn-wall.js';
import { entitiesOn, lineLengths, readDxf } from './read-dxf.js';
import { RANGE } from './sample-drawings.js';

const NM_PER_MM = 1e6;
const EXACT = 1e-6;
const SEEDS = Array.from({ length: 7 }, (_, i) => 101 + i);

const subjectOf = (entity: IEntity): string =>
  (entity as { extendedData?: { customStrings?: string[] } }).extendedData?.customStrings?.[0] ?? '';

/** How far the outlines of pieces that the independent reader finds lie from those drawn, corner by corner [mm]. */
function worstCorner(drawing: Drawing): number {
  const drawn = drawing.shapes.filter((shape): shape is PolygonShape => shape.kind === 'polygon' && (shape.subject?.startsWith('piece:') ?? false));
  const dxf = readDxf(renderDxf(drawing));
  const read = [...entitiesOn(dxf, 'pieces'), ...entitiesOn(dxf, 'end-closures')].filter(
    (entity): entity is ILwpolylineEntity => entity.type === 'LWPOLYLINE' && subjectOf(entity).startsWith('piece:'),
  );
  expect(read).toHaveLength(drawn.length);
  const key = (subject: string, x: number, y: number): string => `${subject} ${x.toFixed(3)} ${y.toFixed(3)}`;
  const corners = new Map(read.flatMap((entity) => entity.vertices.map((vertex) => [key(subjectOf(entity), vertex.x, vertex.y), vertex] as const)));
  return Math.max(
    0,
    ...drawn.flatMap(({ subject, points }) =>
      points.map(({ x, y }) => {
        const [a, b] = [x / NM_PER_MM, y / NM_PER_MM];
        const found = corners.get(key(subject ?? '', a, b));
        return found === undefined ? Infinity : Math.hypot(found.x - a, found.y - b);
      }),
    ),
  );
}

describe('random houses with gables, ledges, tapers, changes of the core and curves', () => {
  const seen = new Set<string>();

  it.each(SEEDS)('seed %d: drawn without a label over another or anything off the sheet, and read back to a millionth of a millimetre', (seed) => {
    const job = randomFeatured(seed);
    const { units = 'in' } = job;
    const storey = takeOff(featuredSchedule(job), RANGE).laid.storeys[0] as LaidStorey;
    for (const { kind } of job.features ?? []) seen.add(kind);
    if (Object.keys(job.arcs ?? {}).length > 0) seen.add('arc');
    const elevations = storey.walls.map((wall) => [wall, wallElevation(wall, storey, RANGE, units, SHEET_HEADER)] as const);
    const plan = storeyPlan(storey, RANGE, units, SHEET_HEADER);
    const details = storey.junctions.map((junction) => junctionDetail(junction, storey, RANGE, units, SHEET_HEADER, 600));
    for (const drawing of [plan, ...details, ...elevations.map(([, drawn]) => drawn)]) {
      expect([drawing.name, overlappingTexts(drawing), clippedTexts(drawing)]).toEqual([drawing.name, [], []]);
      const { left, bottom, right, top } = extentOf(drawing.shapes);
      expect([drawing.name, left >= 0, bottom >= 0, right <= drawing.width, top <= drawing.height]).toEqual([drawing.name, true, true, true, true]);
      expect(renderSvg(drawing)).not.toMatch(/NaN|Infinity/);
    }
    for (const [wall, drawing] of elevations) {
      expect([wall.mark, worstCorner(drawing) < EXACT]).toEqual([wall.mark, true]);
      if (wall.gable === null) continue;
      const slopes = lineLengths(readDxf(renderDxf(drawing)), 'slopes');
      // Pythagoras over the slope's run; the take-off's own length is rounded to a nanometre
      for (const { from, to, length } of wall.gable.slopes) {
        const wanted = Math.hypot(to - from, wall.gable.rise) / NM_PER_MM;
        expect(Math.min(...slopes.map((each) => Math.abs(each - wanted)))).toBeLessThan(EXACT);
        expect(Math.abs(length / NM_PER_MM - wanted)).toBeLessThan(EXACT);
      }
    }
    const axes = entitiesOn(readDxf(renderDxf(plan)), 'axes').filter((entity): entity is IArcEntity => entity.type === 'ARC');
    const curves = storey.walls.filter(({ arc }) => arc !== null);
    expect(axes).toHaveLength(curves.length);
    for (const { arc, length } of curves) {
      const found = axes.filter(({ radius }) => Math.abs(radius - (arc?.axisRadius ?? NaN) / NM_PER_MM) < EXACT);
      const sweeps = found.map(({ startAngle, endAngle }) => (endAngle - startAngle + 2 * Math.PI) % (2 * Math.PI));
      expect(Math.min(...sweeps.map((sweep) => Math.abs((sweep * (arc?.axisRadius ?? NaN) - length) / NM_PER_MM)))).toBeLessThan(2 * EXACT);
    }
  });

  it('had every feature among them', () => {
    expect([...seen].sort()).toEqual(['arc', 'core-change', 'gable', 'ledge', 'taper-top']);
  });
});

describe('hung figures beside the extension lines of farther rows', () => {
  it.each([
    // wanted middle, width, lines, found: as far from each line as half the width
    { centre: 0, width: 10, lines: [], found: 0 },
    { centre: 0, width: 10, lines: [6], found: 0 },
    { centre: 0, width: 10, lines: [3], found: -2 },
    { centre: 0, width: 10, lines: [-4], found: 1 },
    { centre: 0, width: 10, lines: [-6, 2], found: 7 },
    { centre: 0, width: 10, lines: [-2, 2], found: -7 },
  ])('$lines from $centre, $width wide: $found', ({ centre, width, lines, found }) => {
    expect(besideLines(centre, width, lines)).toBe(found);
  });
});
