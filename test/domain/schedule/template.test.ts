import { readFileSync } from 'node:fs';
import { measure } from '../../../src/domain/pipeline.js';
import { heron } from '../../support/small-schedules.js';
import { describe, expect, it } from '@jest/globals';
import ExcelJS from 'exceljs';
import { readSchedule, readScheduleDocument, type Schedule } from '../../../src/domain/schedule/index.js';
import { COLUMNS, JOB_KEYS } from '../../../src/domain/schedule/tabular/columns.js';
import { COLUMN_NOTES, JOB_NOTES } from '../../../src/domain/schedule/template/column-notes.js';
import { exampleDocument, type TemplateRange } from '../../../src/domain/schedule/template/example.js';
import { scheduleWorkbook, templateWorkbook } from '../../../src/domain/schedule/template/template-workbook.js';
import { inches } from '../../../src/domain/quantity/length.js';
import { declaredRectangle, HERON, rectangle } from '../../support/schedule-documents.js';
import { PLAN_KINDS, randomPlan } from '../../support/plans.js';

const RANGE: TemplateRange = { code: 'HERON-16', cores: ['4', '6', '8', '10'], courseHeight: inches(16), buckThickness: inches(1.5) };
const CONTEXT = { range: RANGE, ranges: ['HERON-16'], writtenAt: new Date(Date.UTC(2026, 0, 12)) };

const withoutPlaces = (schedule: Schedule): unknown => JSON.parse(JSON.stringify(schedule, (key, value) => (key === 'place' ? undefined : value)));
const workbookRead = async (bytes: Uint8Array): Promise<Schedule> => {
  const result = await readSchedule([{ name: 'schedule.xlsx', bytes }], HERON);
  if (!result.ok) throw new Error(JSON.stringify(result.error, null, 1));
  return result.value;
};
const documentRead = (document: unknown): Schedule => {
  const result = readScheduleDocument(document, HERON);
  if (!result.ok) throw new Error(JSON.stringify(result.error, null, 1));
  return result.value;
};
const opened = async (bytes: Uint8Array): Promise<ExcelJS.Workbook> => {
  const book = new ExcelJS.Workbook();
  await book.xlsx.load(bytes.buffer as ArrayBuffer);
  return book;
};
const sheetOf = (book: ExcelJS.Workbook, name: string): ExcelJS.Worksheet => {
  const sheet = book.getWorksheet(name);
  if (!sheet) throw new Error(`no sheet ${name}`);
  return sheet;
};
const saved = async (book: ExcelJS.Workbook): Promise<Uint8Array> => new Uint8Array((await book.xlsx.writeBuffer()) as ArrayBuffer);
/** What the document and the workbook of its schedule are read as, columns nobody knows left out: there is no place for them. */
const twice = async (document: unknown): Promise<readonly [unknown, unknown]> => {
  const schedule = documentRead(document);
  return [withoutPlaces({ ...schedule, unknown: [] }), withoutPlaces(await workbookRead(await scheduleWorkbook(schedule, CONTEXT)))];
};

