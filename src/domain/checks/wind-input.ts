import { NM_PER_FOOT, type Nm } from '../quantity/length.js';
import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import { readNumberField } from './number-field.js';
import type { CalculatorInput } from './calculator-input.js';
import type { Exposure } from '../engineering/asce-7-16/exposure.js';
import type { Span } from '../quantity/span.js';

/** Fields of the wind on a wall, beside its height. */
export const WIND_FIELDS = ['speed', 'exposure', 'duration', 'wallLength', 'edition', 'importance', 'topography'] as const;

export const EDITIONS = ['asce-7-05', 'asce-7-10', 'asce-7-16', 'asce-7-22'] as const;
export type WindEdition = (typeof EDITIONS)[number];

const EXPOSURES = ['B', 'C', 'D'] as const;
const upTo = (ft: number): Span => ({ above: 0, to: ft * NM_PER_FOOT, says: `more than 0 and at most ${ft} ft` });
/** Wide on purpose: common practice, no source. */
export const WIND_SPANS = {
  height: upTo(300),
  wallLength: upTo(10_000),
  duration: PLAUSIBLE.duration,
} as const satisfies Readonly<Record<string, Span>>;

export interface WindQuestion {
  /** Basic speed of the edition [m/s]. */
  readonly speed: number;
  readonly exposure: Exposure;
  /** How long the wall stands unfinished [h]; null: not stated, no reduction. */
  readonly duration: number | null;
  /** Null: not stated, the highest coefficient of the table. */
  readonly wallLength: Nm | null;
  readonly edition: WindEdition;
  readonly importance: number;
  readonly topography: number;
}

/** The wind on a wall; undefined where a field could not be read. */
export function readWind(input: CalculatorInput, fields: Readonly<Record<string, unknown>>): WindQuestion | undefined {
  const speed = input.quantity('speed', 'speed', '115 mph', PLAUSIBLE.designWind);
  const exposure = input.name('exposure', (name) => EXPOSURES.find((known) => known === name.trim().toUpperCase()) ?? null, EXPOSURES);
  const noDuration = 'duration: not stated, no reduction of the speed';
  const readDuration = () => input.quantity('duration', 'time', '4 weeks', WIND_SPANS.duration);
  const duration = input.orElse<number | null>('duration', readDuration, null, noDuration);
  const noLength = 'wallLength: not stated, the highest force coefficient';
  const readLength = () => input.length('wallLength', '40 ft', WIND_SPANS.wallLength);
  const wallLength = input.orElse<Nm | null>('wallLength', readLength, null, noLength);
  const readEdition = () => input.name<WindEdition>('edition', (name) => EDITIONS.find((known) => known === editionKey(name)) ?? null, EDITIONS);
  const edition = input.orElse<WindEdition>('edition', readEdition, 'asce-7-16', 'edition: asce-7-16');
  const importance = readImportance(input, fields, edition);
  const readTopography = () => readNumberField(input, fields, 'topography', { from: 1, to: 5 });
  const topography = input.orElse('topography', readTopography, 1, 'topography: 1, level ground');
  if (speed === undefined || exposure === undefined || duration === undefined || wallLength === undefined) return undefined;
  if (edition === undefined || importance === undefined || topography === undefined) return undefined;
  return { speed, exposure, duration, wallLength, edition, importance, topography };
}

/** `ASCE 7-16` and `7-16` are `asce-7-16`. */
function editionKey(written: string): string {
  const key = written.trim().toLowerCase().replace(/\s+/g, '-');
  return key.startsWith('asce-') ? key : `asce-${key}`;
}

/** Only the 2005 edition multiplies by an importance factor; later ones have a map of speeds for each risk category. */
function readImportance(
  input: CalculatorInput,
  fields: Readonly<Record<string, unknown>>,
  edition: WindEdition | undefined,
): number | undefined {
  if (edition !== 'asce-7-05') return input.has('importance') ? input.refuse('importance', 'nothing but with asce-7-05') : 1;
  return input.orElse('importance', () => readNumberField(input, fields, 'importance', { from: 0.5, to: 2 }), 1, 'importance: 1');
}
