import { describe, expect, it } from '@jest/globals';
import ExcelJS from 'exceljs';
import { readSchedule, type Schedule } from '../../../src/domain/schedule/index.js';
import { HERON } from '../../support/schedule-documents.js';

type Cell = string | number | boolean | { formula: string; result: number } | null;
type Sheets = Readonly<Record<string, readonly (readonly Cell[])[]>>;

const JOB: Cell[][] = [['Key', 'Value'], ['name', 'Barn'], ['units', 'in'], ['dimensionsTo', 'foam-face'], ['range', 'HERON-16'], ['measured', 'concrete']];
const STOREYS: Cell[][] = [['Storey', 'Height'], ['S1', `9'-0"`]];
const WALLS: Cell[][] = [['Wall', 'Core', 'X1', 'Y1', 'X2', 'Y2'], ['A', 6, 0, 0, 480, 0], ['B', 6, 480, 0, 480, 336]];
const OPENINGS: Cell[][] = [['Mark', 'Wall', 'At', 'Sill', 'W', 'H'], ['D1', 'A', 60, 0, 36, 84]];
const FEATURES: Cell[][] = [['Kind', 'Wall', 'Faces'], ['taper-top', 'B', 'one']];
const BOOK: Sheets = { Job: JOB, Storeys: STOREYS, Walls: WALLS, Openings: OPENINGS };

async function sent(sheets: Sheets, change?: (book: ExcelJS.Workbook) => void) {
  const book = new ExcelJS.Workbook();
  for (const [name, rows] of Object.entries(sheets)) book.addWorksheet(name).addRows(rows as unknown[][]);
  change?.(book);
  return readSchedule([{ name: 'barn.xlsx', bytes: new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer) }], HERON);
}
const read = async (...args: Parameters<typeof sent>): Promise<Schedule> => {
  const result = await sent(...args);
  if (!result.ok) throw new Error(JSON.stringify(result.error, null, 1));
  return result.value;
};
const refused = async (...args: Parameters<typeof sent>) => {
  const result = await sent(...args);
  if (result.ok) throw new Error('the schedule was taken');
  return result.error;
};
const sheetOf = (book: ExcelJS.Workbook, name: string): ExcelJS.Worksheet => {
  const sheet = book.getWorksheet(name);
  if (!sheet) throw new Error(`no sheet ${name}`);
  return sheet;
};
const inInches = (schedule: Schedule): readonly number[] => schedule.walls.map(({ length }) => length / 25_400_000);
const told = (sheet: string, row: number, readAs: string | RegExp, fix: string) => ({
  code: 'invalid',
  errors: [{ sheet, row, column: null, pointer: null, read: typeof readAs === 'string' ? readAs : expect.stringMatching(readAs), fix: expect.stringContaining(fix) }],
});

