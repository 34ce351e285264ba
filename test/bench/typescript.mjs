// Lets node run the project's TypeScript as it lies: `node --import ./test/bench/typescript.mjs file.ts`. The bench times the sources
// themselves, so there is no build to be stale.
import { existsSync, readFileSync } from 'node:fs';
import { register } from 'node:module';
import { fileURLToPath } from 'node:url';
import { transformSync } from '@swc/core';

export async function resolve(specifier, context, next) {
  if (specifier.startsWith('.') && specifier.endsWith('.js') && context.parentURL?.endsWith('.ts')) {
    const source = new URL(specifier.replace(/\.js$/, '.ts'), context.parentURL);
    if (existsSync(source)) return { url: source.href, format: 'module', shortCircuit: true };
  }
  return next(specifier, context);
}

export async function load(url, context, next) {
  if (!url.endsWith('.ts')) return next(url, context);
  const filename = fileURLToPath(url);
  const { code } = transformSync(readFileSync(filename, 'utf8'), {
    filename,
    jsc: { parser: { syntax: 'typescript' }, target: 'es2022' },
    module: { type: 'es6' },
    sourceMaps: 'inline',
  });
  return { format: 'module', source: code, shortCircuit: true };
}

// The hooks' own thread loads this file too; it must not register itself again.
if (!process.env.BENCH_HOOKS) {
  process.env.BENCH_HOOKS = 'registered';
  register(import.meta.url);
}