describe('the template workbook', () => {
  it('reads back as exactly the schedule that its example is as a document', async () => {
    const schedule = await workbookRead(await templateWorkbook(CONTEXT));
    expect(withoutPlaces(schedule)).toEqual(withoutPlaces(documentRead(exampleDocument(RANGE))));
    expect(schedule.unknown).toEqual([]);
  });

  it('has in its example every kind of thing a schedule holds but a curve and a taper top', async () => {
    const { walls, openings, features, site, pour } = documentRead(exampleDocument(RANGE));
    expect(walls.filter(({ start, end }) => start !== null && end !== null).map(({ mark }) => mark)).toEqual(['Q', 'R', 'S', 'T']);
    expect(openings.map(({ mark, sill, measured }) => [mark, sill > 0, measured])).toEqual([['D1', false, 'concrete'], ['W1', true, 'concrete'], ['W2', true, 'rough']]);
    expect(features.map(({ kind }) => kind)).toEqual(['ledge', 'gable', 'core-change']);
    expect([Object.keys(site ?? {}).length, Object.keys(pour ?? {}).length]).toEqual([6, 11]);
  });

  it('holds nothing: its example is a house that can be built as it is', () => {
    const { findings } = measure(documentRead(exampleDocument(RANGE)), heron());
    expect(findings.filter(({ severity }) => severity === 'hold')).toEqual([]);
  });

  it('does without a core change where the range has one core', async () => {
    const range = { ...RANGE, cores: ['150'] };
    const result = await readSchedule([{ name: 't.xlsx', bytes: await templateWorkbook({ ...CONTEXT, range }) }], { ...HERON, cores: ['150'], coreWidths: new Map([['150', inches(6)]]) });
    expect(result).toMatchObject({ ok: true, value: { features: [{ kind: 'ledge' }, { kind: 'gable' }], unknown: [] } });
  });

  it('has the sheets of the contract, their columns by its names, each with a note', async () => {
    const book = await opened(await templateWorkbook(CONTEXT));
    expect(book.worksheets.map(({ name }) => name)).toEqual(['How to', 'walls', 'openings', 'features', 'storeys', 'job']);
    for (const kind of ['walls', 'openings', 'features', 'storeys'] as const) {
      const header = sheetOf(book, kind).getRow(1);
      expect((header.values as string[]).slice(1)).toEqual(COLUMNS[kind].map(({ name }) => name));
      expect(COLUMNS[kind].filter(({ field }) => !COLUMN_NOTES[kind][field]?.note)).toEqual([]);
      COLUMNS[kind].forEach(({ field }, index) => expect(JSON.stringify(header.getCell(index + 1).note)).toContain(JSON.stringify(COLUMN_NOTES[kind][field]?.note)));
    }
    expect(JOB_KEYS.filter(({ field }) => !JOB_NOTES[field]?.note)).toEqual([]);
  });

  it('offers the words that are read, and no other, in drop-downs', async () => {
    const book = await opened(await templateWorkbook(CONTEXT));
    const offered = (sheet: string, cell: string): string | undefined => sheetOf(book, sheet).getCell(cell).dataValidation?.formulae?.[0] as string | undefined;
    const columns: readonly [string, string, string][] = [
      ['walls', 'core', '"4,6,8,10"'], ['walls', 'storey', 'storeys!$A$2:$A$1000'], ['walls', 'dimensionsTo', '"foam-face,concrete-face,axis"'],
      ['walls', 'start_joint', '"corner,tee,free"'], ['walls', 'end_with_end', '"start,end"'], ['walls', 'end_side', '"left,right"'], ['walls', 'arc_turns', '"left,right"'],
      ['openings', 'wall', 'walls!$A$2:$A$1000'], ['openings', 'lining', '"buck,end-closure"'], ['openings', 'measured', '"concrete,rough"'],
      ['features', 'kind', '"ledge,taper-top,gable,core-change"'], ['features', 'face', '"outside,inside"'], ['features', 'faces', '"one,both"'],
      ['features', 'core', '"4,6,8,10"'], ['features', 'flush', '"outside,inside,centre"'],
      ['storeys', 'grade', '"above,below"'], ['storeys', 'storeyAbove', '"yes,no"'], ['storeys', 'closed', '"yes,no"'], ['storeys', 'on', 'storeys!$A$2:$A$1000'],
    ];
    for (const [sheet, name, list] of columns) {
      const at = (sheetOf(book, sheet).getRow(1).values as string[]).indexOf(name);
      for (const row of [2, 500]) expect([sheet, name, offered(sheet, sheetOf(book, sheet).getCell(row, at).address)]).toEqual([sheet, name, list]);
    }
    const keys = sheetOf(book, 'job').getColumn(1).values as string[];
    const settings = Object.fromEntries(keys.map((key, row) => [key, offered('job', `B${row}`)]).filter(([, list]) => list));
    expect(settings).toEqual({ units: '"in,ft,mm,m"', dimensionsTo: '"foam-face,concrete-face,axis"', range: '"HERON-16"', 'site.exposure': '"B,C,D"', 'pour.retarder': '"yes,no"' });
  });

  it('takes what is typed as text, so that 12-6 is no date', async () => {
    const walls = sheetOf(await opened(await templateWorkbook(CONTEXT)), 'walls');
    for (const cell of ['D2', 'H2', 'H300', 'I20']) expect([cell, walls.getCell(cell).numFmt ?? walls.getColumn(cell.slice(0, 1)).numFmt]).toEqual([cell, '@']);
  });

  it('has its header in view and on every printed page', async () => {
    const book = await opened(await templateWorkbook(CONTEXT));
    for (const [name, pages] of [['walls', 2], ['openings', 1], ['features', 1], ['storeys', 1], ['job', 1]] as const) {
      expect(sheetOf(book, name).views[0]).toMatchObject({ state: 'frozen', xSplit: 1, ySplit: 1 });
      expect([name, sheetOf(book, name).pageSetup]).toEqual([name, expect.objectContaining({ orientation: 'landscape', fitToWidth: pages, fitToHeight: 0, printTitlesRow: '1:1', printTitlesColumn: 'A:A' })]);
    }
  });

  it('a word added to the page of explanations makes it a sheet like any other, which is listed', async () => {
    const book = await opened(await templateWorkbook(CONTEXT));
    sheetOf(book, 'How to').getCell('A40').value = 'Wall Z is 12 ft';
    expect((await workbookRead(await saved(book))).unknown).toEqual([{ sheet: 'How to', name: 'How to' }]);
  });

  it('can be filled in: the example written over, unused sheets and columns deleted', async () => {
    const book = await opened(await templateWorkbook(CONTEXT));
    const walls = sheetOf(book, 'walls');
    for (let row = 2; row <= walls.rowCount; row++) walls.getRow(row).eachCell((cell) => (cell.value = null));
    walls.getRow(5).values = ['Z1', 'S1', '8', '0', '0', `20' 0"`, '0'];
    for (let column = 12; column <= 27; column++) walls.getColumn(column).values = [];
    for (const name of ['openings', 'features', 'How to']) book.removeWorksheet(sheetOf(book, name).id);
    const schedule = await workbookRead(await saved(book));
    expect(schedule.walls).toMatchObject([{ mark: 'Z1', core: '8', length: inches(240) }]);
    expect([schedule.openings, schedule.features, schedule.unknown]).toEqual([[], [], []]);
  });
});

