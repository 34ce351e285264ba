import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const here = (file: string): string => fileURLToPath(new URL(file, import.meta.url));

/** Runs a file of the bench in a process of its own, so that its memory and its start are its own, and reads the JSON it prints. */
export function inChild<T>(file: string, options: readonly string[], heapMb = 12_000): T {
  const environment = Object.fromEntries(Object.entries(process.env).filter(([name]) => name !== 'BENCH_HOOKS'));
  const { status, stdout, error } = spawnSync(
    process.execPath,
    [`--max-old-space-size=${heapMb}`, '--import', new URL('typescript.mjs', import.meta.url).href, here(file), ...options],
    { stdio: ['ignore', 'pipe', 'inherit'], encoding: 'utf8', env: environment, maxBuffer: 1e8 },
  );
  if (error) throw error;
  if (status !== 0) throw new Error(`${file} ${options.join(' ')} ended with ${status}`);
  return JSON.parse(stdout) as T;
}
