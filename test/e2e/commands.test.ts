import { execFile } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { createDatabase } from '../support/database.js';
import { ensureBuilt } from '../support/server.js';

const ROOT = process.cwd();
const run = promisify(execFile);

let folder: string;

beforeAll(async () => {
  await ensureBuilt((await createDatabase(false)).url);
  folder = await mkdtemp(join(tmpdir(), 'wallcourse-commands-'));
});

afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});

describe('npm run demo', () => {
  it('takes three schedules through take-off, quote and tickets, and finds the tables identical, in less than 90 seconds', async () => {
    const began = performance.now();
    const { stdout } = await run(process.execPath, [join(ROOT, 'dist', 'commands', 'demo.js')], {
      cwd: folder,
      maxBuffer: 10_000_000,
    });
    expect(performance.now() - began).toBeLessThan(90_000);
    for (const words of [
      'J-000001 Harbour store',
      'Mill Lane house',
      'mill-lane-house.xlsx: J-000003, the take-off is identical',
      'mill-lane-house-csv: J-000004, the take-off is identical',
      'cannot be accepted yet: open-hold',
      'is accepted.',
    ])
      expect(stdout).toContain(words);
    const names = await readdir(join(folder, 'out'));
    for (const job of ['harbour-store', 'mill-lane-house', 'quay-workshop']) {
      expect(names).toContain(`${job}.quote.pdf`);
      expect((await readFile(join(folder, 'out', `${job}.quote.pdf`))).subarray(0, 5).toString()).toBe('%PDF-');
      expect(names.filter((name) => name.startsWith(`${job}.plan-`) && name.endsWith('.svg')).length).toBeGreaterThan(0);
      expect(names.filter((name) => name.startsWith(`${job}.elevation-`) && name.endsWith('.png')).length).toBeGreaterThan(0);
    }
    const left = /in (\S*wallcourse-demo-\S+)$/m.exec(stdout)?.[1];
    expect(left).toBeDefined();
    expect(existsSync(left!)).toBe(false);
  }, 120_000);
});

describe('npm run generate', () => {
  it('finds the contracts fresh', async () => {
    const { stderr } = await run(process.execPath, [join(ROOT, 'dist', 'commands', 'generate.js'), '--check']);
    expect(stderr).toBe('');
  });
});
