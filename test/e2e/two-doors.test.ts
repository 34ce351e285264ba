import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { buildSchema, getNamedType, isObjectType, type GraphQLObjectType } from 'graphql';
import { startServer, type DemoPerson, type TestServer } from '../support/server.js';
import { call, itemsOf, submitted } from './api.js';
import { shed, triangle } from './schedules.js';

const schema = buildSchema(readFileSync('shared/contracts/schema.graphql', 'utf8'));
/** What a job leads to has doors of its own in REST. */
const LEADS_TO = new Set(['takeoff', 'findings', 'bracing', 'checklist', 'quotes', 'tickets']);
const MISSING = '01990000-0000-7000-8000-000000000000';

let server: TestServer;
let job: string;
let ticket: string;
let quote: string;

beforeAll(async () => {
  server = await startServer();
  job = (await submitted(server, triangle())).id;
  await submitted(server, shed());
  ticket = (await itemsOf<{ id: string }>(server, 'support', `/v1/tickets?job=${job}`))[0]!.id;
  await call(server, 'support', 'POST', `/v1/tickets/${ticket}/reply`, { text: 'Saw a hinged unit on site; brace it outside.' });
  quote = (await call<{ id: string }>(server, 'contractor', 'POST', `/v1/jobs/${job}/quotes`)).body.id;
});

afterAll(async () => {
  await server.stop();
});

/** Everything that can be asked of a type. */
function everything(name: string): string {
  const type = schema.getType(name) as GraphQLObjectType;
  const fields = Object.values(type.getFields()).filter((field) => !(name === 'Job' && LEADS_TO.has(field.name)));
  return `{ ${fields
    .map((field) => {
      const inner = getNamedType(field.type);
      return isObjectType(inner) ? `${field.name} ${everything(inner.name)}` : field.name;
    })
    .join(' ')} }`;
}

/** GraphQL says null where REST leaves an optional field out. */
function withoutNull(value: unknown, like: unknown): unknown {
  if (Array.isArray(value)) return value.map((item, index) => withoutNull(item, (like as unknown[] | undefined)?.[index]));
  if (typeof value !== 'object' || value === null) return value;
  const model = (like ?? {}) as Record<string, unknown>;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key, inner]) => inner !== null || key in model)
      .map(([key, inner]) => [key, withoutNull(inner, model[key])]),
  );
}

interface Row {
  readonly what: string;
  readonly rest: () => string;
  readonly graph: () => string;
  readonly found: (data: Record<string, any>) => unknown;
  readonly inRest?: (body: Record<string, any>) => unknown;
}

const ROWS: readonly Row[] = [
  { what: 'me', rest: () => '/v1/me', graph: () => `me ${everything('Me')}`, found: ({ me }) => me },
  {
    what: 'a job',
    rest: () => `/v1/jobs/${job}`,
    graph: () => `job(id: "${job}") ${everything('Job')}`,
    found: (data) => data['job'],
  },
  {
    what: 'jobs, a page',
    rest: () => '/v1/jobs?first=1',
    graph: () => `jobs(first: 1) ${everything('JobList')}`,
    found: ({ jobs }) => jobs,
  },
  {
    what: 'a take-off',
    rest: () => `/v1/jobs/${job}/takeoff`,
    graph: () => `job(id: "${job}") { takeoff ${everything('Takeoff')} }`,
    found: (data) => data['job'].takeoff,
  },
  {
    what: 'a take-off course by course',
    rest: () => `/v1/jobs/${job}/takeoff?detail=courses`,
    graph: () => `job(id: "${job}") { takeoff(detail: "courses") ${everything('Takeoff')} }`,
    found: (data) => data['job'].takeoff,
  },
  {
    what: 'findings',
    rest: () => `/v1/jobs/${job}/findings?first=2`,
    graph: () => `job(id: "${job}") { findings(first: 2) ${everything('FindingList')} }`,
    found: (data) => data['job'].findings,
  },
  {
    what: 'braces',
    rest: () => `/v1/jobs/${job}/bracing`,
    graph: () => `job(id: "${job}") { bracing ${everything('BracingList')} }`,
    found: (data) => data['job'].bracing,
  },
  {
    what: 'a checklist, a page',
    rest: () => `/v1/jobs/${job}/checklist?first=3`,
    graph: () => `job(id: "${job}") { checklist(first: 3) ${everything('Checklist')} }`,
    found: (data) => data['job'].checklist,
  },
  {
    what: 'a quote',
    rest: () => `/v1/quotes/${quote}`,
    graph: () => `quote(id: "${quote}") ${everything('Quote')}`,
    found: (data) => data['quote'],
  },
  {
    what: 'the quotes of a job',
    rest: () => `/v1/quotes/${quote}`,
    graph: () => `job(id: "${job}") { quotes ${everything('Quote')} }`,
    found: (data) => data['job'].quotes,
    inRest: (body) => [body],
  },
  {
    what: 'a ticket',
    rest: () => `/v1/tickets/${ticket}`,
    graph: () => `ticket(id: "${ticket}") ${everything('Ticket')}`,
    found: (data) => data['ticket'],
  },
  {
    what: 'the tickets of a job',
    rest: () => `/v1/tickets?job=${job}`,
    graph: () => `job(id: "${job}") { tickets ${everything('Ticket')} }`,
    found: (data) => data['job'].tickets,
    inRest: ({ items }) => [...items].reverse(),
  },
  {
    what: 'answered tickets',
    rest: () => '/v1/tickets?state=answered',
    graph: () => `tickets(state: "answered") ${everything('TicketList')}`,
    found: ({ tickets }) => tickets,
  },
];

