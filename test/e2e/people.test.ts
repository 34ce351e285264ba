import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { startServer, type TestServer } from '../support/server.js';
import { call, itemsOf } from './api.js';
import { shed } from './schedules.js';

interface Person {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: string;
  readonly organisation: { readonly id: string; readonly name: string; readonly place: string | null } | null;
}

let server: TestServer;

beforeAll(async () => {
  // The one suite that looks at what a first start leaves: its server seeds for itself.
  server = await startServer({}, true);
});

afterAll(async () => {
  await server.stop();
});

const added = (body: object) =>
  call<Person & { code?: string; errors?: { pointer: string }[] }>(server, 'admin', 'POST', '/v1/people', body);

describe('the demo people', () => {
  it('have tokens in a file that only its owner may read', async () => {
    const { mode } = await stat(join(server.dataDir, 'demo-tokens.json'));
    expect((mode & 0o777).toString(8)).toBe('600');
    expect(Object.keys(server.tokens).sort()).toEqual(['admin', 'contractor', 'neighbour', 'sales', 'support']);
  });

  it.each([
    { person: 'contractor', role: 'contractor', organisation: 'Quayside Builders' },
    { person: 'neighbour', role: 'contractor', organisation: 'Fieldgate Construction' },
    { person: 'support', role: 'support', organisation: null },
    { person: 'sales', role: 'sales', organisation: null },
    { person: 'admin', role: 'admin', organisation: null },
  ] as const)('$person is $role of $organisation', async ({ person, role, organisation }) => {
    const { body } = await call<Person & { supplier: object }>(server, person, 'GET', '/v1/me');
    expect([body.role, body.organisation?.name ?? null]).toEqual([role, organisation]);
    expect(body.supplier).toEqual({ code: 'heron', name: 'Heron Forms (demo)', timeZone: 'America/Chicago', currency: 'USD' });
  });
});

describe('POST /v1/people and /v1/tokens', () => {
  it('make a contractor who can submit, and share what their organisation has', async () => {
    const person = await added({
      name: 'Ann Bell',
      email: 'ann@quayside.example',
      role: 'contractor',
      organisation: { name: 'Quayside Builders' },
    });
    expect([person.status, person.body.organisation?.place]).toEqual([201, 'Alder County']);
    const token = await call<{ token: string; id: string }>(server, 'admin', 'POST', '/v1/tokens', {
      person: person.body.id,
      name: 'laptop',
    });
    expect(token.status).toBe(201);
    const response = await server.fetch('/v1/jobs', {
      method: 'POST',
      headers: { authorization: `Bearer ${token.body.token}`, 'content-type': 'application/json' },
      body: JSON.stringify(shed()),
    });
    const job = (await response.json()) as { id: string };
    expect(response.status).toBe(201);
    expect((await call(server, 'contractor', 'GET', `/v1/jobs/${job.id}`)).status).toBe(200);
    expect((await call(server, 'neighbour', 'GET', `/v1/jobs/${job.id}`)).status).toBe(404);
  });

  it('a token is shown once: no list holds it, and the database only its hash', async () => {
    const [person] = await itemsOf<Person>(server, 'admin', '/v1/people');
    const { body } = await call<{ token: string; id: string }>(server, 'admin', 'POST', '/v1/tokens', {
      person: person!.id,
      name: 'spare',
    });
    const list = await call(server, 'admin', 'GET', '/v1/tokens?first=200');
    expect(list.text).toContain(body.id);
    expect(list.text).not.toContain(body.token);
    const owner = new pg.Client({ connectionString: server.databaseUrl });
    await owner.connect();
    const { rows } = await owner.query<{ row: string }>('select to_jsonb(t)::text as row from tokens t where id = $1', [body.id]);
    await owner.end();
    expect(rows[0]!.row).not.toContain(body.token);
    expect(rows[0]!.row).not.toContain(body.token.slice(3));
  });

  it.each([
    {
      what: 'a contractor of no organisation',
      body: { name: 'A', email: 'a@x.example', role: 'contractor' },
      pointer: '/organisation',
    },
    {
      what: 'staff of an organisation',
      body: { name: 'A', email: 'a@x.example', role: 'sales', organisation: { name: 'Quayside Builders' } },
      pointer: '/organisation',
    },
    { what: 'a role that is none', body: { name: 'A', email: 'a@x.example', role: 'owner' }, pointer: '/role' },
    { what: 'an address that is none', body: { name: 'A', email: 'a', role: 'sales' }, pointer: '/email' },
    { what: 'no name', body: { name: '  ', email: 'a@x.example', role: 'sales' }, pointer: '/name' },
    { what: 'an address that somebody has', body: { name: 'A', email: 'sales@heron.example', role: 'sales' }, pointer: '/email' },
  ])('$what: 422', async ({ body, pointer }) => {
    const before = (await itemsOf<Person>(server, 'admin', '/v1/people?first=200')).length;
    const answer = await added(body);
    expect([answer.status, answer.body.errors?.map((error) => error.pointer)]).toEqual([422, [pointer]]);
    expect(await itemsOf<Person>(server, 'admin', '/v1/people?first=200')).toHaveLength(before);
  });

  it('a token for nobody: 422', async () => {
    const answer = await call(server, 'admin', 'POST', '/v1/tokens', {
      person: '01990000-0000-7000-8000-000000000000',
      name: 'x',
    });
    expect([answer.status, answer.body['code']]).toEqual([422, 'invalid']);
  });

  it.each(['contractor', 'support', 'sales'] as const)('%s may make neither', async (person) => {
    expect((await call(server, person, 'POST', '/v1/people', { name: 'A', email: 'a@x.example', role: 'admin' })).status).toBe(
      403,
    );
    expect((await call(server, person, 'POST', '/v1/tokens', { person: 'x', name: 'x' })).status).toBe(403);
  });
});

describe('SEED_DEMO=0', () => {
  it('puts nothing there', async () => {
    const bare = await startServer({ SEED_DEMO: '0' });
    try {
      expect(bare.tokens).toEqual({});
      const owner = new pg.Client({ connectionString: bare.databaseUrl });
      await owner.connect();
      const { rows } = await owner.query<{ n: string }>('select count(*) as n from suppliers');
      await owner.end();
      expect(rows[0]!.n).toBe('0');
    } finally {
      await bare.stop();
    }
  });
});
