import ExcelJS from 'exceljs';

export type TableCell = string | number | boolean | null;
export type Tables = Readonly<Record<string, readonly (readonly TableCell[])[]>>;

type Row = Readonly<Record<string, any>>;

interface Column {
  /** Header of the CSV file, by the design's name, and of the workbook, as people write it. */
  readonly csv: string;
  readonly book: string;
  readonly value: (row: Row) => TableCell | undefined;
}

const column = (csv: string, book: string, value: Column['value'] = (row) => row[csv]): Column => ({ csv, book, value });

const COLUMNS: Readonly<Record<string, readonly Column[]>> = {
  storeys: [column('id', 'Storey'), column('height', 'Height'), column('grade', 'Grade'), column('storeyAbove', 'Storey above'), column('closed', 'Closed'), column('on', 'On')],
  walls: [
    column('mark', 'Wall'), column('storey', 'Storey'), column('core', 'Core (in)'),
    column('from_x', 'X1 (in)', ({ from }) => from[0]), column('from_y', 'Y1 (in)', ({ from }) => from[1]), column('to_x', 'X2 (in)', ({ to }) => to[0]), column('to_y', 'Y2 (in)', ({ to }) => to[1]),
    column('height', 'Ht'), column('dimensionsTo', 'Dimensions to'),
  ],
  openings: [
    column('mark', 'Mark'), column('wall', 'Wall'), column('at', 'At'), column('sill', 'Sill'), column('width', 'W'), column('height', 'H'), column('lining', 'Lining'), column('measured', 'Measured'),
  ],
};

/** A schedule document in inches, with coordinates, as the rows of its tables; keys and values for the job. */
export function tablesOf(document: Row, header: 'csv' | 'book'): Tables {
  const settings = (prefix: string, values: Row): TableCell[][] => Object.entries(values).map(([key, value]) => [`${prefix}${key}`, value]);
  const { format: _format, storeys: _storeys, walls: _walls, openings: _openings, site, pour, ...job } = document;
  const rows = Object.entries(COLUMNS).map(([kind, columns]) => [
    kind,
    [columns.map((each) => each[header]), ...(document[kind] as Row[]).map((row) => columns.map(({ value }) => value(row) ?? null))],
  ]);
  return { job: [['key', 'value'], ...settings('', job), ...settings('site.', site), ...settings('pour.', pour)], ...Object.fromEntries(rows) };
}

export function csvOf(rows: Tables[string]): string {
  const field = (cell: TableCell): string => {
    const text = cell === null ? '' : String(cell);
    return /[",\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
  };
  return rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

export async function workbookOf(tables: Tables): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  book.created = new Date(0);
  book.modified = new Date(0);
  for (const [name, rows] of Object.entries(tables)) {
    const sheet = book.addWorksheet(name[0]?.toUpperCase() + name.slice(1), { views: [{ state: 'frozen', ySplit: 1 }] });
    sheet.addRows(rows as TableCell[][]);
    sheet.getRow(1).font = { bold: true };
  }
  return new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
}
