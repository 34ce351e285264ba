import type { Calculator } from './calculator-answer.js';
import type { InputError } from '../evidence/input-error.js';

type Names = Readonly<Record<string, string>>;

const FRESH: Names = { temperature: 'concrete', concreteTemperature: 'concrete', density: 'unitWeight', rateOfRise: 'rise', formHeight: 'height' };
const WIRE: Names = { wire: 'wireGauge', gauge: 'wireGauge' };
const TIES: Names = { ...WIRE, course: 'courseHeight' };
const WIND: Names = { length: 'wallLength', windSpeed: 'speed' };

/** Other names under which a calculator's fields may be sent: each can mean nothing else there. */
export const OTHER_NAMES: Readonly<Record<string, Names>> = {
  'form-pressure': FRESH,
  'rise-limit': { ...FRESH, ratedPressure: 'rating' },
  'pour-plan': { ...FRESH, area: 'planArea', plan: 'planArea', liftHeight: 'lift', discharge: 'dischargeLimit', pumpRate: 'pump', truckVolume: 'truck' },
  'bend-thrust': { secondCore: 'otherCore', core2: 'otherCore', core1: 'core', angle: 'turn' },
  'hoop-tension': {},
  tee: TIES,
  uplift: WIRE,
  wind: WIND,
  brace: { ...WIND, top: 'braceTop', foot: 'braceFoot' },
  'timber-column': { effectiveLength: 'length', le: 'length' },
  'wall-bars': { core: 'nominal', thickness: 'nominal', wallHeight: 'height', speed: 'wind' },
  'basement-wall': { wallHeight: 'height' },
  flexure: { as: 'As' },
  lintel: { load: 'loads', clearSpan: 'span' },
  lap: { lapClass: 'class' },
  evaporation: { airTemperature: 'air', concreteTemperature: 'concrete', windSpeed: 'wind', relativeHumidity: 'humidity' },
  'concrete-temperature': { aggregateMass: 'aggregate', cementMass: 'cement', waterMass: 'water', iceMass: 'ice' },
  'bar-shape': { shape: 'code', barDiameter: 'diameter' },
};

/**
 * A calculator that also reads its fields under their other names; an error points at the name that was sent.
 *
 * A field sent under two names is refused: neither is dropped in silence.
 *
 * @param name      the calculator's
 * @param calculate the calculator under its own names
 */
export function underOtherNames(name: string, calculate: Calculator): Calculator {
  const others = OTHER_NAMES[name] ?? {};
  return (fields) => {
    const sent = Object.keys(fields).flatMap((key) => (Object.hasOwn(others, key) ? [{ key, own: others[key]! }] : []));
    if (sent.length === 0) return calculate(fields);
    const renamed: Record<string, unknown> = Object.fromEntries(Object.entries(fields).filter(([key]) => !Object.hasOwn(others, key)));
    const twice: InputError[] = [];
    for (const { key, own } of sent) {
      if (Object.hasOwn(renamed, own)) twice.push(sentTwice(key, own));
      else renamed[own] = fields[key];
    }
    if (twice.length > 0) return { ok: false, error: twice };
    const answer = calculate(renamed);
    return answer.ok ? answer : { ok: false, error: answer.error.map((error) => pointedAtSent(error, sent)) };
  };
}

const sentTwice = (key: string, own: string): InputError => ({
  sheet: null, row: null, column: null, pointer: `/${key}`, read: key, fix: `${key}: nothing beside ${own}, which is the same field`,
});

function pointedAtSent(error: InputError, sent: readonly { readonly key: string; readonly own: string }[]): InputError {
  const named = sent.find(({ own }) => error.pointer === `/${own}` || error.pointer?.startsWith(`/${own}/`));
  if (named === undefined || error.pointer === null) return error;
  return { ...error, pointer: `/${named.key}${error.pointer.slice(named.own.length + 1)}` };
}
