// Compiles src to dist. With --if-stale it does nothing when dist is newer than every source file.
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, statSync, cpSync, mkdirSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createRequire } from 'node:module';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const source = join(root, 'src');
const output = join(root, 'dist');
const stamp = join(output, '.tsbuildinfo');

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

if (!process.argv.includes('--if-stale') || stale()) {
  const tsc = createRequire(import.meta.url).resolve('typescript/bin/tsc');
  execFileSync(process.execPath, [tsc, '-p', join(root, 'tsconfig.json')], { stdio: 'inherit' });
  for (const file of files(source).filter((name) => /\.(md|json)$/.test(name))) {
    const target = join(output, relative(source, file));
    mkdirSync(dirname(target), { recursive: true });
    cpSync(file, target);
  }
}
