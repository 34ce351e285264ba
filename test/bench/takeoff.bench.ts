import { inChild } from './child.js';
import { estate } from './estate.js';
import { startCalc, type Calc } from './libre-office.js';
import type { RunReport } from './takeoff-run.js';

/**
 * npm run bench -- takeoff [--runs 3] [--against 1000,10000] [--growth 1000,3000,10000,30000] [--streamed 100000]
 *
 * Full course take-off, rules, checks and price of an estate (`estate.ts` says what it is made of), against LibreOffice Calc opening,
 * recalculating and saving a workbook of as many walls with fifteen formulas a row, in the same run on the same machine.
 */
const option = (name: string, usual: string): string => {
  const at = process.argv.indexOf(`--${name}`);
  return at < 0 ? usual : (process.argv[at + 1] ?? '');
};
const numbers = (list: string): number[] => list.split(',').filter(Boolean).map(Number);

const median = (values: readonly number[]): number => {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
};
const seconds = (ms: number): string => `${(ms / 1_000).toFixed(2)} s`;
const say = (line: string): void => console.log(line);

/** Goals of the project, as a share of Calc's time. */
const SHARE_ALLOWED = new Map([[1_000, 1 / 8], [10_000, 1 / 4]]);

/** Slope of the straight line through (log walls, log time): n log n shows a little over 1 [dimensionless]. */
function exponent(points: readonly (readonly [walls: number, ms: number])[]): number {
  const logs = points.map(([walls, ms]) => [Math.log(walls), Math.log(ms)] as const);
  const mean = (index: 0 | 1): number => logs.reduce((sum, point) => sum + point[index], 0) / logs.length;
  const [x, y] = [mean(0), mean(1)];
  return logs.reduce((sum, [a, b]) => sum + (a - x) * (b - y), 0) / logs.reduce((sum, [a]) => sum + (a - x) ** 2, 0);
}

async function against(calc: Calc | null, walls: number, runs: number): Promise<RunReport> {
  const report = inChild<RunReport>('takeoff-run.ts', ['job', `${walls}`, `${runs + 1}`]);
  const [cold, ...warm] = report.ms;
  const own = median(warm);
  say(`${report.walls} walls: median ${seconds(own)} of ${runs} (first in its process ${seconds(cold!)}), ${report.forms} units, bound ${report.lowerBound}, ${report.bondBreaks} broken bonds, peak ${report.peakMb.toFixed(0)} MB`);
  if (!calc) return report;
  const start = median(await calc.time(estate(1), runs));
  const theirs = median(await calc.time(estate(walls), runs));
  const goal = SHARE_ALLOWED.get(walls);
  const kept = goal === undefined ? '' : `; goal ${goal}: ${own / theirs <= goal ? 'kept' : 'NOT kept'}`;
  say(`  Calc: median ${seconds(theirs)} of ${runs}, of which ${seconds(start)} to start and open a workbook of one house`);
  say(`  share of Calc's time ${(own / theirs).toFixed(3)}${kept}${theirs > 2 * start ? `; of its time less the start ${(own / (theirs - start)).toFixed(3)}` : ''}`);
  return report;
}

function growth(sizes: readonly number[], runs: number): void {
  const points = sizes.map((walls): [number, number] => {
    const report = inChild<RunReport>('takeoff-run.ts', ['job', `${walls}`, `${walls <= 3_000 ? runs + 1 : 1}`]);
    const ms = median(report.ms.length > 1 ? report.ms.slice(1) : report.ms);
    say(`  ${report.walls} walls: ${seconds(ms)}, ${(ms / report.walls).toFixed(3)} ms a wall, peak ${report.peakMb.toFixed(0)} MB`);
    return [report.walls, ms];
  });
  say(`  exponent ${exponent(points).toFixed(3)}`);
}

function stream(walls: number): void {
  const { ms, peakMb, walls: count, forms } = inChild<RunReport>('takeoff-run.ts', ['streamed', `${walls}`], 350);
  const goal = walls === 100_000 ? `; goals 5 s: ${ms[0]! <= 5_000 ? 'kept' : 'NOT kept'}, 400 MB: ${peakMb <= 400 ? 'kept' : 'NOT kept'}` : '';
  say(`${count} walls streamed house by house: ${seconds(ms[0]!)}, peak ${peakMb.toFixed(0)} MB, ${forms} units${goal}`);
}

const runs = Number(option('runs', '3'));
const calc = await startCalc();
if (!calc) say('LibreOffice Calc is not installed: its side of the comparison is left out');
try {
  for (const walls of numbers(option('against', '1000,10000'))) await against(calc, walls, runs);
} finally {
  calc?.close();
}
const sizes = numbers(option('growth', '1000,3000,10000,30000'));
if (sizes.length > 1) {
  say('growth, one job of so many walls:');
  growth(sizes, runs);
}
for (const walls of numbers(option('streamed', '100000'))) stream(walls);
