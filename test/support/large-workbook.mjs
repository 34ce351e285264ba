// Writes and reads workbooks of many walls in a process of its own, so that its memory is that of the one thing it does.
// write <path> <walls> | rows <path>: every row held | schedule <path>: as an upload
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

const [task, path = '', walls = '0'] = process.argv.slice(2);
const compiled = (file) => import(pathToFileURL(join(process.cwd(), 'dist', 'domain', 'schedule', file)).href);
const maxRssMb = () => process.resourceUsage().maxRSS / 1024;

async function write() {
  const { default: ExcelJS } = await import('exceljs');
  const book = new ExcelJS.stream.xlsx.WorkbookWriter({ filename: path, useSharedStrings: false });
  const sheet = (name, rows) => {
    const added = book.addWorksheet(name);
    for (const row of rows) added.addRow(row).commit();
    added.commit();
  };
  sheet('job', [['key', 'value'], ['name', 'Estate'], ['units', 'in'], ['dimensionsTo', 'axis'], ['range', 'HERON-16']]);
  sheet('storeys', [['id', 'height'], ['S1', `9'-0"`]]);
  sheet('walls', wallRows(Number(walls)));
  await book.commit();
}

function* wallRows(count) {
  yield ['mark', 'storey', 'core', 'from_x', 'from_y', 'to_x', 'to_y', 'height'];
  for (let index = 1; index <= count; index++) {
    const x = index % 900;
    yield [`Façade Süd, wall ${index}`, 'S1', '6', `${x}'-6 1/2"`, index * 20, `${x + 10}'-0"`, index * 20, `9'-0"`];
  }
}

async function rows() {
  const { workbookSheets } = await compiled('xlsx/workbook.js');
  const started = performance.now();
  const held = [];
  for (const sheet of await workbookSheets(path, readFileSync(path))) for await (const row of sheet.rows()) held.push(row);
  const last = held.at(-1);
  return { rows: held.length, last: { row: last.row, cells: [...last.cells] }, seconds: (performance.now() - started) / 1000, maxRssMb: maxRssMb() };
}

async function schedule() {
  const { readSchedule } = await compiled('index.js');
  const result = await readSchedule([{ name: 'estate.xlsx', bytes: readFileSync(path) }], { cores: null, courseHeight: null, buckThickness: null });
  return { ok: result.ok, error: result.error, maxRssMb: maxRssMb() };
}

const answer = await { write, rows, schedule }[task]();
if (answer) process.stdout.write(JSON.stringify(answer));
