import type { SheetRow } from '../tabular/sheet-row.js';
import { COLUMNS } from '../tabular/columns.js';
import { COLUMN_NOTES, JOB_FIELDS, JOB_NOTES, jobKeyName } from './column-notes.js';

/** The sheet of explanations. It is no table; the reader knows it by its words and passes over it. */
export const HOW_TO_SHEET = 'How to';

const LINES: readonly string[] = [
  'How to fill in this workbook',
  'The sheets walls, openings, features, storeys and job make one schedule. The small house in them is an example: write over it.',
  'A sheet is known by the names in its header row. Columns and sheets may stand in any order; columns that are not used may be deleted.',
  `Lengths are typed with their unit (12'-6 1/2", 150.5", 3.81 m, 3810 mm) or as bare numbers in the units of the job; a unit in brackets`,
  'behind the name of a column, such as width (ft), is that of its bare numbers.',
  'Nothing is guessed: a cell that cannot be read comes back with its sheet, row, column and what would do.',
  'One table to a sheet, one wall, opening, feature or storey to a row, a value in every cell it holds for: no totals, no merged cells below the header.',
  'Hidden sheets and hidden or filtered rows are not taken: unhide or delete them.',
  'Columns and sheets that are not known are listed with the answer and otherwise left alone.',
];

/** The whole sheet, row by row: the lines, then what every column and setting takes. */
export function howToRows(): readonly (readonly string[])[] {
  const kinds = ['walls', 'openings', 'features', 'storeys'] as const;
  const columns = kinds.flatMap((kind) => COLUMNS[kind].map(({ field, name }) => [kind, name, COLUMN_NOTES[kind][field]?.note ?? '']));
  const settings = JOB_FIELDS.map((field) => ['job', jobKeyName(field), JOB_NOTES[field]?.note ?? '']);
  return [...LINES.map((line) => [line]), ['On sheet', 'Named', 'What is read'], ...columns, ...settings];
}

/**
 * Whether a sheet holds nothing but the explanations of the template. One word of somebody else's, and it is a sheet like any other:
 * listed where it is no table, so that nothing typed there is lost in silence.
 */
export async function isHowTo(rows: AsyncIterable<SheetRow>): Promise<boolean> {
  const words = new Set(howToRows().flat());
  for await (const { cells } of rows) for (const cell of cells.values()) if (typeof cell !== 'string' || !words.has(cell)) return false;
  return true;
}
