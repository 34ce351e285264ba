import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { call, itemsOf, type Job } from '../e2e/api.js';
import { plan, shed } from '../e2e/schedules.js';
import { startServer, type TestServer } from '../support/server.js';
import { sheetXml, workbookParts, zipArchive } from '../support/zip-archive.js';

const TABLES = ['jobs', 'schedule_revisions', 'schedule_files', 'blobs', 'measurements', 'tickets', 'history_events', 'outbox'];
const MIB = 1_048_576;

let server: TestServer;
let owner: pg.Client;

beforeAll(async () => {
  server = await startServer();
  owner = new pg.Client({ connectionString: server.databaseUrl });
  await owner.connect();
});

afterAll(async () => {
  await owner.end();
  await server.stop();
});

async function rows(): Promise<Record<string, number>> {
  const counts = await Promise.all(
    TABLES.map(
      async (table) =>
        [table, Number((await owner.query<{ n: string }>(`select count(*) as n from ${table}`)).rows[0]!.n)] as const,
    ),
  );
  return Object.fromEntries(counts);
}

interface Problem {
  readonly type: string;
  readonly code: string;
  readonly status: number;
  readonly errors: readonly {
    readonly sheet: string | null;
    readonly pointer: string | null;
    readonly read: string;
    readonly fix: string;
  }[];
}

async function refused(answer: Promise<Response>): Promise<Problem> {
  const before = await rows();
  const response = await answer;
  const problem = (await response.json()) as Problem;
  expect(response.headers.get('content-type')).toBe('application/problem+json; charset=utf-8');
  expect([problem.status, problem.type]).toEqual([response.status, `urn:wallcourse:${problem.code}`]);
  expect(await rows()).toEqual(before);
  return problem;
}

const sent = (body: string | Buffer, type = 'application/json'): Promise<Response> =>
  server.fetch('/v1/jobs', { method: 'POST', as: 'contractor', headers: { 'content-type': type }, body });

function uploaded(
  ...files: readonly { readonly name: string; readonly bytes: Buffer | string; readonly field?: string }[]
): Promise<Response> {
  const form = new FormData();
  for (const { name, bytes, field = 'files' } of files) form.append(field, new Blob([bytes]), name);
  return server.fetch('/v1/jobs', { method: 'POST', as: 'contractor', body: form });
}

type Changed = ReturnType<typeof shed> & Record<string, unknown>;

const changed = (change: (schedule: Changed) => void): string => {
  const schedule = structuredClone(shed()) as Changed;
  change(schedule);
  return JSON.stringify(schedule);
};

const opening = (fields: object) => ({
  mark: 'W1',
  wall: 'A',
  at: 60,
  sill: 0,
  width: 36,
  height: 48,
  lining: 'buck',
  measured: 'concrete',
  ...fields,
});

