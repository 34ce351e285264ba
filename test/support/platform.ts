import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { AddressInfo } from 'node:net';
import type { Server } from 'node:http';
import type { DynamicModule, Type } from '@nestjs/common';
import { newToken, hashToken } from '../../src/platform/auth/token.js';
import { Configuration } from '../../src/platform/config/configuration.js';
import type { Actor } from '../../src/platform/database/actor.js';
import { createServer } from '../../src/platform/http/create-server.js';
import { PlatformModule } from '../../src/platform/platform.module.js';
import { startPlatform, type Platform } from '../../src/platform/platform.js';
import { addSupplier, createDatabase, type Household } from './database.js';

export interface TestPlatform {
  readonly platform: Platform;
  readonly url: string;
  readonly databaseUrl: string;
  readonly heron: Household;
  /** Makes a token of a person. */
  tokenOf(actor: Actor): Promise<string>;
  close(): Promise<void>;
}

async function addToken(platform: Platform, household: Household, actor: Actor): Promise<string> {
  const token = newToken();
  await platform.database.transaction(household.system, (tx) =>
    tx.insert('tokens', { organisation_id: actor.organisationId, person_id: actor.personId, name: 'test', token_hash: hashToken(token) }, { kind: 'token.made' }),
  );
  return token;
}

/** The real platform and the real server beneath a few routes of the test's own. */
export async function openTestPlatform(controllers: readonly Type[], environment: Record<string, string> = {}): Promise<TestPlatform> {
  const { url: databaseUrl } = await createDatabase();
  const dataDir = await mkdtemp(join(tmpdir(), 'wallcourse-platform-'));
  const platform = await startPlatform(
    Configuration.read({ DATA_DIR: dataDir, DATABASE_URL: databaseUrl, LOG_LEVEL: 'silent', SEED_DEMO: '0', UPLOAD_LIMIT_MB: '2', ...environment }),
  );
  class TestModule {}
  const root: DynamicModule = { module: TestModule, imports: [PlatformModule.on(platform)], controllers: [...controllers] };
  const app = await createServer(platform, root);
  await app.listen({ port: 0, host: '127.0.0.1' });
  const heron = await addSupplier(platform.database, 'heron');
  const { port } = (app.getHttpServer() as Server).address() as AddressInfo;
  return {
    platform,
    databaseUrl,
    heron,
    url: `http://127.0.0.1:${port}`,
    tokenOf: (actor) => addToken(platform, heron, actor),
    close: async () => {
      platform.drain.begin();
      await app.close();
      await platform.close();
      await rm(dataDir, { recursive: true, force: true });
    },
  };
}
