import { ASSUMED_MIX, ASSUMED_WORDS } from '../engineering/aci-347-04/assumed-mix.js';
import { CEMENT_NAMES, cementGroup } from '../engineering/aci-347-04/cement-group.js';
import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import { NM_PER_FOOT, toFeet, toMm } from '../quantity/length.js';
import {
  celsiusToFahrenheit,
  kgPerM3ToPcf,
  metresPerHourToFeetPerHour,
  millimetresToInches,
  pcfToKgPerM3,
} from '../quantity/us-customary.js';
import type { CalculatorInput } from './calculator-input.js';
import type { FreshConcreteWall } from '../engineering/aci-347-04/fresh-concrete-wall.js';

/** Fields of a standing wall of fresh concrete, in the order in which their errors are told. */
export const FRESH_CONCRETE_FIELDS = ['method', 'height', 'concrete', 'unitWeight', 'cement', 'retarder', 'slump'] as const;

const METHODS: readonly string[] = ['aci-347'];
const HIGHEST_FT = 1000;

/** Everything of a pour but its rate; undefined where a field could not be read, which the input has listed. */
export function readStandingConcrete(input: CalculatorInput): Omit<FreshConcreteWall, 'riseFtPerH'> | undefined {
  input.orElse(
    'method',
    () => input.name('method', (name) => (METHODS.includes(name) ? name : null), METHODS),
    METHODS[0],
    `method: ${METHODS[0]}`,
  );
  const height = input.length('height', '8 ft', {
    above: 0,
    to: HIGHEST_FT * NM_PER_FOOT,
    says: `more than 0 and at most ${HIGHEST_FT} ft`,
  });
  const concreteC = input.quantity('concrete', 'temperature', '70 F', PLAUSIBLE.concrete);
  const density = input.orElse(
    'unitWeight',
    () => input.quantity('unitWeight', 'density', '150 pcf', PLAUSIBLE.unitWeight),
    pcfToKgPerM3(ASSUMED_MIX.unitWeightPcf),
    ASSUMED_WORDS.unitWeight,
  );
  const cement = input.orElse(
    'cement',
    () => input.name('cement', cementGroup, CEMENT_NAMES),
    ASSUMED_MIX.cement,
    ASSUMED_WORDS.cement,
  );
  const retarder = input.orElse('retarder', () => input.flag('retarder'), ASSUMED_MIX.retarder, ASSUMED_WORDS.retarder);
  const slumpIn = input.orElse('slump', () => readSlump(input), ASSUMED_MIX.slumpIn, ASSUMED_WORDS.slump);
  if (
    height === undefined ||
    concreteC === undefined ||
    density === undefined ||
    cement === undefined ||
    retarder === undefined ||
    slumpIn === undefined
  )
    return undefined;
  return {
    heightFt: toFeet(height),
    concreteF: celsiusToFahrenheit(concreteC),
    unitWeightPcf: kgPerM3ToPcf(density),
    cement,
    retarder,
    slumpIn,
  };
}

/** Rate of rise [ft/h]. */
export function readRise(input: CalculatorInput): number | undefined {
  const rise = input.quantity('rise', 'rise', '3 ft/h', PLAUSIBLE.rise);
  return rise === undefined ? undefined : metresPerHourToFeetPerHour(rise);
}

function readSlump(input: CalculatorInput): number | undefined {
  const nm = input.length('slump', '5 in', PLAUSIBLE.slump);
  return nm === undefined ? undefined : millimetresToInches(toMm(nm));
}
