import { printLength } from '../../quantity/print-length.js';
import { meantLength, type Nm } from '../../quantity/length.js';
import type { LengthUnit } from '../../quantity/length-unit.js';
import { MEETING_DISTANCE } from '../schedule-limits.js';
import type { ScheduleContext } from '../schedule-context.js';
import { readPlacement, seenFrom, WORLD, type Frame } from './frames.js';
import { readHole, type Hole } from './holes.js';
import { levelsOf, type Level } from './model-storeys.js';
import { modelUnits, type ModelUnits } from './model-units.js';
import { readModelWall, type ModelWall } from './model-wall.js';
import type { NoteList } from './note-list.js';
import { relationsOf, storeyOf, type Relations } from './relations.js';
import { snapEnds, type DeclaredMeeting, type LineEnd, type MovedEnd } from './snap-ends.js';
import type { Entity, StepModel } from './step-model.js';
import { extendedTop, gableOf } from './tops.js';
import { readOr, Unread } from './unread.js';
import { lengthOf, type WallLine } from './wall-line.js';

export const WALL_TYPES = ['IfcWall', 'IfcWallStandardCase', 'IfcWallElementedCase'] as const;

/** A wall of the model as it will stand in the schedule. */
export interface PlacedWall {
  readonly entity: Entity;
  readonly level: Level;
  readonly core: string;
  readonly line: WallLine;
  readonly length: Nm;
  /** Height of its foot in the building [nm]. */
  readonly bottom: number;
  readonly height: Nm;
  readonly gable: { readonly rise: Nm; readonly peakAt: Nm } | null;
  readonly holes: readonly { readonly entity: Entity; readonly hole: Hole }[];
}

export interface ReadModel {
  readonly units: ModelUnits;
  readonly levels: readonly Level[];
  readonly walls: readonly PlacedWall[];
}

interface Reading {
  readonly model: StepModel;
  readonly units: ModelUnits;
  readonly relations: Relations;
  readonly context: ScheduleContext;
  readonly building: Frame;
  readonly notes: NoteList;
}

interface StandingWall {
  readonly wall: ModelWall;
  readonly level: Level;
}

/** The walls of a model with their holes, storey by storey; everything else that is built is listed with why it is left out. */
export function readModel(model: StepModel, context: ScheduleContext, notes: NoteList): ReadModel {
  const units = modelUnits(model);
  const relations = relationsOf(model);
  const reading: Reading = { model, units, relations, context, building: buildingFrame(model, units), notes };
  const levels = levelsOf(model, reading.building, units, relations);
  const standing = model.all(...WALL_TYPES).flatMap((entity) => standingWall(entity, levels, reading));
  const walls = levels.flatMap((level) =>
    placedWalls(
      standing.filter((each) => each.level === level).map(({ wall }) => wall),
      level,
      reading,
    ),
  );
  listOthers(reading, new Set(walls.flatMap(({ holes }) => holes.map(({ entity }) => entity.id))));
  return { units, levels, walls };
}

/** The plan is drawn in the building's own frame, so that its walls lie as they were drawn however the site is turned. */
function buildingFrame(model: StepModel, units: ModelUnits): Frame {
  const placement = model.all('IfcBuilding')[0]?.optional(5) ?? null;
  const frame = readOr(
    () => readPlacement(placement, units),
    () => WORLD,
  );
  return frame.z.z > 1 - 1e-6 ? frame : WORLD;
}

function placementOf(element: Entity, { building, units }: Reading): Frame {
  return seenFrom(building, readPlacement(element.optional(5), units));
}

function standingWall(entity: Entity, levels: readonly Level[], reading: Reading): readonly StandingWall[] {
  return readOr<readonly StandingWall[]>(
    () => {
      const storey = storeyOf(entity, reading.relations);
      const level = levels.find((each) => each.entity === storey);
      if (!level) throw new Unread('it stands in no storey');
      const wall = readModelWall(entity, placementOf(entity, reading), { ...reading, shown: reading.units.shown });
      if (lengthOf(wall.line) < MEETING_DISTANCE) throw new Unread('it has no length');
      if (wall.line.arc && Math.abs(wall.line.arc.sweep) > Math.PI - 1e-9)
        throw new Unread('its arc is half a circle or more: an arc wall is less');
      return [{ wall, level }];
    },
    (reason) => {
      reading.notes.skip(entity, reason);
      return [];
    },
  );
}

