import { writeSync } from 'node:fs';
import { workerData } from 'node:worker_threads';

const REPORTS = 3;
const EVERY_MS = 100;
const { parent } = workerData as { parent: number };

/** Tells the parent how much memory the process holds, and ends the process where the parent is gone. */
setInterval(() => {
  if (process.ppid !== parent) process.kill(process.pid, 'SIGKILL');
  try {
    writeSync(REPORTS, `${process.memoryUsage.rss()}\n`);
  } catch {
    process.kill(process.pid, 'SIGKILL');
  }
}, EVERY_MS);
