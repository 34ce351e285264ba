import { lengthUnitNamed } from '../../quantity/length-unit.js';
import { plainText } from '../../quantity/text.js';
import { COLUMNS, JOB_HEADERS, type ColumnRule, type RowKind, type TableKind } from './columns.js';

/** A header of a table: the column it stands for and the unit it gives to bare numbers, or what is wrong with that unit. */
export interface HeaderReading {
  readonly rule: ColumnRule;
  readonly unit: string | null;
  readonly fault: string | null;
}

/** A longer header is no header. */
const MAX_HEADER = 200;

/** Letters and digits only, lower case: `Start turn`, `start_turn` and `START-TURN` are one header. */
export const plainHeader = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');

/** `height (ft)`, `height [mm]`: the words and what stands in the last brackets. */
export function bracketed(text: string): { readonly words: string; readonly unit: string | null } {
  if (text.length > MAX_HEADER) return { words: text.slice(0, MAX_HEADER), unit: null };
  const match = /^(.*?)\s*[([]([^()[\]]*)[)\]]\s*$/s.exec(text);
  return match ? { words: match[1] ?? '', unit: plainText(match[2] ?? '') } : { words: text, unit: null };
}

/** What a header means in a table of this kind; undefined where nobody knows it. */
export function readHeader(kind: RowKind, text: string): HeaderReading | undefined {
  if (text.length > MAX_HEADER) return undefined;
  const { words, unit } = bracketed(text);
  const marked = /^([^"'\u2032\u2033].*?)\s*(["'\u2032\u2033])$/s.exec(words.trim());
  if (marked && unit === null) return withTrailingUnit(kind, marked[1] ?? '', marked[2] ?? '');
  const rule = ruleNamed(kind, words);
  if (rule) return withUnit(rule, unit);
  const trailing = /^(.*?)[\s_,-]+(\p{L}+)$/su.exec(words.trim());
  return trailing && unit === null ? withTrailingUnit(kind, trailing[1] ?? '', trailing[2] ?? '') : undefined;
}

/** `height_mm`, `W"`: a unit of length after the name of a column that takes one. */
function withTrailingUnit(kind: RowKind, words: string, unit: string): HeaderReading | undefined {
  const rule = ruleNamed(kind, words);
  const written = plainText(unit);
  return rule?.unit === 'length' && lengthUnitNamed(written) ? withUnit(rule, written) : undefined;
}

const rulesOf = (kind: RowKind): ReadonlyMap<string, ColumnRule> =>
  new Map(COLUMNS[kind].flatMap((rule) => [plainHeader(rule.name), ...rule.also].map((name) => [name, rule] as const)));
const RULES: Readonly<Record<RowKind, ReadonlyMap<string, ColumnRule>>> = {
  walls: rulesOf('walls'),
  openings: rulesOf('openings'),
  features: rulesOf('features'),
  storeys: rulesOf('storeys'),
};

const ruleNamed = (kind: RowKind, text: string): ColumnRule | undefined => RULES[kind].get(plainHeader(text));

function withUnit(rule: ColumnRule, written: string | null): HeaderReading {
  if (written === null || rule.unit === null) return { rule, unit: null, fault: null };
  if (rule.unit === 'degrees')
    return { rule, unit: null, fault: /^(°|deg|degrees?)$/.test(written) ? null : 'degrees: (deg) or no unit' };
  const unit = lengthUnitNamed(written);
  if (rule.unit === 'core')
    return { rule, unit: null, fault: unit === 'in' ? null : 'the code of a core, with (in) or no unit in the header' };
  return unit
    ? { rule, unit, fault: null }
    : { rule, unit: null, fault: 'a unit of length in the header: (in), (ft), (mm) or (m), or none' };
}

/**
 * What a table holds, from its header row alone; undefined where the header is of no kind.
 *
 * Deciding columns first (an opening has a wall and a width, a wall a core and a length or coordinates); a header with a deciding
 * column missing is of the kind that knows most of its columns, at least two.
 */
export function kindOfHeader(headers: readonly string[]): TableKind | undefined {
  const names = headers.map((header) => plainHeader(bracketed(header).words));
  const key: readonly string[] = JOB_HEADERS.key;
  const value: readonly string[] = JOB_HEADERS.value;
  if (names.some((name) => key.includes(name)) && names.some((name) => value.includes(name))) return 'job';
  const known = (kind: RowKind): ReadonlySet<string> =>
    new Set(headers.flatMap((header) => readHeader(kind, header)?.rule.field ?? []));
  const [walls, openings, features, storeys] = [known('walls'), known('openings'), known('features'), known('storeys')];
  const hasLine = ['from/0', 'from/1', 'to/0', 'to/1', 'length'].some((field) => walls.has(field));
  if (openings.has('wall') && openings.has('width') && !walls.has('core')) return 'openings';
  if (walls.has('core') && hasLine) return 'walls';
  if (features.has('kind') && features.has('wall')) return 'features';
  if (storeys.has('id') && storeys.has('height') && !walls.has('core') && !hasLine && !openings.has('width')) return 'storeys';
  const [best] = (
    [
      ['walls', walls],
      ['openings', openings],
      ['features', features],
      ['storeys', storeys],
    ] as const
  ).toSorted((a, b) => b[1].size - a[1].size);
  return best && best[1].size >= 2 ? best[0] : undefined;
}
