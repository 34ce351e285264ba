import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Schedule } from '../../src/domain/schedule/schedule.js';
import { estate } from './estate.js';
import { netSquareFeet, savedNetSquareFeet, writeEstimatorWorkbook } from './estimator-workbook.js';

export interface Calc {
  /** Milliseconds to open, recalculate and save the workbook of a schedule, so many times. */
  readonly time: (schedule: Schedule, times: number) => Promise<readonly number[]>;
  readonly close: () => void;
}

/** LibreOffice Calc with a profile of its own, made and opened once before anything is timed; null where it is not installed. */
export async function startCalc(): Promise<Calc | null> {
  if (spawnSync('soffice', ['--version'], { stdio: 'ignore' }).error) return null;
  const folder = mkdtempSync(join(tmpdir(), 'wallcourse-bench-'));
  const open = (file: string): number => {
    const begun = performance.now();
    const profile = `-env:UserInstallation=${pathToFileURL(join(folder, 'profile')).href}`;
    const { status, stderr } = spawnSync('soffice', [profile, '--headless', '--norestore', '--convert-to', 'xlsx', '--outdir', join(folder, 'saved'), file], { encoding: 'utf8' });
    if (status !== 0) throw new Error(`soffice ended with ${status}: ${stderr}`);
    return performance.now() - begun;
  };
  const time = async (schedule: Schedule, times: number): Promise<readonly number[]> => {
    const file = join(folder, `${schedule.walls.length}-walls.xlsx`);
    await writeEstimatorWorkbook(schedule, file);
    const ms = Array.from({ length: times }, () => open(file));
    const saved = await savedNetSquareFeet(join(folder, 'saved', basename(file)));
    // Calc's sums are floats over as many terms; a workbook that was not recalculated shows nothing at all.
    if (!(Math.abs(saved / netSquareFeet(schedule) - 1) < 1e-9)) throw new Error(`Calc saved ${saved} sq ft, the schedule has ${netSquareFeet(schedule)}`);
    return ms;
  };
  await time(estate(1), 1);
  return { time, close: () => rmSync(folder, { recursive: true, force: true }) };
}