describe('what is answered', () => {
  it.each(ROWS)('$what is the same through both doors', async ({ rest, graph, found, inRest = (body) => body }) => {
    const plain = await call<Record<string, any>>(server, 'contractor', 'GET', rest());
    const asGraph = await call<{ data: Record<string, any>; errors?: unknown }>(server, 'contractor', 'POST', '/graphql', {
      query: `{ ${graph()} }`,
    });
    expect([plain.status, asGraph.status, asGraph.body.errors]).toEqual([200, 200, undefined]);
    const expected = inRest(plain.body);
    expect(withoutNull(found(asGraph.body.data), expected)).toEqual(expected);
    expect(JSON.stringify(expected).length).toBeGreaterThan(100);
  });
});

interface Refused {
  readonly what: string;
  readonly as: DemoPerson;
  readonly rest: () => string;
  readonly graph: () => string;
  readonly code: string;
}

const REFUSED: readonly Refused[] = [
  {
    what: 'a job that is not there',
    as: 'contractor',
    rest: () => `/v1/jobs/${MISSING}`,
    graph: () => `job(id: "${MISSING}") { id }`,
    code: 'not-found',
  },
  {
    what: 'an id that is none',
    as: 'contractor',
    rest: () => '/v1/jobs/7',
    graph: () => 'job(id: "7") { id }',
    code: 'not-found',
  },
  {
    what: "a neighbour's job",
    as: 'neighbour',
    rest: () => `/v1/jobs/${job}`,
    graph: () => `job(id: "${job}") { id }`,
    code: 'not-found',
  },
  {
    what: "a neighbour's quote",
    as: 'neighbour',
    rest: () => `/v1/quotes/${quote}`,
    graph: () => `quote(id: "${quote}") { id }`,
    code: 'not-found',
  },
  {
    what: "a neighbour's ticket",
    as: 'neighbour',
    rest: () => `/v1/tickets/${ticket}`,
    graph: () => `ticket(id: "${ticket}") { id }`,
    code: 'not-found',
  },
  {
    what: 'a page of nothing',
    as: 'contractor',
    rest: () => '/v1/jobs?first=0',
    graph: () => 'jobs(first: 0) { next }',
    code: 'invalid',
  },
  {
    what: 'a page too long',
    as: 'contractor',
    rest: () => '/v1/jobs?first=201',
    graph: () => 'jobs(first: 201) { next }',
    code: 'invalid',
  },
  {
    what: 'a cursor nobody gave out',
    as: 'contractor',
    rest: () => '/v1/jobs?after=abc',
    graph: () => 'jobs(after: "abc") { next }',
    code: 'invalid',
  },
  {
    what: 'a state that is none',
    as: 'support',
    rest: () => '/v1/tickets?state=lost',
    graph: () => 'tickets(state: "lost") { next }',
    code: 'invalid',
  },
];

describe('what is refused', () => {
  it.each(REFUSED)('$what is refused alike: $code', async ({ as, rest, graph, code }) => {
    const plain = await call(server, as, 'GET', rest());
    const asGraph = await call<{ errors: { message: string; extensions: Record<string, unknown> }[] }>(
      server,
      as,
      'POST',
      '/graphql',
      { query: `{ ${graph()} }` },
    );
    expect(plain.body['code']).toBe(code);
    const { detail, ...problem } = plain.body;
    expect(asGraph.body.errors.map(({ message, extensions }) => ({ message, extensions }))).toEqual([
      { message: detail, extensions: problem },
    ]);
  });

  it('an operation that cannot be read says which field there is not', async () => {
    const answer = await call<{ data: null; errors: { message: string; extensions: { code: string } }[] }>(
      server,
      'contractor',
      'POST',
      '/graphql',
      { query: '{ walls }' },
    );
    expect(answer.status).toBe(400);
    expect(answer.body.errors[0]).toMatchObject({
      message: 'Cannot query field "walls" on type "Query".',
      extensions: { code: 'unreadable' },
    });
  });
});