describe('a schedule as a workbook reads back as the same schedule', () => {
  it('the loads that floors and roof put on the walls of a storey', async () => {
    const [before, after] = await twice({ ...rectangle(), storeys: [{ ...rectangle().storeys[0], dead: '400 lb/ft', live: '4.5 kN/m', snow: '0 kN/m' }] });
    expect(after).toEqual(before);
    // 1 lb = 4.4482216152605 N, 1 ft = 0.3048 m: 400 lb/ft = 5.837561 kN/m.
    expect(after).toMatchObject({ storeys: [{ deadKnPerM: expect.closeTo(5.837561, 6), liveKnPerM: 4.5, snowKnPerM: 0 }] });
  });

  it.each(['harbour-store', 'mill-lane-house', 'quay-workshop'])('the sample %s', async (name) => {
    const [before, after] = await twice(JSON.parse(readFileSync(`shared/samples/${name}.schedule.json`, 'utf8')));
    expect(after).toEqual(before);
  });

  it.each([...PLAN_KINDS])('random plans: %s', async (kind) => {
    for (let seed = 1; seed <= 4; seed++) {
      const [before, after] = await twice(randomPlan(seed, { kind }).document);
      expect({ seed, after }).toEqual({ seed, after: before });
    }
  });

  it.each(['in', 'ft', 'mm', 'm'])('lengths to the nanometre in %s, a rough opening, an arc, features and odd quantities', async (units) => {
    const document = {
      ...rectangle(),
      units,
      name: `_x0041_ <Mühle> & "Co" = +1 '`,
      walls: [
        { mark: '=A', storey: 'S1', core: '6', from: [`-0'-0 1/64"`, '0.000001 mm'], to: [`40'-0 63/64"`, '0.000001 mm'], base: '1.234567 mm', length: '12217.3 mm' },
        { mark: '007', storey: 'S1', core: '8', from: [`600"`, '0 in'], to: [`840"`, `240"`], arc: { radius: `250.3"`, turns: 'right' }, dimensionsTo: 'axis', height: `8'-0 3/8"` },
        { mark: '8', storey: 'S1', core: '6', from: ['0 in', '-900 in'], to: ['240 in', '-900 in'] },
      ],
      openings: [
        { mark: 'true', wall: '=A', at: `60"`, sill: `2"`, width: `36"`, height: `44.7"`, measured: 'rough', lining: 'end-closure' },
        { wall: '=A', at: `120"`, sill: '0 in', width: `36"`, height: `84"`, measured: 'rough' },
      ],
      features: [
        { kind: 'ledge', wall: '=A', at: `48"`, face: 'outside' },
        { kind: 'taper-top', wall: '8', faces: 'both' },
        { kind: 'gable', wall: '=A', rise: `33.3"`, peakAt: '0 in' },
        { kind: 'core-change', wall: '=A', at: `64"`, core: '4', flush: 'centre' },
      ],
      site: { wind: '117 mph', exposure: 'C', soil: '47 psf/ft', backfill: `5'-1 1/64"`, seismic: 'D1', snow: '33 psf', duration: '5 weeks', code: 'obc-2024' },
      pour: { rise: '3.7 ft/h', concrete: '71 F', unitWeight: '147 pcf', cement: 'I', retarder: true, slump: '6.3 in', air: '-3 F', humidity: 0.37, wind: '9 mph', pump: '43 yd3/h', truck: '9.5 yd3', stone: '0.375 in', discharge: '75 min' },
    };
    const [before, after] = await twice(document);
    expect(after).toEqual(before);
  });

  it.each([[90, 0], [67.5, 0], [22.619864948040426, 0], [-45, 3.3]])('an open chain without coordinates that turns by %d°, one wall longer by %d"', async (turn, more) => {
    const document = declaredRectangle();
    for (const wall of document.walls) for (const end of ['start', 'end']) wall[end].turn = turn;
    document.walls[0].start = document.walls[3].end = { joint: 'free' };
    document.walls[2].length = `${480 + more}"`;
    document.walls.push({ mark: 'Y', storey: 'S1', core: '8', length: `10'-0"`, start: { joint: 'free' }, end: { joint: 'free' } });
    const [before, after] = await twice({ ...document, storeys: [{ ...document.storeys[0], closed: false }], openings: [] });
    expect(after).toEqual(before);
  });

  it('walls that stand on declared tees, one end or both', async () => {
    const document = declaredRectangle();
    const tee = (on: string, at: string, side: string) => ({ joint: 'tee', on, at, side });
    document.walls.push({ mark: 'P', storey: 'S1', core: '8', length: `9'-7 3/8"`, start: tee('A', `14'-0"`, 'left'), end: { joint: 'free' } });
    document.walls.push({ mark: 'Q', storey: 'S1', core: '6', dimensionsTo: 'axis', length: `6'-0"`, start: { joint: 'free' }, end: tee('C', `14'-0 1/64"`, 'right') });
    const [before, after] = await twice(document);
    expect(after).toEqual(before);
  });

  it('a ring without coordinates', async () => {
    const [before, after] = await twice(declaredRectangle());
    expect(after).toEqual(before);
  });
});
