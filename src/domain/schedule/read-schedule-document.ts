import type { InputError } from '../evidence/input-error.js';
import { failure, success, type Result } from '../evidence/result.js';
import { LENGTH_UNITS, lengthUnitNamed, type LengthUnit } from '../quantity/length-unit.js';
import { joinWalls } from './join-walls.js';
import { checkDrawnCorners, checkPlacedCorners, checkRings } from './declared-corners.js';
import { declaredTees } from './declared-tees.js';
import { checkTees, placedWalls, placeWalls, type WallsToPlace } from './place-walls.js';
import type { Positions } from './plan-position.js';
import type { DocumentSource } from './document-source.js';
import { DOCUMENT_PLACES } from './places.js';
import { readFeatures } from './read-features.js';
import { readOpenings } from './read-openings.js';
import { readPour, readSite } from './read-site-and-pour.js';
import { readStoreys } from './read-storeys.js';
import { DIMENSIONS_TO, readWalls, type Walls } from './read-walls.js';
import { Reading } from './reading.js';
import { RowReader } from './row-reader.js';
import type { Schedule } from './schedule.js';
import type { ScheduleContext } from './schedule-context.js';
import {
  MAX_FACE_M2,
  MAX_FEATURES,
  MAX_MARK,
  MAX_NAME,
  MAX_OPENINGS,
  MAX_STOREYS,
  MAX_UNKNOWN,
  MAX_WALLS,
} from './schedule-limits.js';

export const SCHEDULE_FORMAT = 'wallcourse/schedule@1';
const OFFCUTS_SERVE = ['storey', 'job'] as const;
export const DOCUMENT_KEYS = [
  'format',
  'name',
  'units',
  'dimensionsTo',
  'range',
  'offcuts',
  'storeys',
  'walls',
  'openings',
  'features',
  'site',
  'pour',
] as const;

/**
 * The canonical schedule of a document `wallcourse/schedule@1`: every length in nm, every default filled in, every reference checked,
 * declared chains placed.
 *
 * All errors are told at once, at most 200 with the last saying how many more, each with its JSON pointer (and its cell, where
 * the document was made from tables), what was read and what would do. Nothing is guessed.
 *
 * @param contexts the figures to check against: one range's, or those of every range the schedule may name
 */
export function readScheduleDocument(
  json: unknown,
  contexts: ScheduleContext | readonly ScheduleContext[],
): Result<Schedule, readonly InputError[]> {
  return readDocumentSource({ document: json, places: DOCUMENT_PLACES, errors: [], unknown: [] }, contexts);
}

/** The same for a document made from tables: what was wrong with these comes first. */
export function readDocumentSource(
  source: DocumentSource,
  contexts: ScheduleContext | readonly ScheduleContext[],
): Result<Schedule, readonly InputError[]> {
  const reading = new Reading(source.places, unitOf(source.document));
  for (const error of source.errors) reading.errors.add(error);
  const document = RowReader.of(reading, source.document, '', DOCUMENT_KEYS);
  const schedule = document && readAll(reading, document, [contexts].flat(), source.sheetsRead);
  if (!schedule || reading.errors.count > 0) return failure(reading.errors.list());
  return success({ ...schedule, unknown: [...source.unknown, ...schedule.unknown].slice(0, MAX_UNKNOWN), ...source.notes });
}

