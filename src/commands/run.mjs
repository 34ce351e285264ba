// node run.mjs <file of dist> [arguments]: builds where dist is stale and runs the file in this same process, so that a signal to it
// reaches the program and not only what started it.
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { buildIfStale } from './build.mjs';

const program = join(dirname(fileURLToPath(import.meta.url)), '..', '..', 'dist', process.argv[2] ?? 'main.js');
buildIfStale();
process.argv.splice(1, 2, program);
await import(pathToFileURL(program).href);
