import { failure, success } from '../evidence/result.js';
import { flexuralStrength } from '../engineering/aci-318-14/flexural-strength.js';
import { flexureReduction } from '../engineering/aci-318-14/flexure-reduction.js';
import { LEAST_TENSION_STRAIN, TENSION_CONTROLLED_STRAIN, tensionStrain } from '../engineering/aci-318-14/tension-strain.js';
import { leastSteel } from '../engineering/aci-318-14/least-steel.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { stressBlockDepth } from '../engineering/aci-318-14/stress-block-depth.js';
import { CalculatorInput } from './calculator-input.js';
import { outsideAnswer, type LeftLimit } from './outside-answer.js';
import { readNumberField } from './number-field.js';
import { readBar } from './bar-field.js';
import { readConcreteStrength, readYield, STRENGTH_SPANS as SPANS, weakConcreteNotes, WORKED_IN_US_NOTE } from './strength-input.js';
import { areaFromIn2, in2Of, inchesOf, lengthFromInches, momentFromInLb, momentPerFootFromInLb } from './strength-units.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';

const SOURCE = 'aci-318-14 §22.2';
const FIELDS = ['As', 'bar', 'spacing', 'd', 'b', 'fc', 'fy', 'phi'];
/** Strongest bars of ordinary flexure, and the steel's stiffness. aci-318-14 Table 20.2.2.4a, §20.2.2.2, from memory [psi]. */
const STRONGEST_PSI = 80_000;
const STEEL_MODULUS_PSI = 29_000_000;
const FOOT_IN = 12;

/** Bars of the section: area in its width [in²], and whether the width stands for a foot of wall. */
interface Steel {
  readonly areaIn2: number;
  readonly widthIn: number;
  readonly perFoot: boolean;
  readonly written: string;
}

/**
 * Moment that a rectangular section with one layer of bars resists.
 *
 * Reads `As` with `b`, or `bar` and `spacing` (then a foot of wall, or `b` where given); `d`, `fc`; `fy` (Grade 60) and `phi` (by the strain of the
 * bars) are assumed where left out. Answers `moment` φMn, the depth `a` of the block and `steel`. Where the bars strain less than 0.004, or are
 * stronger than 80 ksi, there is no answer.
 */
export const flexureCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, FIELDS);
  const steel = readSteel(input);
  const depth = input.length('d', '2.75 in', SPANS.section);
  const fc = readConcreteStrength(input);
  const fy = readYield(input);
  const given = input.has('phi') ? readNumberField(input, fields, 'phi', { from: 0.5, to: 1 }) : null;
  if (steel === undefined || depth === undefined || fc === undefined || fy === undefined || given === undefined) return failure(input.errors);
  if (input.errors.length > 0) return failure(input.errors);
  const { areaIn2: As, widthIn: b } = steel;
  const d = inchesOf(depth);
  const strain = tensionStrain(As, d, b, fc, fy);
  const left = limitsLeft(strain, fy);
  if (left.length > 0) return success(outsideAnswer('ACI 318-14', left, SOURCE, input.defaults));
  const codePhi = flexureReduction(strain, fy / STEEL_MODULUS_PSI);
  if (given === null) input.defaults.push(`phi: ${n(codePhi)}, by the strain of the bars`);
  const phi = given ?? codePhi;
  const a = workedStep('depth of the block', "a = As · fy / ( 0.85 · f'c · b )", `${n(As)} · ${n(fy)} / ( 0.85 · ${n(fc)} · ${n(b)} )`, stressBlockDepth(As, b, fc, fy), 'in', SOURCE);
  const et = workedStep('strain of the bars', 'εt = 0.003 · ( d − c ) / c, c = a / β1', `d = ${n(d)}, a = ${n(a.value)}`, strain, '1', SOURCE);
  const Mn = workedStep('design strength', 'φMn = φ · As · fy · ( d − a / 2 )', `${n(phi)} · ${n(As)} · ${n(fy)} · ( ${n(d)} − ${n(a.value)} / 2 )`, flexuralStrength(As, d, b, fc, fy, phi), 'in·lb', SOURCE);
  const least = leastSteel(b, d, fc, fy);
  return success({
    result: {
      moment: steel.perFoot ? momentPerFootFromInLb(Mn.value) : momentFromInLb(Mn.value),
      a: lengthFromInches(a.value),
      steel: areaFromIn2(As),
    },
    governs: strain >= TENSION_CONTROLLED_STRAIN ? 'tension-controlled' : 'transition',
    trace: [workedStep('steel', 'As', steel.written, As, 'in2', 'astm-a615'), a, et, Mn],
    source: SOURCE,
    defaults: input.defaults,
    notes: [
      ...(phi > codePhi ? [`The strength reduction asked for, ${n(phi)}, is over the ${n(codePhi)} of ACI 318-14: no design strength of that code.`] : []),
      ...(As < least ? [`A beam needs at least ${n(least)} in2 of bars, or a third more than the moment asks for.`] : []),
      ...weakConcreteNotes(fc),
      WORKED_IN_US_NOTE,
    ],
    findings: [],
  });
};

function readSteel(input: CalculatorInput): Steel | undefined {
  const width = input.has('b') ? input.length('b', '12 in', SPANS.section) : null;
  if (input.has('As')) {
    for (const name of ['bar', 'spacing']) if (input.has(name)) input.refuse(name, 'nothing, where As is given');
    const area = input.quantity('As', 'area', '0.31 in2', SPANS.area);
    if (width === null) return input.refuse('b', 'the width of the section such as 12 in');
    if (area === undefined || width === undefined) return undefined;
    return { areaIn2: in2Of(area), widthIn: inchesOf(width), perFoot: false, written: n(in2Of(area)) };
  }
  if (!input.has('bar')) return input.refuse('As', 'an area of bars such as 0.31 in2, or bar and spacing');
  const bar = readBar(input);
  const spacing = input.length('spacing', '16 in', SPANS.spacing);
  if (bar === undefined || spacing === undefined || width === undefined) return undefined;
  if (width === null) input.defaults.push('b: 12 in, a foot of wall');
  const widthIn = width === null ? FOOT_IN : inchesOf(width);
  const s = inchesOf(spacing);
  return { areaIn2: (bar.areaIn2 * widthIn) / s, widthIn, perFoot: width === null, written: `${n(bar.areaIn2)} · ${n(widthIn)} / ${n(s)}` };
}

function limitsLeft(strain: number, fy: number): readonly LeftLimit[] {
  const left: LeftLimit[] = [];
  if (strain < LEAST_TENSION_STRAIN) left.push({ numbers: { strain: Number(strain.toPrecision(4)), limit: LEAST_TENSION_STRAIN, side: 'below' }, source: 'aci-318-14 §9.3.3.1' });
  if (fy > STRONGEST_PSI) left.push({ numbers: { yieldPsi: fy, limitPsi: STRONGEST_PSI, side: 'above' }, source: 'aci-318-14 Table 20.2.2.4a' });
  return left;
}
