import { lengthUnitNamed, NM_PER_UNIT, type WrittenLengthUnit } from './length-unit.js';
import { decimalText, sum, times, type Rational } from './rational.js';

const DECIMAL = String.raw`(?:\d{1,15}(?:\.\d{1,20})?|\.\d{1,20})`;
const FRACTION = String.raw`\d{1,3}\/\d{1,3}`;
const MIXED = String.raw`\d{1,15}(?: | ?- ?)${FRACTION}`;
/** Inches that need no mark behind feet: `12' 1/2` might be twelve and a half feet, so a fraction by itself is none. */
const UNMARKED = `(${MIXED}|${DECIMAL})`;
const NUMBER = `(${MIXED}|${FRACTION}|${DECIMAL})`;
const FEET = String.raw`(?:'|ft\.?|feet|foot)`;
const INCHES = String.raw`(?:"|in\.?|inches|inch)`;
const METRIC = String.raw`(mm|cm|m|(?:milli|centi)?met(?:re|er)s?)`;

/** What one form made of a text: nanometres as an exact number, or what is wrong with the parts. */
export type FormReading =
  | { readonly nm: Rational }
  | { readonly fault: 'fraction' | 'feet-not-whole' | 'inches-over' | 'fraction-unit' | 'unit-missing'; readonly nm?: Rational };

export interface LengthForm {
  readonly name: 'feet-and-inches' | 'feet-and-unmarked-inches' | 'feet' | 'inches' | 'metric' | 'bare';
  readonly pattern: RegExp;
  readonly read: (parts: readonly string[], bareUnit: WrittenLengthUnit | null) => FormReading;
}

/**
 * The six ways of writing a length. Each pattern takes the whole of a plain text and no text satisfies two of them, so an
 * accepted text has one reading. Inches behind feet may lack their mark where a dash or a space parts the two (`12'-6`). A sign stands before the whole length: `-12'-6"` is minus twelve and a half feet.
 */
export const LENGTH_FORMS: readonly LengthForm[] = [
  {
    name: 'feet-and-inches',
    pattern: new RegExp(`^-?(${DECIMAL}|${MIXED}) ?${FEET} ?-? ?${NUMBER} ?${INCHES}$`),
    read: readFeetAndInches,
  },
  {
    name: 'feet-and-unmarked-inches',
    pattern: new RegExp(`^-?(${DECIMAL}|${MIXED}) ?${FEET}(?: ?- ?| )${UNMARKED}$`),
    read: readFeetAndInches,
  },
  { name: 'feet', pattern: new RegExp(`^-?${NUMBER} ?${FEET}$`), read: ([number]) => scaled(number, 'ft') },
  { name: 'inches', pattern: new RegExp(`^-?${NUMBER} ?${INCHES}$`), read: ([number]) => scaled(number, 'in') },
  {
    name: 'metric',
    pattern: new RegExp(`^-?(${DECIMAL}) ?${METRIC}$`),
    read: ([number, unit = '']) => scaled(number, lengthUnitNamed(unit) ?? 'mm'),
  },
  { name: 'bare', pattern: new RegExp(`^-?${NUMBER}$`), read: readBare },
];

function readFeetAndInches([feet = '', inches = '']: readonly string[]): FormReading {
  const whole = writtenNumber(feet);
  const part = writtenNumber(inches);
  if (!whole || !part) return { fault: 'fraction' };
  const nm = sum(times(whole, NM_PER_UNIT.ft), times(part, NM_PER_UNIT.in));
  if (!/^\d+$/.test(feet)) return { fault: 'feet-not-whole', nm };
  return part.over >= 12n * part.under ? { fault: 'inches-over', nm } : { nm };
}

function readBare([number = '']: readonly string[], unit: WrittenLengthUnit | null): FormReading {
  if (unit === null) return { fault: 'unit-missing' };
  if (number.includes('/') && unit !== 'in' && unit !== 'ft') return { fault: 'fraction-unit' };
  return scaled(number, unit);
}

function scaled(number: string | undefined, unit: WrittenLengthUnit): FormReading {
  const value = writtenNumber(number ?? '');
  return value ? { nm: times(value, NM_PER_UNIT[unit]) } : { fault: 'fraction' };
}

/** `6`, `6.5`, `1/2`, `6 1/2` or `6-1/2`; undefined where the fraction is not less than one or finer than a 64th. */
function writtenNumber(text: string): Rational | undefined {
  const match = /^(?:(\d+)[ -]+)?(\d+)\/(\d+)$/.exec(text);
  if (!match) return decimalText(text);
  const over = BigInt(match[2] ?? '0');
  const under = BigInt(match[3] ?? '0');
  if (under > 64n || over >= under) return undefined;
  return { over: BigInt(match[1] ?? '0') * under + over, under };
}
