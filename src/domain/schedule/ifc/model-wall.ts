import { direction, dot, subtract, type Vector } from '../../geometry/vector.js';
import type { LengthUnit } from '../../quantity/length-unit.js';
import type { ScheduleContext } from '../schedule-context.js';
import { coreOf, readLayers, type CoreFound, type Layers } from './cores.js';
import { readCurve, type Segment } from './curves.js';
import { cornersOf, levelOutline, readBody, representation, standsOnEdge, type Body } from './extrusions.js';
import { pointIn, type Frame } from './frames.js';
import type { ModelUnits } from './model-units.js';
import { statedLength, type Relations } from './relations.js';
import type { Entity } from './step-model.js';
import { cutTop, elevationTop, levelTop, type TopLine } from './tops.js';
import { Unread } from './unread.js';
import { axisLine, lengthOf, lineOf, movedLeft, outlinedWall, type WallLine } from './wall-line.js';

/** A wall of a model on the middle of its core, as it is drawn: before its ends are brought to its neighbours' [nm]. */
export interface ModelWall {
  readonly entity: Entity;
  readonly line: WallLine;
  readonly core: CoreFound;
  /** Height of its foot in the building. */
  readonly bottom: number;
  /** Height without any cut. */
  readonly height: number;
  readonly top: TopLine;
  readonly notes: readonly string[];
}

export interface Reader {
  readonly units: ModelUnits;
  readonly relations: Relations;
  readonly context: ScheduleContext;
  readonly shown: LengthUnit;
}

interface Shape {
  readonly line: WallLine;
  readonly thickness: number | null;
  readonly bottom: number;
  readonly height: number;
  readonly top: TopLine | string;
  readonly notes: readonly string[];
}

const HEIGHTS = ['height', 'nominalheight'];

/** The wall an element is, by its body or, where it has none, by its axis, its layers and its stated height. */
export function readModelWall(entity: Entity, placement: Frame, reader: Reader): ModelWall {
  if (Math.abs(placement.z.z) < 1 - 1e-6) throw new Unread('it does not stand upright');
  const layers = readLayers(entity, reader.relations, reader.units);
  const axis = readAxis(entity, placement, reader.units);
  const body = representation(entity, 'Body');
  const shape = body
    ? bodyShape(readBody(body, placement, reader.units), placement, axis)
    : axisShape(entity, placement, axis, layers, reader);
  const core = coreOf(layers, shape.thickness, reader.context, reader.shown);
  const aside = shape.thickness === null ? (core.fromAxis ?? 0) : core.fromMiddle;
  const uncut = typeof shape.top === 'string';
  const notes = [
    ...shape.notes,
    ...(shape.thickness === null && core.fromAxis === null
      ? ['its axis is taken for the middle of its core: nothing states where its layers lie']
      : []),
    ...(typeof shape.top === 'string' ? [`its height is that before it is cut: ${shape.top}`] : []),
  ];
  const line = movedLeft(shape.line, aside);
  return {
    entity,
    line,
    core,
    bottom: shape.bottom,
    height: shape.height,
    top: uncut ? levelTop(lengthOf(line), shape.height) : (shape.top as TopLine),
    notes,
  };
}

const levelPoint = (frame: Frame, point: Vector): Vector => {
  const { x, y } = pointIn(frame, { ...point, z: 0 });
  return { x, y };
};

/** The axis in plan, null where there is none or none that is read: then the body alone tells. */
function readAxis(entity: Entity, placement: Frame, units: ModelUnits): WallLine | null {
  const [curve, more] = representation(entity, 'Axis')?.entities(3) ?? [];
  if (!curve || more) return null;
  try {
    const mirrored = placement.z.z < 0 ? -1 : 1;
    const pieces = readCurve(curve, units).map((piece): Segment => {
      const ends = { from: levelPoint(placement, piece.from), to: levelPoint(placement, piece.to) };
      return piece.kind === 'line'
        ? { ...piece, ...ends }
        : { ...piece, ...ends, centre: levelPoint(placement, piece.centre), sweep: piece.sweep * mirrored };
    });
    return axisLine(pieces);
  } catch (error) {
    if (error instanceof Unread) return null;
    throw error;
  }
}

function bodyShape({ extrusion, cuts }: Body, placement: Frame, axis: WallLine | null): Shape {
  const ahead = { x: placement.x.x, y: placement.x.y };
  const level = levelOutline(extrusion);
  if (!level) return edgeShape({ extrusion, cuts }, axis, ahead);
  const { line, thickness, skew } = outlinedWall(level.outline, ahead, axis);
  const height = level.top - level.bottom;
  const notes = skew ? ['its ends are not cut square: its line ends in the middle of each'] : [];
  return { line, thickness, bottom: level.bottom, height, top: cutTop(line, level.bottom, height, cuts), notes };
}

/** A wall drawn by its elevation and extruded through its thickness. */
function edgeShape({ extrusion, cuts }: Body, axis: WallLine | null, ahead: Vector): Shape {
  if (!standsOnEdge(extrusion)) throw new Unread('its body is extruded askew');
  const wanted = axis && !axis.arc ? direction(subtract(axis.to, axis.from)) : ahead;
  const across = direction(extrusion.sweep);
  const along = { x: across.y, y: -across.x };
  const forward = dot(along, wanted) < 0 ? { x: -along.x, y: -along.y } : along;
  const corners = cornersOf(extrusion);
  const face = corners.slice(0, corners.length / 2);
  const seen = elevationTop(face, ({ x, y }) => dot({ x, y }, forward));
  if (!seen) throw new Unread('its elevation has no level foot between two upright ends');
  const { sweep, frame } = extrusion;
  const middle = { x: frame.origin.x + sweep.x / 2, y: frame.origin.y + sweep.y / 2 };
  const at = (s: number): Vector => {
    const by = s - dot(middle, forward);
    return { x: middle.x + forward.x * by, y: middle.y + forward.y * by };
  };
  const line = lineOf(at(seen.start), at(seen.end));
  const height = Math.max(...seen.top.map(({ z }) => z));
  const top = cuts.length > 0 ? 'a cut through a wall drawn by its elevation is not read' : seen.top;
  return { line, thickness: Math.hypot(sweep.x, sweep.y), bottom: seen.bottom, height, top, notes: [] };
}

function axisShape(
  entity: Entity,
  placement: Frame,
  line: WallLine | null,
  layers: Layers | null,
  { units, relations }: Reader,
): Shape {
  if (!line) throw new Unread('it has neither a body nor an axis that is read');
  if (!layers) throw new Unread('it has only an axis, and no layers of its material state a thickness');
  const stated = statedLength(entity, HEIGHTS, relations);
  if (stated === null) throw new Unread('it has only an axis, and no quantity or property states its height');
  const height = stated * units.nm;
  return { line, thickness: null, bottom: placement.origin.z, height, top: levelTop(lengthOf(line), height), notes: [] };
}
