import { braceAxial } from '../engineering/hanna-formwork/brace-axial.js';
import { braceHorizontal } from '../engineering/hanna-formwork/brace-horizontal.js';
import { braceUplift } from '../engineering/hanna-formwork/brace-uplift.js';
import { failure, success } from '../evidence/result.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { BRACE_FIELDS, readBrace, type BraceQuestion } from './brace-input.js';
import { coherentUnits, type CoherentUnits } from './both-units.js';
import { CalculatorInput } from './calculator-input.js';
import { givenTopLoad, pressureTopLoad, windTopLoad, type TopLoad } from './top-load.js';
import { outsideAnswer } from './outside-answer.js';
import { windOnWall } from './wind-on-wall.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';
import type { LeftLimit } from './outside-answer.js';
import type { TraceStep } from '../evidence/trace.js';

const SOURCE = 'hanna-formwork section on bracing';
const FLATTEST_DEG = 20;
const STEEPEST_DEG = 60;

/**
 * Forces of raking braces at one spacing along a wall.
 *
 * Reads `height`, `braceTop`, `braceFoot` (from the wall) and `spacing`; what presses: a `pressure`, a `load` along the top, or `speed` and the fields
 * of the wind calculator; `capacity` of a brace, for the spacing it allows. Not under 15 psf nor 100 lb/ft. Answers `axial`, `horizontal`, `uplift`
 * of one brace, `spacing`, `maxSpacing` with a capacity, `topLoad`, `braceLength`.
 */
export const braceCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, BRACE_FIELDS);
  const brace = readBrace(input, fields);
  if (brace === undefined || input.errors.length > 0) return failure(input.errors);
  const units = coherentUnits(input, {
    height: 'length', spacing: 'length', braceTop: 'length', braceFoot: 'length', wallLength: 'length',
    pressure: 'pressure', load: 'force per length', speed: 'speed', capacity: 'force',
  });
  const pressed = topLoadOf(units, brace);
  if ('limits' in pressed) return success(outsideAnswer('ASCE 37', pressed.limits, SOURCE, input.defaults));
  const { top, notes } = pressed;
  const worked = work(units, brace, top.load);
  return success({
    result: {
      axial: units.show('force', worked.axial),
      horizontal: units.show('force', worked.horizontal),
      uplift: units.show('force', worked.uplift),
      spacing: units.showLength(worked.spacing),
      ...(worked.maxSpacing !== null && { maxSpacing: units.showLength(worked.maxSpacing) }),
      topLoad: units.show('force per length', top.load),
      braceLength: units.showLength(worked.length),
    },
    governs: worked.over ? 'over-capacity' : top.governs,
    trace: [...top.trace, ...worked.trace],
    source: SOURCE,
    defaults: input.defaults,
    notes: [...notes, ...worked.notes],
    findings: [],
  });
};

function topLoadOf(
  units: CoherentUnits,
  { pressing, height }: BraceQuestion,
): { readonly top: TopLoad; readonly notes: readonly string[] } | { readonly limits: readonly LeftLimit[] } {
  const h = units.ofLength(height);
  if (pressing.by === 'load') return { top: givenTopLoad(units, units.of('force per length', pressing.kNPerM)), notes: [] };
  if (pressing.by === 'pressure') return { top: pressureTopLoad(units, units.of('pressure', pressing.kPa), h), notes: [] };
  const blown = windOnWall(pressing.wind, height, units);
  if (blown.kind === 'outside-method') return { limits: blown.limits };
  const top = windTopLoad(units, blown, h);
  return { top: { ...top, trace: [...blown.trace, ...top.trace] }, notes: blown.notes };
}

function work(units: CoherentUnits, brace: BraceQuestion, H: number) {
  const [h, h1, l1] = [units.ofLength(brace.height), units.ofLength(brace.braceTop), units.ofLength(brace.braceFoot)];
  const perLength = units.unit('force per length');
  const P = workedStep('axial force per length', 'P = H · h · √( h1² + l1² ) / ( h1 · l1 )', `${n(H)} · ${n(h)} · √( ${n(h1)}² + ${n(l1)}² ) / ( ${n(h1)} · ${n(l1)} )`, braceAxial(H, h, h1, l1), perLength, SOURCE);
  const Q = workedStep('horizontal force per length', 'Q = H · h / h1', `${n(H)} · ${n(h)} / ${n(h1)}`, braceHorizontal(H, h, h1), perLength, 'peurifoy-oberlender-4 Fig. 5-17');
  const N = workedStep('uplift per length', 'N = H · h / l1', `${n(H)} · ${n(h)} / ${n(l1)}`, braceUplift(H, h, l1), perLength, 'peurifoy-oberlender-4 Fig. 5-17');
  const capacity = brace.capacity === null ? null : units.of('force', brace.capacity);
  const most = capacity === null ? null : workedStep('greatest spacing', 'capacity / P', `${n(capacity)} / ${n(P.value)}`, capacity / P.value, units.length, 'statics');
  const spacing = brace.spacing === null ? (most?.value ?? Number.NaN) : units.ofLength(brace.spacing);
  const axial = times('axial force', P, spacing, units);
  const horizontal = times('horizontal force', Q, spacing, units);
  const uplift = times('uplift', N, spacing, units);
  const over = capacity !== null && axial.value > capacity * (1 + 1e-9);
  const slope = (Math.atan2(h1, l1) * 180) / Math.PI;
  return {
    axial: axial.value, horizontal: horizontal.value, uplift: uplift.value, spacing, maxSpacing: most?.value ?? null, over,
    length: Math.hypot(h1, l1),
    trace: [P, Q, N, ...(most ? [most] : []), axial, horizontal, uplift],
    notes: [
      'The wind blows either way: the brace is pushed and pulled by the axial force, and its anchor is lifted by the uplift.',
      ...(over ? ['The axial force is over the capacity of the brace at this spacing.'] : []),
      ...(slope < FLATTEST_DEG || slope > STEEPEST_DEG ? [`The brace stands at ${n(Number(slope.toFixed(1)))} degrees; between ${FLATTEST_DEG} and ${STEEPEST_DEG} is best (en5466a p. 82).`] : []),
    ],
  };
}

function times(name: string, perLength: TraceStep, spacing: number, units: CoherentUnits): TraceStep {
  return workedStep(name, `${name} per length · spacing`, `${n(perLength.value)} · ${n(spacing)}`, perLength.value * spacing, units.unit('force'), 'statics');
}
