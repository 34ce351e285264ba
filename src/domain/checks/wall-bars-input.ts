import { meant } from '../quantity/rounding.js';
import { inSi, inUnit } from '../quantity/quantity.js';
import { NM_PER_FOOT, type Nm } from '../quantity/length.js';
import { namedBar, type BarName } from './bar-field.js';
import { psiOf } from './strength-units.js';
import { readSoil, type Soil } from './soil-field.js';
import { STATICS_SPANS as SPANS } from './statics-spans.js';
import { STRENGTH_SPANS } from './strength-input.js';
import type { CalculatorInput } from './calculator-input.js';

export const WALL_BARS_FIELDS = ['nominal', 'family', 'height', 'backfill', 'soil', 'wind', 'exposure', 'bearing', 'edition', 'position', 'alternateBar', 'alternateGrade'] as const;

const EDITIONS = ['irc-2018', 'irc-2021', 'obc-2024'] as const;
const FAMILIES = ['flat', 'waffle-grid', 'screen-grid'] as const;
const POSITIONS = ['inside-face', 'center'] as const;
const EXPOSURES = ['B', 'C', 'D'] as const;
const BEARINGS = ['top', 'side'] as const;
export type Edition = (typeof EDITIONS)[number];
export type Family = (typeof FAMILIES)[number];

const BACKFILL = { from: 0, to: 100 * NM_PER_FOOT, says: '0 or more and at most 100 ft' };
const WIND = { above: 0, to: inSi('speed', 'mph', 400), says: 'more than 0 and at most 400 mph (179 m/s)' };

/** Another bar or grade to use instead of the table's. */
export interface AlternateBar {
  readonly bar: BarName;
  readonly fyPsi: number;
}

/** Soil against the wall. */
export interface SoilSide {
  readonly backfill: Nm;
  /** Null under a code whose tables do not ask for it. */
  readonly soil: Soil | 'not-listed' | null;
  readonly position: (typeof POSITIONS)[number];
}

/** Wind on the wall. */
export interface WindSide {
  readonly windMph: number;
  readonly exposure: (typeof EXPOSURES)[number];
  readonly bearing: (typeof BEARINGS)[number];
}

export interface WallBarsQuestion {
  readonly edition: Edition;
  readonly family: Family;
  readonly nominal: Nm;
  readonly height: Nm;
  /** Exactly one of the two but for the metric code, whose walls above grade ask for no wind. */
  readonly soilSide: SoilSide | null;
  readonly windSide: WindSide | null;
  readonly alternate: AlternateBar | null;
  /** Fields that were given and that the code's tables do not ask for. */
  readonly notAsked: readonly string[];
}

/** What a wall's bars are asked with; undefined where anything is wrong, which the input lists. */
export function readWallBars(input: CalculatorInput, fields: Readonly<Record<string, unknown>>): WallBarsQuestion | undefined {
  const edition = input.orElse<Edition>('edition', () => oneOf(input, 'edition', EDITIONS), 'irc-2021', 'edition: irc-2021');
  const family = input.orElse<Family>('family', () => oneOf(input, 'family', FAMILIES), 'flat', 'family: flat');
  const nominal = input.length('nominal', '8 in', SPANS.core);
  const height = input.length('height', '9 ft', SPANS.height);
  const metric = edition === 'obc-2024';
  const backfill = input.has('backfill') ? input.length('backfill', '7 ft', BACKFILL) : 0;
  const grounded = (backfill ?? 0) > 0;
  if (grounded) for (const name of ['wind', 'exposure', 'bearing']) if (input.has(name)) input.refuse(name, 'nothing, where backfill is given: ask for the wall above grade by itself');
  const soilSide = grounded ? readSoilSide(input, fields, backfill ?? 0, metric, family) : null;
  const windSide = grounded || metric ? null : readWindSide(input);
  const notAsked = metric && !grounded ? ['wind', 'exposure', 'bearing', 'soil', 'position'].filter((name) => input.has(name)) : [];
  const alternate = input.has('alternateBar') || input.has('alternateGrade') ? readAlternate(input, metric) : null;
  if (edition === undefined || family === undefined || nominal === undefined || height === undefined || backfill === undefined) return undefined;
  if (soilSide === undefined || windSide === undefined || alternate === undefined || input.errors.length > 0) return undefined;
  return { edition, family, nominal, height, soilSide, windSide, alternate, notAsked };
}

function oneOf<T extends string>(input: CalculatorInput, name: string, known: readonly T[]): T | undefined {
  return input.name(name, (written) => known.find((each) => each.toLowerCase() === written.trim().toLowerCase()) ?? null, known);
}

function readSoilSide(input: CalculatorInput, fields: Readonly<Record<string, unknown>>, backfill: Nm, metric: boolean, family: Family | undefined): SoilSide | undefined {
  const flat = family === 'flat' || family === undefined;
  if (!flat && input.has('position') && fields['position'] !== 'center') return input.refuse('position', 'center: the bars of a grid stand in its cores');
  const words = 'position: inside-face, 1 1/4 in from the inside of the concrete; at the center the tables ask for more';
  const read = (): 'inside-face' | 'center' | undefined => oneOf(input, 'position', POSITIONS);
  if (metric && input.has('position')) return input.refuse('position', 'nothing: the metric tables put the bars in the inside half');
  const position = flat && !metric ? input.orElse('position', read, 'inside-face', words) : 'center';
  const soil = metric && !input.has('soil') ? null : readSoil(input, fields['soil']);
  return position === undefined || soil === undefined ? undefined : { backfill, soil, position };
}

function readWindSide(input: CalculatorInput): WindSide | undefined {
  if (!input.has('wind')) return input.refuse('backfill', 'a height of backfill such as 7 ft, or for a wall above grade a wind such as 115 mph');
  for (const name of ['soil', 'position']) if (input.has(name)) input.refuse(name, 'nothing, where there is no backfill');
  const speed = input.quantity('wind', 'speed', '115 mph', WIND);
  const exposure = oneOf(input, 'exposure', EXPOSURES);
  const words = 'bearing: side, the floor hung on the side of the wall, which asks for at least as much';
  const bearing = input.orElse<'top' | 'side'>('bearing', () => oneOf(input, 'bearing', BEARINGS), 'side', words);
  if (speed === undefined || exposure === undefined || bearing === undefined) return undefined;
  return { windMph: meant(inUnit('speed', 'mph', speed)), exposure, bearing };
}

function readAlternate(input: CalculatorInput, metric: boolean): AlternateBar | undefined {
  if (metric) return input.refuse(input.has('alternateBar') ? 'alternateBar' : 'alternateGrade', 'nothing: the metric code has no table of other bars');
  const bar = input.name('alternateBar', namedBar, ['#4', '#5', '#6']);
  const grade = inSi('pressure', 'ksi', 60);
  const fy = input.orElse('alternateGrade', () => input.quantity('alternateGrade', 'pressure', '40 ksi', STRENGTH_SPANS.fy), grade, 'alternateGrade: 60 ksi');
  return bar === undefined || fy === undefined ? undefined : { bar: bar.name, fyPsi: psiOf(fy) };
}
