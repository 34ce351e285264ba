import { distance, type Vector } from '../../geometry/vector.js';
import { backward, readCurve, type Segment } from './curves.js';
import {
  add3,
  directionIn,
  dot3,
  inFrame2,
  pointIn,
  readAxes,
  readAxes2,
  readDirection,
  scale3,
  within,
  type Frame,
  type Vector3,
} from './frames.js';
import type { ModelUnits } from './model-units.js';
import type { Entity } from './step-model.js';
import { Unread } from './unread.js';

/** A profile moved along a straight line, in the frame of the plan: lengths in nm. */
export interface Extrusion {
  readonly frame: Frame;
  /** Closed, in the frame's own x and y. */
  readonly profile: readonly Segment[];
  /** The way the profile is moved, its length included. */
  readonly sweep: Vector3;
}

/** A half-space that is taken away from a body: what lies on the side `removes` of a plane, everywhere or inside an upright prism. */
export interface Cut {
  readonly point: Vector3;
  readonly removes: Vector3;
  readonly bounds: readonly Vector[] | null;
}

export interface Body {
  readonly extrusion: Extrusion;
  readonly cuts: readonly Cut[];
}

/** Directions closer than this to upright or level are [sine of the angle]. */
export const SQUARE = 1e-6;
const MAX_DEPTH = 64;

/** The representation of an element by its identifier (`Body`, `Axis`), null where it has none. */
export function representation(element: Entity, identifier: string): Entity | null {
  const shapes = element.optional(6)?.entities(2) ?? [];
  const named = shapes.find((shape) => shape.text(1)?.toLowerCase() === identifier.toLowerCase());
  const unnamed = (): Entity | undefined =>
    shapes.find((shape) => shape.text(1) === null && /SweptSolid|Clipping/i.test(shape.text(2) ?? ''));
  return named ?? (identifier === 'Body' ? unnamed() : undefined) ?? null;
}

/** The one extrusion of a body and what is cut from it. */
export function readBody(shape: Entity, placement: Frame, units: ModelUnits): Body {
  const items = shape.entities(3);
  const [item] = items;
  if (!item || items.length !== 1) throw new Unread(`its body is made of ${items.length} solids: one extrusion is read`);
  const cuts: Cut[] = [];
  let solid = item;
  for (let depth = 0; isClipping(solid); depth += 1) {
    if (depth > MAX_DEPTH) throw new Unread('its clippings go round in a circle');
    cuts.push(readCut(solid.entity(2), placement, units));
    solid = solid.entity(1);
  }
  return { extrusion: readExtrusion(solid, placement, units), cuts };
}

const isClipping = (solid: Entity): boolean =>
  (solid.type === 'IfcBooleanClippingResult' || solid.type === 'IfcBooleanResult') && solid.word(0) === 'DIFFERENCE';

function readExtrusion(solid: Entity, placement: Frame, units: ModelUnits): Extrusion {
  if (solid.type === 'IfcMappedItem')
    throw new Unread('its body is a mapped item (a copy of a shape of its type), which is not read');
  if (solid.type !== 'IfcExtrudedAreaSolid')
    throw new Unread(`its body is an ${solid.type}, which is not read: an IfcExtrudedAreaSolid is`);
  const own = readAxes(solid.optional(1), units);
  const frame = within(placement, own);
  const depth = solid.number(3) * units.nm;
  if (!(depth > 0)) throw new Unread('its extrusion has no depth');
  return {
    frame,
    profile: readProfile(solid.entity(0), units),
    sweep: scale3(directionIn(frame, readDirection(solid.entity(2))), depth),
  };
}

function readProfile(profile: Entity, units: ModelUnits): readonly Segment[] {
  if (profile.type === 'IfcRectangleProfileDef') return rectangle(profile, units);
  if (profile.type === 'IfcArbitraryProfileDefWithVoids')
    throw new Unread('its profile has holes of its own, which are not read: openings are');
  if (profile.type !== 'IfcArbitraryClosedProfileDef') throw new Unread(`a profile of kind ${profile.type} is not read`);
  const outline = joined(readCurve(profile.entity(2), units));
  const [first, last] = [outline[0], outline.at(-1)];
  if (!first || !last) throw new Unread('its profile has no outline');
  if (distance(first.from, last.to) <= 10_000) return outline;
  return [...outline, { kind: 'line', from: last.to, to: first.from }];
}