describe('a workbook as contractors type it is read', () => {
  it('with merged titles, blank rows and columns, numbers as text, texts as numbers, and spaces around them', async () => {
    const schedule = await read(
      {
        Job: [['Barn for nobody'], [], ...JOB],
        Storeys: [['  Storey ', 'Height'], [' S1 ', `9'-0" `]],
        Walls: [[null, 'WALL SCHEDULE'], [], [null, 'Wall', null, 'Core', 'X1', 'Y1', 'X2', 'Y2'], [], [null, 101, null, ' 6 ', '0', 0, ' 480', '0 '], [], [null, 'B\u00a0', null, '6', 480, '0', '480.0', '336']],
        Openings: [['Mark', 'Wall', 'At', 'Sill', 'W', 'H'], [7, 101, '60', '0', '36', '84 ']],
      },
      (book) => {
        sheetOf(book, 'Walls').mergeCells('B1:H1');
        sheetOf(book, 'Job').mergeCells('A1:B1');
      },
    );
    expect([schedule.walls.map(({ mark }) => mark), inInches(schedule), schedule.openings[0]?.mark, schedule.unknown]).toEqual([['101', 'B'], [480, 336], '7', []]);
  });

  it.each<[string, number]>([
    [`12' 6`, 150], [`12'6"`, 150], [`12'-6`, 150], [`12'- 6"`, 150], [`12 ft 6 in`, 150], ['12FT-6IN', 150], [`12′ 6″`, 150], [`12’ 6”`, 150], [`12‘-6“`, 150], ['12`-6"', 150],
    ['6 1/2', 6.5], ['6½', 6.5], ['6-1/2', 6.5], [`12'-6 1/2"`, 150.5], [`12’6½”`, 150.5], [` 150" `, 150], ['150\u00a0', 150], [`3'`, 36], ['3.81 m', 150], ['381 cm', 150], ['3810mm', 150],
  ])('%s', async (typed, station) => {
    const { openings } = await read({ ...BOOK, Openings: [OPENINGS[0] ?? [], ['D1', 'A', typed, 0, 36, 84]] });
    expect(openings[0]?.at).toBe(station * 25_400_000);
  });

  it.each<[string[], (string | number)[]]>([
    [['At (ft)', 'Sill (in)', 'W (mm)', `H'`], [12.5, 0, 914.4, '7']],
    [['At ft', 'Sill', 'Width_mm', 'Height (m)'], ['12 1/2', 0, '914.4', '2.1336']],
    [['AT [FT]', 'sill', `W"`, `Height (in)`], [`12'-6"`, '0', `3'-0"`, 84]],
  ])('units in its header: %p', async (header, cells) => {
    const { openings } = await read({ ...BOOK, Openings: [['Mark', 'Wall', ...header], ['D1', 'A', ...cells]] });
    expect(openings[0]).toMatchObject({ at: 150 * 25_400_000, sill: 0, width: 36 * 25_400_000, height: 84 * 25_400_000 });
  });

  it('headings over groups of columns are titles', async () => {
    const schedule = await read({ ...BOOK, Walls: [['Wall', null, 'Start', null, 'End', null], ...WALLS] }, (book) => {
      sheetOf(book, 'Walls').mergeCells('C1:D1');
      sheetOf(book, 'Walls').mergeCells('E1:F1');
    });
    expect(inInches(schedule)).toEqual([480, 336]);
  });

  it('remarks merged over columns and rows are in a column that is not read', async () => {
    const walls = WALLS.map((row, index) => [...row, ['Remarks', 'by the road', null][index] ?? null]);
    const schedule = await read({ ...BOOK, Walls: walls }, (book) => {
      sheetOf(book, 'Walls').mergeCells('G1:I1');
      sheetOf(book, 'Walls').mergeCells('G2:I3');
    });
    expect([inInches(schedule), schedule.unknown]).toEqual([[480, 336], [{ sheet: 'Walls', name: 'Remarks' }]]);
  });

  it('hidden and merged as it likes where a sheet is no table, and with hidden rows of titles', async () => {
    const schedule = await read({ Notes: [['Call first'], ['Gate is shut']], ...BOOK, Walls: [['WALLS'], ...WALLS] }, (book) => {
      sheetOf(book, 'Notes').state = 'hidden';
      sheetOf(book, 'Notes').mergeCells('A1:A2');
      sheetOf(book, 'Walls').getRow(1).hidden = true;
      sheetOf(book, 'Walls').getRow(9).hidden = true;
    });
    expect([inInches(schedule), schedule.unknown]).toEqual([[480, 336], [{ sheet: 'Notes', name: 'Notes' }]]);
  });
});

