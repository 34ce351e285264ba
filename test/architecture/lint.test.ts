import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, it } from '@jest/globals';

const folder = mkdtempSync(join(tmpdir(), 'wallcourse-lint-'));
cpSync('.oxlintrc.json', join(folder, '.oxlintrc.json'));

function rulesBroken(file: string, text: string): string[] {
  const path = join(folder, file);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
  const { stdout } = spawnSync(process.execPath, [join(process.cwd(), 'node_modules', 'oxlint', 'bin', 'oxlint'), '-c', '.oxlintrc.json', '-f', 'json', file], {
    cwd: folder, encoding: 'utf8',
  });
  const { diagnostics } = JSON.parse(stdout) as { diagnostics: { code: string; severity: string }[] };
  return diagnostics.filter((one) => one.severity === 'error').map((one) => /\(([^)]+)\)/.exec(one.code)?.[1] ?? one.code);
}

describe('the linter', () => {
  afterAll(() => rmSync(folder, { recursive: true }));

  it.each([
    ['the clock in the domain', 'src/domain/x.ts', 'export const now = () => new Date();', 'no-restricted-globals'],
    ['the environment in the domain', 'src/domain/x.ts', 'export const port = () => process.env;', 'no-restricted-globals'],
    ['the network in the domain', 'src/domain/x.ts', `export const read = () => fetch('http://x');`, 'no-restricted-globals'],
    ['chance in the domain', 'src/domain/deep/x.ts', 'export const any = () => Math.random();', 'no-restricted-properties'],
    ['a focused test', 'test/x.test.ts', `import { it } from '@jest/globals'; it.only('x', () => undefined);`, 'no-focused-tests'],
    ['a skipped test', 'test/x.test.ts', `import { it } from '@jest/globals'; it.skip('x', () => undefined);`, 'no-disabled-tests'],
    ['a default export', 'src/modules/x.ts', 'export default 1;', 'no-default-export'],
    ['any', 'src/modules/x.ts', 'export const f = (x: any) => x as unknown;', 'no-explicit-any'],
    ['an HTTP exception in a module', 'src/modules/x.ts', `import { NotFoundException } from '@nestjs/common'; throw new NotFoundException();`, 'no-restricted-imports'],
    ['a file of more than 400 lines', 'src/domain/x.ts', Array.from({ length: 401 }, (_, n) => `export const a${n} = ${n};`).join('\n'), 'max-lines'],
    ['what nobody uses', 'src/domain/x.ts', 'const left = 1; export const right = 2;', 'no-unused-vars'],
  ])('refuses %s', (_, file, text, rule) => {
    expect(rulesBroken(file, text)).toContain(rule);
  });

  it('takes the clock outside the domain, and plain code anywhere', () => {
    expect(rulesBroken('src/platform/x.ts', 'export const now = () => new Date();')).toEqual([]);
    expect(rulesBroken('src/domain/x.ts', 'export const twice = (x: number): number => x * 2;')).toEqual([]);
  });
});