/** Pieces of a composite may be listed against their direction: each follows the one before. */
function joined(pieces: readonly Segment[]): readonly Segment[] {
  const chain: Segment[] = [];
  for (const piece of pieces) {
    const end = chain.at(-1)?.to;
    chain.push(end && distance(end, piece.to) < distance(end, piece.from) ? backward(piece) : piece);
  }
  return chain;
}

function rectangle(profile: Entity, units: ModelUnits): readonly Segment[] {
  const frame = readAxes2(profile.optional(2), units);
  const [x, y] = [(profile.number(3) * units.nm) / 2, (profile.number(4) * units.nm) / 2];
  if (!(x > 0) || !(y > 0)) throw new Unread('its profile has no width');
  const corners = [
    { x: -x, y: -y },
    { x, y: -y },
    { x, y },
    { x: -x, y },
  ].map((corner) => inFrame2(frame, corner));
  return corners.map((from, index): Segment => ({ kind: 'line', from, to: corners[(index + 1) % 4]! }));
}

function readCut(half: Entity, placement: Frame, units: ModelUnits): Cut {
  if (half.type !== 'IfcHalfSpaceSolid' && half.type !== 'IfcPolygonalBoundedHalfSpace')
    throw new Unread(`its body is cut by an ${half.type}, which is not read: half-spaces are`);
  const surface = half.entity(0);
  if (surface.type !== 'IfcPlane') throw new Unread(`its body is cut by an ${surface.type}, which is not read: planes are`);
  const plane = within(placement, readAxes(surface.entity(0), units));
  const removes = half.value(1) === true ? scale3(plane.z, -1) : plane.z;
  if (half.type === 'IfcHalfSpaceSolid') return { point: plane.origin, removes, bounds: null };
  const prism = within(placement, readAxes(half.optional(2), units));
  if (Math.abs(prism.z.z) < 1 - SQUARE) throw new Unread('its body is cut inside a prism that does not stand upright');
  const corners = readCurve(half.entity(3), units).map(({ from }) => pointIn(prism, { ...from, z: 0 }));
  return { point: plane.origin, removes, bounds: corners };
}

/** The outline seen from above where the profile lies level and is moved straight up or down; null where it stands on edge. */
export function levelOutline({
  frame,
  profile,
  sweep,
}: Extrusion): { outline: readonly Segment[]; bottom: number; top: number } | null {
  if (Math.abs(frame.z.z) < 0.5) return null;
  if (1 - Math.abs(frame.z.z) > SQUARE || Math.hypot(sweep.x, sweep.y) > SQUARE * Math.abs(sweep.z))
    throw new Unread('it does not stand upright');
  const seen = (point: Vector): Vector => {
    const { x, y } = pointIn(frame, { ...point, z: 0 });
    return { x, y };
  };
  const mirrored = frame.z.z < 0 ? -1 : 1;
  const outline = profile.map((segment): Segment => {
    const ends = { from: seen(segment.from), to: seen(segment.to) };
    return segment.kind === 'line'
      ? { ...segment, ...ends }
      : { ...segment, ...ends, centre: seen(segment.centre), sweep: segment.sweep * mirrored };
  });
  const [a, b] = [frame.origin.z, frame.origin.z + sweep.z];
  return { outline, bottom: Math.min(a, b), top: Math.max(a, b) };
}

/** The corners of an extrusion of straight lines, both ends of it. */
export function cornersOf({ frame, profile, sweep }: Extrusion): readonly Vector3[] {
  if (profile.some(({ kind }) => kind === 'arc')) throw new Unread('its outline has arcs, which are not read here');
  const near = profile.map(({ from }) => pointIn(frame, { ...from, z: 0 }));
  return [...near, ...near.map((corner) => add3(corner, sweep))];
}

/** Whether the profile stands upright and is moved square to itself: a wall drawn by its elevation. */
export const standsOnEdge = ({ frame, sweep }: Extrusion): boolean =>
  Math.abs(frame.z.z) < SQUARE &&
  Math.abs(Math.abs(dot3(frame.z, sweep)) - Math.sqrt(dot3(sweep, sweep))) < SQUARE * Math.sqrt(dot3(sweep, sweep));
