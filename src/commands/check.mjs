// npm test: everything that must hold before a change is taken, cheapest first. `-- <words>` go on to jest and leave the rest out.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const require = createRequire(import.meta.url);
const only = process.argv.slice(2);

/** The program file of an installed package, so that no shell and no .bin link is needed. */
function program(name, bin = name) {
  const manifest = join(root, 'node_modules', name, 'package.json');
  const { bin: bins } = JSON.parse(readFileSync(manifest, 'utf8'));
  return join(dirname(manifest), typeof bins === 'string' ? bins : bins[bin]);
}

function run(title, args, environment = {}) {
  const began = performance.now();
  process.stdout.write(`\n== ${title}\n`);
  const { status, error } = spawnSync(process.execPath, args, { cwd: root, stdio: 'inherit', env: { ...process.env, ...environment } });
  if (error) throw error;
  process.stdout.write(`== ${title}: ${status === 0 ? 'holds' : 'FAILS'} (${((performance.now() - began) / 1000).toFixed(1)} s)\n`);
  return status === 0;
}

/** Prisma's own reading of the model; it looks for an engine that it never starts for this, so any existing file will do. */
const prisma = { PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, CHECKPOINT_DISABLE: '1', PRISMA_HIDE_UPDATE_MESSAGE: '1', DATABASE_URL: '' };
const steps = [
  ['lint', [program('oxlint'), '-c', '.oxlintrc.json', 'src', 'test', 'prisma.config.ts']],
  ['types', [require.resolve('typescript/bin/tsc'), '--noEmit', '-p', 'tsconfig.test.json']],
  ['import rules', [program('dependency-cruiser', 'depcruise'), '--config', '.dependency-cruiser.cjs', 'src']],
  ['database model', [program('prisma'), 'validate'], prisma],
  ['build', [join(root, 'src', 'commands', 'build.mjs')]],
];

function slowest(files) {
  const timed = files.map((file) => ({ name: relative(root, file.name), ms: file.endTime - file.startTime })).sort((a, b) => b.ms - a.ms);
  process.stdout.write('\nslowest test files\n');
  for (const { name, ms } of timed.slice(0, 10)) process.stdout.write(`  ${(ms / 1000).toFixed(1).padStart(6)} s  ${name}\n`);
}

function jest() {
  const folder = mkdtempSync(join(tmpdir(), 'wallcourse-check-'));
  const report = join(folder, 'report.json');
  try {
    const holds = run('tests', [program('jest'), '--json', `--outputFile=${report}`, ...only], {
      NODE_OPTIONS: `${process.env.NODE_OPTIONS ?? ''} --experimental-vm-modules --disable-warning=ExperimentalWarning`.trim(),
    });
    if (!existsSync(report)) return { holds: false, summary: 'the tests did not run to their end' };
    const result = JSON.parse(readFileSync(report, 'utf8'));
    slowest(result.testResults);
    const suites = `Test Suites: ${result.numFailedTestSuites} failed, ${result.numPassedTestSuites} passed, ${result.numTotalTestSuites} total`;
    const tests = `Tests:       ${result.numFailedTests} failed, ${result.numPassedTests} passed, ${result.numTotalTests} total`;
    const failures = result.numFailedTests + result.numRuntimeErrorTestSuites;
    return { holds, summary: `${suites}\n${tests}\n${result.numPassedTests} passed, ${failures} failed` };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const failed = only.length > 0 ? [] : steps.filter(([title, args, environment]) => !run(title, args, environment)).map(([title]) => title);
const generator = join(root, 'dist', 'commands', 'generate.js');
if (only.length === 0 && existsSync(generator) && !run('generated files are fresh', [generator, '--check'])) failed.push('generated files');
const tests = jest();
if (!tests.holds) failed.push('tests');
process.stdout.write(failed.length > 0 ? `\nfailed: ${failed.join(', ')}\n` : '\nall checks hold\n');
process.stdout.write(`\n${tests.summary}\n`);
process.exitCode = failed.length > 0 ? 1 : 0;
