// Compiles src to dist. With --if-stale it does nothing when dist is newer than every source file.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, realpathSync, statSync, cpSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createRequire } from 'node:module';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const source = join(root, 'src');
const output = join(root, 'dist');
/** Written when a build is complete; the compiler's own record also moves when types are only checked. */
const stamp = join(output, '.built');

function files(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) =>
    entry.isDirectory() ? files(join(folder, entry.name)) : [join(folder, entry.name)],
  );
}

function stale() {
  if (!existsSync(stamp)) return true;
  const built = statSync(stamp).mtimeMs;
  return [...files(source), join(root, 'tsconfig.json'), join(root, 'package-lock.json')].some((file) => statSync(file).mtimeMs > built);
}

/** Ends the process with the compiler's own status where it finds fault; the compiler has then said why. */
function build() {
  const tsc = createRequire(import.meta.url).resolve('typescript/bin/tsc');
  const { status, error } = spawnSync(process.execPath, [tsc, '-p', join(root, 'tsconfig.json')], { stdio: 'inherit' });
  if (error) throw error;
  if (status !== 0) process.exit(status ?? 1);
  for (const file of files(source).filter((name) => /\.(md|json)$/.test(name))) {
    const target = join(output, relative(source, file));
    mkdirSync(dirname(target), { recursive: true });
    cpSync(file, target);
  }
  writeFileSync(stamp, '');
}

/** Ends the process where the one that started it has gone in the meantime: nobody waits for the program any more. */
export function buildIfStale() {
  if (!stale()) return;
  const parent = process.ppid;
  build();
  if (process.ppid !== parent) process.exit(1);
}

if (process.argv[1] && realpathSync(process.argv[1]) === fileURLToPath(import.meta.url)) {
  if (process.argv.includes('--if-stale')) buildIfStale();
  else build();
}