describe('a schedule that does not hold together is refused with 422 where it is wrong, and nothing is stored', () => {
  it.each([
    {
      what: 'a wall of zero length',
      pointer: /^\/walls\/0/,
      body: () => changed(({ walls }) => (walls[0]!.to = walls[0]!.from)),
    },
    {
      what: 'an opening beyond its wall',
      pointer: /^\/openings\/0/,
      body: () => changed((s) => (s.openings = [opening({ at: 460 })])),
    },
    {
      what: 'overlapping openings',
      pointer: /^\/openings\/1/,
      body: () => changed((s) => (s.openings = [opening({}), opening({ mark: 'W2', at: 80 })])),
    },
    { what: 'an unknown core', pointer: /^\/walls\/1\/core$/, body: () => changed(({ walls }) => (walls[1]!.core = '7')) },
    {
      what: 'a height below one course',
      pointer: /height|storeys\/0|walls\/0/,
      body: () => changed(({ storeys }) => (storeys[0]!.height = '15"')),
    },
    { what: 'a mark twice', pointer: /^\/walls\/2\/mark$/, body: () => changed(({ walls }) => (walls[2]!.mark = 'A')) },
    {
      what: '12\'-14"',
      pointer: /^\/storeys\/0\/height$/,
      body: () => changed(({ storeys }) => (storeys[0]!.height = '12\'-14"')),
    },
    {
      what: 'the text NaN',
      pointer: /^\/storeys\/0\/height$/,
      body: () => changed(({ storeys }) => (storeys[0]!.height = 'NaN')),
    },
    {
      what: 'the text 1e309',
      pointer: /^\/storeys\/0\/height$/,
      body: () => changed(({ storeys }) => (storeys[0]!.height = '1e309')),
    },
    {
      what: 'the number 1e309',
      pointer: /^\/openings\/0\/at$/,
      body: () => changed((s) => (s.openings = [opening({ at: 424_242 })])).replace('424242', '1e309'),
    },
    { what: 'no walls', pointer: /^\/walls$/, body: () => changed((s) => (s.walls = [])) },
    {
      what: 'a wall in a storey nobody knows',
      pointer: /^\/walls\/0\/storey$/,
      body: () => changed(({ walls }) => (walls[0]!.storey = 'attic')),
    },
    {
      what: 'an opening in a wall nobody knows',
      pointer: /^\/openings\/0\/wall$/,
      body: () => changed((s) => (s.openings = [opening({ wall: 'Z' })])),
    },
    { what: 'a name of 201 characters', pointer: /^\/name$/, body: () => changed((s) => (s.name = 'x'.repeat(201))) },
    { what: 'a name of a million characters', pointer: /^\/name$/, body: () => changed((s) => (s.name = 'x'.repeat(1_000_000))) },
    { what: 'a range nobody knows', pointer: /^\/range$/, body: () => changed((s) => (s.range = 'EGRET-12')) },
    {
      what: 'concrete of 1 pcf',
      pointer: /^\/pour\/unitWeight$/,
      body: () => changed((s) => Object.assign(s, { pour: { rise: '3 ft/h', concrete: '70 F', unitWeight: '1 pcf' } })),
    },
    {
      what: 'a rise below nought',
      pointer: /^\/pour\/rise$/,
      body: () => changed((s) => Object.assign(s, { pour: { rise: '-3 ft/h', concrete: '70 F' } })),
    },
    {
      what: 'a cement nobody knows',
      pointer: /^\/pour\/cement$/,
      body: () => changed((s) => Object.assign(s, { pour: { cement: 'moon dust' } })),
    },
    {
      what: 'walls that are no list',
      pointer: /^\/walls/,
      body: () => changed((s) => Object.assign(s, { walls: 'all of them' })),
    },
  ])('$what', async ({ pointer, body }) => {
    const problem = await refused(sent(body()));
    expect([problem.status, problem.code]).toEqual([422, 'invalid']);
    expect(problem.errors.map((error) => error.pointer)).toContainEqual(expect.stringMatching(pointer));
    for (const { read, fix } of problem.errors) {
      expect(read.length).toBeLessThanOrEqual(81);
      expect(fix).not.toBe('');
    }
  });

  it('a sheet of openings under a header nobody knows is refused, not passed over', async () => {
    const sheets = {
      job: [['key', 'value'], ['name', 'House'], ['units', 'in'], ['dimensionsTo', 'foam-face'], ['range', 'HERON-16']],
      storeys: [['id', 'height'], ['S1', 108]],
      walls: [['mark', 'core', 'from_x', 'from_y', 'to_x', 'to_y'], ['A', 6, 0, 0, 480, 0]],
      openings: [['Öffnungen'], ['Marke', 'Wand', 'Abstand'], ['D1', 'A', 60]],
    };
    const xml = Object.fromEntries(Object.entries(sheets).map(([name, cells]) => [name, sheetXml(cells)]));
    const problem = await refused(uploaded({ name: 'house.xlsx', bytes: Buffer.from(zipArchive(workbookParts(xml))) }));
    expect([problem.status, problem.code]).toEqual([422, 'invalid']);
    expect(problem.errors).toEqual([expect.objectContaining({ sheet: 'openings', row: 2, read: 'Marke, Wand, Abstand' })]);
  });

  it('all that is wrong is told at once, at most 200 of it', async () => {
    const problem = await refused(
      sent(
        changed(({ walls }) => {
          for (let index = 0; index < 300; index += 1)
            walls.push({ mark: `X${index}`, storey: 'S1', core: '7', from: [0, index], to: [0, index] });
        }),
      ),
    );
    expect(problem.errors.length).toBe(200);
  });
});

