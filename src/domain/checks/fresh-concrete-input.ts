import { ASSUMED_MIX, ASSUMED_MIX_SI, ASSUMED_WORDS, ASSUMED_WORDS_SI } from '../engineering/aci-347-04/assumed-mix.js';
import { CEMENT_NAMES, cementGroup } from '../engineering/aci-347-04/cement-group.js';
import { PLAUSIBLE } from '../engineering/plausible-spans.js';
import { inches, NM_PER_FOOT, toFeet, toMm, type Nm } from '../quantity/length.js';
import { celsiusToFahrenheit, kgPerM3ToPcf, millimetresToInches, pcfToKgPerM3 } from '../quantity/us-customary.js';
import type { CalculatorInput } from './calculator-input.js';
import type { CementGroup } from '../engineering/aci-347-04/chemistry-coefficient.js';
import type { FreshConcreteWall, FreshConcreteWallSi } from '../engineering/aci-347-04/fresh-concrete-wall.js';
import type { UnitSystem } from './written-system.js';

/** Fields of a standing wall of fresh concrete, in the order in which their errors are told. */
export const FRESH_CONCRETE_FIELDS = ['method', 'height', 'concrete', 'unitWeight', 'cement', 'retarder', 'slump'] as const;

const METHODS: readonly string[] = ['aci-347'];
const HIGHEST_FT = 1000;

/** What stands in a form, as it was written: everything but its rate of rise. */
export interface StandingConcrete {
  readonly height: Nm;
  readonly concreteC: number;
  readonly unitWeight: Written;
  readonly cement: CementGroup;
  readonly retarder: boolean;
  /** [mm] */
  readonly slump: Written;
}

/** A value held in SI, and the system it was written in: that is the printing whose border it is held against. */
interface Written {
  readonly value: number;
  readonly in: UnitSystem;
}

interface AssumedMix {
  readonly words: Readonly<Record<keyof typeof ASSUMED_WORDS, string>>;
  readonly kgPerM3: number;
  readonly slumpMm: number;
}

/** What is assumed in the system in which the question is asked. */
const ASSUMED: Readonly<Record<UnitSystem, AssumedMix>> = {
  'us-customary': {
    words: ASSUMED_WORDS,
    kgPerM3: pcfToKgPerM3(ASSUMED_MIX.unitWeightPcf),
    slumpMm: toMm(inches(ASSUMED_MIX.slumpIn)),
  },
  si: { words: ASSUMED_WORDS_SI, kgPerM3: ASSUMED_MIX_SI.unitWeightKgPerM3, slumpMm: ASSUMED_MIX_SI.slumpMm },
};

/**
 * Everything of a pour but its rate; undefined where a field could not be read, which the input has listed.
 *
 * @param input  the calculator's fields
 * @param system in which the question is asked: what is left out is assumed in it
 * @param known  methods the calculator names where it does not know one
 */
export function readStandingConcrete(input: CalculatorInput, system: UnitSystem, known = METHODS): StandingConcrete | undefined {
  input.orElse(
    'method',
    () => input.name('method', (name) => (METHODS.includes(name) ? name : null), known),
    METHODS[0],
    `method: ${METHODS[0]}`,
  );
  const height = input.length('height', '8 ft', {
    above: 0,
    to: HIGHEST_FT * NM_PER_FOOT,
    says: `more than 0 and at most ${HIGHEST_FT} ft`,
  });
  const concreteC = input.quantity('concrete', 'temperature', '70 F', PLAUSIBLE.concrete);
  const { words, kgPerM3, slumpMm } = ASSUMED[system];
  const unitWeight = input.orElse('unitWeight', () => readUnitWeight(input), { value: kgPerM3, in: system }, words.unitWeight);
  const cement = input.orElse('cement', () => input.name('cement', cementGroup, CEMENT_NAMES), ASSUMED_MIX.cement, words.cement);
  const retarder = input.orElse('retarder', () => input.flag('retarder'), ASSUMED_MIX.retarder, words.retarder);
  const slump = input.orElse('slump', () => readSlump(input), { value: slumpMm, in: system }, words.slump);
  if (
    height === undefined ||
    concreteC === undefined ||
    unitWeight === undefined ||
    cement === undefined ||
    retarder === undefined ||
    slump === undefined
  )
    return undefined;
  return { height, concreteC, unitWeight, cement, retarder, slump };
}

/** For the US customary equations. */
export function inUsCustomary(standing: StandingConcrete): Omit<FreshConcreteWall, 'riseFtPerH'> {
  const { height, concreteC, unitWeight, cement, retarder, slump } = standing;
  return {
    heightFt: toFeet(height),
    concreteF: celsiusToFahrenheit(concreteC),
    unitWeightPcf: kgPerM3ToPcf(unitWeight.value),
    cement,
    retarder,
    slumpIn: millimetresToInches(slump.value),
  };
}

/** For the SI equations. */
export function inSi(standing: StandingConcrete): Omit<FreshConcreteWallSi, 'riseMPerH'> {
  const { height, concreteC, unitWeight, cement, retarder, slump } = standing;
  return {
    heightM: toMm(height) / 1000,
    concreteC,
    unitWeightKgPerM3: meant(unitWeight.value),
    ...(unitWeight.in === 'us-customary' && { unitWeightPcf: kgPerM3ToPcf(unitWeight.value) }),
    cement,
    retarder,
    slumpMm: slump.value,
    ...(slump.in === 'us-customary' && { slumpIn: millimetresToInches(slump.value) }),
  };
}

/** Rate of rise [m/h]. */
export function readRise(input: CalculatorInput): number | undefined {
  const rise = input.quantity('rise', 'rise', '3 ft/h', PLAUSIBLE.rise);
  return rise === undefined ? undefined : meant(rise);
}

/** What was written, without the noise of a factor: 23.53596 kN/m³ is 2400 kg/m³. */
const meant = (value: number): number => Number(value.toPrecision(14));

function readUnitWeight(input: CalculatorInput): Written | undefined {
  const value = input.quantity('unitWeight', 'density', '150 pcf', PLAUSIBLE.unitWeight);
  return written(value, input.system('unitWeight', 'density'));
}

function readSlump(input: CalculatorInput): Written | undefined {
  const nm = input.length('slump', '5 in', PLAUSIBLE.slump);
  return written(nm === undefined ? undefined : toMm(nm), input.system('slump', 'length'));
}

function written(value: number | undefined, system: UnitSystem | null): Written | undefined {
  return value === undefined || system === null ? undefined : { value, in: system };
}
