import { bendRadius, BENT_DIAMETERS_MM, endProjection } from '../engineering/bs-8666-2005/bend-radius.js';
import { cuttingLength, SHAPE_CODES, shapeDimensions } from '../engineering/bs-8666-2005/cutting-length.js';
import { failure, success } from '../evidence/result.js';
import { finding, type Finding } from '../evidence/finding.js';
import { NM_PER_FOOT, NM_PER_INCH, NM_PER_MM, toMm } from '../quantity/length.js';
import { ALSO_DRAWN, SHAPE_LENGTHS } from '../engineering/bs-8666-2005/shape-lengths.js';
import { LEAST_ENDS } from '../engineering/bs-8666-2005/least-ends.js';
import { PITCH_THAT_COUNTS } from '../engineering/bs-8666-2005/helix-length.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { CalculatorInput } from './calculator-input.js';
import { lengthInBoth, type Calculator } from './calculator-answer.js';
import { outsideAnswer } from './outside-answer.js';
import { readShapeDimensions } from './shape-dimensions.js';
import { workedStep } from './worked-step.js';

const SOURCE = 'bs-8666-2005 Table 3';
const BENDS = 'bs-8666-2005 Table 2';
const DIAMETER = { above: 0, to: 4 * NM_PER_INCH, says: 'more than 0 and at most 4 in (101.6 mm)' };
const RADIUS = { from: 0, to: 100 * NM_PER_FOOT, says: '0 or more and at most 100 ft' };

/** Ends of the shapes whose first and last dimensions are straight legs beyond a bend. */
const ENDS: Readonly<Record<string, readonly string[]>> = { '11': ['A', 'B'], '21': ['A', 'C'], '22': ['A'], '31': ['A', 'D'], '32': ['A', 'D'], '41': ['A', 'E'], '44': ['A', 'E'] };

/**
 * Length of straight bar that a bent one is cut from.
 *
 * Reads `code` of the shape, `diameter`, and `dimensions` by letter, out to out (`{"A": "600 mm", "B": "200 mm", "C": "600 mm"}`; C of code 77 is a
 * number of turns); `standard` and the inside `radius` of the bends are assumed where left out. Answers `cuttingLength` and `radius`. A leg shorter
 * than the standard's least end is answered with an `outside-method` finding.
 */
export const barShapeCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['standard', 'code', 'diameter', 'dimensions', 'radius']);
  const standard = input.orElse('standard', () => input.name('standard', (name) => (/^bs-?8666(-20(05|20))?$/i.test(name.trim()) ? 'bs-8666' : null), ['bs-8666']), 'bs-8666', 'standard: bs-8666');
  const code = readCode(input, fields['code']);
  const diameter = input.length('diameter', '12 mm', DIAMETER);
  const dimensions = code === undefined ? undefined : readShapeDimensions(input, fields['dimensions'], code, shapeDimensions(code) ?? []);
  const written = input.has('radius') ? input.length('radius', '24 mm', RADIUS) : null;
  if (standard === undefined || code === undefined || diameter === undefined || dimensions === undefined || written === undefined) return failure(input.errors);
  if (input.errors.length > 0) return failure(input.errors);
  const d = toMm(diameter);
  const least = bendRadius(d);
  if (least === null) {
    return success(outsideAnswer('BS 8666', [{ numbers: { diameterMm: d, limit: BENT_DIAMETERS_MM.map((each) => `${each} mm`).join(', ') }, source: BENDS }], SOURCE, input.defaults));
  }
  if (written !== null && toMm(written) < least) {
    return success(outsideAnswer('BS 8666', [{ numbers: { radiusMm: toMm(written), limitMm: least, side: 'below' }, source: BENDS }], SOURCE, input.defaults));
  }
  const r = written === null ? least : toMm(written);
  if (written === null) input.defaults.push(`radius: ${least} mm, the least for ${d} mm`);
  const length = cuttingLength(code, d, r, dimensions) ?? Number.NaN;
  if (!(length > 0)) {
    input.refuse('dimensions', 'dimensions that leave a length of bar');
    return failure(input.errors);
  }
  return success({
    result: { cuttingLength: lengthInBoth(length * NM_PER_MM), radius: lengthInBoth(r * NM_PER_MM) },
    governs: `code-${code}`,
    trace: [workedStep('cutting length', equationOf(code, dimensions), `${Object.entries(dimensions).map(([name, value]) => `${name} = ${n(value)}`).join(', ')}, r = ${n(r)}, d = ${n(d)}`, length, 'mm', SOURCE)],
    source: SOURCE,
    defaults: input.defaults,
    notes: ['Dimensions are outside to outside; bars are scheduled to the multiple of length the bender cuts, which is not rounded here.', ...notInLength(code, dimensions)],
    findings: shortEnds(code, d, dimensions),
  });
};

function readCode(input: CalculatorInput, written: unknown): string | undefined {
  const plain = typeof written === 'number' || typeof written === 'string' ? String(written).trim() : '';
  const code = plain === '' ? plain : plain.padStart(2, '0');
  if (SHAPE_CODES.includes(code)) return code;
  return input.refuse('code', `a shape code with a formula: ${SHAPE_CODES.join(', ')}`);
}

function equationOf(code: string, dimensions: Readonly<Record<string, number>>): string {
  const ends = LEAST_ENDS[code];
  if (ends !== undefined && dimensions['C'] === undefined) return `L = ${sumOf(ends.parts)} + max( ${ends.diameters} · d, ${ends.leastMm} mm )`;
  const found = SHAPE_LENGTHS[code];
  if (found === undefined) return steep(dimensions) ? 'L = C · √( ( π · ( A − d ) )² + B² )' : 'L = C · π · ( A − d )';
  if (code === '75') return 'L = π · ( A − d ) + B';
  const off = [found.r === 0 ? '' : ` − ${found.r} · r`, found.d === 0 ? '' : ` − ${found.d} · d`];
  return `L = ${sumOf(found.parts)}${off.join('')}`;
}

const sumOf = (parts: Readonly<Record<string, number>>): string =>
  Object.entries(parts).map(([name, times], k) => `${k === 0 ? '' : times < 0 ? ' − ' : ' + '}${times === 1 ? name : `${Math.abs(times)} · ${name}`}`).join('');

const steep = ({ A = 0, B = 0 }: Readonly<Record<string, number>>): boolean => B > A * PITCH_THAT_COUNTS;

/** Tells what was sent and is not in the length, and what the helix without a pitch stands for. */
function notInLength(code: string, dimensions: Readonly<Record<string, number>>): readonly string[] {
  if (code === '77') return steep(dimensions) ? ['The pitch is over a fifth of the diameter and counts; that equation is from memory.'] : ['A pitch of at most a fifth of the diameter is not counted.'];
  const unused = (ALSO_DRAWN[code] ?? []).filter((name) => dimensions[name] !== undefined);
  return unused.length === 0 ? [] : [`Not in the length of code ${code}: ${unused.join(', ')}.`];
}

function shortEnds(code: string, d: number, dimensions: Readonly<Record<string, number>>): readonly Finding[] {
  const least = endProjection(d) ?? 0;
  return (ENDS[code] ?? [])
    .filter((name) => (dimensions[name] ?? 0) < least)
    .map((name) => finding('outside-method', { numbers: { method: 'BS 8666', dimension: name, endMm: dimensions[name] ?? 0, limitMm: least, side: 'below' }, source: BENDS }));
}
