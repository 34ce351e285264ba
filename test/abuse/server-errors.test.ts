import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { call } from '../e2e/api.js';
import { startServer, type DemoPerson, type TestServer } from '../support/server.js';

let server: TestServer;

beforeAll(async () => {
  server = await startServer();
});

afterAll(async () => {
  await server.stop();
});

const json = { 'content-type': 'application/json' };

interface Row {
  readonly what: string;
  readonly as: DemoPerson | null;
  readonly method: string;
  readonly path: string;
  readonly headers?: Record<string, string>;
  readonly body?: string;
  readonly code: string;
}

const ROWS: readonly Row[] = [
  { what: 'a path that is none', as: 'contractor', method: 'GET', path: '/v1/nothing', code: 'not-found' },
  { what: 'a path that is none, asked by nobody', as: null, method: 'GET', path: '/v1/nothing', code: 'unauthenticated' },
  { what: 'a path outside the API', as: null, method: 'GET', path: '/wp-admin', code: 'not-found' },
  { what: 'a method that a path has not', as: 'contractor', method: 'DELETE', path: '/v1/jobs', code: 'not-found' },
  { what: 'an address that cannot be decoded', as: 'contractor', method: 'GET', path: '/v1/jobs/%zz', code: 'unreadable' },
  { what: 'an id as long as a page', as: 'contractor', method: 'GET', path: `/v1/jobs/${'x'.repeat(500)}`, code: 'not-found' },
  { what: 'broken JSON', as: 'admin', method: 'POST', path: '/v1/people', headers: json, body: '{"name":', code: 'unreadable' },
  { what: 'an empty body', as: 'admin', method: 'POST', path: '/v1/people', headers: json, body: '', code: 'unreadable' },
  {
    what: 'a list where an object is meant',
    as: 'admin',
    method: 'POST',
    path: '/v1/people',
    headers: json,
    body: '[]',
    code: 'invalid',
  },
  {
    what: 'a body of no type',
    as: 'admin',
    method: 'POST',
    path: '/v1/people',
    headers: { 'content-type': '' },
    body: 'x',
    code: 'wrong-type',
  },
  {
    what: 'a body of a strange type',
    as: 'admin',
    method: 'POST',
    path: '/v1/people',
    headers: { 'content-type': 'text/xml' },
    body: '<a/>',
    code: 'wrong-type',
  },
  {
    what: 'a body over 1 MiB',
    as: 'admin',
    method: 'POST',
    path: '/v1/people',
    headers: json,
    body: JSON.stringify('x'.repeat(1_048_600)),
    code: 'too-large',
  },
  {
    what: 'prototypes in JSON',
    as: 'admin',
    method: 'POST',
    path: '/v1/people',
    headers: json,
    body: '{"__proto__":{"role":"admin"}}',
    code: 'unreadable',
  },
  {
    what: 'an If-Match that names no version',
    as: 'support',
    method: 'POST',
    path: '/v1/tickets/x/claim',
    headers: { 'if-match': 'latest' },
    code: 'stale',
  },
  {
    what: 'a key with spaces',
    as: 'contractor',
    method: 'POST',
    path: '/v1/jobs',
    headers: { ...json, 'idempotency-key': 'a b' },
    body: '{}',
    code: 'invalid',
  },
  { what: 'a page that is no number', as: 'contractor', method: 'GET', path: '/v1/jobs?first=many', code: 'invalid' },
];

describe('every error is problem+json', () => {
  it.each(ROWS)('$what: $code', async ({ as, method, path, headers = {}, body, code }) => {
    const response = await server.fetch(path, {
      method,
      headers,
      ...(body === undefined ? {} : { body }),
      ...(as ? { as } : {}),
    });
    const problem = (await response.json()) as { code: string; type: string; status: number; errors: unknown };
    expect(problem.code).toBe(code);
    expect(response.headers.get('content-type')).toBe('application/problem+json; charset=utf-8');
    expect(problem).toMatchObject({ type: `urn:wallcourse:${code}`, status: response.status, errors: expect.any(Array) });
  });

  it('even what is not HTTP', async () => {
    const { hostname, port } = new URL(server.url);
    const answer = await new Promise<string>((settle, fail) => {
      const socket = connect(Number(port), hostname, () => socket.write('HELLO\r\n\r\n'));
      const parts: string[] = [];
      socket.on('data', (chunk) => parts.push(chunk.toString()));
      socket.on('close', () => settle(parts.join('')));
      socket.on('error', fail);
    });
    expect(answer).toMatch(/^HTTP\/1\.1 400 [\s\S]*application\/problem\+json[\s\S]*"code":"unreadable"/);
  });
});

describe('GraphQL that only wants to keep the server busy', () => {
  const asked = (query: string) =>
    call<{ errors: { message: string; extensions: { code: string } }[] }>(server, 'contractor', 'POST', '/graphql', { query });

  it('aliases by the thousand are refused', async () => {
    const answer = await asked(`{ ${Array.from({ length: 1_001 }, (_, index) => `a${index}: me { id }`).join(' ')} }`);
    expect([answer.status, answer.body.errors[0]!.message]).toEqual([400, 'The operation asks for more than 1000 fields.']);
  });

  it('fragments that double and double again are refused at once', async () => {
    const fragments = Array.from(
      { length: 40 },
      (_, index) => `fragment F${index} on Job { ...F${index + 1} ... on Job { ...F${index + 1} } }`,
    );
    const began = performance.now();
    const answer = await asked(`{ job(id: "x") { ...F0 } } ${fragments.join(' ')} fragment F40 on Job { id }`);
    expect(answer.status).toBe(400);
    expect(performance.now() - began).toBeLessThan(5_000);
  });

  it('an operation that is not text is refused', async () => {
    for (const body of [{ query: 7 }, { query: { kind: 'Document' } }, {}, [{ query: '{ me { id } }' }]]) {
      const answer = await call(server, 'contractor', 'POST', '/graphql', body);
      expect([answer.status, answer.text]).toEqual([400, expect.stringContaining('"code":"unreadable"')]);
    }
  });
});

describe('the page that describes the API', () => {
  it('needs no token, and nothing from elsewhere', async () => {
    const page = await call<string>(server, null, 'GET', '/v1/docs');
    expect([page.status, page.headers.get('content-type')]).toEqual([200, 'text/html; charset=utf-8']);
    expect(page.text).not.toMatch(/(?:src|href)="(?!openapi\.json)/);
    expect(page.text).not.toMatch(/https?:\/\//);
    const document = await call<{ openapi: string }>(server, null, 'GET', '/v1/openapi.json');
    expect([document.status, document.body.openapi]).toEqual([200, '3.1.0']);
  });
});
