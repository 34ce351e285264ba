import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { parse } from 'yaml';
import { z } from 'zod';
import { Configuration } from '../../../src/platform/config/configuration.js';
import { VARIABLES } from '../../../src/platform/config/variables.js';

const Service = z.strictObject({
  image: z.string(),
  build: z.strictObject({ context: z.string(), dockerfile_inline: z.string() }).optional(),
  command: z.array(z.string()).optional(),
  restart: z.string(),
  environment: z.record(z.string(), z.string()),
  depends_on: z.record(z.string(), z.strictObject({ condition: z.literal('service_healthy') })).optional(),
  volumes: z.array(z.string()),
  ports: z.array(z.string()).optional(),
  healthcheck: z.strictObject({ test: z.array(z.string()), interval: z.string(), timeout: z.string(), retries: z.number() }).optional(),
  stop_grace_period: z.string().optional(),
});
const Compose = z.strictObject({
  'x-program': z.unknown(),
  'x-environment': z.unknown(),
  services: z.record(z.string(), Service),
  volumes: z.record(z.string(), z.null()),
});

describe('docker-compose.yml', () => {
  const compose = Compose.parse(parse(readFileSync('docker-compose.yml', 'utf8'), { merge: true }));
  const { database, api, worker } = compose.services;
  const programs = [['api', api], ['worker', worker]] as const;

  it('has a database, an API and a worker', () => {
    expect(Object.keys(compose.services)).toEqual(['database', 'api', 'worker']);
  });

  it.each(programs)('sets for %s only variables that the configuration knows, to values that it takes', (_, service) => {
    const environment = service?.environment ?? {};
    expect(Object.keys(environment).filter((name) => !(name in VARIABLES))).toEqual([]);
    expect(() => Configuration.read(environment)).not.toThrow();
  });

  it('lets the API leave the work to the worker, on one database and one folder of blobs', () => {
    const read = programs.map(([, service]) => Configuration.read(service?.environment ?? {}));
    expect(read.map((one) => one.workerInline)).toEqual([false, false]);
    expect(new Set(read.map((one) => one.databaseUrl)).size).toBe(1);
    expect(new Set(read.map((one) => one.blobsFolder)).size).toBe(1);
    expect(read[0]?.blobsFolder.startsWith('/data/')).toBe(true);
    expect([api?.volumes, worker?.volumes]).toEqual([['data:/data'], ['data:/data']]);
  });

  it('gives them the database that it starts', () => {
    const url = new URL(Configuration.read(api?.environment ?? {}).databaseUrl ?? '');
    expect({ user: url.username, password: url.password, host: url.hostname, name: url.pathname.slice(1) }).toEqual({
      user: database?.environment['POSTGRES_USER'], password: database?.environment['POSTGRES_PASSWORD'], host: 'database', name: database?.environment['POSTGRES_DB'],
    });
    for (const [, service] of programs) expect(service?.depends_on).toEqual({ database: { condition: 'service_healthy' } });
  });

  it('starts programs that are built, on glibc, with the ports that it opens', () => {
    for (const [, service] of programs) {
      expect(service?.build?.dockerfile_inline).toContain('FROM node:22-bookworm-slim');
      expect(service?.build?.dockerfile_inline).not.toContain('alpine');
      expect(service?.command?.[0]).toBe('node');
      expect(existsSync((service?.command?.[1] ?? '').replace('dist/', 'src/').replace('.js', '.ts'))).toBe(true);
    }
    expect(api?.ports).toEqual([`127.0.0.1:3000:${Configuration.read(api?.environment ?? {}).port}`]);
    expect(api?.healthcheck?.test.at(-1)).toContain(`http://127.0.0.1:${Configuration.read(api?.environment ?? {}).port}/health/ready`);
    expect(Object.keys(compose.volumes)).toEqual(['data', 'postgres']);
  });
});
