import 'reflect-metadata';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createApp } from '../app.js';
import { graphSchema } from '../modules/graphql/graph-schema.js';
import { openApiDocument } from '../modules/docs/openapi.js';
import { PACKAGE_ROOT } from '../platform/config/package-root.js';
import { unopenedPlatform } from './unopened-platform.js';

const CONTRACTS = join(PACKAGE_ROOT, 'shared', 'contracts');

/** The generated files and what they should hold. */
async function contracts(): Promise<ReadonlyMap<string, string>> {
  const platform = unopenedPlatform();
  const app = await createApp(platform);
  try {
    const { version } = JSON.parse(await readFile(join(PACKAGE_ROOT, 'package.json'), 'utf8')) as { version: string };
    const openapi = `${JSON.stringify(openApiDocument(app, version), null, 2)}\n`;
    return new Map([['openapi.json', openapi], ['schema.graphql', graphSchema()]]);
  } finally {
    await app.close();
    await platform.close();
  }
}

async function stale(files: ReadonlyMap<string, string>): Promise<string[]> {
  const names: string[] = [];
  for (const [name, content] of files) {
    if ((await readFile(join(CONTRACTS, name), 'utf8').catch(() => null)) !== content) names.push(name);
  }
  return names;
}

const files = await contracts();
if (process.argv.includes('--check')) {
  const names = await stale(files);
  if (names.length > 0) process.stderr.write(`not fresh: ${names.map((name) => `shared/contracts/${name}`).join(', ')}; run npm run generate\n`);
  process.exit(names.length > 0 ? 1 : 0);
}
await mkdir(CONTRACTS, { recursive: true });
for (const [name, content] of files) await writeFile(join(CONTRACTS, name), content);
process.exit(0);