describe('what is a question, not an error, is measured and asked', () => {
  it.each([
    {
      what: 'walls that cross',
      code: 'walls-cross',
      body: {
        ...shed(),
        storeys: [{ ...shed().storeys[0], closed: false }],
        openings: [],
        walls: [
          { mark: 'A', storey: 'S1', core: '6', from: [0, 0], to: [480, 0] },
          { mark: 'B', storey: 'S1', core: '6', from: [240, -240], to: [240, 240] },
        ],
      },
    },
    {
      what: 'a plan that does not close where it claims to',
      code: 'plan-open',
      body: { ...shed(), walls: shed().walls.slice(0, 3) },
    },
  ])('$what: $code holds', async ({ code, body }) => {
    const answer = await call<Job>(server, 'contractor', 'POST', '/v1/jobs', body);
    expect([answer.status, answer.body.state]).toEqual([201, 'measured']);
    const findings = await itemsOf<{ code: string; severity: string }>(
      server,
      'contractor',
      `/v1/jobs/${answer.body.id}/findings`,
    );
    expect(findings).toContainEqual(expect.objectContaining({ code, severity: 'hold' }));
    const tickets = await itemsOf<{ severity: string; findings: { code: string }[] }>(
      server,
      'support',
      `/v1/tickets?job=${answer.body.id}`,
    );
    expect(tickets.flatMap(({ findings: asked }) => asked.map((found) => found.code))).toContain(code);
  });
});

describe('what cannot be read', () => {
  it.each([
    { what: 'broken JSON', body: '{"format": "wallcourse/schedule@1", ', type: 'application/json' },
    {
      what: 'NaN in JSON',
      body: changed((s) => (s.openings = [opening({ at: 424_242 })])).replace('424242', 'NaN'),
      type: 'application/json',
    },
    { what: 'words sent as JSON', body: 'four walls and a door', type: 'application/json' },
    { what: 'an empty body', body: '', type: 'application/json' },
  ])('$what: 400 unreadable', async ({ body, type }) => {
    const problem = await refused(sent(body, type));
    expect([problem.status, problem.code]).toEqual([400, 'unreadable']);
  });

  it('an empty file: 400 unreadable', async () => {
    expect((await refused(uploaded({ name: 'walls.csv', bytes: '' }))).code).toBe('unreadable');
  });

  it('a form that breaks off: 400 unreadable', async () => {
    const body = '--x\r\ncontent-disposition: form-data; name="files"; filename="a.csv"\r\n\r\nmark,core\r\n';
    expect((await refused(sent(body, 'multipart/form-data; boundary=x'))).code).toBe('unreadable');
  });

  it('a workbook that is cut off: 400 unreadable', async () => {
    const whole = zipArchive([{ path: 'xl/workbook.xml', content: Buffer.from('<workbook/>') }]);
    expect((await refused(uploaded({ name: 'job.xlsx', bytes: Buffer.from(whole).subarray(0, 40) }))).code).toBe('unreadable');
  });
});

describe('what is no schedule', () => {
  it.each([
    {
      what: 'a text file named .xlsx',
      files: [{ name: 'walls.xlsx', bytes: 'Dear supplier,\nplease find enclosed our drawings.\n' }],
    },
    {
      what: 'a picture',
      files: [{ name: 'plan.png', bytes: Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]) }],
    },
    { what: 'JSON of another kind', files: [{ name: 'range.json', bytes: readFileSync('shared/samples/heron-16.range.json') }] },
  ])('$what: 415 wrong-type', async ({ files }) => {
    expect((await refused(uploaded(...files))).code).toBe('wrong-type');
  });

  it('a form without parts: 415 wrong-type', async () => {
    expect((await refused(sent('--x--\r\n', 'multipart/form-data; boundary=x'))).code).toBe('wrong-type');
  });

  it.each(['text/csv', 'application/xml', 'text/plain'])('a body of %s: 415 wrong-type', async (type) => {
    expect((await refused(sent('mark,core\nA,6\n', type))).code).toBe('wrong-type');
  });

  it('a part that is not called files: 422 invalid', async () => {
    expect((await refused(uploaded({ name: 'walls.csv', bytes: 'mark\n', field: 'schedule' }))).code).toBe('invalid');
  });
});

