import type { Schedule } from '../schedule.js';
import { documentTables } from './document-tables.js';
import { exampleDocument, type TemplateRange } from './example.js';
import { scheduleFields } from './schedule-fields.js';
import { sheetPlans } from './sheet-plans.js';
import { writeWorkbook } from './write-workbook.js';

export interface TemplateContext {
  /** The range that the example or the schedule names. */
  readonly range: TemplateRange;
  /** Codes of every range that may be chosen. */
  readonly ranges: readonly string[];
  readonly writtenAt: Date;
}

/** The workbook to fill in, with an example of its range: it reads back as the schedule that the example is as a document. */
export const templateWorkbook = ({ range, ranges, writtenAt }: TemplateContext): Promise<Uint8Array> =>
  writeWorkbook(sheetPlans(documentTables(exampleDocument(range)), { cores: range.cores, ranges }), { howTo: true, writtenAt });

/** A schedule as a workbook that reads back as the same one, but for the places of its rows and the columns nobody knew. */
export const scheduleWorkbook = (schedule: Schedule, { range, ranges, writtenAt }: TemplateContext): Promise<Uint8Array> =>
  writeWorkbook(sheetPlans(documentTables(scheduleFields(schedule, range.buckThickness)), { cores: range.cores, ranges }), { howTo: false, writtenAt });
