import { plainHeader } from './header.js';
import type { TableKind } from './columns.js';

/** A header row of each kind that would do. */
export const HEADER_EXAMPLES: Readonly<Record<TableKind, string>> = {
  walls: 'mark, storey, core, from_x, from_y, to_x, to_y',
  openings: 'mark, wall, at, sill, width, height, measured',
  features: 'kind, wall, at, from, to, face',
  storeys: 'id, height, grade, closed',
  job: 'key, value',
};

const NOUNS: ReadonlyMap<string, TableKind> = new Map([
  ['wall', 'walls'],
  ['walls', 'walls'],
  ['opening', 'openings'],
  ['openings', 'openings'],
  ['door', 'openings'],
  ['doors', 'openings'],
  ['window', 'openings'],
  ['windows', 'openings'],
  ['feature', 'features'],
  ['features', 'features'],
  ['storey', 'storeys'],
  ['storeys', 'storeys'],
  ['story', 'storeys'],
  ['stories', 'storeys'],
  ['storys', 'storeys'],
]);
/** Names only where nothing else stands beside them: a `floor plan` is a drawing. */
const WHOLE_NAMES: ReadonlyMap<string, TableKind> = new Map([
  ['level', 'storeys'],
  ['levels', 'storeys'],
  ['floor', 'storeys'],
  ['floors', 'storeys'],
  ['job', 'job'],
  ['jobs', 'job'],
  ['project', 'job'],
]);
const FILLERS: ReadonlySet<string> = new Set(['schedule', 'schedules', 'list', 'table', 'data', 'sheet', 'settings']);
const OTHER: ReadonlySet<string> = new Set([
  'note',
  'notes',
  'remark',
  'remarks',
  'comment',
  'comments',
  'legend',
  'cover',
  'summary',
  'detail',
  'details',
  'plan',
  'plans',
  'drawing',
  'drawings',
  'elevation',
  'elevations',
]);

/**
 * The table that a sheet's name promises: `Openings`, `wall schedule`, `Doors (2)`, `S1 walls`; undefined for any other sheet.
 *
 * A name never decides what a sheet is read as, only whether a sheet that is no table may be passed over.
 */
export function tableOfName(name: string): TableKind | undefined {
  const written = name.slice(0, 200).replace(/(?<=\p{Ll})(?=\p{Lu})/gu, ' ').toLowerCase();
  const words = written.split(/[^\p{L}]+/u).filter((word) => word !== '');
  if (words.some((word) => OTHER.has(word))) return undefined;
  const nouns = words.filter((word) => !FILLERS.has(word));
  const whole = nouns.length === 1 ? WHOLE_NAMES.get(nouns[0] ?? '') : undefined;
  return whole ?? NOUNS.get(nouns[0] ?? '') ?? NOUNS.get(nouns.at(-1) ?? '') ?? joined(plainHeader(written));
}

/** `wallschedule`, `openingslist2`. */
function joined(name: string): TableKind | undefined {
  const match = /^(\p{L}+?)(?:schedules?|list|table|data|sheet|settings)\d*$/u.exec(name);
  return match ? (NOUNS.get(match[1] ?? '') ?? WHOLE_NAMES.get(match[1] ?? '')) : undefined;
}
