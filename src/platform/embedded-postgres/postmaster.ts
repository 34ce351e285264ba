import { readFile, rm } from 'node:fs/promises';
import { platform } from 'node:os';
import { join } from 'node:path';

/** What a running server writes into its own folder. */
export interface Postmaster {
  readonly pid: number;
  readonly port: number;
  readonly ready: boolean;
}

export function processLives(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** False only where it is certain that the process is something else that was given the same number later. */
async function isPostgres(pid: number): Promise<boolean> {
  if (platform() !== 'linux') return true;
  try {
    const state = await readFile(`/proc/${pid}/stat`, 'utf8');
    const [, name, status] = /\((.*)\) (\S)/.exec(state) ?? [];
    return name === 'postgres' && status !== 'Z';
  } catch {
    return false;
  }
}

/** A dead server that its parent has not looked at yet does not live. */
export const serverLives = async (pid: number): Promise<boolean> => processLives(pid) && (await isPostgres(pid));

/** Lines of postmaster.pid: pid, folder, start, port, socket folder, address, shared memory key, state. */
async function pidFile(cluster: string): Promise<{ readonly pid: number; readonly lines: readonly string[] } | null> {
  const text = await readFile(join(cluster, 'postmaster.pid'), 'utf8').catch(() => null);
  if (text === null) return null;
  const lines = text.split('\n').map((line) => line.trim());
  const pid = Number(lines[0]);
  return Number.isInteger(pid) && pid > 0 ? { pid, lines } : null;
}

/** The living server of a cluster folder, or null. */
export async function readPostmaster(cluster: string): Promise<Postmaster | null> {
  const file = await pidFile(cluster);
  if (file === null || !(await serverLives(file.pid))) return null;
  return { pid: file.pid, port: Number(file.lines[3] ?? 0), ready: file.lines[7] === 'ready' };
}

/**
 * PostgreSQL sees by itself that a dead server's file is out of date, but not where another program of the same user has been
 * given the dead server's number, as happens when a container starts again.
 */
export async function forgetReusedPid(cluster: string): Promise<void> {
  const file = await pidFile(cluster);
  if (file !== null && processLives(file.pid) && !(await isPostgres(file.pid))) await rm(join(cluster, 'postmaster.pid'), { force: true });
}
