import { failure, success } from '../evidence/result.js';
import { finding, type Finding } from '../evidence/finding.js';
import { inches, NM_PER_FOOT, toInches, toMm, type Nm } from '../quantity/length.js';
import { solveStack, type StackRange } from '../takeoff/index.js';
import { CalculatorInput } from './calculator-input.js';
import { lengthInBoth, type Calculator, type CalculatorRow } from './calculator-answer.js';
import { HEIGHT_STACK_DEFAULTS as ASSUMED } from './height-stack-defaults.js';
import type { Stack } from '../takeoff/index.js';
import type { TraceStep } from '../evidence/trace.js';

const SOURCE = 'common practice';
const HIGHEST_FT = 100;
const SPANS = {
  height: { above: 0, to: HIGHEST_FT * NM_PER_FOOT, says: `more than 0 and at most ${HIGHEST_FT} ft` },
  courseHeight: { from: inches(4), to: inches(48), says: 'at least 4 in and at most 48 in' },
  stripHeight: { from: inches(0.5), to: inches(48), says: 'at least 1/2 in and less than a course, or none' },
  tolerance: { from: 0, to: inches(48), says: '0 or more and less than a course' },
  minRip: { above: 0, to: inches(48), says: 'more than 0 and less than a course' },
} as const;

/**
 * Courses, height strips and a ripped top course that stand for an asked height, and the next best choices.
 *
 * Reads `height`; `courseHeight`, `stripHeight` (or `none`), `tolerance`, `minRip` and `prefers` (`rip` or `strips`) are assumed where they are
 * left out, and listed. Answers `courses` (the ripped one counted), `strips`, `ripped` (height of the ripped course, or `none`), `height`,
 * `deviation` (stack less asked) and `alternatives` by falling likeness. Where no stack is within the tolerance the nearest is
 * answered with a `height-not-coursed` finding.
 *
 * @source decisions 11 of the project; the figures assumed are common practice, no source
 */
export const heightStackCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['height', 'courseHeight', 'stripHeight', 'tolerance', 'minRip', 'prefers']);
  const asked = input.length('height', '9 ft', SPANS.height);
  const range = readRange(input, fields);
  if (asked === undefined || range === undefined || input.errors.length > 0) return failure(input.errors);
  const { chosen, alternatives, withinTolerance } = solveStack(asked, range);
  return success({
    result: { ...rowOf(chosen), alternatives: alternatives.map(rowOf) },
    governs: withinTolerance ? kindOf(chosen) : 'nearest',
    trace: [traceOf(chosen, range)],
    source: SOURCE,
    defaults: input.defaults,
    notes: [],
    findings: findingsOf(asked, chosen, withinTolerance),
  });
};

function readRange(input: CalculatorInput, fields: Readonly<Record<string, unknown>>): StackRange | undefined {
  const read = (name: 'courseHeight' | 'tolerance' | 'minRip', example: string): Nm | undefined =>
    input.orElse<Nm>(name, () => input.length(name, example, SPANS[name]), ASSUMED[name].value, ASSUMED[name].words);
  const without = typeof fields['stripHeight'] === 'string' && fields['stripHeight'].trim().toLowerCase() === 'none';
  const strip = (): Nm | null | undefined => (without ? null : input.length('stripHeight', '3 in', SPANS.stripHeight));
  const courseHeight = read('courseHeight', '16 in');
  const stripHeight = input.orElse<Nm | null>('stripHeight', strip, ASSUMED.stripHeight.value, ASSUMED.stripHeight.words);
  const stackTolerance = read('tolerance', '1/4 in');
  const minRip = read('minRip', '8 in');
  const kinds = ['rip', 'strips'] as const;
  const prefers = () => input.name('prefers', (name) => kinds.find((kind) => kind === name) ?? null, kinds);
  const stackPrefers = input.orElse<'rip' | 'strips'>('prefers', prefers, ASSUMED.prefers.value, ASSUMED.prefers.words);
  if (courseHeight === undefined || stripHeight === undefined || stackTolerance === undefined || minRip === undefined) return undefined;
  const parts = { stripHeight, tolerance: stackTolerance, minRip };
  for (const [name, value] of Object.entries(parts)) {
    if (value !== null && value >= courseHeight) input.refuse(name, `less than a course of ${toInches(courseHeight)} in`);
  }
  return stackPrefers === undefined ? undefined : { courseHeight, stripHeight, parameters: { stackTolerance, minRip, stackPrefers } };
}

const rowOf = ({ courses, strips, ripped, height, deviation }: Stack): CalculatorRow => ({
  courses,
  strips,
  ripped: ripped === null ? 'none' : lengthInBoth(ripped),
  height: lengthInBoth(height),
  deviation: lengthInBoth(deviation),
});

/** What the stack is made of: `courses`, `strips`, `rip`, `rip-and-strips`. */
function kindOf({ strips, ripped }: Stack): string {
  if (ripped === null) return strips === 0 ? 'courses' : 'strips';
  return strips === 0 ? 'rip' : 'rip-and-strips';
}

function traceOf({ courses, strips, ripped, height }: Stack, { courseHeight, stripHeight }: StackRange): TraceStep {
  const full = ripped === null ? courses : courses - 1;
  const substituted = `${full} · ${toInches(courseHeight)} + ${strips} · ${toInches(stripHeight ?? 0)} + ${toInches(ripped ?? 0)}`;
  return { name: 'height of the stack', equation: 'full courses · courseHeight + strips · stripHeight + ripped', substituted, value: toInches(height), unit: 'in', source: 'geometry' };
}

function findingsOf(asked: Nm, { height, deviation, ripped }: Stack, withinTolerance: boolean): readonly Finding[] {
  const askedMm = toMm(asked);
  if (!withinTolerance) return [finding('height-not-coursed', { numbers: { askedMm, stackMm: toMm(height), deviationMm: toMm(deviation) } })];
  return ripped === null ? [] : [finding('height-ripped', { numbers: { askedMm, rippedMm: toMm(ripped) } })];
}
