import { InputErrorList, shownText, type InputError } from '../../evidence/input-error.js';
import { failure, success, type Result } from '../../evidence/result.js';
import { meantLength } from '../../quantity/length.js';
import { NM_PER_UNIT } from '../../quantity/length-unit.js';
import type { DocumentSource } from '../document-source.js';
import { FileRefusal } from '../file-refusal.js';
import type { CellPlace, Places } from '../places.js';
import type { ScheduleContext } from '../schedule-context.js';
import { MAX_NAME, MAX_WALLS } from '../schedule-limits.js';
import { storeyRows, type Level } from './model-storeys.js';
import { globalIdOf, marksOf } from './names.js';
import { NoteList } from './note-list.js';
import { readModel, type PlacedWall, type ReadModel } from './read-model.js';
import { StepModel, type Entity, type StepLines } from './step-model.js';
import { readOr } from './unread.js';

/** Heights that agree [nm]. */
const AGREES = 1_000_000;
const SCHEMAS = /^IFC(2X3|4)/;
type Row = Readonly<Record<string, unknown>>;
type Lists = Record<'storeys' | 'walls' | 'openings' | 'features', { readonly row: Row; readonly entity: Entity }[]>;

/**
 * The wall schedule of a building model, dimensioned to the middle of the cores, in the unit of the model.
 *
 * @param file name of the file, for errors
 * @param context the range the cores are of
 * @param format  the format that the document names
 * @returns the document, or what keeps every wall of it from being read
 * @throws FileRefusal where the model as a whole cannot be read
 */
export function modelDocument(
  file: string,
  lines: StepLines,
  context: ScheduleContext,
  format: string,
): Result<DocumentSource, readonly InputError[]> {
  if (!SCHEMAS.test(lines.schema))
    throw new FileRefusal(
      'wrong-type',
      file,
      shownText(lines.schema),
      'a model of the schema IFC4 (IFC2X3 and IFC4X3 are read alike)',
    );
  const model = new StepModel(lines);
  const notes = new NoteList();
  const read = readOr<ReadModel>(
    () => readModel(model, context, notes),
    (reason) => {
      throw new FileRefusal('invalid', file, shownText(lines.schema), `a model whose lengths can be read: ${reason}`);
    },
  );
  if (read.walls.length > MAX_WALLS)
    throw new FileRefusal(
      'too-large',
      file,
      `${read.walls.length} walls`,
      `at most ${MAX_WALLS.toLocaleString('en-US')} walls: split the model into several jobs`,
    );
  const lists = rowsOf(read, notes);
  if (lists.walls.length === 0) return failure(leftOut(file, lines.schema, notes));
  const rows = Object.fromEntries(Object.entries(lists).map(([key, list]) => [key, list.map(({ row }) => row)]));
  return success({
    document: { format, name: nameOf(model, file), units: read.units.shown, dimensionsTo: 'axis', ...rows },
    places: placesOf(file, lists),
    errors: [],
    unknown: [],
    notes: notes.listed(),
  });
}

function nameOf(model: StepModel, file: string): string {
  const named = [...model.all('IfcProject'), ...model.all('IfcBuilding')]
    .map((entity) => entity.text(2))
    .find((name) => name !== null);
  return (
    [...(named ?? file).replace(/[\p{Cc}\p{Cs}]/gu, ' ')]
      .slice(0, MAX_NAME / 2)
      .join('')
      .trim() || 'IFC model'
  );
}

/** A model without one wall that can be read is refused with the reason of each. */
function leftOut(file: string, schema: string, notes: NoteList): readonly InputError[] {
  const errors = new InputErrorList();
  const { length } = notes.skipped;
  const fix = `a model with a wall that can be read: of this one ${length} ${length === 1 ? 'element is' : 'elements are'} left out`;
  errors.add({ sheet: file, row: null, column: null, pointer: '/walls', read: `a model in ${schema}`, fix });
  for (const { globalId, kind, reason } of notes.skipped)
    errors.add({ sheet: file, row: null, column: kind, pointer: null, read: globalId, fix: `left out: ${reason}` });
  return errors.list();
}

function placesOf(file: string, lists: Lists): Places {
  const nowhere: CellPlace = { sheet: file, row: null, column: null, unit: null, told: false };
  return {
    at: (pointer) => {
      const [, list = '', index = ''] = pointer.split('/');
      const entity = Object.hasOwn(lists, list) ? lists[list as keyof Lists][Number(index)]?.entity : undefined;
      return entity ? { ...nowhere, column: `${entity.type} ${globalIdOf(entity)}` } : nowhere;
    },
  };
}

