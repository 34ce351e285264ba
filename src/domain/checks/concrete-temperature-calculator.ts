import { meant } from '../quantity/rounding.js';
import { failure, success } from '../evidence/result.js';
import { freshTemperature, ICE_DEGREES, type Batch } from '../engineering/hot-concrete-lecture/fresh-temperature.js';
import { inSi, inUnit } from '../quantity/quantity.js';
import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { WARMEST_CONCRETE_F } from '../engineering/aci-347-04/limits.js';
import { CalculatorInput } from './calculator-input.js';
import { coherentUnits, inBoth } from './both-units.js';
import { outsideAnswer } from './outside-answer.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';
import type { UnitSystem } from './written-system.js';

const SOURCE = 'hot-concrete-lecture';
const FIELDS = ['aggregate', 'aggregateTemperature', 'cement', 'cementTemperature', 'water', 'waterTemperature', 'freeWater', 'ice'] as const;
const HEAVIEST_T = 100;
const SOLID = { above: 0, to: inSi('mass', 't', HEAVIEST_T), says: `more than 0 and at most ${HEAVIEST_T} t` };
const WET = { from: 0, to: inSi('mass', 't', HEAVIEST_T), says: `0 or more and at most ${HEAVIEST_T} t` };
const INGREDIENT = { from: -40, to: 150, says: 'between -40 F (-40 C) and 302 F (150 C)' };
/** Share of the mixing water as ice up to which the equation has been found good. ice-study-2017. */
const MOST_ICE = 0.2;

/**
 * Temperature of fresh concrete from the masses and temperatures of what goes into it, with ice for part of the water.
 *
 * Reads `aggregate`, `cement` and `water` with their `…Temperature`; `freeWater` on the aggregate and `ice`, none where they are left out.
 * Answers `temperature`; where the mix would freeze there is no answer.
 */
export const concreteTemperatureCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, FIELDS);
  const batch = readBatch(input);
  if (batch === undefined || input.errors.length > 0) return failure(input.errors);
  const { system } = coherentUnits(input, {
    aggregate: 'mass', cement: 'mass', water: 'mass', freeWater: 'mass', ice: 'mass',
    aggregateTemperature: 'temperature', cementTemperature: 'temperature', waterTemperature: 'temperature',
  });
  const mixed = inUnits(batch, system);
  const value = freshTemperature(mixed, ICE_DEGREES[system]);
  const asked = system === 'si' ? '°C' : '°F';
  const celsius = inSi('temperature', asked, value);
  if (celsius <= 0) {
    const numbers = { concreteF: inUnit('temperature', '°F', celsius), limitF: 32, side: 'below' };
    return success(outsideAnswer('mixing temperature', [{ numbers, source: 'statics' }], SOURCE, input.defaults));
  }
  const step = workedStep('temperature of the mix', 'T = ( 0.22 · ( Ta · Wa + Tc · Wc ) + Tw · Ww + Ta · Wf − L · Wi ) / ( 0.22 · ( Wa + Wc ) + Ww + Wf + Wi )', substituted(mixed, ICE_DEGREES[system]), value, asked, SOURCE);
  return success({
    result: { temperature: inBoth('temperature', value, system) },
    governs: batch.ice > 0 ? 'with-ice' : 'without-ice',
    trace: [step],
    source: SOURCE,
    defaults: input.defaults,
    notes: notesOf(batch, celsius),
    findings: [],
  });
};

/** In kg and °C; undefined where a field could not be read. */
function readBatch(input: CalculatorInput): Batch | undefined {
  const at = (name: string): number | undefined => input.quantity(name, 'temperature', '70 F', INGREDIENT);
  const [aggregate, aggregateAt] = [input.quantity('aggregate', 'mass', '1828 kg', SOLID), at('aggregateTemperature')];
  const [cement, cementAt] = [input.quantity('cement', 'mass', '360 kg', SOLID), at('cementTemperature')];
  const [water, waterAt] = [input.quantity('water', 'mass', '123 kg', WET), input.quantity('waterTemperature', 'temperature', '70 F', PLAUSIBLE_WATER)];
  const freeWater = input.orElse('freeWater', () => input.quantity('freeWater', 'mass', '20 kg', WET), 0, 'freeWater: none');
  const ice = input.orElse('ice', () => input.quantity('ice', 'mass', '50 kg', WET), 0, 'ice: none');
  if (aggregate === undefined || aggregateAt === undefined || cement === undefined || cementAt === undefined) return undefined;
  if (water === undefined || waterAt === undefined || freeWater === undefined || ice === undefined) return undefined;
  return { aggregate, aggregateAt, cement, cementAt, water, waterAt, freeWater, ice };
}

const PLAUSIBLE_WATER = { from: 0, to: PLAUSIBLE.concrete.to, says: 'liquid water, between 32 F (0 C) and 212 F (100 C)' };

function inUnits(batch: Batch, system: UnitSystem): Batch {
  if (system === 'si') return batch;
  const lb = (kg: number): number => meant(inUnit('mass', 'lb', kg));
  const fahrenheit = (c: number): number => Number(inUnit('temperature', '°F', c).toFixed(9));
  return {
    aggregate: lb(batch.aggregate), cement: lb(batch.cement), water: lb(batch.water), freeWater: lb(batch.freeWater), ice: lb(batch.ice),
    aggregateAt: fahrenheit(batch.aggregateAt), cementAt: fahrenheit(batch.cementAt), waterAt: fahrenheit(batch.waterAt),
  };
}

function substituted({ aggregate: Wa, aggregateAt: Ta, cement: Wc, cementAt: Tc, water: Ww, waterAt: Tw, freeWater: Wf, ice: Wi }: Batch, L: number): string {
  const over = `0.22 · ( ${n(Ta)} · ${n(Wa)} + ${n(Tc)} · ${n(Wc)} ) + ${n(Tw)} · ${n(Ww)} + ${n(Ta)} · ${n(Wf)} − ${n(L)} · ${n(Wi)}`;
  return `( ${over} ) / ( 0.22 · ( ${n(Wa)} + ${n(Wc)} ) + ${n(Ww)} + ${n(Wf)} + ${n(Wi)} )`;
}

function notesOf({ water, ice }: Batch, celsius: number): readonly string[] {
  const tooHot = inUnit('temperature', '°F', celsius) > WARMEST_CONCRETE_F + 1e-9;
  return [
    'Nothing is added for mixing, haul and sun.',
    ...(tooHot ? [`Over ${WARMEST_CONCRETE_F} F (35 C): placing it has to be supported by test or field record (aci-305-1-14 §3.3).`] : []),
    ...(ice > MOST_ICE * (water + ice) ? ['Over a fifth of the mixing water is ice; a study found the equation good to about that share.'] : []),
  ];
}
