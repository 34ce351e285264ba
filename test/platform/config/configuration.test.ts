import { readFileSync, readdirSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from '@jest/globals';
import { Configuration } from '../../../src/platform/config/configuration.js';
import { configurationTable } from '../../../src/platform/config/configuration-table.js';
import { VARIABLES } from '../../../src/platform/config/variables.js';

describe('the configuration', () => {
  it('needs nothing to be set', () => {
    const usual = Configuration.read({});
    expect(usual).toMatchObject({
      port: 3000, host: '127.0.0.1', databaseUrl: null, workerInline: false, seedDemo: true, dataDir: join(process.cwd(), '.data'),
      blobsFolder: join(process.cwd(), '.data', 'blobs'), threads: Math.max(1, availableParallelism() - 1), runWaitMs: 20_000, logLevel: 'info',
    });
  });

  it('stands in the README as it is', () => {
    expect(readFileSync(join(process.cwd(), 'README.md'), 'utf8')).toContain(configurationTable());
  });

  it('reads what is set', () => {
    const set = Configuration.read({
      PORT: '0', HOST: '0.0.0.0', DATABASE_URL: 'postgresql://a:b@c/d', WORKER: 'inline', SEED_DEMO: '0', BLOBS_URL: 'file:///srv/blobs', UPLOAD_LIMIT_MB: '3', THREADS: '5', DRAIN_S: '1',
    });
    expect(set).toMatchObject({
      port: 0, host: '0.0.0.0', databaseUrl: 'postgresql://a:b@c/d', workerInline: true, seedDemo: false, blobsFolder: '/srv/blobs', uploadLimitBytes: 3_145_728, threads: 5, drainMs: 1_000,
    });
  });

  it.each([
    ['PORT', '70000'], ['PORT', 'http'], ['PORT', '1e3'], ['PORT', '-1'], ['PORT', ' '], ['WORKER', 'yes'], ['SEED_DEMO', 'true'], ['DATABASE_URL', 'mysql://a'], ['BLOBS_URL', 's3://bucket'],
    ['DATA_DIR', ''], ['LOG_LEVEL', 'loud'], ['THREADS', '0'], ['DATABASE_POOL', '1'],
  ])('refuses %s=%s and says what would do', (name, value) => {
    expect(() => Configuration.read({ [name]: value })).toThrow(new RegExp(`${name}=${JSON.stringify(value).replace(/[/.]/g, '\\$&')}: .+`));
  });

  it('names everything that is wrong at once', () => {
    expect(() => Configuration.read({ PORT: 'x', WORKER: 'y' })).toThrow(/PORT="x"[\s\S]*WORKER="y"/);
  });

  it('knows every variable that the program reads, and the program reads the environment in one place', () => {
    const files = readdirSync('src', { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts')).map((name) => join('src', name));
    const readers = files.filter((name) => /process\.env/.test(readFileSync(name, 'utf8')));
    expect(readers.filter((name) => !name.startsWith(join('src', 'commands')))).toEqual([
      join('src', 'platform', 'embedded-postgres', 'cluster.ts'),
      join('src', 'platform', 'process', 'run-process.ts'),
    ].filter((name) => readers.includes(name)));
  });

  it('is told as a table with a row for every variable', () => {
    const rows = configurationTable().split('\n').slice(2);
    expect(rows.map((row) => /^\| `([A-Z_]+)` \|/.exec(row)?.[1])).toEqual(Object.keys(VARIABLES));
    expect(rows[1]).toBe('| `PORT` | `3000` | Port of the API; 0 takes any free one |');
    for (const { meaning } of Object.values(VARIABLES)) expect(meaning).not.toContain('|');
  });
});
