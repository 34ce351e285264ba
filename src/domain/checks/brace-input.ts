import { inSi } from '../quantity/quantity.js';
import { NM_PER_FOOT, type Nm } from '../quantity/length.js';
import { readWind, WIND_FIELDS, WIND_SPANS, type WindQuestion } from './wind-input.js';
import { STATICS_SPANS } from './statics-spans.js';
import type { CalculatorInput } from './calculator-input.js';
import type { Span } from '../quantity/span.js';

export const BRACE_FIELDS = ['height', 'spacing', 'braceTop', 'braceFoot', 'capacity', 'pressure', 'load', ...WIND_FIELDS] as const;

/** What presses on the wall: an even pressure, a load along its top, or the wind by the standard. In SI. */
type Pressing =
  | { readonly by: 'pressure'; readonly kPa: number }
  | { readonly by: 'load'; readonly kNPerM: number }
  | { readonly by: 'wind'; readonly wind: WindQuestion };

export interface BraceQuestion {
  readonly pressing: Pressing;
  readonly height: Nm;
  readonly braceTop: Nm;
  readonly braceFoot: Nm;
  /** One of the two at least is stated. */
  readonly spacing: Nm | null;
  /** Axial force that a brace takes [kN]. */
  readonly capacity: number | null;
}

const upTo = (ft: number): Span => ({ above: 0, to: ft * NM_PER_FOOT, says: `more than 0 and at most ${ft} ft` });
const CAPACITY = { above: 0, to: inSi('force', 'kip', 1000), says: 'more than 0 and at most 1000 kip' };
const LOAD = { above: 0, to: inSi('force per length', 'kip/ft', 100), says: 'more than 0 and at most 100 kip/ft' };

/** A raking brace and what it holds; undefined where a field could not be read. */
export function readBrace(input: CalculatorInput, fields: Readonly<Record<string, unknown>>): BraceQuestion | undefined {
  const braceTop = input.length('braceTop', '8 ft', upTo(100));
  const braceFoot = input.length('braceFoot', '6 ft', upTo(100));
  const pressing = readPressing(input, fields);
  const height = readHeight(input, braceTop, pressing);
  if (height !== undefined && braceTop !== undefined && braceTop > height) input.refuse('braceTop', 'at most the height of the wall');
  const capacity = input.has('capacity') ? input.quantity('capacity', 'force', '2000 lb', CAPACITY) : null;
  const needsSpacing = input.has('spacing') || !input.has('capacity');
  const spacing = needsSpacing ? input.length('spacing', '6 ft, or the capacity of a brace', upTo(100)) : null;
  if (braceTop === undefined || braceFoot === undefined || pressing === undefined || height === undefined) return undefined;
  if (capacity === undefined || spacing === undefined) return undefined;
  return { pressing, height, braceTop, braceFoot, spacing, capacity };
}

function readHeight(input: CalculatorInput, braceTop: Nm | undefined, pressing: Pressing | undefined): Nm | undefined {
  if (input.has('height') || pressing?.by !== 'load') return input.length('height', '9 ft', WIND_SPANS.height);
  input.defaults.push('height: that of the brace, the load acts where it meets the wall');
  return braceTop;
}

function readPressing(input: CalculatorInput, fields: Readonly<Record<string, unknown>>): Pressing | undefined {
  const given = (['pressure', 'load', 'speed'] as const).filter((name) => input.has(name));
  const [by = 'pressure', ...others] = given;
  for (const other of others) input.refuse(other, `nothing, where ${by} says what presses on the wall`);
  if (by === 'speed') {
    const wind = readWind(input, fields);
    return wind && { by: 'wind', wind };
  }
  for (const name of WIND_FIELDS) if (name !== 'speed' && input.has(name)) input.refuse(name, 'nothing, where no speed is given');
  if (by === 'load') {
    const kNPerM = input.quantity('load', 'force per length', '125 lb/ft', LOAD);
    return kNPerM === undefined ? undefined : { by, kNPerM };
  }
  const kPa = input.quantity('pressure', 'pressure', '15 psf, or a load, or a wind speed', STATICS_SPANS.pressure);
  return kPa === undefined ? undefined : { by, kPa };
}
