import { execFileSync, spawn, type ChildProcess } from 'node:child_process';
import { existsSync } from 'node:fs';
import { copyFile, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { copyOf, createDatabase, inDatabase, inTurn, testFolder } from './database.js';

const ROOT = process.cwd();
const TOKENS = 'demo-tokens.json';
const START_LIMIT_MS = 60_000;

export type DemoPerson = 'contractor' | 'neighbour' | 'support' | 'sales' | 'admin';

export interface TestServer {
  /** `http://127.0.0.1:PORT` */
  readonly url: string;
  readonly dataDir: string;
  readonly databaseUrl: string;
  readonly pid: number;
  /** Bearer tokens of the demo people; empty where SEED_DEMO=0. */
  readonly tokens: Readonly<Record<DemoPerson, string>>;
  /** All the process has written so far. */
  output(): string;
  /** fetch on a path, as a demo person or as nobody. */
  fetch(path: string, init?: RequestInit & { as?: DemoPerson }): Promise<Response>;
  /** Ends it with SIGTERM (or what is asked for) and waits; its folder is removed. */
  stop(signal?: NodeJS.Signals): Promise<number | null>;
}

/** Compiled once for all the files of a run. */
export async function ensureBuilt(databaseUrl: string): Promise<void> {
  await inTurn(inDatabase(databaseUrl, 'postgres'), async () => {
    execFileSync(process.execPath, [join(ROOT, 'src', 'commands', 'build.mjs'), '--if-stale'], { stdio: 'pipe' });
  });
}

export function exited(child: ChildProcess): Promise<number | null> {
  if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve(child.exitCode);
  return new Promise((settle) => child.once('exit', (code) => settle(code)));
}

/** Waits until a file stands and gives its text; fails with the process's output where that ends before. */
export async function fileFrom(child: ChildProcess, file: string, output: () => string): Promise<string> {
  const limit = performance.now() + START_LIMIT_MS;
  while (performance.now() < limit) {
    if (existsSync(file)) return (await readFile(file, 'utf8')).trim();
    if (child.exitCode !== null || child.signalCode !== null) throw new Error(`the server ended before it listened:\n${output()}`);
    await sleep(20);
  }
  throw new Error(`the server did not listen in time:\n${output()}`);
}

interface Started {
  readonly child: ChildProcess;
  readonly url: string;
  output(): string;
}

/** Waits until it listens. */
async function started(databaseUrl: string, dataDir: string, environment: Record<string, string>): Promise<Started> {
  const child = spawn(process.execPath, [join(ROOT, 'dist', 'main.js')], {
    cwd: dataDir,
    env: { PATH: process.env['PATH'], DATA_DIR: dataDir, DATABASE_URL: databaseUrl, PORT: '0', WORKER: 'inline', LOG_LEVEL: 'info', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const parts: string[] = [];
  for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk: Buffer) => parts.push(chunk.toString()));
  const output = (): string => parts.join('');
  return { child, output, url: await fileFrom(child, join(dataDir, 'address'), output) };
}

/** A database as a server's first start leaves it, and in `dataDir` the file of tokens that it wrote: done once for the run, then copied. */
async function seeded(dataDir: string): Promise<string> {
  const kept = join(await testFolder(), TOKENS);
  const { url } = await copyOf('wallcourse_seeded', async (empty) => {
    const folder = await mkdtemp(join(tmpdir(), 'wallcourse-seed-'));
    const { child } = await started(empty, folder, { WORKER: 'none' });
    child.kill('SIGTERM');
    await exited(child);
    await copyFile(join(folder, TOKENS), kept);
    await rm(folder, { recursive: true, force: true });
  });
  await copyFile(kept, join(dataDir, TOKENS));
  return url;
}

/**
 * The real compiled server in a process and a database of its own, worker inline, on a free port.
 *
 * @param first on an empty database, which it migrates and seeds itself; else (but for SEED_DEMO=0) on a copy of one that a start before has seeded
 */
export async function startServer(environment: Record<string, string> = {}, first = environment['SEED_DEMO'] === '0'): Promise<TestServer> {
  const empty = await createDatabase(false);
  await ensureBuilt(empty.url);
  const dataDir = await mkdtemp(join(tmpdir(), 'wallcourse-server-'));
  const databaseUrl = first ? empty.url : await seeded(dataDir);
  const { child, url, output } = await started(databaseUrl, dataDir, environment);
  const file = join(dataDir, TOKENS);
  const tokens = existsSync(file) ? (JSON.parse(await readFile(file, 'utf8')) as Record<DemoPerson, string>) : ({} as Record<DemoPerson, string>);
  return {
    url,
    dataDir,
    databaseUrl,
    pid: child.pid ?? 0,
    tokens,
    output,
    fetch: (path, { as, ...init } = {}) => {
      const headers = new Headers(init.headers);
      if (as) headers.set('authorization', `Bearer ${tokens[as]}`);
      return fetch(url + path, { ...init, headers });
    },
    stop: async (signal = 'SIGTERM') => {
      child.kill(signal);
      const code = await exited(child);
      await rm(dataDir, { recursive: true, force: true });
      return code;
    },
  };
}
