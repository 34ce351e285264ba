import { failure, success } from '../evidence/result.js';
import { finding } from '../evidence/finding.js';
import { NM_PER_INCH } from '../quantity/length.js';
import { CalculatorInput } from './calculator-input.js';
import { forceFromLb, inchesOf, lengthFromInches, momentFromInLb } from './strength-units.js';
import { designLintel } from './lintel-design.js';
import type { LintelSection, LintelStirrups } from './lintel-section.js';
import { lintelLoad, readLintelLoads, type LintelLoad } from './lintel-loads.js';
import { METRIC_LINTEL_FIELDS, metricLintel } from './metric-lintel.js';
import { outsideAnswer } from './outside-answer.js';
import { readConcreteStrength, readYield, STRENGTH_SPANS as SPANS, weakConcreteNotes, WORKED_IN_US_NOTE } from './strength-input.js';
import type { Calculator, CalculatorAnswer } from './calculator-answer.js';

const SOURCE = 'aci-318-14 §9';
const METHODS = ['aci-318', 'obc-2024'] as const;
const COVER = { from: NM_PER_INCH / 2, to: 6 * NM_PER_INCH, says: 'at least 1/2 in and at most 6 in' };
const ASSUMED_COVER_IN = 1.5;
const STIRRUP = { stirrup: '#3', legs: 2 } as const;
/** Strongest bars of ordinary flexure. aci-318-14 Table 20.2.2.4a, from memory. */
const STRONGEST_PSI = 80_000;
const DEEP_SPAN_IN_DEPTHS = 4;

/**
 * Bars and stirrups of a lintel over an opening.
 *
 * By ACI 318: reads `span` (clear opening), `core`, `depth`, `loads` (a factored load, or dead, live and snow as they are), `fc`, `fy`, `cover`; answers
 * the lightest `bars`, the `stirrups`, factored `moment` and `shear` of a simple span, `strength` and `d`. By `obc-2024`: reads `supports` and
 * `snow` instead of loads and answers by the table. Where no bars or stirrups fit there is an `opening-too-wide` finding.
 */
export const lintelCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['method', 'span', 'core', 'depth', 'loads', 'fc', 'fy', 'cover', ...METRIC_LINTEL_FIELDS]);
  const read = () => input.name('method', (written) => METHODS.find((each) => each === written.trim().toLowerCase()) ?? null, METHODS);
  const method = input.orElse<(typeof METHODS)[number]>('method', read, 'aci-318', 'method: aci-318');
  const span = input.length('span', '6 ft', SPANS.section);
  const core = input.length('core', '6 in', SPANS.section);
  const depth = input.length('depth', '16 in', SPANS.section);
  if (method === 'obc-2024') return metricLintel(input, span, core, depth);
  for (const name of METRIC_LINTEL_FIELDS) if (input.has(name)) input.refuse(name, 'nothing, but for the method obc-2024');
  const loads = readLintelLoads(input, fields['loads']);
  const [fcPsi, fyPsi] = [readConcreteStrength(input), readYield(input)];
  const assumed = ASSUMED_COVER_IN * NM_PER_INCH;
  const cover = input.orElse('cover', () => input.length('cover', '1 1/2 in', COVER), assumed, 'cover: 1 1/2 in to stirrups of #3 with two legs');
  if (method === undefined || span === undefined || core === undefined || depth === undefined || loads === undefined) return failure(input.errors);
  if (fcPsi === undefined || fyPsi === undefined || cover === undefined || input.errors.length > 0) return failure(input.errors);
  if (fyPsi > STRONGEST_PSI) return success(outsideAnswer('ACI 318-14', [{ numbers: { yieldPsi: fyPsi, limitPsi: STRONGEST_PSI, side: 'above' }, source: 'aci-318-14 Table 20.2.2.4a' }], SOURCE, input.defaults));
  const section: LintelSection = { widthIn: inchesOf(core), depthIn: inchesOf(depth), coverIn: inchesOf(cover), ...STIRRUP, fcPsi, fyPsi };
  return success({ ...designed(section, inchesOf(span), lintelLoad(loads, section.widthIn, section.depthIn)), defaults: input.defaults });
};

function designed(section: LintelSection, spanIn: number, load: LintelLoad): Omit<CalculatorAnswer, 'defaults'> {
  const spanFt = spanIn / 12;
  const { momentInLb, shearLb, bars, stirrups, trace: worked } = designLintel(section, spanIn, load.lbPerFt);
  const forces = { moment: momentFromInLb(momentInLb), shear: forceFromLb(shearLb) };
  const trace = [...load.trace, ...worked];
  if (bars === null || stirrups === null) {
    const what = stirrups === null ? 'one or two bars up to #8' : 'stirrups at 2 in or more';
    const numbers = { spanFt, coreIn: section.widthIn, depthIn: section.depthIn, limit: what };
    return { result: forces, governs: 'opening-too-wide', trace, source: SOURCE, notes: [load.note], findings: [finding('opening-too-wide', { numbers, source: SOURCE })] };
  }
  return {
    result: { bars: `${bars.count}-${bars.bar}`, stirrups: stirrups.spacingIn === null ? 'none' : `${section.stirrup} @ ${stirrups.spacingIn}`, ...(stirrups.spacingIn !== null && { stirrupSpacing: lengthFromInches(stirrups.spacingIn) }), ...forces, strength: momentFromInLb(bars.strengthInLb), d: lengthFromInches(bars.dIn) },
    governs: `stirrups-${stirrups.kind}`,
    trace,
    source: SOURCE,
    notes: notesOf(section, spanIn, load, stirrups),
    findings: [],
  };
}

function notesOf({ depthIn, fcPsi }: LintelSection, spanIn: number, load: LintelLoad, { kind }: LintelStirrups): readonly string[] {
  return [
    load.note,
    'Simple span of the clear opening, even load; the shear is that at the jamb, which is on the safe side.',
    ...(kind === 'none' && depthIn > 10 ? ['Without stirrups the 2019 edition of ACI 318 allows this depth less shear: have it checked, or give it the least stirrups.'] : []),
    ...(spanIn <= DEEP_SPAN_IN_DEPTHS * depthIn ? ['A span of at most four depths is a deep beam, for which ACI 318 asks for another method; the bars here are those of an ordinary section.'] : []),
    ...weakConcreteNotes(fcPsi),
    WORKED_IN_US_NOTE,
  ];
}