function rowsOf({ units, levels, walls }: ReadModel, notes: NoteList): Lists {
  const shown = (length: number): number => length / Number(NM_PER_UNIT[units.shown]);
  const standing = onLevels(levels, walls, notes);
  const tallest = new Map<number, number>();
  for (const { wall, level } of standing)
    tallest.set(
      level.entity.id,
      Math.max(tallest.get(level.entity.id) ?? 0, wall.bottom - level.elevation + wall.height + (wall.gable?.rise ?? 0)),
    );
  const lowered = [...new Map(standing.map(({ level }) => [level.entity, level])).values()];
  const all = [...lowered, ...levels.filter(({ entity }) => !tallest.has(entity.id))].sort(
    (a, b) => a.elevation - b.elevation || a.entity.id - b.entity.id,
  );
  const ids = marksOf(
    all.map(({ entity }) => entity),
    [2],
  );
  const storeys = storeyRows(all, tallest, ({ id }) => ids.get(id) ?? '');
  const marks = marksOf(
    standing.map(({ wall }) => wall.entity),
    [2, 7],
  );
  const holes = marksOf(
    standing.flatMap(({ wall }) => wall.holes.map(({ entity }) => entity)),
    [2, 7],
  );
  const point = ({ x, y }: { x: number; y: number }): readonly number[] => [shown(meantLength(x)), shown(meantLength(y))];
  const origin = originOf(walls);
  return {
    storeys: storeys.map(({ id, level, height, on }) => ({
      entity: level.entity,
      row: {
        id,
        height: shown(height),
        ...(level.belowGround === true ? { grade: 'below' } : {}),
        ...(on === null ? {} : { on }),
      },
    })),
    walls: standing.map(({ wall, level }) => ({
      entity: wall.entity,
      row: {
        mark: marks.get(wall.entity.id),
        storey: ids.get(level.entity.id),
        core: wall.core,
        from: point({ x: wall.line.from.x - origin.x, y: wall.line.from.y - origin.y }),
        to: point({ x: wall.line.to.x - origin.x, y: wall.line.to.y - origin.y }),
        length: shown(wall.length),
        height: shown(wall.height),
        base: shown(meantLength(wall.bottom - level.elevation)),
        ...(wall.line.arc
          ? { arc: { radius: shown(meantLength(wall.line.arc.radius)), turns: wall.line.arc.sweep > 0 ? 'left' : 'right' } }
          : {}),
      },
    })),
    openings: standing.flatMap(({ wall }) =>
      wall.holes.map(({ entity, hole: { at, sill, width, height } }) => ({
        entity,
        row: {
          mark: holes.get(entity.id),
          wall: marks.get(wall.entity.id),
          at: shown(at),
          sill: shown(sill),
          width: shown(width),
          height: shown(height),
          measured: 'concrete',
        },
      })),
    ),
    features: standing.flatMap(({ wall }) =>
      wall.gable
        ? [
            {
              entity: wall.entity,
              row: {
                kind: 'gable',
                wall: marks.get(wall.entity.id),
                rise: shown(wall.gable.rise),
                peakAt: shown(wall.gable.peakAt),
              },
            },
          ]
        : [],
    ),
  };
}

/** A model laid out in the coordinates of a country is brought near, by whole kilometres. */
function originOf(walls: readonly PlacedWall[]): { x: number; y: number } {
  const near = (value: number): number => (Math.abs(value) < 1e13 ? 0 : Math.round(value / 1e12) * 1e12);
  const from = walls[0]?.line.from ?? { x: 0, y: 0 };
  return { x: near(from.x), y: near(from.y) };
}

/**
 * The walls on their storeys. A storey whose walls reach below its level begins at the lowest of them, as long as that is above the
 * level beneath; walls deeper than that are left out.
 */
function onLevels(
  levels: readonly Level[],
  walls: readonly PlacedWall[],
  notes: NoteList,
): readonly { wall: PlacedWall; level: Level }[] {
  return levels.flatMap((level, index) => {
    const floor =
      levels.slice(0, index).findLast(({ elevation }) => level.elevation - elevation > AGREES)?.elevation ?? -Infinity;
    const own = walls.filter((wall) => wall.level === level);
    const kept = own.filter(({ entity, bottom }) => {
      if (bottom - floor > AGREES) return true;
      notes.skip(entity, 'its foot lies at or below the level under its storey');
      return false;
    });
    const lowest = Math.min(level.elevation, ...kept.map(({ bottom }) => bottom));
    const starts = level.elevation - lowest > AGREES ? lowest : level.elevation;
    if (starts < level.elevation) notes.note(level.entity, 'it begins below its level, at the foot of its lowest wall');
    const begun = { ...level, elevation: Math.min(starts, lowest) };
    return kept.map((wall) => ({ wall, level: begun }));
  });
}
