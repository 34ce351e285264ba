import type { Nm } from './length.js';
import { printFeetInches } from './print-length.js';
import { dimensionOfUnit } from './unit.js';

export type LengthFaultKind =
  | 'unread'
  | 'too-long'
  | 'negative'
  | 'too-far'
  | 'fraction'
  | 'feet-not-whole'
  | 'inches-over'
  | 'fraction-unit'
  | 'unit-missing';

const EXAMPLES = `a length such as 12'-6 1/2", 150.5", 3.81 m or 3810 mm`;

const WORDS: Readonly<Record<Exclude<LengthFaultKind, 'unread' | 'inches-over' | 'feet-not-whole'>, string>> = {
  'too-long': EXAMPLES,
  negative: 'a length of zero or more',
  'too-far': 'a length below 1,000 km',
  fraction: 'a fraction below one and no finer than 1/64, with a space before it (6 1/2"), or decimals (6.5")',
  'fraction-unit': 'decimals: fractions are read in inches and feet only, so a fraction here needs its unit (6 1/2")',
  'unit-missing': `a number with its unit: ${EXAMPLES}`,
};

/**
 * What would do instead of a text that is not a length, in plain words.
 *
 * @param text the plain text that was read
 * @param nm   the length the parts would add up to, where they do
 */
export function lengthFault(text: string, kind: LengthFaultKind, nm?: Nm): string {
  if (kind === 'inches-over' || kind === 'feet-not-whole') return carried(kind, nm ?? 0);
  return kind === 'unread' ? unread(text) : WORDS[kind];
}

function carried(kind: 'inches-over' | 'feet-not-whole', nm: Nm): string {
  const rule = kind === 'inches-over' ? 'inches beside feet run from 0 to less than 12' : 'feet beside inches are a whole number';
  return `${rule}: write ${printFeetInches(nm)} if that is what is meant`;
}

function unread(text: string): string {
  if (text === '') return EXAMPLES;
  if (/\d,\d/.test(text)) {
    return `a comma means thousands to some and decimals to others: write ${text.replaceAll(',', '')} or ${text.replace(',', '.')}`;
  }
  if (/nan|inf/.test(text)) return EXAMPLES;
  if (/\d ?e ?[+-]?\d/.test(text)) return `the number written out in digits: ${EXAMPLES}`;
  if (text.includes("''")) return `two apostrophes have two readings: write 6" for inches or 6' for feet`;
  if (/\d(?:'|ft\.?|feet|foot) ?-? ?[\d./ -]+$/.test(text)) return `the inches with their mark, as in 12'-6"`;
  const pair = /^(\d+)(?: ?- ?| )(\d+(?:\.\d+|[ -]\d+\/\d+)?)$/.exec(text);
  if (pair && Number.parseFloat(pair[2] ?? '') < 12) return `the marks of what each number is: ${pair[1]}'-${pair[2]}" for feet and inches, one number with its unit for anything else`;
  if (/('|"|ft|feet|foot|in|inch|inches)/.test(text) && /\d ?(mm|cm|m|met(?:re|er)s?)\b/.test(text)) {
    return `one system of units in one length: ${EXAMPLES}`;
  }
  return otherDimension(text) ?? EXAMPLES;
}

function otherDimension(text: string): string | undefined {
  const unit = /^-?[\d./ ]+(.*)$/.exec(text)?.[1];
  const dimension = unit ? dimensionOfUnit(unit) : undefined;
  return dimension === undefined ? undefined : `a length was expected and ${unit} is a unit of ${dimension}: ${EXAMPLES}`;
}
