import { distance, type Vector } from '../../geometry/vector.js';
import { inFrame2, readAxes2, readDirection, readPoint } from './frames.js';
import type { ModelUnits } from './model-units.js';
import { numberOf, typeOf, type Entity, type StepValue } from './step-model.js';
import { Unread } from './unread.js';

/** A piece of a plane curve [nm]; an arc turns by `sweep` [rad], positive counter-clockwise. */
export type Segment =
  | { readonly kind: 'line'; readonly from: Vector; readonly to: Vector }
  | {
      readonly kind: 'arc';
      readonly from: Vector;
      readonly to: Vector;
      readonly centre: Vector;
      readonly radius: number;
      readonly sweep: number;
    };
export type Arc = Extract<Segment, { kind: 'arc' }>;

const TURN = 2 * Math.PI;
/** Pieces shorter than this are no pieces [nm]. */
const NOTHING = 1_000;
const MAX_DEPTH = 8;

/** Polylines, indexed polycurves with lines and arcs, trimmed lines and circles, composites of them: piece by piece in their own direction. */
export function readCurve(curve: Entity, units: ModelUnits, depth = 0): readonly Segment[] {
  if (depth > MAX_DEPTH) throw new Unread('its curves go round in a circle');
  switch (curve.type) {
    case 'IfcPolyline':
      return lines(curve.entities(0).map((point) => readPoint(point, units)));
    case 'IfcIndexedPolyCurve':
      return indexed(curve, units);
    case 'IfcTrimmedCurve':
      return [trimmed(curve, units)];
    case 'IfcCompositeCurve':
      return curve.entities(0).flatMap((piece) => {
        const parts = readCurve(piece.entity(2), units, depth + 1);
        return piece.value(1) === false ? [...parts].reverse().map(backward) : parts;
      });
    default:
      throw new Unread(`a curve of kind ${curve.type} is not read`);
  }
}

export function backward(segment: Segment): Segment {
  const turned = { from: segment.to, to: segment.from };
  return segment.kind === 'line' ? { ...segment, ...turned } : { ...segment, ...turned, sweep: -segment.sweep };
}

const flat = ({ x, y }: Vector): Vector => ({ x, y });

const lines = (points: readonly Vector[]): readonly Segment[] =>
  points.slice(1).flatMap((to, index): Segment[] => {
    const from = points[index]!;
    return distance(from, to) <= NOTHING ? [] : [{ kind: 'line', from: flat(from), to: flat(to) }];
  });

function indexed(curve: Entity, units: ModelUnits): readonly Segment[] {
  const list = curve.entity(0).value(0);
  const points = (Array.isArray(list) ? (list as readonly StepValue[]) : []).map((pair): Vector => {
    const [x, y] = Array.isArray(pair) ? (pair as readonly StepValue[]).map(numberOf) : [];
    if (typeof x !== 'number' || typeof y !== 'number') throw new Unread('a point of its curve is missing');
    return { x: x * units.nm, y: y * units.nm };
  });
  const segments = curve.value(1);
  if (!Array.isArray(segments)) return lines(points);
  return (segments as readonly StepValue[]).flatMap((segment) => {
    const chosen = indices(segment).map((index) => points[index - 1] ?? outside(index));
    if (typeOf(segment)?.toUpperCase() !== 'IFCARCINDEX') return lines(chosen);
    const [from, via, to] = chosen;
    if (!from || !via || !to) throw new Unread('an arc of its curve has not three points');
    return [arcThrough(from, via, to)];
  });
}

const outside = (index: number): never => {
  throw new Unread(`its curve names point ${index}, which is not there`);
};

function indices(segment: StepValue): readonly number[] {
  const value = segment !== null && typeof segment === 'object' && 'value' in segment ? segment.value : segment;
  return Array.isArray(value) ? (value as readonly StepValue[]).flatMap((each) => numberOf(each) ?? []) : [];
}

/** The circle through three points: its centre is where the perpendicular bisectors meet. */
function arcThrough(from: Vector, via: Vector, to: Vector): Segment {
  const [b, c] = [
    { x: via.x - from.x, y: via.y - from.y },
    { x: to.x - from.x, y: to.y - from.y },
  ];
  const twice = 2 * (b.x * c.y - b.y * c.x);
  const [bb, cc] = [b.x * b.x + b.y * b.y, c.x * c.x + c.y * c.y];
  if (Math.abs(twice) <= 1e-9 * Math.sqrt(bb * cc)) return { kind: 'line', from, to };
  const centre = { x: from.x + (c.y * bb - b.y * cc) / twice, y: from.y + (b.x * cc - c.x * bb) / twice };
  return arcAbout(centre, distance(centre, from), from, to, twice > 0);
}

function arcAbout(centre: Vector, radius: number, from: Vector, to: Vector, left: boolean): Arc {
  const angle = (point: Vector): number => Math.atan2(point.y - centre.y, point.x - centre.x);
  const around = (angle(to) - angle(from) + 2 * TURN) % TURN;
  return { kind: 'arc', centre, radius, from: flat(from), to: flat(to), sweep: left ? around || TURN : around - TURN };
}

function trimmed(curve: Entity, units: ModelUnits): Segment {
  const basis = curve.entity(0);
  const byParameter = curve.word(4) === 'PARAMETER';
  const along = curve.value(3) !== false;
  const end = (place: number): Vector => trimPoint(curve, place, basis, units, byParameter);
  const [from, to] = [end(1), end(2)];
  if (basis.type === 'IfcLine') return { kind: 'line', from, to };
  const frame = readAxes2(basis.entity(0), units);
  return arcAbout(frame.origin, basis.number(1) * units.nm, from, to, along);
}

/** Where a curve is trimmed: by a point, or by its parameter (an angle of a circle, a multiple of a line's vector). */
function trimPoint(curve: Entity, place: number, basis: Entity, units: ModelUnits, byParameter: boolean): Vector {
  const trims = curve.value(place);
  const parameter =
    (Array.isArray(trims) ? (trims as readonly StepValue[]) : []).map(numberOf).find((value) => value !== null) ?? null;
  const point = curve.entities(place).find(({ type }) => type === 'IfcCartesianPoint');
  if (point && !(byParameter && parameter !== null)) return flat(readPoint(point, units));
  if (parameter === null) throw new Unread('a trimmed curve says not where it ends');
  if (basis.type === 'IfcCircle') {
    const radius = basis.number(1) * units.nm;
    const angle = parameter * units.radians;
    return inFrame2(readAxes2(basis.entity(0), units), { x: radius * Math.cos(angle), y: radius * Math.sin(angle) });
  }
  if (basis.type !== 'IfcLine') throw new Unread(`a trimmed ${basis.type} is not read`);
  const start = readPoint(basis.entity(0), units);
  const vector = basis.entity(1);
  const direction = readDirection(vector.entity(0));
  const reach = parameter * vector.number(1) * units.nm;
  return { x: start.x + direction.x * reach, y: start.y + direction.y * reach };
}
