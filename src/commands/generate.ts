import 'reflect-metadata';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { createApp } from '../app.js';
import { catalogueText } from '../domain/reinforcement/catalogue.js';
import { graphSchema } from '../modules/graphql/graph-schema.js';
import { openApiDocument } from '../modules/docs/openapi.js';
import { PACKAGE_ROOT } from '../platform/config/package-root.js';
import { unopenedPlatform } from './unopened-platform.js';

const SHARED = join(PACKAGE_ROOT, 'shared');

/** The generated files, by their paths in shared/, and what they should hold. */
async function generated(): Promise<ReadonlyMap<string, string>> {
  const platform = unopenedPlatform();
  const app = await createApp(platform);
  try {
    const { version } = JSON.parse(await readFile(join(PACKAGE_ROOT, 'package.json'), 'utf8')) as { version: string };
    const openapi = `${JSON.stringify(openApiDocument(app, version), null, 2)}\n`;
    return new Map([
      ['contracts/openapi.json', openapi],
      ['contracts/schema.graphql', graphSchema()],
      ['docs/rules.md', catalogueText()],
    ]);
  } finally {
    await app.close();
    await platform.close();
  }
}

async function stale(files: ReadonlyMap<string, string>): Promise<string[]> {
  const names: string[] = [];
  for (const [name, content] of files) {
    if ((await readFile(join(SHARED, name), 'utf8').catch(() => null)) !== content) names.push(name);
  }
  return names;
}

const files = await generated();
if (process.argv.includes('--check')) {
  const names = await stale(files);
  if (names.length > 0)
    process.stderr.write(`not fresh: ${names.map((name) => `shared/${name}`).join(', ')}; run npm run generate\n`);
  process.exit(names.length > 0 ? 1 : 0);
}
for (const [name, content] of files) {
  const file = join(SHARED, name);
  await mkdir(dirname(file), { recursive: true });
  await writeFile(file, content);
}
process.exit(0);
