import { describe, expect, it } from '@jest/globals';
import ExcelJS from 'exceljs';
import { readSchedule, readScheduleDocument } from '../../../src/domain/schedule/index.js';
import { HERON, rectangle } from '../../support/schedule-documents.js';
import { sheetXml, workbookParts, zipArchive } from '../../support/zip-archive.js';

type Cell = string | number | boolean | Date | { formula: string; result?: string | number } | { error: string } | null;
type Sheets = Readonly<Record<string, readonly (readonly Cell[])[]>>;

async function workbook(sheets: Sheets, format?: (book: ExcelJS.Workbook) => void): Promise<Uint8Array> {
  const book = new ExcelJS.Workbook();
  for (const [name, rows] of Object.entries(sheets)) book.addWorksheet(name).addRows(rows as unknown[][]);
  format?.(book);
  return new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
}
function cellOf(book: ExcelJS.Workbook, sheet: string, address: string): ExcelJS.Cell {
  const worksheet = book.getWorksheet(sheet);
  if (!worksheet) throw new Error(`no sheet ${sheet}`);
  return worksheet.getCell(address);
}
const readFile = (bytes: Uint8Array, name = 'schedule.xlsx') => readSchedule([{ name, bytes }], HERON);
const read = async (bytes: Uint8Array) => {
  const result = await readFile(bytes);
  if (!result.ok) throw new Error(JSON.stringify(result.error, null, 1));
  return result.value;
};
const refused = async (bytes: Uint8Array) => {
  const result = await readFile(bytes);
  if (result.ok) throw new Error('the schedule was taken');
  return result.error;
};
const withoutPlaces = (schedule: unknown): unknown => JSON.parse(JSON.stringify(schedule, (key, value) => (key === 'place' ? undefined : value)));
const expected = (): unknown => {
  const result = readScheduleDocument(rectangle(), HERON);
  if (!result.ok) throw new Error('the rectangle is a schedule');
  return withoutPlaces(result.value);
};

const JOB: Cell[][] = [['Key', 'Value'], ['name', 'Rectangle'], ['units', 'in'], ['dimensionsTo', 'foam-face'], ['range', 'HERON-16']];
const STOREYS: Cell[][] = [['Storey', 'Height', 'Closed'], ['S1', `9'-0"`, true]];
const WALLS: Cell[][] = [['Wall', 'Storey', 'Core', 'X1', 'Y1', 'X2', 'Y2'], ['A', 'S1', 6, 0, 0, 480, 0], ['B', 'S1', 6, 480, 0, 480, 336], ['C', 'S1', 6, 480, 336, 0, 336], ['D', 'S1', 6, 0, 336, 0, 0]];
const OPENINGS: Cell[][] = [['Mark', 'Wall', 'At', 'Sill', 'W', 'H', 'Measured'], ['D1', 'A', 60, 0, 36, 84, 'concrete']];
const SHEETS: Sheets = { Cover: [['Rectangle, by nobody']], Job: JOB, Storeys: STOREYS, Walls: WALLS, Openings: OPENINGS };

describe('schedules in a workbook', () => {
  it('are the schedule of the JSON document but for places, with other sheets listed', async () => {
    const schedule = await read(await workbook(SHEETS));
    expect(withoutPlaces({ ...schedule, unknown: [] })).toEqual(expected());
    expect(schedule.unknown).toEqual([{ sheet: 'Cover', name: 'Cover' }]);
    expect(schedule.walls[2]?.place).toEqual({ sheet: 'Walls', row: 4, pointer: '/walls/2' });
  });

  it('may come in several workbooks and CSV files together', async () => {
    const { Openings: _, ...most } = SHEETS;
    const csv = OPENINGS.map((row) => row.join(',')).join('\n');
    const result = await readSchedule([{ name: 'a.xlsx', bytes: await workbook(most) }, { name: 'b.csv', bytes: new TextEncoder().encode(csv) }], HERON);
    expect(result).toMatchObject({ ok: true, value: { openings: [{ place: { sheet: 'b.csv', row: 2 } }], walls: [{ place: { sheet: 'a.xlsx/Walls' } }, {}, {}, {}] } });
  });

  it('read stored results of formulas, booleans, rich text and numbers that carry the noise of a double', async () => {
    const walls = WALLS.map((row) => [...row]);
    walls[1] = ['A', 'S1', { formula: 'LEFT("67",1)', result: '6' }, 0, 0, { formula: '400+80', result: 480 }, 0];
    walls[2] = ['B', 'S1', 6, 480.00000000000006, 0, 480, 336];
    const schedule = await read(
      await workbook({ ...SHEETS, Walls: walls }, (book) => {
        cellOf(book, 'Storeys', 'B2').value = { richText: [{ text: `9'-`, font: { bold: true } }, { text: '0"' }] };
      }),
    );
    expect(withoutPlaces({ ...schedule, unknown: [] })).toEqual(expected());
  });

  it('skip empty rows and columns and number rows as the spreadsheet does', async () => {
    const walls = [[], ['', ''], ...WALLS.slice(0, 2), [null, null], ...WALLS.slice(2)].map((row) => [null, ...row]) as Cell[][];
    const schedule = await read(await workbook({ ...SHEETS, Walls: walls }));
    expect(schedule.walls.map(({ place }) => place.row)).toEqual([4, 6, 7, 8]);
  });

  it('take the unit that a number format shows', async () => {
    const schedule = await read(
      await workbook({ ...SHEETS, Openings: [OPENINGS[0] ?? [], ['D1', 'A', 5, 0, 3, 7, 'concrete']] }, (book) => {
        for (const address of ['C2', 'E2', 'F2']) cellOf(book, 'Openings', address).numFmt = '0.00" ft"';
      }),
    );
    expect(withoutPlaces({ ...schedule, unknown: [] })).toEqual(expected());
  });

  it('read rows and cells that carry no reference, prefixed names and CDATA', async () => {
    const bare = { Job: sheetXml(JOB as string[][]), Storeys: sheetXml([['id', 'height', 'closed'], ['S1', `9'-0"`, 'yes']]), Walls: sheetXml(WALLS as (string | number)[][]), Openings: sheetXml(OPENINGS as (string | number)[][]) };
    const parts = workbookParts(bare).map((part) => {
      if (part.path !== 'xl/worksheets/sheet1.xml') return part;
      return { ...part, content: String(part.content).replace(/<(\/?)(row|c|is|t|v|worksheet|sheetData)(?=[ >])/g, '<$1x:$2').replace('<x:worksheet>', '<x:worksheet xmlns:x="x">').replace('>Rectangle<', '><![CDATA[Rectangle]]><') };
    });
    expect(withoutPlaces(await read(zipArchive(parts)))).toEqual(expected());
  });
});

