import { createRequire } from 'node:module';
import type * as WebIfc from 'web-ifc';
import type { StepLines } from '../../src/domain/schedule/ifc/step-model.js';
import { readSchedule, type Schedule, type ScheduleContext, type ScheduleRefusal } from '../../src/domain/schedule/index.js';
import { takeLines } from '../../src/platform/ifc-reader/take-lines.js';
import type { Result } from '../../src/domain/evidence/result.js';

const { IfcAPI, LogLevel } = createRequire(import.meta.url)('web-ifc') as typeof WebIfc;
const api = new IfcAPI();
let ready: Promise<void> | null = null;

/** The demo range: clear widths and panel in inches as its document states them. */
export const HERON: ScheduleContext = {
  range: 'HERON-16',
  cores: ['4', '6', '8', '10'],
  coreWidths: new Map([4, 6, 8, 10].map((width) => [String(width), width * 25_400_000])),
  panel: 63_500_000,
  courseHeight: 406_400_000,
  buckThickness: 38_100_000,
};

/** What is taken out of a model, opened here in the test's own process. */
export async function opened(step: string): Promise<StepLines> {
  ready ??= api.Init().then(() => api.SetLogLevel(LogLevel.LOG_LEVEL_OFF));
  await ready;
  const model = api.OpenModel(Buffer.from(step));
  const lines = JSON.parse(JSON.stringify(takeLines(api, model))) as StepLines;
  api.CloseModel(model);
  return lines;
}

export async function readIfc(file: { toString(): string }, context: ScheduleContext = HERON): Promise<Result<Schedule, ScheduleRefusal>> {
  const step = file.toString();
  return readSchedule([{ name: 'house.ifc', bytes: Buffer.from(step), model: await opened(step) }], context);
}

export async function scheduleOf(file: { toString(): string }, context: ScheduleContext = HERON): Promise<Schedule> {
  const read = await readIfc(file, context);
  if (!read.ok) throw new Error(JSON.stringify(read.error, null, 1));
  return read.value;
}
