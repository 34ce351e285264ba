import { failure, success } from '../evidence/result.js';
import { CalculatorInput } from './calculator-input.js';
import { developedLap } from './developed-lap.js';
import { metricCodeLap, prescriptiveCodeLap } from './table-lap.js';
import { outsideAnswer } from './outside-answer.js';
import { readBar } from './bar-field.js';
import { readConcreteStrength, readYield } from './strength-input.js';
import { LAP_METHODS, type LapMethod, type LapQuestion } from './lap-question.js';
import type { Calculator } from './calculator-answer.js';

/** Fields that only the equations read; a table takes none of them. */
const EQUATION_FIELDS = ['class', 'top', 'confinement'] as const;

/**
 * Length of a lap of bars in tension.
 *
 * Reads `method`, `bar`, `fc` and `fy`; for the equations also `class` (B), `top` (no) and `confinement`: `clear` or `close` for the simplified
 * form, ( cb + Ktr ) / db for the general one. Answers the `exact` length and the `length` to use, rounded up to a whole inch. `irc` and `obc` are
 * tables: a bar or grade that has no cell has no answer.
 */
export const lapCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['method', 'bar', 'fc', 'fy', ...EQUATION_FIELDS]);
  const method = input.name<LapMethod>('method', (written) => LAP_METHODS.find((each) => each === written.trim().toLowerCase()) ?? null, LAP_METHODS);
  const bar = readBar(input);
  const equation = method === 'aci-318-simplified' || method === 'aci-318-general';
  const fcPsi = equation || input.has('fc') ? readConcreteStrength(input) : null;
  const fyPsi = method === 'obc' && !input.has('fy') ? OBC_YIELD_PSI : readYield(input);
  if (method === 'obc' && !input.has('fy')) input.defaults.push('fy: 400 MPa, the least of the code');
  const lapClass = equation ? input.orElse('class', () => readClass(input), 'B', 'class: B') : 'B';
  const top = equation ? input.orElse('top', () => input.flag('top'), false, 'top: no, at most 12 in of fresh concrete below the bar') : false;
  const confinement = method === 'aci-318-general' ? readConfinement(input, fields['confinement']) : 1;
  const close = method === 'aci-318-simplified' ? readCloseness(input) : false;
  const notAsked = equation ? [] : EQUATION_FIELDS.filter((name) => input.has(name));
  if (method === undefined || bar === undefined || fcPsi === undefined || fyPsi === undefined || lapClass === undefined) return failure(input.errors);
  if (top === undefined || confinement === undefined || close === undefined || input.errors.length > 0) return failure(input.errors);
  const question: LapQuestion = { barName: bar.name, diameterIn: bar.diameterIn, fcPsi, fyPsi, lapClass, top, confinement, close };
  const answer = method === 'irc' ? prescriptiveCodeLap(question) : method === 'obc' ? metricCodeLap(question) : developedLap(question, method);
  if ('left' in answer) return success(outsideAnswer(answer.method, answer.left, answer.source, input.defaults));
  const notes = notAsked.length > 0 ? [...answer.notes, `Not asked for by this table, and not entered: ${notAsked.join(', ')}.`] : answer.notes;
  return success({ ...answer, notes, defaults: input.defaults, findings: [] });
};

/** 400 MPa [psi]. obc-2024 9.3.1.1.(4). */
const OBC_YIELD_PSI = 58_015.0951;

const readClass = (input: CalculatorInput): 'A' | 'B' | undefined =>
  input.name('class', (written) => (['A', 'B'] as const).find((each) => each === written.trim().toUpperCase()) ?? null, ['A', 'B']);

function readCloseness(input: CalculatorInput): boolean | undefined {
  const words = 'confinement: clear, spacing at least 2 db and cover at least db';
  const names = ['clear', 'close'] as const;
  const read = (): boolean | undefined => {
    const named = input.name('confinement', (written) => names.find((each) => each === written.trim().toLowerCase()) ?? null, names);
    return named === undefined ? undefined : named === 'close';
  };
  return input.orElse<boolean>('confinement', read, false, words);
}

/** Numbers of 2.5 and more are 2.5 by the equation itself. */
function readConfinement(input: CalculatorInput, written: unknown): number | undefined {
  if (!input.has('confinement')) {
    input.defaults.push('confinement: 1.5, spacing at least 2 db and cover at least db');
    return 1.5;
  }
  const value = typeof written === 'string' && /^\d{1,3}(\.\d{1,6})?$/.test(written.trim()) ? Number(written) : written;
  if (typeof value === 'number' && value >= 0.5 && value <= 100) return value;
  return input.refuse('confinement', '( cb + Ktr ) / db, a number from 0.5; over 2.5 counts as 2.5');
}
