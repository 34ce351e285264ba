import { metricLap } from '../engineering/obc-2024/lap-length.js';
import { NM_PER_INCH, NM_PER_MM } from '../quantity/length.js';
import { prescriptiveLap } from '../engineering/irc-2018/lap-length.js';
import { gradePsi } from './bar-grade.js';
import { lengthFromInches } from './strength-units.js';
import { workedStep } from './worked-step.js';
import type { LapAnswer, LapQuestion } from './lap-question.js';
import type { LeftLimit } from './outside-answer.js';

const IRC = 'irc-2018 Table R608.5.4(1)';
const OBC = 'obc-2024 9.3.1.1.(4)';
/** Least concrete of the residential code. irc-2018 R608.5.1.1, from memory [psi]. */
const IRC_LEAST_FC_PSI = 2500;
/** 400 MPa in psi, less what is left of a conversion. */
const OBC_LEAST_FY_PSI = 58_015;
const MM_PER_INCH = NM_PER_INCH / NM_PER_MM;

/** A lap by the table of the residential code. */
export function prescriptiveCodeLap({ barName, fcPsi, fyPsi }: LapQuestion): LapAnswer {
  const inches = prescriptiveLap(barName, gradePsi(fyPsi));
  const left: LeftLimit[] = [];
  if (inches === null) left.push({ numbers: { bar: barName, yieldPsi: fyPsi, limit: '#4, #5 and #6 of Grade 40 or 60' }, source: IRC });
  if (fcPsi !== null && fcPsi < IRC_LEAST_FC_PSI) left.push({ numbers: { concretePsi: fcPsi, limitPsi: IRC_LEAST_FC_PSI, side: 'below' }, source: 'irc-2018 R608.5.1.1' });
  if (inches === null || left.length > 0) return { method: 'IRC Table R608.5.4(1)', left, source: IRC };
  return {
    result: { exact: lengthFromInches(inches), length: lengthFromInches(inches) },
    governs: 'table',
    trace: [workedStep('lap', 'bar and grade → cell', `${barName}, ${gradePsi(fyPsi) / 1000} ksi`, inches, 'in', IRC)],
    source: IRC,
    notes: ['Read in a public web copy of the 2018 edition; check it against the adopted one.'],
  };
}

/** A lap by the list of the Ontario code. */
export function metricCodeLap({ barName, fyPsi }: LapQuestion): LapAnswer {
  const millimetres = metricLap(barName);
  const left: LeftLimit[] = [];
  if (millimetres === null) left.push({ numbers: { bar: barName, limit: '10M and 15M' }, source: OBC });
  if (fyPsi < OBC_LEAST_FY_PSI) left.push({ numbers: { yieldPsi: fyPsi, limitPsi: OBC_LEAST_FY_PSI, side: 'below' }, source: OBC });
  if (millimetres === null || left.length > 0) return { method: 'OBC 2024, flat walls', left, source: OBC };
  const length = lengthFromInches(millimetres / MM_PER_INCH);
  return {
    result: { exact: length, length },
    governs: 'table',
    trace: [workedStep('lap', 'bar → length', barName, millimetres, 'mm', OBC)],
    source: OBC,
    notes: [],
  };
}
