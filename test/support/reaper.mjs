// Waits until a test run is gone, then ends its database server and removes its folder.
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';

function lives(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}

/** Nothing in the folder is worth a clean end: the server's files go with it. */
export async function endDatabase(folder) {
  const file = join(folder, 'database', 'postgres', 'postmaster.pid');
  if (existsSync(file)) {
    const pid = Number(readFileSync(file, 'utf8').split('\n')[0]);
    if (Number.isInteger(pid) && pid > 1 && lives(pid)) process.kill(pid, 'SIGQUIT');
    for (let tries = 0; tries < 500 && existsSync(file) && lives(pid); tries += 1) await sleep(10);
  }
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [, , pid, folder] = process.argv;
  while (lives(Number(pid)) && existsSync(folder)) await sleep(500);
  if (existsSync(folder)) await endDatabase(folder);
}
