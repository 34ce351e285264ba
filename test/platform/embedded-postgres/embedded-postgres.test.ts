import { spawn, type ChildProcess } from 'node:child_process';
import { chmod, chown, mkdir, mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { completeLinks } from '../../../src/platform/embedded-postgres/binaries.js';
import { startEmbeddedPostgres, type EmbeddedPostgres } from '../../../src/platform/embedded-postgres/embedded-postgres.js';
import { readPostmaster, serverLives } from '../../../src/platform/embedded-postgres/postmaster.js';
import { reachable } from '../../../src/platform/embedded-postgres/server-user.js';
import { createDatabase } from '../../support/database.js';
import { ensureBuilt, exited, fileFrom } from '../../support/server.js';

const NOBODY = { uid: 65_534, gid: 65_534 };
const root = process.getuid?.() === 0;
const MODULE = JSON.stringify(join(process.cwd(), 'dist', 'platform', 'embedded-postgres', 'embedded-postgres.js'));
/** Writes numbered rows as fast as it can and tells each number after the server has acknowledged it. */
const WRITER = `
  const { startEmbeddedPostgres } = await import(${MODULE});
  const { default: pg } = await import(${JSON.stringify(join(process.cwd(), 'node_modules', 'pg', 'esm', 'index.mjs'))});
  const server = await startEmbeddedPostgres({ dataDir: process.argv[1] });
  const client = new pg.Client({ connectionString: server.url });
  client.on('error', () => {});
  await client.connect();
  await client.query('create table if not exists written (n integer primary key)');
  console.log('pid ' + server.pid);
  for (let n = 1; ; n += 1) { await client.query('insert into written values ($1)', [n]); console.log('n ' + n); }`;

interface Writer {
  readonly child: ChildProcess;
  /** Highest number told so far. */
  acknowledged(): number;
  serverPid(): number;
}

function startWriter(dataDir: string): Writer {
  const child = spawn(process.execPath, ['--input-type=module', '-e', WRITER, dataDir], { stdio: ['ignore', 'pipe', 'inherit'] });
  let text = '';
  child.stdout.on('data', (chunk: Buffer) => (text += chunk.toString()));
  return {
    child,
    acknowledged: () => Number([...text.matchAll(/^n (\d+)\n/gm)].at(-1)?.[1] ?? 0),
    serverPid: () => Number(/^pid (\d+)$/m.exec(text)?.[1] ?? 0),
  };
}

async function killedAfter(writer: Writer, rows: number): Promise<void> {
  const limit = performance.now() + 60_000;
  while (writer.acknowledged() < rows && performance.now() < limit) await sleep(5);
  writer.child.kill('SIGKILL');
  await exited(writer.child);
}

async function count(server: EmbeddedPostgres): Promise<number> {
  const client = new pg.Client({ connectionString: server.url });
  await client.connect();
  const result = await client.query<{ n: string; most: number }>('select count(*) as n, max(n) as most from written');
  await client.end();
  expect(Number(result.rows[0]?.n)).toBe(result.rows[0]?.most);
  return Number(result.rows[0]?.n);
}

describe('the embedded database', () => {
  let dataDir: string;
  const running: EmbeddedPostgres[] = [];
  const start = async (folder = dataDir, notices: string[] = []): Promise<EmbeddedPostgres> => {
    const server = await startEmbeddedPostgres({ dataDir: folder, onNotice: (text) => notices.push(text) });
    running.push(server);
    return server;
  };

  beforeAll(async () => {
    await ensureBuilt((await createDatabase(false)).url);
  });
  beforeEach(async () => {
    dataDir = await mkdtemp(join(tmpdir(), 'wallcourse-embedded-'));
    await chmod(dataDir, 0o755);
  });
  afterEach(async () => {
    for (const server of running.splice(0)) await server.stop();
    await rm(dataDir, { recursive: true, force: true });
  });

  it('keeps what was written over a stop and a start', async () => {
    const first = await start();
    expect(first.adopted).toBe(false);
    const client = new pg.Client({ connectionString: first.url });
    await client.connect();
    expect((await client.query<{ v: string }>(`select current_setting('server_version') as v`)).rows[0]?.v).toMatch(/^18\./);
    const settings = (await client.query<Record<string, string>>(
      `select current_setting('data_checksums') as sums, current_setting('fsync') as fsync, current_setting('listen_addresses') as at,
        current_setting('server_encoding') as encoding, datcollate, datlocale from pg_database where datname = current_database()`)).rows[0];
    expect(settings).toEqual({ sums: 'on', fsync: 'on', at: '127.0.0.1', encoding: 'UTF8', datcollate: 'C', datlocale: 'C.UTF-8' });
    await client.query('create table written (n integer primary key)');
    await client.query('insert into written values (1)');
    await client.end();
    await first.stop();
    expect(await serverLives(first.pid)).toBe(false);
    const second = await start();
    expect({ adopted: second.adopted, same: second.pid === first.pid, rows: await count(second) }).toEqual({ adopted: false, same: false, rows: 1 });
  });

  it('lives on when its program is killed, is adopted by the next, and loses no acknowledged row', async () => {
    const writer = startWriter(dataDir);
    await killedAfter(writer, 200);
    expect(await serverLives(writer.serverPid())).toBe(true);
    const server = await start();
    expect({ adopted: server.adopted, pid: server.pid }).toEqual({ adopted: true, pid: writer.serverPid() });
    const kept = await count(server);
    expect(kept).toBeGreaterThanOrEqual(writer.acknowledged());
    expect(kept).toBeLessThanOrEqual(writer.acknowledged() + 1);
    expect(writer.acknowledged()).toBeGreaterThanOrEqual(200);
  }, 120_000);

  it('recovers every acknowledged row when program and server are killed together', async () => {
    const writer = startWriter(dataDir);
    await killedAfter(writer, 200);
    process.kill(writer.serverPid(), 'SIGKILL');
    const server = await start();
    expect(server.adopted).toBe(false);
    expect(await count(server)).toBeGreaterThanOrEqual(writer.acknowledged());
  }, 120_000);

  it('is one server for processes that start at once, and stops with the last that leaves', async () => {
    const servers = await Promise.all([start(), start(), start()]);
    expect(new Set(servers.map((server) => server.pid)).size).toBe(1);
    expect(servers.filter((server) => !server.adopted).length).toBeGreaterThanOrEqual(1);
    await servers[0]?.stop();
    expect(await serverLives(servers[2]?.pid ?? 0)).toBe(true);
    await Promise.all([servers[1]?.stop(), servers[2]?.stop()]);
    expect(await readPostmaster(join(dataDir, 'postgres'))).toBeNull();
  });

  it('starts although its old number now belongs to another program', async () => {
    const first = await start();
    await first.stop();
    await writeFile(join(dataDir, 'postgres', 'postmaster.pid'), `${process.pid}\n${dataDir}\n1\n5432\n\n127.0.0.1\n  0 0\nready   \n`);
    expect((await start()).adopted).toBe(false);
  });

  it('refuses a folder made by another major version', async () => {
    await (await start()).stop();
    await writeFile(join(dataDir, 'postgres', 'PG_VERSION'), '17\n');
    await expect(start()).rejects.toThrow('was made by PostgreSQL 17, this program brings 18');
  });

  it('makes the links that an install without scripts leaves out', async () => {
    await mkdir(join(dataDir, 'native', 'lib'), { recursive: true });
    await writeFile(join(dataDir, 'native', 'lib', 'libx.so.1.2'), 'x');
    await writeFile(join(dataDir, 'native', 'pg-symlinks.json'), JSON.stringify([{ source: 'native/lib/libx.so.1.2', target: 'native/lib/libx.so.1' }]));
    expect(await completeLinks(dataDir)).toBe(true);
    expect(await completeLinks(dataDir)).toBe(true);
    expect(await readFile(join(dataDir, 'native', 'lib', 'libx.so.1'), 'utf8')).toBe('x');
  });

  if (root) {
    it('runs as an unprivileged user when root starts it', async () => {
      const server = await start();
      const status = await readFile(`/proc/${server.pid}/status`, 'utf8');
      expect(status).toMatch(/^Uid:\t65534\t65534\t65534\t65534$/m);
      expect((await stat(join(dataDir, 'postgres'))).uid).toBe(NOBODY.uid);
    });

    it('moves beneath /var/lib when only root may enter the folder, says where, is found again, and is forgotten with the folder', async () => {
      await chmod(dataDir, 0o700);
      const closed = join(dataDir, 'inner');
      const notices: string[] = [];
      const server = await start(closed, notices);
      const place = /the database's files are in (\/var\/lib\/wallcourse\/[0-9a-f]{16})\/postgres/.exec(notices[0] ?? '')?.[1] ?? '';
      try {
        const again = await start(closed);
        expect({ adopted: again.adopted, pid: again.pid }).toEqual({ adopted: true, pid: server.pid });
        await again.stop();
        await server.stop();
        expect((await stat(join(place, 'postgres'))).uid).toBe(NOBODY.uid);
        await rm(closed, { recursive: true });
        const fresh: string[] = [];
        await (await start(closed, fresh)).stop();
        expect(fresh[0]).not.toContain(place);
        await rm(join((await readFile(join(closed, 'database-place'), 'utf8')).trim()), { recursive: true });
      } finally {
        for (const one of running.splice(0)) await one.stop();
        if (place !== '') await rm(place, { recursive: true, force: true });
      }
    });

    it('opens a closed folder of its own to the server\'s user alone', async () => {
      await chmod(dataDir, 0o700);
      const notices: string[] = [];
      await start(dataDir, notices);
      const found = await stat(dataDir);
      expect({ notices, mode: (found.mode & 0o777).toString(8), uid: found.uid, gid: found.gid }).toEqual({ notices: [], mode: '710', uid: 0, gid: NOBODY.gid });
    });

    it('tells apart folders that the server\'s user may enter from those it may not', async () => {
      await mkdir(join(dataDir, 'a', 'b'), { recursive: true });
      expect(await reachable(join(dataDir, 'a', 'b', 'not-yet-made'), NOBODY)).toBe(true);
      await chmod(join(dataDir, 'a'), 0o700);
      expect(await reachable(join(dataDir, 'a', 'b'), NOBODY)).toBe(false);
      await chown(join(dataDir, 'a'), NOBODY.uid, NOBODY.gid);
      expect(await reachable(join(dataDir, 'a', 'b'), NOBODY)).toBe(true);
    });
  } else {
    it('runs as whoever starts it', async () => {
      await start();
      expect((await stat(join(dataDir, 'postgres'))).uid).toBe(process.getuid?.());
    });
  }
});

describe('npm start on the embedded database', () => {
  let dataDir: string;
  const children: ChildProcess[] = [];
  beforeAll(async () => {
    dataDir = await mkdtemp(join(tmpdir(), 'wallcourse-start-'));
    await chmod(dataDir, 0o755);
  });
  afterAll(async () => {
    for (const child of children) {
      child.kill('SIGTERM');
      await exited(child);
    }
    await rm(dataDir, { recursive: true, force: true });
  });

  const start = async () => {
    await rm(join(dataDir, 'address'), { force: true });
    const child = spawn(process.execPath, [join(process.cwd(), 'src', 'commands', 'start.mjs')], {
      env: { PATH: process.env['PATH'], DATA_DIR: dataDir, PORT: '0', SEED_DEMO: '0' }, stdio: ['ignore', 'pipe', 'pipe'],
    });
    children.push(child);
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk: Buffer) => (said += chunk.toString()));
    const url = await fileFrom(child, join(dataDir, 'address'), () => said);
    return { child, url, said: () => said };
  };

  it('writes its address, survives kill -9 of its process, adopts its database and ends cleanly', async () => {
    const first = await start();
    expect(await readFile(join(dataDir, 'address'), 'utf8')).toMatch(/^http:\/\/127\.0\.0\.1:\d+\n$/);
    expect((await fetch(`${first.url}/health/ready`)).status).toBe(200);
    first.child.kill('SIGKILL');
    await exited(first.child);
    const second = await start();
    expect(second.said()).toContain('"adopted":true');
    expect((await fetch(`${second.url}/health/ready`)).status).toBe(200);
    second.child.kill('SIGTERM');
    expect(await exited(second.child)).toBe(0);
    await expect(readFile(join(dataDir, 'address'))).rejects.toThrow('ENOENT');
    expect(await readPostmaster(join(dataDir, 'postgres'))).toBeNull();
  }, 120_000);
});
