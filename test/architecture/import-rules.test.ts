import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';

const FORBIDDEN: readonly [rule: string, from: string, to: string][] = [
  ['stage-order-schedule', 'src/domain/schedule/a.ts', 'src/domain/takeoff/b.ts'],
  ['stage-order-takeoff', 'src/domain/takeoff/c.ts', 'src/domain/quote/b.ts'],
  ['stage-order-ticket', 'src/domain/ticket/a.ts', 'src/domain/history/b.ts'],
  ['foundations-know-no-stage', 'src/domain/quantity/a.ts', 'src/domain/schedule/b.ts'],
  ['geometry-knows-no-trade', 'src/domain/geometry/a.ts', 'src/domain/range/b.ts'],
  ['domain-is-pure', 'src/domain/takeoff/d.ts', 'src/platform/b.ts'],
  ['domain-is-pure', 'src/domain/takeoff/e.ts', 'node:fs'],
  ['domain-is-pure', 'src/domain/takeoff/f.ts', 'fs'],
  ['domain-is-pure', 'src/domain/takeoff/g.ts', 'pg'],
  ['only-the-pipeline-sees-all', 'src/domain/takeoff/h.ts', 'src/domain/pipeline.ts'],
  ['platform-knows-no-module', 'src/platform/a.ts', 'src/modules/jobs/b.ts'],
  ['one-door', 'src/modules/jobs/a.ts', 'pg'],
  ['measured-in-one-place', 'src/modules/jobs/c.ts', 'src/domain/pipeline.ts'],
  ['siblings-not-by-their-routes', 'src/modules/jobs/d.ts', 'src/modules/quotes/quotes.controller.ts'],
  ['no-orphan-test-imports', 'src/platform/c.ts', 'test/b.ts'],
];

const ALLOWED: readonly [from: string, to: string][] = [
  ['src/domain/takeoff/i.ts', 'src/domain/schedule/b.ts'],
  ['src/domain/quote/i.ts', 'src/domain/ticket/b.ts'],
  ['src/domain/pipeline.ts', 'src/domain/quote/b.ts'],
  ['src/modules/takeoffs/i.ts', 'src/domain/pipeline.ts'],
  ['src/modules/jobs/i.ts', 'src/modules/schedules/schedules.service.ts'],
  ['src/modules/jobs/j.ts', 'src/modules/jobs/jobs.controller.ts'],
  ['src/modules/jobs/k.ts', 'src/platform/b.ts'],
  ['src/platform/i.ts', 'pg'],
];

interface Violation {
  readonly from: string;
  readonly rule: { readonly name: string; readonly severity: string };
}

describe('the import rules', () => {
  const folder = mkdtempSync(join(tmpdir(), 'wallcourse-imports-'));
  let violations: readonly Violation[];

  const write = (file: string, text: string): void => {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), text, { flag: 'a' });
  };

  /** A house in which every case stands once, read in one go. */
  beforeAll(() => {
    for (const file of ['.dependency-cruiser.cjs', 'tsconfig.json']) cpSync(file, join(folder, file));
    write('package.json', '{"name":"x","type":"module","dependencies":{"pg":"1"}}');
    write('node_modules/pg/package.json', '{"name":"pg","main":"index.js"}');
    write('node_modules/pg/index.js', 'module.exports = {};');
    const cases = [...FORBIDDEN.map(([, from, to]) => [from, to] as const), ...ALLOWED];
    for (const [from, to] of cases) {
      const ours = /^(src|test)\//.test(to);
      if (ours) write(to, 'export const there = 1;\n');
      write(from, `import * as there from '${ours ? `./${relative(dirname(from), to).replace(/\.ts$/, '.js')}` : to}';\nexport const here = there;\n`);
    }
    write('src/platform/round.ts', `import * as there from './about.js';\nexport const here = there;\n`);
    write('src/platform/about.ts', `import * as there from './round.js';\nexport const here = there;\n`);
    const cruiser = join(process.cwd(), 'node_modules', 'dependency-cruiser', 'bin', 'dependency-cruise.mjs');
    const { stdout } = spawnSync(process.execPath, [cruiser, '--config', '.dependency-cruiser.cjs', '--output-type', 'json', 'src'], { cwd: folder, encoding: 'utf8', maxBuffer: 64_000_000 });
    violations = (JSON.parse(stdout) as { summary: { violations: Violation[] } }).summary.violations;
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  const broken = (from: string): string[] => violations.filter((one) => one.from === from && one.rule.severity === 'error').map((one) => one.rule.name);

  it.each(FORBIDDEN)('%s: %s may not import %s', (rule, from) => {
    expect(broken(from)).toContain(rule);
  });

  it('no-circular: two files may not import each other', () => {
    expect([...broken('src/platform/round.ts'), ...broken('src/platform/about.ts')]).toContain('no-circular');
  });

  it.each(ALLOWED)('%s may import %s', (from) => {
    expect(broken(from)).toEqual([]);
  });
});
