import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chmod, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { PACKAGE_ROOT } from '../../platform/config/package-root.js';

const START_LIMIT_MS = 60_000;

export type Tokens = Readonly<Record<'contractor' | 'neighbour' | 'support' | 'sales' | 'admin', string>>;

export interface DemoServer {
  readonly address: string;
  readonly dataDir: string;
  readonly tokens: Tokens;
  /** Settles when the process ends by itself. */
  readonly ended: Promise<void>;
  /** Stops it and removes its folder. */
  stop(): Promise<void>;
}

/** The whole program as a process of its own, in a fresh folder with a fresh database, on a free port. */
export async function startDemoServer(): Promise<DemoServer> {
  const dataDir = await mkdtemp(join(tmpdir(), 'wallcourse-demo-'));
  // The embedded database may run as another user, who must get at it.
  await chmod(dataDir, 0o755);
  const child = spawn(process.execPath, [join(PACKAGE_ROOT, 'dist', 'main.js')], {
    cwd: dataDir,
    env: {
      PATH: process.env['PATH'],
      HOME: process.env['HOME'],
      DATA_DIR: dataDir,
      PORT: '0',
      WORKER: 'inline',
      SEED_DEMO: '1',
      LOG_LEVEL: 'silent',
    },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const ended = new Promise<void>((settle) => child.once('exit', () => settle()));
  const stop = async () => {
    if (isRunning(child)) child.kill('SIGTERM');
    await ended;
    await rm(dataDir, { recursive: true, force: true });
  };
  try {
    const address = await firstLine(child, join(dataDir, 'address'));
    const tokens = JSON.parse(await readFile(join(dataDir, 'demo-tokens.json'), 'utf8')) as Tokens;
    return { address, dataDir, tokens, ended, stop };
  } catch (error) {
    await stop();
    throw error;
  }
}

const isRunning = (child: ChildProcess): boolean => child.exitCode === null && child.signalCode === null;

async function firstLine(child: ChildProcess, file: string): Promise<string> {
  const limit = performance.now() + START_LIMIT_MS;
  while (performance.now() < limit) {
    if (existsSync(file)) return (await readFile(file, 'utf8')).trim();
    if (!isRunning(child)) throw new Error('the server ended before it listened');
    await sleep(50);
  }
  throw new Error(`the server did not listen within ${START_LIMIT_MS / 1000} s`);
}
