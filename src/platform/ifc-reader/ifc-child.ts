import { readFileSync, writeSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Worker } from 'node:worker_threads';
import type * as WebIfc from 'web-ifc';
import { takeLines } from './take-lines.js';

/*
 * One building model in, on standard input; what walls hang together with out, as JSON on standard output. A process of its own,
 * because the parser keeps what memory it takes and a file can make it take all there is.
 *
 * The computation blocks this thread, so a second one reports the memory in use to the parent (descriptor 3) and ends the process
 * when the parent is gone.
 */
const [, , memoryMb = '1024'] = process.argv;
const STDIN = 0;
const STDOUT = 1;
/** The file is damaged, or no building model after all. */
const UNREADABLE = 3;

function writeAll(bytes: Buffer): void {
  for (let written = 0; written < bytes.length;) {
    try {
      written += writeSync(STDOUT, bytes, written);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error;
    }
  }
}

async function readModel(): Promise<void> {
  const bytes = readFileSync(STDIN);
  const { IfcAPI, LogLevel } = createRequire(import.meta.url)('web-ifc') as typeof WebIfc;
  const api = new IfcAPI();
  await api.Init();
  api.SetLogLevel(LogLevel.LOG_LEVEL_OFF);
  const model = api.OpenModel(bytes, { MEMORY_LIMIT: Number(memoryMb) * 1_048_576 });
  if (model < 0) {
    process.exitCode = UNREADABLE;
    return;
  }
  writeAll(Buffer.from(JSON.stringify(takeLines(api, model))));
}

const watch = new Worker(new URL('./ifc-watch.js', import.meta.url), { workerData: { parent: process.ppid } });
watch.unref();
try {
  await readModel();
} catch {
  process.exitCode = UNREADABLE;
}
