import type { InputError } from '../../domain/evidence/input-error.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import type { TakeoffAnswer } from '../takeoffs/takeoffs.schemas.js';
import type { CalculatorBody } from './checks.schemas.js';

/** A pour plan's question with the plan area of a job's storey in it, and how that was measured. */
export interface PourOfJob {
  readonly body: CalculatorBody;
  readonly step: { readonly name: string; readonly equation: string; readonly substituted: string; readonly value: number; readonly unit: string; readonly source: string };
}

const MM_PER_M = 1000;
/** Fields that the job answers itself. */
const MEASURED = ['planArea', 'area', 'plan', 'length', 'core'];

/**
 * Puts a storey of a measured job in place of the plan area: its concrete over the height of its tallest wall, the mean over the height.
 *
 * @param body    the question, with `job` and, of several storeys, `storey`
 * @param takeoff the job's take-off
 * @throws Refusal naming `storey` where it is needed or unknown, and what else of the plan was sent
 */
export function pourOfJob(body: CalculatorBody, takeoff: TakeoffAnswer): PourOfJob {
  const { job: _, storey: written, ...rest } = body;
  const errors = MEASURED.filter((name) => Object.hasOwn(rest, name)).map((name) => errorAt(name, rest[name], 'nothing beside job, whose walls are measured'));
  const ids = takeoff.concrete.map(({ storey }) => storey);
  const asked = written ?? (ids.length === 1 ? ids[0] : undefined);
  const concrete = takeoff.concrete.find(({ storey }) => storey === asked);
  if (!concrete) errors.push(errorAt('storey', written, `a storey of the job: ${ids.join(', ')}`));
  if (!concrete || errors.length > 0) throw new Refusal('invalid', 'The quantities cannot be read.', errors);
  const heights = takeoff.walls.filter(({ storey }) => storey === concrete.storey).map(({ stack }) => stack.heightMm);
  const height = Math.max(0, ...heights) / MM_PER_M;
  if (height === 0 || concrete.concreteM3 === 0) throw new Refusal('invalid', 'The storey holds no concrete.', [errorAt('storey', written, 'a storey with walls')]);
  const m2 = Number((concrete.concreteM3 / height).toPrecision(12));
  return {
    body: { ...rest, planArea: `${m2} m2` },
    step: {
      name: `mean plan area of ${concrete.storey}, of its measured concrete and its tallest wall`,
      equation: 'A = V / h',
      substituted: `${Number(concrete.concreteM3.toPrecision(6))} / ${height}`,
      value: m2,
      unit: 'm2',
      source: 'geometry',
    },
  };
}

export function errorAt(name: string, value: unknown, fix: string): InputError {
  const read = value === undefined ? 'nothing' : typeof value === 'string' ? value : (JSON.stringify(value) ?? String(value));
  return { sheet: null, row: null, column: null, pointer: `/${name}`, read: read.slice(0, 80), fix: `${name}: ${fix}` };
}
