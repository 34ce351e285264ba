import { generalDevelopment, GREATEST_CONFINEMENT } from '../engineering/aci-318-14/general-development.js';
import { GREATEST_ROOT_PSI, simplifiedDevelopment } from '../engineering/aci-318-14/simplified-development.js';
import { INCH_BAR_NAMES } from '../engineering/astm-a615/bars.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { LEAST_LENGTH_IN, tensionLap } from '../engineering/aci-318-14/tension-lap.js';
import { GRADE_60_AT_MOST_PSI } from './bar-grade.js';
import { lengthFromInches } from './strength-units.js';
import { weakConcreteNotes, WORKED_IN_US_NOTE } from './strength-input.js';
import { workedStep } from './worked-step.js';
import type { LapAnswer, LapMethod, LapQuestion } from './lap-question.js';
import type { LeftLimit } from './outside-answer.js';
import type { TraceStep } from '../evidence/trace.js';

const SOURCE = 'aci-318-14 §25.4.2, §25.5.2';
/** Lengths are used to the whole inch above; what is left of a conversion is none. */
const SAME = 1e-9;

/** A lap by either equation of ACI 318. */
export function developedLap(question: LapQuestion, method: LapMethod): LapAnswer {
  const left = limitsLeft(question);
  if (left.length > 0) return { method: 'ACI 318 development length', left, source: SOURCE };
  const development = method === 'aci-318-general' ? generalStep(question) : simplifiedStep(question);
  const exact = tensionLap(development.value, question.lapClass);
  const factor = question.lapClass === 'A' ? 1 : 1.3;
  const lap = workedStep('lap', `${question.lapClass}: ${factor} · ld, at least ${LEAST_LENGTH_IN} in`, `${factor} · ${n(development.value)}`, exact, 'in', 'aci-318-14 §25.5.2.1');
  return {
    result: { exact: lengthFromInches(exact), length: lengthFromInches(Math.ceil(exact - SAME)), development: lengthFromInches(Math.max(LEAST_LENGTH_IN, development.value)) },
    governs: exact === LEAST_LENGTH_IN && factor * development.value < LEAST_LENGTH_IN ? 'least-length' : method === 'aci-318-general' ? 'general' : 'simplified',
    trace: [development, lap],
    source: SOURCE,
    notes: [
      'The length is the exact one rounded up to a whole inch. Uncoated bars in concrete of normal weight.',
      ...((question.fcPsi ?? 0) > GREATEST_ROOT_PSI ** 2 ? ["Concrete over 10000 psi counts as 10000 psi: √f'c is at most 100."] : []),
      ...(method === 'aci-318-general' && question.confinement > GREATEST_CONFINEMENT ? ['Confinement over 2.5 counts as 2.5.'] : []),
      ...weakConcreteNotes(question.fcPsi ?? 0),
      WORKED_IN_US_NOTE,
    ],
  };
}

function limitsLeft({ barName, fyPsi }: LapQuestion): readonly LeftLimit[] {
  const left: LeftLimit[] = [];
  if (!(INCH_BAR_NAMES as readonly string[]).includes(barName)) left.push({ numbers: { bar: barName, limit: '#3 to #11' }, source: 'aci-318-14 §25.5.1.1' });
  if (fyPsi > GRADE_60_AT_MOST_PSI) left.push({ numbers: { yieldPsi: fyPsi, limitPsi: GRADE_60_AT_MOST_PSI, side: 'above' }, source: 'aci-318-19 Table 25.4.2.5' });
  return left;
}

function simplifiedStep({ diameterIn: db, fcPsi, fyPsi, top, close }: LapQuestion): TraceStep {
  const fc = fcPsi ?? Number.NaN;
  const divisor = db < 0.8 ? 25 : 20;
  return workedStep(
    'development length', `ld = fy · ψt / ( ${divisor} · √f'c ) · db${close ? ' · 1.5' : ''}`,
    `${n(fyPsi)} · ${top ? 1.3 : 1} / ( ${divisor} · √${n(fc)} ) · ${n(db)}${close ? ' · 1.5' : ''}`,
    simplifiedDevelopment(db, fc, fyPsi, top, close), 'in', 'aci-318-14 §25.4.2.2, from memory',
  );
}

function generalStep({ diameterIn: db, fcPsi, fyPsi, top, confinement }: LapQuestion): TraceStep {
  const fc = fcPsi ?? Number.NaN;
  return workedStep(
    'development length', "ld = 3 / 40 · fy / √f'c · ψt · ψs / ( ( cb + Ktr ) / db ) · db",
    `3 / 40 · ${n(fyPsi)} / √${n(fc)} · ${top ? 1.3 : 1} · ${db < 0.8 ? 0.8 : 1} / ${n(Math.min(GREATEST_CONFINEMENT, confinement))} · ${n(db)}`,
    generalDevelopment(db, fc, fyPsi, top, confinement), 'in', 'aci-318-14 §25.4.2.3',
  );
}