function placedWalls(walls: readonly ModelWall[], level: Level, reading: Reading): readonly PlacedWall[] {
  const { notes, units, context } = reading;
  const drawn = walls.map(({ line, core }) => ({
    line,
    thickness: core.thickness,
    formed: core.width + 2 * (context.panel ?? 0),
  }));
  const { lines, moved } = snapEnds(drawn, meetingsOf(walls, reading.relations));
  for (const { wall, end, by, to } of moved) notes.note(walls[wall]!.entity, movedText(end, by, walls[to]!.entity, units.shown));
  return walls.flatMap((wall, index) => {
    for (const note of wall.notes) notes.note(wall.entity, note);
    return readOr<readonly PlacedWall[]>(
      () => [
        placedWall(
          wall,
          lines[index]!,
          level,
          moved.filter((each) => each.wall === index),
          reading,
        ),
      ],
      (reason) => {
        notes.skip(wall.entity, reason);
        return [];
      },
    );
  });
}

function placedWall(wall: ModelWall, line: WallLine, level: Level, moved: readonly MovedEnd[], reading: Reading): PlacedWall {
  const { notes, context, units } = reading;
  const length = line.arc ? Math.round(lengthOf(line)) : meantLength(lengthOf(line));
  const by = (end: LineEnd): number => moved.find((each) => each.end === end)?.by ?? 0;
  const top = gableOf(extendedTop(wall.top, by('start'), by('end')));
  if (!top)
    notes.note(
      wall.entity,
      'its height is that before it is cut: its top is neither level nor one slope nor one peak between equal eaves',
    );
  const height = meantLength(top?.height ?? wall.height);
  const gable = top?.gable
    ? { rise: meantLength(top.gable.rise), peakAt: Math.min(meantLength(top.gable.peakAt), length) }
    : null;
  if (context.courseHeight !== null && height < context.courseHeight)
    throw new Unread(
      `it is ${printLength(height, units.shown)} high, less than one course of ${printLength(context.courseHeight, units.shown)}`,
    );
  const voided = { line, length, bottom: wall.bottom, height, gable, coreWidth: wall.core.width };
  const holes = (reading.relations.openings.get(wall.entity.id) ?? []).flatMap((entity) =>
    readOr(
      () => {
        const hole = readHole(entity, placementOf(entity, reading), voided, units);
        if (hole.cut) notes.note(entity, 'it reaches out of its wall: what lies inside is its hole');
        return [{ entity, hole }];
      },
      (reason) => {
        notes.skip(entity, reason);
        return [];
      },
    ),
  );
  return { entity: wall.entity, level, core: wall.core.code, line, length, bottom: wall.bottom, height, gable, holes };
}

/** The joints that the model declares between walls of one storey. */
function meetingsOf(walls: readonly ModelWall[], { connections }: Relations): readonly DeclaredMeeting[] {
  const index = new Map(walls.map(({ entity }, place) => [entity.id, place]));
  const end = (word: string | null): LineEnd | null => (word === 'ATSTART' ? 'start' : word === 'ATEND' ? 'end' : null);
  return connections.flatMap((connection): DeclaredMeeting[] => {
    const [a, b] = [index.get(connection.a.id), index.get(connection.b.id)];
    const [aEnd, bEnd] = [end(connection.aEnd), end(connection.bEnd)];
    if (a === undefined || b === undefined || a === b) return [];
    if (aEnd !== null) return [{ a, aEnd, b, bEnd }];
    return bEnd === null ? [] : [{ a: b, aEnd: bEnd, b: a, bEnd: null }];
  });
}

const movedText = (end: LineEnd, by: number, to: Entity, shown: LengthUnit): string =>
  `its ${end} was brought to the line of ${to.text(0) ?? `#${to.id}`}: ${printLength(Math.round(Math.abs(by)), shown)} ${by > 0 ? 'longer' : 'shorter'}`;

/** What is built and is no wall, and openings that are in none. What fills a hole that was read is told by the hole. */
function listOthers({ model, relations, notes }: Reading, holes: ReadonlySet<number>): void {
  const walls = new Set<string>(WALL_TYPES);
  const openingOf = new Map([...relations.filling].map(([opening, { id }]) => [id, opening]));
  for (const element of model.elements) {
    if (walls.has(element.type) || relations.voiding.has(element.id)) continue;
    if (holes.has(openingOf.get(element.id) ?? -1)) continue;
    notes.skip(
      element,
      element.type === 'IfcOpeningElement' ? 'it voids no wall' : 'it is no wall: walls and the openings in them are read',
    );
  }
}
