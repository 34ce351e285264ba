import { execFile, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chmod, mkdir, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { readPostmaster } from '../../src/platform/embedded-postgres/postmaster.js';
import { createDatabase } from '../support/database.js';
import { ensureBuilt, fileFrom } from '../support/server.js';

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

describe('npm start', () => {
  it('ends with its database when npm, which it was started by, is told to end', async () => {
    const dataDir = join(folder, 'data');
    await mkdir(dataDir);
    for (const path of [folder, dataDir]) await chmod(path, 0o755);
    const { PATH, HOME } = process.env;
    const npm = spawn('npm', ['start'], {
      cwd: ROOT,
      env: { PATH, HOME, DATA_DIR: dataDir, PORT: '0', SEED_DEMO: '0' },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let said = '';
    for (const stream of [npm.stdout, npm.stderr]) stream.on('data', (chunk: Buffer) => (said += chunk.toString()));
    const address = await fileFrom(npm, join(dataDir, 'address'), () => said);
    expect((await fetch(`${address}/health/ready`)).status).toBe(200);
    expect(await readPostmaster(join(dataDir, 'postgres'))).not.toBeNull();
    const closed = new Promise((settle) => npm.once('close', settle));
    npm.kill('SIGTERM');
    // The server holds npm's output open for as long as it lives.
    await closed;
    await expect(fetch(`${address}/health/ready`)).rejects.toThrow();
    expect(said).toContain('"stopped"');
    expect(await readPostmaster(join(dataDir, 'postgres'))).toBeNull();
  }, 120_000);

  it.each(['start', 'api', 'worker', 'demo'])('is, as %s, one process of its own', async (name) => {
    const { scripts } = JSON.parse(await readFile(join(ROOT, 'package.json'), 'utf8')) as { scripts: Record<string, string> };
    expect(scripts[name]).toMatch(/^node src\/commands\/\w+\.mjs( [\w/]+\.js)?$/);
  });

  it('has a file for every script that names one', async () => {
    const { scripts } = JSON.parse(await readFile(join(ROOT, 'package.json'), 'utf8')) as { scripts: Record<string, string> };
    const files = Object.values(scripts).flatMap((script) => script.match(/\S+\.m?js\b/g) ?? []);
    const missing = files.filter((file) => {
      const path = /^(src|test)\//.test(file) ? file : join('src', file.replace(/\.js$/, '.ts'));
      return !existsSync(join(ROOT, path));
    });
    expect(files.length).toBeGreaterThan(6);
    expect(missing).toEqual([]);
  });
});
