import { meant } from '../quantity/rounding.js';
import { columnStability, SLENDEREST_COLUMN } from '../engineering/nds-2018/column-stability.js';
import { eulerStress } from '../engineering/nds-2018/euler-stress.js';
import { failure, success } from '../evidence/result.js';
import { inSi, inUnit } from '../quantity/quantity.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { toInches, toMm } from '../quantity/length.js';
import { CalculatorInput } from './calculator-input.js';
import { inBoth, stressInBoth } from './both-units.js';
import { outsideAnswer } from './outside-answer.js';
import { readNumberField } from './number-field.js';
import { STATICS_SPANS } from './statics-spans.js';
import { timberSection } from './timber-section.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';

const SOURCE = 'nds-2018 §3.7.1';
const SAWN = 0.8;
const STRENGTH = { above: 0, to: inSi('pressure', 'psi', 50_000), says: 'more than 0 and at most 50000 psi' };
const MODULUS = { above: 0, to: inSi('pressure', 'psi', 5e6), says: 'more than 0 and at most 5000000 psi' };

/**
 * Compression a wood brace or shore takes before it buckles.
 *
 * Reads `section` (`4x6` nominal, or two dressed sides), `length` (effective, between points held in both directions), `fcStar`, `eMin`, and `c`
 * (0.8 sawn, 0.9 glued laminated). Answers `stability` Cp, `stress`, `capacity`, `slenderness`. Over le/d = 50 there is no answer.
 */
export const timberColumnCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['section', 'length', 'fcStar', 'eMin', 'c']);
  const section = timberSection(fields['section']) ?? input.refuse('section', 'a section such as 4x6, 3.5 in x 5.5 in or 89 x 140 mm');
  const length = input.length('length', '6 ft', STATICS_SPANS.height);
  const fcStar = input.quantity('fcStar', 'pressure', '1600 psi', STRENGTH);
  const eMin = input.quantity('eMin', 'pressure', '580000 psi', MODULUS);
  const c = input.orElse('c', () => readNumberField(input, fields, 'c', { from: SAWN, to: 0.9 }), SAWN, 'c: 0.8, sawn lumber');
  if (section === undefined || length === undefined || fcStar === undefined || eMin === undefined || c === undefined) return failure(input.errors);
  if (input.errors.length > 0) return failure(input.errors);
  const measures = [input.system('length', 'length'), input.system('fcStar', 'pressure'), input.system('eMin', 'pressure')];
  const system = section.si && measures.every((written) => written === 'si') ? 'si' : 'us-customary';
  const unit = system === 'si' ? 'MPa' : 'psi';
  const asked = (kPa: number): number => meant(inUnit('pressure', unit, kPa));
  const side = system === 'si' ? toMm : toInches;
  const [b, d] = section.sides;
  const slenderness = length / Math.min(b, d);
  if (slenderness > SLENDEREST_COLUMN) {
    const numbers = { slenderness, limit: SLENDEREST_COLUMN, side: 'above' };
    return success(outsideAnswer('NDS 2018', [{ numbers, source: SOURCE }], SOURCE, input.defaults));
  }
  const [F, E] = [asked(fcStar), asked(eMin)];
  const ratio = workedStep('slenderness', 'le / d', `${n(side(length))} / ${n(side(Math.min(b, d)))}`, slenderness, '1', SOURCE);
  const FcE = workedStep('buckling stress', "FcE = 0.822 · E'min / ( le / d )²", `0.822 · ${n(E)} / ${n(slenderness)}²`, eulerStress(E, slenderness), unit, SOURCE);
  const Cp = workedStep('stability factor', 'Cp = ( 1 + a ) / 2c − √( ( ( 1 + a ) / 2c )² − a / c ), a = FcE / Fc*', `a = ${n(FcE.value)} / ${n(F)}, c = ${n(c)}`, columnStability(FcE.value, F, c), '1', 'nds-2018 Eq. 3.7-1');
  const stress = workedStep('stress', 'Fc* · Cp', `${n(F)} · ${n(Cp.value)}`, F * Cp.value, unit, SOURCE);
  // MPa on mm² are newtons, psi on in² pounds.
  const force = stress.value * side(b) * side(d) * (system === 'si' ? 0.001 : 1);
  const capacity = workedStep('capacity', 'stress · b · d', `${n(stress.value)} · ${n(side(b))} · ${n(side(d))}`, force, system === 'si' ? 'kN' : 'lb', SOURCE);
  return success({
    result: { stability: Cp.value, stress: stressInBoth(stress.value, system), capacity: inBoth('force', force, system), slenderness },
    governs: FcE.value < F ? 'buckling' : 'crushing',
    trace: [ratio, FcE, Cp, stress, capacity],
    source: SOURCE,
    defaults: input.defaults,
    notes: ['The length is that between points held against moving in the weak direction; knots, holes and the joints at the ends are not in it.'],
    findings: [],
  });
};