describe('cells that are refused', () => {
  const withWall = (row: Cell[]): Promise<Uint8Array> => workbook({ ...SHEETS, Walls: [...WALLS.slice(0, 4), row] });

  it.each<[string, Cell[], string, string, string]>([
    ['a date for a length', ['D', 'S1', 6, 0, 336, 0, new Date('2026-01-12T00:00:00Z')], 'G (Y2)', '46034 (a date)', 'this cell is a date'],
    ['a date for a mark', [new Date('2026-01-12T00:00:00Z'), 'S1', 6, 0, 336, 0, 0], 'A (Wall)', '46034 (a date)', 'format it as text'],
    ['an error', ['D', 'S1', 6, 0, 336, 0, { error: '#N/A' }], 'G (Y2)', '#N/A', 'this cell shows an error'],
    ['a formula nobody calculated', ['D', 'S1', 6, 0, 336, 0, { formula: '1-1' }], 'G (Y2)', '', 'the result of this formula'],
    ['a boolean for a length', ['D', 'S1', 6, 0, 336, 0, true], 'G (Y2)', 'true', 'a length such as'],
    ['a text that is no length', ['D', 'S1', 6, 0, 336, 0, `12'-14"`], 'G (Y2)', `12'-14"`, `13'-2"`],
    ['an empty cell', ['D', 'S1', 6, 0, 336, 0, null], 'G (Y2)', '', 'a length such as'],
  ])('%s', async (_name, row, column, readAs, fix) => {
    const { code, errors } = await refused(await withWall(row));
    expect(code).toBe('invalid');
    expect(errors).toEqual([{ sheet: 'Walls', row: 5, column, pointer: expect.stringMatching(/^\/walls\/3\//), read: readAs, fix: expect.stringContaining(fix) }]);
  });

  it.each(['yyyy-mm-dd', 'd/m/yy', '[h]:mm', 'mmm', 'hh:mm:ss'])('the custom format %s is a date', async (numFmt) => {
    const bytes = await workbook(SHEETS, (book) => void (cellOf(book, 'Walls', 'F2').numFmt = numFmt));
    expect((await refused(bytes)).errors[0]).toMatchObject({ row: 2, column: 'F (X2)', read: '480 (a date)' });
  });

  it.each(['0.00', '# ?/?', '0.0"""', '[Red]0', '0_);(0)', '#,##0', '0" in"'])('the custom format %s is a number', async (numFmt) => {
    const bytes = await workbook(SHEETS, (book) => void (cellOf(book, 'Walls', 'F2').numFmt = numFmt));
    expect((await read(bytes)).walls[0]?.length).toBe(480 * 25_400_000);
  });
});

describe('header rows that are not the first', () => {
  const TITLE: Cell[][] = [['Openings of the house'], [], ['Revision', 3, 'by nobody']];

  it('titles may stand above them, and rows keep the numbers the spreadsheet shows', async () => {
    const schedule = await read(await workbook({ ...SHEETS, Openings: [...TITLE, ...OPENINGS], Walls: [['Walls'], ...WALLS], Job: [['Harbour', 'Block B'], ...JOB] }));
    expect(withoutPlaces({ ...schedule, unknown: [] })).toEqual(expected());
    expect(schedule.openings[0]?.place).toMatchObject({ sheet: 'Openings', row: 5 });
    expect(schedule.walls.map(({ place }) => place.row)).toEqual([3, 4, 5, 6]);
    const { errors } = await refused(await workbook({ ...SHEETS, Openings: [...TITLE, ...OPENINGS, ['D2', 'A', 160, 0, `3'-14"`, 84, 'rough']] }));
    expect(errors).toEqual([expect.objectContaining({ sheet: 'Openings', row: 6, column: 'E (W)', read: `3'-14"` })]);
  });

  it('the tenth row that holds anything is the last that is looked at', async () => {
    const titles = (count: number): Cell[][] => Array.from({ length: count }, (_, line) => [`Line ${line} of the title`]);
    expect((await read(await workbook({ ...SHEETS, Openings: [[], ...titles(9), [], ...OPENINGS] }))).openings[0]?.place.row).toBe(13);
    expect((await refused(await workbook({ ...SHEETS, Openings: [...titles(10), ...OPENINGS] }))).errors).toEqual([expect.objectContaining({ sheet: 'Openings', row: 1 })]);
  });

  it('a title that happens to name two columns does not pass for the header', async () => {
    const schedule = await read(await workbook({ ...SHEETS, Openings: [['Storey', 'S1', 'Height', `9'-0"`], ...OPENINGS] }));
    expect(withoutPlaces({ ...schedule, unknown: [] })).toEqual(expected());
  });

  it('data above the header is an error: nothing is left uncounted in silence', async () => {
    const german: Cell[][] = [['Marke', 'Wand', 'Abstand'], ['D0', 'A', 200, 0, 36, 84]];
    const { code, errors } = await refused(await workbook({ ...SHEETS, Openings: [...german, ...OPENINGS] }));
    expect(code).toBe('invalid');
    expect(errors).toEqual([{ sheet: 'Openings', row: 2, column: null, pointer: null, read: 'D0, A, 200, 0, 36, 84', fix: expect.stringContaining('it is row 3, and only titles may stand above it') }]);
  });
});

describe('sheets that are no table', () => {
  const GERMAN: Cell[][] = [['Öffnungen des Hauses'], ['Marke', 'Wand', 'Abstand', 'Brüstung', 'Breite', 'Höhe'], ['D1', 'A', 60, 0, 36, 84]];

  it.each(['openings', 'Openings', 'OPENING', 'Opening schedule', 'OpeningSchedule', 'openings (2)', 'S1 openings', 'Doors', 'Windows & doors'])('one called %s is refused with sheet, row and the header that would do', async (name) => {
    const { Openings: _, ...most } = SHEETS;
    const { code, errors } = await refused(await workbook({ ...most, [name]: GERMAN }));
    expect(code).toBe('invalid');
    expect(errors).toEqual([{ sheet: name, row: 2, column: null, pointer: null, read: 'Marke, Wand, Abstand, Brüstung, Breite, Höhe', fix: expect.stringContaining('such as mark, wall, at, sill, width, height, measured') }]);
  });

  it.each([
    { name: 'Walls', fix: 'mark, storey, core, from_x' },
    { name: 'Features', fix: 'kind, wall, at' },
    { name: 'Stories', fix: 'id, height' },
    { name: 'Project', fix: 'key, value' },
  ])('so is one called $name', async ({ name, fix }) => {
    const { errors } = await refused(await workbook({ Job: JOB, Storeys: STOREYS, 'Wall list': WALLS, [name]: [['Etwas', 'anderes']] }));
    expect(errors).toEqual([expect.objectContaining({ sheet: name, row: 1, read: 'Etwas, anderes', fix: expect.stringContaining(fix) })]);
  });

  it('others are listed, and empty ones are nothing, whatever they are called', async () => {
    const notes: Cell[][] = [['Call before delivery']];
    const schedule = await read(await workbook({ ...SHEETS, Notes: notes, 'Notes on walls': notes, 'Floor plan': notes, Blatt1: GERMAN, Features: [[], [null]] }));
    expect(schedule.unknown.map(({ name }) => name)).toEqual(['Cover', 'Notes', 'Notes on walls', 'Floor plan', 'Blatt1']);
  });

  it('where no sheet is a table, those that should be one are told; where none should, the workbook is of the wrong type', async () => {
    const { code, errors } = await refused(await workbook({ Walls: [['Wand', 'Kern'], ['A', 6]], Notes: [['Nothing']] }));
    expect([code, errors.map(({ sheet, row }) => [sheet, row])]).toEqual(['invalid', [['Walls', 1]]]);
    expect((await refused(await workbook({ Notes: [['Nothing']] }))).code).toBe('wrong-type');
  });

  it('a schedule without walls says which sheets were read and what for', async () => {
    const { errors } = await refused(await workbook({ Job: JOB, Storeys: STOREYS, Blatt1: [['Wand', 'Kern'], ['A', 6]], Blatt2: [], Openings: OPENINGS.slice(0, 1) }));
    const [{ pointer, fix } = { pointer: '', fix: '' }] = errors;
    expect(errors).toHaveLength(1);
    expect(pointer).toBe('/walls');
    expect(fix).toBe(
      'a list of at least one: this schedule has no walls; read were Job (job by its header in row 1), Storeys (storeys by its header in row 1), ' +
        'Blatt1 (no table: none of its first rows is a header row), Blatt2 (empty), Openings (openings, no rows)',
    );
  });
});
