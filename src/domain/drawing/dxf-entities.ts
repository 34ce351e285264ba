import type { Vector } from '../geometry/vector.js';
import { arcOf } from './arc-shape.js';
import { dimensionStrokes } from './dimension-strokes.js';
import { decimal, fine, lengthMm, place, spot } from './dxf-groups.js';
import type { Group, Handles } from './dxf-groups.js';
import { DIMENSION_LAYER, dxfLayer } from './dxf-layers.js';
import { dxfData, dxfText } from './dxf-text.js';
import { hatchStrokes } from './hatch-lines.js';
import type { ArcShape, DrawingPoint, OutlinePoint, PolygonShape, Shape, TextShape } from './shapes.js';
import { CAP_HEIGHT, textWidth } from './text-width.js';

/** Under this name the file says of an outline what it stands for. */
export const APPLICATION = 'WALLCOURSE';
export const STYLES = { regular: 'sheet', bold: 'sheet-bold' } as const;

const ALONG = { start: '0', middle: '1', end: '2' } as const;
const MIDDLE_OF_CAPITALS = '2';

/** Writes shapes as entities of one block. */
export interface EntityWriter {
  readonly handles: Handles;
  /** Handle of the block's record. */
  readonly owner: string;
}

/** Lines for lines and hatches, closed polylines for outlines, circles, texts; a dimension as its lines and its text, all on one layer. */
export function shapeEntities(writer: EntityWriter, shape: Shape): Group[] {
  const layer = dxfLayer(shape.layer).name;
  switch (shape.kind) {
    case 'line':
      return lineEntity(writer, layer, shape.from, shape.to);
    case 'arc':
      return arcEntity(writer, layer, shape);
    case 'polyline':
      return polylineEntity(writer, layer, shape.points, false);
    case 'polygon':
      return [...polylineEntity(writer, layer, shape.points, true), ...subjectData(shape)];
    case 'circle':
      return [...head(writer, 'CIRCLE', layer, 'AcDbCircle'), ...spot(shape.centre), [40, lengthMm(shape.radius)]];
    case 'text':
      return textEntity(writer, layer, shape);
    case 'hatch':
      return hatchStrokes(shape).flatMap(({ from, to }) => lineEntity(writer, layer, from, to));
    case 'dimension':
      return dimensionStrokes(shape).flatMap((stroke) =>
        stroke.kind === 'line'
          ? lineEntity(writer, DIMENSION_LAYER, stroke.from, stroke.to)
          : textEntity(writer, DIMENSION_LAYER, stroke),
      );
  }
}

/** One use of a block, at its own place. */
export const insertEntity = (writer: EntityWriter, layer: string, block: string): Group[] => [
  ...head(writer, 'INSERT', layer, 'AcDbBlockReference'),
  [2, block],
  ...spot({ x: 0, y: 0 }),
];

function head(writer: EntityWriter, kind: string, layer: string, record: string): Group[] {
  return [
    [0, kind],
    [5, writer.handles.next()],
    [330, writer.owner],
    [100, 'AcDbEntity'],
    [8, layer],
    [100, record],
  ];
}

const lineEntity = (writer: EntityWriter, layer: string, from: DrawingPoint, to: DrawingPoint): Group[] => [
  ...head(writer, 'LINE', layer, 'AcDbLine'),
  ...spot(from),
  ...spot(to, 1),
];

const polylineEntity = (writer: EntityWriter, layer: string, points: readonly OutlinePoint[], closed: boolean): Group[] => [
  ...head(writer, 'LWPOLYLINE', layer, 'AcDbPolyline'),
  [90, String(points.length)],
  [70, closed ? '1' : '0'],
  ...points.flatMap((point): Group[] => [...place(point), ...(point.bulge === undefined ? [] : [[42, fine(point.bulge)] as const])]),
];

/** The format's arcs run counter-clockwise, from a first angle to a second [deg]. */
function arcEntity(writer: EntityWriter, layer: string, { from, to, bulge }: ArcShape): Group[] {
  const { centre, radius, start, sweep } = arcOf(from, to, bulge);
  const [first, last] = (sweep > 0 ? [start, start + sweep] : [start + sweep, start]) as [number, number];
  const degrees = (angle: number): string => fine((((angle * 180) / Math.PI) % 360 + 360) % 360);
  return [
    ...head(writer, 'ARC', layer, 'AcDbCircle'),
    ...spot(centre),
    [40, lengthMm(radius)],
    [100, 'AcDbArc'],
    [50, degrees(first)],
    [51, degrees(last)],
  ];
}

const subjectData = ({ subject }: PolygonShape): Group[] =>
  subject === null
    ? []
    : [
        [1001, APPLICATION],
        [1000, dxfData(subject)],
      ];

/**
 * The first point is where the letters begin on their base line, for readers that know no alignment; the second is the place that the
 * alignment refers to.
 */
function textEntity(writer: EntityWriter, layer: string, text: TextShape): Group[] {
  return [
    ...head(writer, 'TEXT', layer, 'AcDbText'),
    ...spot(beginningOf(text)),
    [40, lengthMm(text.size * CAP_HEIGHT)],
    [1, dxfText(text.text)],
    [50, decimal(text.angle)],
    [7, text.bold ? STYLES.bold : STYLES.regular],
    [72, ALONG[text.anchor]],
    ...spot(text.at, 1),
    [100, 'AcDbText'],
    [73, MIDDLE_OF_CAPITALS],
  ];
}

function beginningOf({ at, text, size, bold, anchor, angle }: TextShape): Vector {
  const width = textWidth(text, size, bold);
  const back = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
  const down = (size * CAP_HEIGHT) / 2;
  const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
  return { x: at.x - back * cos + down * sin, y: at.y - back * sin - down * cos };
}
