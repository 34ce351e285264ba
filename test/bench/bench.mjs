// npm run bench -- <name> [options]: runs test/bench/<name>.bench.ts from the sources as they lie.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const folder = dirname(fileURLToPath(import.meta.url));
const [name = '', ...options] = process.argv.slice(2);
const file = join(folder, `${name}.bench.ts`);
if (!/^[a-z-]+$/.test(name) || !existsSync(file)) {
  const known = readdirSync(folder).filter((each) => each.endsWith('.bench.ts')).map((each) => each.slice(0, -'.bench.ts'.length));
  console.error(`npm run bench -- <name>, one of: ${known.join(', ')}`);
  process.exit(2);
}
const { status, error } = spawnSync(process.execPath, ['--import', pathToFileURL(join(folder, 'typescript.mjs')).href, file, ...options], { stdio: 'inherit' });
if (error) throw error;
process.exit(status ?? 1);
