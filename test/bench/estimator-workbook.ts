import exceljs from 'exceljs';
import type { Schedule } from '../../src/domain/schedule/schedule.js';
import { NM_PER_INCH } from '../../src/domain/quantity/length.js';

/**
 * The workbook a spreadsheet estimator keeps: a wall a row, its figures typed in, fifteen formulas beside them, totals on top, a sheet of
 * prices looked up by core. It counts by area and waste and knows no courses' pieces, no legs and no cutting.
 */
const TYPED = ['mark', 'length in', 'height in', 'core in', 'openings', 'openings sq ft', 'corners', 'tees'] as const;

/** Formula of a row, columns I to W. */
const FORMULAS: readonly (readonly [heading: string, formula: (row: number) => string])[] = [
  ['length ft', (r) => `B${r}/12`],
  ['gross sq ft', (r) => `I${r}*C${r}/12`],
  ['net sq ft', (r) => `J${r}-F${r}`],
  ['courses', (r) => `ROUNDUP(C${r}/16,0)`],
  ['forms', (r) => `ROUNDUP(K${r}/(4*16/12)*(1+Prices!$B$8),0)`],
  ['corner units', (r) => `G${r}/2*L${r}`],
  ['closures', (r) => `E${r}*2*ROUNDUP(L${r}*0.6,0)+IF(G${r}=0,2*L${r},0)`],
  ['concrete yd3', (r) => `K${r}*D${r}/12/27`],
  ['order yd3', (r) => `CEILING(P${r}*1.05,0.25)`],
  ['bars along ft', (r) => `(ROUNDUP(C${r}/48,0)+1)*I${r}*1.1`],
  ['bars upright ft', (r) => `(ROUNDUP(B${r}/16,0)+1+2*E${r})*C${r}/12`],
  ['tape ft', (r) => `2*2*ROUNDUP(B${r}/16,0)+2*2*G${r}/2*L${r}+4*H${r}*L${r}`],
  ['braces', (r) => `ROUNDUP(I${r}/6,0)+1+2*E${r}`],
  ['forms price', (r) => `M${r}*VLOOKUP(D${r},Prices!$A$2:$C$5,2,FALSE)+N${r}*VLOOKUP(D${r},Prices!$A$2:$C$5,3,FALSE)`],
  ['price', (r) => `ROUND(V${r}+O${r}*Prices!$B$9+T${r}/150*Prices!$B$10+(R${r}+S${r})*Prices!$B$11,2)`],
];

export const FORMULAS_A_ROW = FORMULAS.length;
const FIRST_ROW = 3;

const inches = (nm: number): number => nm / NM_PER_INCH;

/** Writes it; formulas have no remembered values, so whoever opens it must work them out. */
export async function writeEstimatorWorkbook(schedule: Schedule, file: string): Promise<void> {
  const book = new exceljs.Workbook();
  const walls = book.addWorksheet('Walls');
  const last = FIRST_ROW + schedule.walls.length - 1;
  walls.addRow([...TYPED, ...FORMULAS.map(([heading]) => heading)]);
  walls.addRow(['total', ...'BCDEFGHIJKLMNOPQRSTUVW'].map((column) => (column.length > 1 ? column : { formula: `SUM(${column}${FIRST_ROW}:${column}${last})` })));
  const openings = new Map<string, { count: number; area: number }>();
  for (const { wall, width, height } of schedule.openings) {
    const before = openings.get(wall) ?? { count: 0, area: 0 };
    openings.set(wall, { count: before.count + 1, area: before.area + (inches(width) * inches(height)) / 144 });
  }
  schedule.walls.forEach((wall, index) => {
    const row = FIRST_ROW + index;
    const { count, area } = openings.get(wall.mark) ?? { count: 0, area: 0 };
    const loop = Number(wall.core) >= 6;
    const typed = [wall.mark, inches(wall.length), inches(wall.height), Number(wall.core), count, area, loop ? 2 : 0, loop ? 0 : 2];
    walls.addRow([...typed, ...FORMULAS.map(([, formula]) => ({ formula: formula(row) }))]);
  });
  const prices = book.addWorksheet('Prices');
  prices.addRow(['core', 'form', 'corner']);
  for (const row of [[4, 21.8, 27.5], [6, 23.4, 29.25], [8, 26.1, 32.4], [10, 29.9, 36.8]]) prices.addRow(row);
  prices.getCell('A8').value = 'waste';
  prices.getCell('B8').value = 0.05;
  prices.getCell('B9').value = 2.8;
  prices.getCell('B10').value = 18.6;
  prices.getCell('B11').value = 0.72;
  await book.xlsx.writeFile(file);
}

/** Net area in square feet by the schedule itself: what the totals row must show if the formulas were worked out. */
export function netSquareFeet(schedule: Schedule): number {
  const gross = schedule.walls.reduce((sum, wall) => sum + (inches(wall.length) * inches(wall.height)) / 144, 0);
  return gross - schedule.openings.reduce((sum, { width, height }) => sum + (inches(width) * inches(height)) / 144, 0);
}

/** The total of the net areas in a workbook that was saved with values. */
export async function savedNetSquareFeet(file: string): Promise<number> {
  const book = new exceljs.Workbook();
  await book.xlsx.readFile(file);
  return Number(book.getWorksheet('Walls')!.getCell('K2').result);
}
