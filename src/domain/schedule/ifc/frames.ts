import type { Vector } from '../../geometry/vector.js';
import type { ModelUnits } from './model-units.js';
import type { Entity } from './step-model.js';
import { Unread } from './unread.js';

/** A point or direction in space; lengths in nm. */
export interface Vector3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** A right-handed system of axes in another one. */
export interface Frame {
  readonly origin: Vector3;
  readonly x: Vector3;
  readonly y: Vector3;
  readonly z: Vector3;
}

export interface Frame2 {
  readonly origin: Vector;
  readonly x: Vector;
}

const ORIGIN: Vector3 = { x: 0, y: 0, z: 0 };
export const UP: Vector3 = { x: 0, y: 0, z: 1 };
const ALONG: Vector3 = { x: 1, y: 0, z: 0 };
export const WORLD: Frame = { origin: ORIGIN, x: ALONG, y: { x: 0, y: 1, z: 0 }, z: UP };
/** Deeper chains of placements are a circle. */
const MAX_DEPTH = 64;

export const dot3 = (a: Vector3, b: Vector3): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const scale3 = (a: Vector3, by: number): Vector3 => ({ x: a.x * by, y: a.y * by, z: a.z * by });
export const add3 = (a: Vector3, b: Vector3): Vector3 => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z });
export const subtract3 = (a: Vector3, b: Vector3): Vector3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
const cross3 = (a: Vector3, b: Vector3): Vector3 => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
});

function unit3(a: Vector3): Vector3 {
  const length = Math.sqrt(dot3(a, a));
  if (!(length > 0)) throw new Unread('a direction has no length');
  return scale3(a, 1 / length);
}

export const directionIn = ({ x, y, z }: Frame, v: Vector3): Vector3 =>
  add3(add3(scale3(x, v.x), scale3(y, v.y)), scale3(z, v.z));
export const pointIn = (frame: Frame, point: Vector3): Vector3 => add3(frame.origin, directionIn(frame, point));
export const within = (outer: Frame, inner: Frame): Frame => ({
  origin: pointIn(outer, inner.origin),
  x: directionIn(outer, inner.x),
  y: directionIn(outer, inner.y),
  z: directionIn(outer, inner.z),
});

/** A frame that is given in the world, as it stands in another frame of the world. */
export function seenFrom(viewer: Frame, { origin, x, y, z }: Frame): Frame {
  const turned = (v: Vector3): Vector3 => ({ x: dot3(v, viewer.x), y: dot3(v, viewer.y), z: dot3(v, viewer.z) });
  return { origin: turned(subtract3(origin, viewer.origin)), x: turned(x), y: turned(y), z: turned(z) };
}

/** A direction of two or three numbers, one long. */
export function readDirection(entity: Entity): Vector3 {
  const [x = 0, y = 0, z = 0] = entity.numbers(0);
  return unit3({ x, y, z });
}

/** A point of two or three coordinates [nm]. */
export function readPoint(entity: Entity, units: ModelUnits): Vector3 {
  if (entity.type !== 'IfcCartesianPoint') throw new Unread(`a point given as ${entity.type} is not read`);
  const [x = 0, y = 0, z = 0] = entity.numbers(0);
  return scale3({ x, y, z }, units.nm);
}

/** IfcAxis2Placement3D; the reference direction is made square to the axis. None is the frame of the world. */
export function readAxes(entity: Entity | null, units: ModelUnits): Frame {
  if (entity === null) return WORLD;
  if (entity.type !== 'IfcAxis2Placement3D') throw new Unread(`a placement by ${entity.type} is not read`);
  const [axis, reference] = [entity.optional(1), entity.optional(2)];
  const z = axis ? readDirection(axis) : UP;
  const wanted = reference ? readDirection(reference) : Math.abs(z.x) < 0.999_999 ? ALONG : UP;
  const x = unit3(subtract3(wanted, scale3(z, dot3(wanted, z))));
  return { origin: readPoint(entity.entity(0), units), x, y: cross3(z, x), z };
}

/** IfcAxis2Placement2D. */
export function readAxes2(entity: Entity | null, units: ModelUnits): Frame2 {
  if (entity === null) return { origin: ORIGIN, x: ALONG };
  const direction = entity.type === 'IfcAxis2Placement2D' ? entity.optional(1) : entity.optional(2);
  const { x, y } = readPoint(entity.entity(0), units);
  return { origin: { x, y }, x: direction ? readDirection(direction) : ALONG };
}

/** The frame of a chain of local placements in the world. */
export function readPlacement(entity: Entity | null, units: ModelUnits, depth = 0): Frame {
  if (entity === null) return WORLD;
  if (entity.type !== 'IfcLocalPlacement') throw new Unread(`a placement by ${entity.type} is not read`);
  if (depth > MAX_DEPTH) throw new Unread('its placements go round in a circle');
  return within(readPlacement(entity.optional(0), units, depth + 1), readAxes(entity.entity(1), units));
}

export const inFrame2 = ({ origin, x }: Frame2, { x: u, y: v }: Vector): Vector => ({
  x: origin.x + x.x * u - x.y * v,
  y: origin.y + x.y * u + x.x * v,
});