describe('what has two readings is refused, with its place and what would do', () => {
  it.each<[string, string]>([
    ['12-6', `12'-6" for feet and inches`], ['12 6', `12'-6" for feet and inches`], [`12''6"`, 'two apostrophes'], [`12'6`, `as in 12'-6"`], ['1,200', '1200 or 1.200'], ['ca. 150', 'a length such as'], ['150?', 'a length such as'], [`12'-13"`, `13'-1"`],
  ])('%s', async (typed, fix) => {
    const { errors } = await refused({ ...BOOK, Openings: [OPENINGS[0] ?? [], ['D1', 'A', typed, 0, 36, 84]] });
    expect(errors).toEqual([{ sheet: 'Openings', row: 2, column: 'C (At)', pointer: '/openings/0/at', read: typed, fix: expect.stringContaining(fix) }]);
  });

  it.each<[string, Sheets, string, number, string, string]>([
    ['a total of walls', { ...BOOK, Walls: [...WALLS, [], ['Total', null, null, null, { formula: 'SUM(E2:E3)', result: 960 }]] }, 'Walls', 5, 'Total, 960', 'this row is a total'],
    ['a grand total of storeys, which would be one more storey', { ...BOOK, Storeys: [...STOREYS, ['Grand total:', `9'-0"`]] }, 'Storeys', 3, `Grand total:, 9'-0"`, 'rows of storeys only'],
    ['a subtotal between openings', { ...BOOK, Openings: [...OPENINGS, ['Sub-total', null, null, null, 36], ['D2', 'A', 160, 0, 36, 84]] }, 'Openings', 3, 'Sub-total, 36', 'delete it'],
    ['openings below walls', { Job: JOB, Storeys: STOREYS, All: [...WALLS, [], ...OPENINGS] }, 'All', 5, 'Mark, Wall, At, Sill, W, H', 'row 1 is the header of walls'],
    ['features above walls, which would pass for titles', { Job: JOB, Storeys: STOREYS, All: [...FEATURES, [], ...WALLS] }, 'All', 1, 'Kind, Wall, Faces', 'row 4 is the header of walls'],
    ['storeys above walls', { Job: JOB, Storeys: STOREYS, All: [['Storey', 'Height'], ['S2', `9'-0"`], ...WALLS] }, 'All', 1, 'Storey, Height', 'move the other table'],
    ['the header again on a second page', { ...BOOK, Walls: [...WALLS, WALLS[0] ?? [], ['C', 6, 480, 336, 0, 336]] }, 'Walls', 4, 'Wall, Core, X1, Y1, X2, Y2', 'one header row'],
    ['settings beside walls', { ...BOOK, Walls: [[...(WALLS[0] ?? []), null, 'Key', 'Value'], ...WALLS.slice(1)], More: WALLS }, 'Walls', 1, 'Wall, Core, X1, Y1, X2, Y2, Key, Value', 'a sheet of their own'],
  ])('%s', async (_name, sheets, sheet, row, readAs, fix) => expect(await refused(sheets)).toEqual(told(sheet, row, readAs, fix)));

  it('openings beside walls: the second column of a name is told with the first', async () => {
    const { errors } = await refused({ Job: JOB, Storeys: STOREYS, All: WALLS.map((row, index) => [...row, null, ...(OPENINGS[index] ?? [])]) });
    expect(errors.map(({ sheet, row, column }) => [sheet, row, column])).toContainEqual(['All', 1, 'H (Mark)']);
  });

  it('hidden rows of a table, all of them at once: a filter hides rows too', async () => {
    const error = await refused({ ...BOOK, Walls: [...WALLS, ['C', 6, 480, 336, 0, 336], ['D', 6, 0, 336, 0, 0]] }, (book) => {
      for (const row of [3, 5]) sheetOf(book, 'Walls').getRow(row).hidden = true;
    });
    expect(error).toEqual(told('Walls', 3, 'hidden rows 3, 5', 'clear the filter and unhide those that count'));
  });

  it.each(['hidden', 'veryHidden'] as const)('a %s sheet that is a table', async (state) => {
    const error = await refused({ ...BOOK, Old: [OPENINGS[0] ?? [], ['D9', 'A', 200, 0, 36, 84]] }, (book) => (sheetOf(book, 'Old').state = state));
    expect(error).toEqual(told('Old', 1, 'a hidden sheet of barn.xlsx', 'unhide the sheet if it counts'));
  });

  it('cells merged below the header: one height for two walls is written in both rows', async () => {
    const walls = [[...(WALLS[0] ?? []), 'Height'], [...(WALLS[1] ?? []), `8'-0"`], [...(WALLS[2] ?? []), null]];
    const error = await refused({ ...BOOK, Walls: walls }, (book) => sheetOf(book, 'Walls').mergeCells('G2:G3'));
    expect(error).toEqual(told('Walls', 2, 'merged cells G2:G3', 'unmerge column G'));
  });

  it('a point whose two coordinates are one cell', async () => {
    const walls = [WALLS[0] ?? [], ['A', 6, 0, null, 480, 0]];
    const error = await refused({ ...BOOK, Walls: walls }, (book) => sheetOf(book, 'Walls').mergeCells('C2:D2'));
    expect(error).toMatchObject({ errors: [{ sheet: 'Walls', row: 2, read: 'merged cells C2:D2' }] });
  });

  it('in CSV files as well', async () => {
    const bytes = (rows: readonly (readonly Cell[])[]) => new TextEncoder().encode(rows.map((row) => row.join(';')).join('\n'));
    const files = (walls: readonly (readonly Cell[])[]) => [{ name: 'job.csv', bytes: bytes(JOB) }, { name: 'storeys.csv', bytes: bytes(STOREYS) }, { name: 'walls.csv', bytes: bytes(walls) }];
    expect(await readSchedule(files([...WALLS, ['TOTAL', '', '', '', 960]]), HERON)).toMatchObject({ ok: false, error: { errors: [{ sheet: 'walls.csv', row: 4, fix: expect.stringContaining('this row is a total') }] } });
    expect(await readSchedule(files([...FEATURES, [], ...WALLS]), HERON)).toMatchObject({ ok: false, error: { errors: [{ sheet: 'walls.csv', row: 1, fix: expect.stringContaining('row 4 is the header of walls') }] } });
  });
});
