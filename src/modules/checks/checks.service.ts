import { Injectable } from '@nestjs/common';
import type { Calculator } from '../../domain/checks/calculator-answer.js';
import { barShapeCalculator } from '../../domain/checks/bar-shape-calculator.js';
import { basementWallCalculator } from '../../domain/checks/basement-wall-calculator.js';
import { bendThrustCalculator } from '../../domain/checks/bend-thrust-calculator.js';
import { braceCalculator } from '../../domain/checks/brace-calculator.js';
import { concreteTemperatureCalculator } from '../../domain/checks/concrete-temperature-calculator.js';
import { cutStockCalculator } from '../../domain/checks/cut-stock-calculator.js';
import { evaporationCalculator } from '../../domain/checks/evaporation-calculator.js';
import { flexureCalculator } from '../../domain/checks/flexure-calculator.js';
import { formPressureCalculator } from '../../domain/checks/form-pressure-calculator.js';
import { heightStackCalculator } from '../../domain/checks/height-stack-calculator.js';
import { hoopTensionCalculator } from '../../domain/checks/hoop-tension-calculator.js';
import { lapCalculator } from '../../domain/checks/lap-calculator.js';
import { lintelCalculator } from '../../domain/checks/lintel-calculator.js';
import { pourPlanCalculator } from '../../domain/checks/pour-plan-calculator.js';
import { riseLimitCalculator } from '../../domain/checks/rise-limit-calculator.js';
import { teeCalculator } from '../../domain/checks/tee-calculator.js';
import { timberColumnCalculator } from '../../domain/checks/timber-column-calculator.js';
import { upliftCalculator } from '../../domain/checks/uplift-calculator.js';
import { wallBarsCalculator } from '../../domain/checks/wall-bars-calculator.js';
import { underOtherNames } from '../../domain/checks/other-names.js';
import { windCalculator } from '../../domain/checks/wind-calculator.js';
import type { Actor } from '../../platform/database/actor.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import { permit } from '../people/permissions.js';
import { findingAnswer } from '../takeoffs/takeoff-answer.js';
import { TakeoffsService } from '../takeoffs/takeoffs.service.js';
import { errorAt, pourOfJob } from './pour-of-job.js';
import type { CalculatorAnswer, CalculatorBody } from './checks.schemas.js';

export const CALCULATORS = {
  'bar-shape': barShapeCalculator,
  'basement-wall': basementWallCalculator,
  'bend-thrust': bendThrustCalculator,
  brace: braceCalculator,
  'concrete-temperature': concreteTemperatureCalculator,
  'cut-stock': cutStockCalculator,
  evaporation: evaporationCalculator,
  flexure: flexureCalculator,
  'form-pressure': formPressureCalculator,
  'height-stack': heightStackCalculator,
  'hoop-tension': hoopTensionCalculator,
  lap: lapCalculator,
  lintel: lintelCalculator,
  'pour-plan': pourPlanCalculator,
  'rise-limit': riseLimitCalculator,
  tee: teeCalculator,
  'timber-column': timberColumnCalculator,
  uplift: upliftCalculator,
  'wall-bars': wallBarsCalculator,
  wind: windCalculator,
} as const satisfies Record<string, Calculator>;

export type CalculatorName = keyof typeof CALCULATORS;

@Injectable()
export class ChecksService {
  constructor(private readonly takeoffs: TakeoffsService) {}

  calculate(actor: Actor, name: CalculatorName, body: CalculatorBody): CalculatorAnswer {
    permit(actor, 'check.run');
    const answer = underOtherNames(name, CALCULATORS[name])(body);
    if (!answer.ok) throw new Refusal('invalid', 'The quantities cannot be read.', answer.error);
    return structuredClone({ ...answer.value, findings: answer.value.findings.map(findingAnswer) }) as CalculatorAnswer;
  }

  /** By plan area, or by `job` and `storey`: then the area is that of the storey's measured concrete. */
  async pourPlan(actor: Actor, body: CalculatorBody): Promise<CalculatorAnswer> {
    permit(actor, 'check.run');
    if (!Object.hasOwn(body, 'job')) return this.calculate(actor, 'pour-plan', body);
    const { job } = body;
    if (typeof job !== 'string') throw new Refusal('invalid', 'The quantities cannot be read.', [errorAt('job', job, 'the id of a measured job')]);
    const { body: measured, step } = pourOfJob(body, await this.takeoffs.takeoff(actor, job));
    const answer = this.calculate(actor, 'pour-plan', measured);
    const note = 'The plan area is the mean over the height: between openings it is less, and the concrete rises faster there.';
    return { ...answer, trace: [step, ...answer.trace], notes: [...answer.notes, note] };
  }
}
