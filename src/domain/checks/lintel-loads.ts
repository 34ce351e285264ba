import { meant } from '../quantity/rounding.js';
import { factoredLoad } from '../engineering/aci-318-14/factored-load.js';
import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import { inUnit } from '../quantity/quantity.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { shownText } from '../evidence/input-error.js';
import { CalculatorInput } from './calculator-input.js';
import { workedStep } from './worked-step.js';
import type { TraceStep } from '../evidence/trace.js';

const SPAN = PLAUSIBLE.lineLoad;
const PARTS = ['dead', 'live', 'snow'] as const;
/** Unit weight of reinforced concrete. cc-form-pressure. */
const UNIT_WEIGHT_PCF = 150;

/** Factored load along a lintel [lb/ft] and how it was worked. */
export interface LintelLoad {
  readonly lbPerFt: number;
  readonly trace: readonly TraceStep[];
  readonly note: string;
}

/** A line load in the units of the equations [lb/ft]. */
export const lbPerFt = (kNPerM: number): number => meant(inUnit('force per length', 'lb/ft', kNPerM));

/** What was sent as `loads`, before the lintel's own weight is known. */
export type WrittenLoads = { readonly factored: number } | Readonly<Record<(typeof PARTS)[number], number>>;

/** The field `loads`: one factored load as text, or dead, live and snow as they are. */
export function readLintelLoads(input: CalculatorInput, written: unknown): WrittenLoads | undefined {
  if (typeof written === 'string') {
    const factored = input.quantity('loads', 'force per length', '1200 lb/ft', { ...SPAN, from: undefined, above: 0, says: 'more than 0 and at most 1000000 lb/ft' });
    return factored === undefined ? undefined : { factored: lbPerFt(factored) };
  }
  if (typeof written !== 'object' || written === null || Array.isArray(written)) {
    return input.refuse('loads', 'a factored load such as 1200 lb/ft, or loads as they are: {"dead": "400 lb/ft", "live": "300 lb/ft", "snow": "150 lb/ft"}');
  }
  const inner = new CalculatorInput(written as Readonly<Record<string, unknown>>, PARTS);
  if (inner.errors.length === 0 && !PARTS.some((name) => inner.has(name))) return input.refuse('loads', 'at least one of dead, live and snow, 0 lb/ft where there is none');
  for (const name of PARTS) if (!inner.has(name)) input.defaults.push(`loads, ${name}: none`);
  const [dead, live, snow] = PARTS.map((name) => (inner.has(name) ? inner.quantity(name, 'force per length', '400 lb/ft', SPAN) : 0));
  for (const error of inner.errors) input.errors.push({ ...error, pointer: `/loads${error.pointer}`, read: shownText(error.read), fix: `loads, ${error.fix}` });
  if (dead === undefined || live === undefined || snow === undefined || inner.errors.length > 0) return undefined;
  return { dead: lbPerFt(dead), live: lbPerFt(live), snow: lbPerFt(snow) };
}

/** Weight of concrete of a width and height along a wall [lb/ft]. */
export const wallWeight = (widthIn: number, heightIn: number): number => (UNIT_WEIGHT_PCF * widthIn * heightIn) / 144;

/**
 * The factored load; the weight of concrete (the lintel's own, or on a job that of the whole wall above) is added to loads as they are,
 * never to a factored one.
 */
export function lintelLoad(written: WrittenLoads, widthIn: number, depthIn: number, weighed: 'lintel' | 'wall above' = 'lintel'): LintelLoad {
  if ('factored' in written) return { lbPerFt: written.factored, trace: [], note: 'The load is taken as factored, with the weight of the lintel in it.' };
  const own = wallWeight(widthIn, depthIn);
  const { live, snow } = written;
  const dead = written.dead + own;
  const weight = workedStep(`weight of the ${weighed}`, '150 pcf · b · h', `150 · ${n(widthIn)} · ${n(depthIn)} / 144`, own, 'lb/ft', 'cc-form-pressure');
  const load = workedStep('factored load', 'wu = max( 1.4 · D, 1.2 · D + 1.6 · L + 0.5 · S, 1.2 · D + 1.6 · S + L )', `D = ${n(dead)}, L = ${n(live)}, S = ${n(snow)}`, factoredLoad(dead, live, snow), 'lb/ft', 'aci-318-14 §5.3.1, from memory');
  return { lbPerFt: load.value, trace: [weight, load], note: 'The weight of the lintel itself, 150 pcf, is added to the dead load.' };
}