describe('what is too much', () => {
  it('10^5 walls: 413 too-large with the limit named, and the memory stays bounded', async () => {
    const walls = Array.from({ length: 100_000 }, (_, index) => ({
      mark: `W${index}`,
      storey: 'S1',
      core: '6',
      from: [0, index * 24],
      to: [480, index * 24],
    }));
    const problem = await refused(
      sent(JSON.stringify({ ...shed(), storeys: [{ ...shed().storeys[0], closed: false }], openings: [], walls })),
    );
    expect([problem.status, problem.code]).toEqual([413, 'too-large']);
    expect(problem.errors[0]!.fix).toMatch(/10,000 walls/);
    expect(residentMb()).toBeLessThan(700);
  });

  it('a zip bomb: refused by its directory, before it is inflated', async () => {
    const bomb = zipArchive([
      { path: '[Content_Types].xml', content: Buffer.from('<Types/>') },
      { path: 'xl/worksheets/sheet1.xml', content: Buffer.alloc(200 * MIB) },
    ]);
    expect(bomb.length).toBeLessThan(MIB);
    const began = performance.now();
    const problem = await refused(uploaded({ name: 'walls.xlsx', bytes: Buffer.from(bomb) }));
    expect(['too-large', 'unreadable']).toContain(problem.code);
    expect(performance.now() - began).toBeLessThan(5_000);
    expect(residentMb()).toBeLessThan(700);
  });

  it('a file over 32 MiB: 413 too-large', async () => {
    expect((await refused(uploaded({ name: 'walls.csv', bytes: Buffer.alloc(33 * MIB, 'x') }))).code).toBe('too-large');
  });

  it('files that are too large only together: 413 too-large', async () => {
    const half = Buffer.alloc(17 * MIB, 'x');
    expect((await refused(uploaded({ name: 'walls.csv', bytes: half }, { name: 'openings.csv', bytes: half }))).code).toBe(
      'too-large',
    );
  });

  it('seventeen files: 413 too-large', async () => {
    const files = Array.from({ length: 17 }, (_, index) => ({ name: `${index}.csv`, bytes: 'mark,storey\n' }));
    expect((await refused(uploaded(...files))).code).toBe('too-large');
  });

  it('a body over 1 MiB where no schedule is taken: 413 too-large', async () => {
    const before = await rows();
    const answer = await call(server, 'admin', 'POST', '/v1/people', {
      name: 'x'.repeat(2 * MIB),
      email: 'a@b.example',
      role: 'sales',
    });
    expect([answer.status, answer.body['code']]).toEqual([413, 'too-large']);
    expect(await rows()).toEqual(before);
  });
});

describe('what only wants to break something', () => {
  it('arrays a hundred thousand deep: refused', async () => {
    const problem = await refused(
      sent(`{"format":"wallcourse/schedule@1","walls":${'['.repeat(100_000)}${']'.repeat(100_000)}}`),
    );
    expect([400, 422]).toContain(problem.status);
  });

  it('keys that reach for prototypes change nothing', async () => {
    const problem = await refused(
      sent('{"__proto__":{"name":"x"},"constructor":{"prototype":{"walls":[]}},"format":"wallcourse/schedule@1"}'),
    );
    expect([400, 422]).toContain(problem.status);
    expect((await call(server, 'contractor', 'POST', '/v1/jobs', shed())).status).toBe(201);
  });

  it('a NUL in a name: refused', async () => {
    expect((await refused(sent(JSON.stringify({ ...shed(), name: 'a\u0000b' })))).code).toBe('invalid');
  });

  it('a name in every script is kept as it is', async () => {
    const name = 'Größe 壁 стена 🧱';
    expect(
      (
        await call<Job>(
          server,
          'contractor',
          'POST',
          '/v1/jobs',
          plan(name, [
            [0, 0],
            [480, 0],
            [480, 336],
            [0, 336],
          ]),
        )
      ).body.name,
    ).toBe(name);
  });
});

/** Resident memory of the server's process. */
function residentMb(): number {
  return Number(/VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${server.pid}/status`, 'utf8'))?.[1]) / 1024;
}
