import { createHash } from 'node:crypto';
import { v5 as uuidv5 } from 'uuid';
import type { Advice } from '../../domain/advice/advice.js';
import type { ChecklistItem } from '../../domain/checklist/index.js';
import { measure, type Measurement } from '../../domain/pipeline.js';
import { readRange } from '../../domain/range/read-range.js';
import type { Schedule } from '../../domain/schedule/schedule.js';
import { stored } from './stored-measurement.js';

export interface MeasureInput {
  readonly schedule: Schedule;
  readonly range: unknown;
  readonly advice: readonly Advice[];
}

/** An item of the checklist as it is stored: `counts` as JSON, `digest` as sha256. */
export interface ChecklistRow extends Omit<ChecklistItem, 'counts'> {
  readonly item: string;
  readonly counts: string;
}

/** What comes back from the thread: text where it only has to be handed on to the database. */
export interface MeasureOutput {
  readonly engine: string;
  readonly forms: number;
  readonly concreteNm3: string;
  readonly faceNm2: string;
  readonly openingNm2: string;
  readonly summary: string;
  readonly walls: readonly { readonly n: number; readonly storey: string; readonly mark: string; readonly wall: string }[];
  readonly checklist: readonly ChecklistRow[];
  readonly findings: Measurement['findings'];
  readonly lifted: Measurement['lifted'];
  readonly questions: Measurement['questions'];
}

/** Ids of items are UUIDv5 of their keys in this namespace: whoever links to an item finds it again in the next revision. */
const ITEMS = '01980000-0000-7000-8000-0000000c4ec1';

const total = (values: readonly bigint[]): string => String(values.reduce((sum, value) => sum + value, 0n));

export function measured(input: MeasureInput): MeasureOutput {
  const range = readRange(input.range);
  if (!range.ok) throw new Error(`a stored range is not one: ${JSON.stringify(range.error)}`);
  const measurement = measure(input.schedule, range.value, input.advice);
  const { summary, walls } = stored(measurement);
  const laid = measurement.takeoff.laid.storeys.flatMap((storey) => storey.walls);
  return {
    engine: measurement.engine,
    forms: measurement.takeoff.units.reduce((sum, { bought }) => sum + bought, 0),
    concreteNm3: total(measurement.takeoff.concrete.map(({ nm3 }) => nm3)),
    faceNm2: total(laid.map(({ faceNm2 }) => faceNm2)),
    openingNm2: total(laid.map(({ openingNm2 }) => openingNm2)),
    summary: JSON.stringify(summary),
    walls: walls.map((wall, index) => ({ n: index + 1, storey: wall.storey, mark: wall.mark, wall: JSON.stringify(wall) })),
    checklist: measurement.checklist.map(checklistRow),
    findings: measurement.findings,
    lifted: measurement.lifted,
    questions: measurement.questions,
  };
}

const checklistRow = ({ counts, digest, ...item }: ChecklistItem): ChecklistRow => ({
  ...item,
  item: uuidv5(item.key, ITEMS),
  digest: createHash('sha256').update(digest).digest('hex'),
  counts: JSON.stringify(counts),
});
