import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { chmod, chown, mkdir, mkdtemp, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { Binaries } from './binaries.js';
import type { ServerUser } from './server-user.js';

export const SUPERUSER = 'wallcourse';
/** Kept inside the cluster, so that the two can only be moved together. */
const PASSWORD_FILE = 'wallcourse.password';

export const passwordOf = async (cluster: string): Promise<string> => (await readFile(join(cluster, PASSWORD_FILE), 'utf8')).trim();

/** What the server and its tools are started with: nothing of our own environment but what they need. */
export function serverEnvironment(binaries: Binaries): NodeJS.ProcessEnv {
  const { PATH, SystemRoot, TEMP, TMP } = process.env;
  return { PATH, SystemRoot, TEMP, TMP, LANG: 'C', TZ: 'UTC', LD_LIBRARY_PATH: binaries.lib, DYLD_FALLBACK_LIBRARY_PATH: binaries.lib };
}

function finished(program: string, args: readonly string[], binaries: Binaries, user: ServerUser | null, cwd: string): Promise<void> {
  return new Promise((settle, fail) => {
    const child = spawn(program, args, { ...user, cwd, env: serverEnvironment(binaries), stdio: ['ignore', 'pipe', 'pipe'] });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk: Buffer) => (said += chunk.toString()));
    child.on('error', fail);
    child.on('close', (code) => (code === 0 ? settle() : fail(new Error(`${program} ended with ${code}: ${said.trim()}`))));
  });
}

async function checkVersion(cluster: string, binaries: Binaries): Promise<void> {
  const made = (await readFile(join(cluster, 'PG_VERSION'), 'utf8')).trim();
  const ours = binaries.version.split('.')[0];
  if (made !== ours) throw new Error(`the database in ${cluster} was made by PostgreSQL ${made}, this program brings ${ours}: dump it there, restore it here`);
}

/**
 * Makes the cluster folder where there is none yet. It is made beside its place and renamed into it, so that a half-made
 * one is never found and of several processes starting at once one wins and the others use what it made.
 */
export async function ensureCluster(cluster: string, binaries: Binaries, user: ServerUser | null): Promise<void> {
  if (!existsSync(cluster)) await makeCluster(cluster, binaries, user);
  await checkVersion(cluster, binaries);
}

async function makeCluster(cluster: string, binaries: Binaries, user: ServerUser | null): Promise<void> {
  await mkdir(dirname(cluster), { recursive: true });
  const nest = await mkdtemp(join(dirname(cluster), '.cluster-'));
  try {
    const password = randomBytes(24).toString('base64url');
    const file = join(nest, 'password');
    await writeFile(file, `${password}\n`, { mode: 0o600 });
    await chmod(nest, 0o700);
    if (user) await Promise.all([chown(nest, user.uid, user.gid), chown(file, user.uid, user.gid)]);
    const made = join(nest, 'cluster');
    const options = ['-A', 'scram-sha-256', '-E', 'UTF8', '--locale-provider=builtin', '--builtin-locale=C.UTF-8', '--locale=C', '--data-checksums', '--no-sync'];
    await finished(binaries.initdb, ['-D', made, '-U', SUPERUSER, `--pwfile=${file}`, ...options], binaries, user, nest);
    await writeFile(join(made, PASSWORD_FILE), `${password}\n`, { mode: 0o600 });
    await rename(made, cluster).catch((error: unknown) => {
      if (!existsSync(cluster)) throw error;
    });
  } finally {
    await rm(nest, { recursive: true, force: true });
  }
}