function readAll(
  reading: Reading,
  document: RowReader,
  contexts: readonly ScheduleContext[],
  sheetsRead: string | undefined,
): Schedule | undefined {
  const where = sheetsRead === undefined ? '' : `; read were ${sheetsRead}`;
  if (document.value('format') !== SCHEDULE_FORMAT) document.fail('format', `"${SCHEDULE_FORMAT}"`);
  const name = document.text('name', MAX_NAME);
  const units = reading.unit ?? document.fail('units', `one of: ${LENGTH_UNITS.join(', ')}`);
  const dimensionsTo = document.choice('dimensionsTo', DIMENSIONS_TO);
  const offcuts = document.choice('offcuts', OFFCUTS_SERVE, 'storey');
  const context = readContext(document, contexts);
  const site = readSite(document);
  const pour = readPour(document);
  const storeys = readStoreys(reading, rowsOf(document, 'storeys', MAX_STOREYS, where));
  const wallRows = rowsOf(document, 'walls', MAX_WALLS, where);
  const walls = readWalls({ reading, storeys, dimensionsTo: dimensionsTo ?? 'foam-face', context }, wallRows);
  const joins = joinWalls(walls);
  checkDrawnCorners(walls.drafts, joins);
  checkRings(walls.drafts, joins);
  const plan = { drafts: walls.drafts, joins, tees: declaredTees(walls, context), context };
  checkFace(document, walls);
  const positions = reading.errors.count === 0 ? placeAll(plan) : null;
  const onWalls = (key: string, most: number): readonly unknown[] => (wallRows.length === 0 ? [] : rowsOf(document, key, most));
  const { features, gables } = readFeatures(reading, onWalls('features', MAX_FEATURES), walls, context);
  const openings = readOpenings(reading, onWalls('openings', MAX_OPENINGS), walls, gables, context);
  if (positions === null || reading.errors.count > 0 || name === undefined || units === undefined || dimensionsTo === undefined) return undefined;
  return {
    format: SCHEDULE_FORMAT,
    name,
    units,
    dimensionsTo,
    range: document.has('range') ? String(document.value('range')).trim() : (context.range ?? ''),
    ...(offcuts === 'job' ? { offcuts } : {}),
    storeys: [...storeys.read.values()],
    walls: placedWalls(plan, positions),
    openings,
    features,
    site,
    pour,
    unknown: reading.unknown,
  };
}

/** The figures of the range the schedule names; with none named, those of the only range there is. */
function readContext(document: RowReader, contexts: readonly ScheduleContext[]): ScheduleContext {
  const unchecked: ScheduleContext = { cores: null, courseHeight: null, buckThickness: null };
  const codes = contexts.flatMap(({ range }) => (range ? [range] : []));
  const [only = unchecked] = contexts;
  if (!document.has('range')) {
    if (contexts.length !== 1 || !only.range)
      document.fail('range', codes.length > 0 ? `a form range: ${codes.join(', ')}` : 'the code of a form range');
    return only;
  }
  const range = document.text('range', MAX_MARK);
  if (range === undefined || codes.length === 0) return only;
  const named = contexts.find((context) => context.range === range);
  if (!named) document.fail('range', `a form range: ${codes.join(', ')}`);
  return named ?? only;
}

/**
 * The rows of a list; none where it is absent, no list, or past its limit, which is then told.
 *
 * @param needed for a list that must hold something: what was read instead, in words that follow the error's own
 */
function rowsOf(document: RowReader, key: string, most: number, needed: string | null = null): readonly unknown[] {
  const value = document.value(key);
  if (value === undefined && needed === null) return [];
  if (!Array.isArray(value) || (needed !== null && value.length === 0)) {
    document.fail(key, needed === null ? `a list of ${key}` : `a list of at least one: this schedule has no ${key}${needed}`);
    return [];
  }
  if (value.length <= most) return value;
  document.fail(key, `at most ${most.toLocaleString('en-US')} ${key}: split the schedule into several jobs`);
  return [];
}

/** Where every wall stands, with what only shows there: chains that come back otherwise than they say, tees that are elsewhere. */
function placeAll(plan: WallsToPlace): Positions {
  const positions = placeWalls(plan);
  checkPlacedCorners(plan.drafts, plan.joins, positions);
  checkTees(plan, positions);
  return positions;
}

function checkFace(document: RowReader, { drafts }: Walls): void {
  let squareMetres = 0;
  for (const { length, height } of drafts.values()) squareMetres += (length / 1e9) * (height / 1e9);
  if (squareMetres > MAX_FACE_M2)
    document.fail(
      'walls',
      `at most ${MAX_FACE_M2.toLocaleString('en-US')} m² of wall: split the schedule into several jobs`,
      `${Math.round(squareMetres)} m²`,
    );
}

const unitOf = (json: unknown): LengthUnit | null => {
  const written = typeof json === 'object' && json !== null ? (json as Readonly<Record<string, unknown>>)['units'] : undefined;
  const named = typeof written === 'string' ? lengthUnitNamed(written.trim().toLowerCase()) : undefined;
  return LENGTH_UNITS.find((unit) => unit === named) ?? null;
};
