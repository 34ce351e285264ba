import { isTable, type StrangeSheet, type Table } from './table.js';

/** Sheets that are named; past these only their number is told. */
const MAX_NAMED = 20;

/** What every sheet and file was taken for, in words: `Job (job), Walls (walls, no rows), Cover (no table: its first rows hold no header row)`. */
export function sheetsRead(sheets: readonly (Table | StrangeSheet)[]): string {
  const named = sheets.slice(0, MAX_NAMED).map((sheet) => `${sheet.sheet} (${takenFor(sheet)})`);
  const more = sheets.length - named.length;
  return [...named, ...(more > 0 ? [`${more} more`] : [])].join(', ');
}

function takenFor(sheet: Table | StrangeSheet): string {
  if (isTable(sheet)) return sheet.rows.length === 0 ? `${sheet.kind}, no rows` : `${sheet.kind} by its header in row ${sheet.headerRow}`;
  return sheet.headers.length === 0 ? 'empty' : 'no table: none of its first rows is a header row';
}
