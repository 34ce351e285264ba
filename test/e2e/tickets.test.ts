import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { startServer, type DemoPerson, type TestServer } from '../support/server.js';
import { call, itemsOf, submitted, type Job } from './api.js';
import { shed, triangle } from './schedules.js';

interface Ticket {
  readonly id: string;
  readonly number: string;
  readonly question: string;
  readonly severity: string;
  readonly state: string;
  readonly version: number;
  readonly assignee: string | null;
  readonly findings: readonly { readonly code: string; readonly wall: string }[];
  readonly messages: readonly { readonly kind: string; readonly role: string; readonly by: string; readonly text: string }[];
}

let server: TestServer;

beforeAll(async () => {
  server = await startServer();
});

afterAll(async () => {
  await server.stop();
});

const ticketsOf = (job: Job): Promise<readonly Ticket[]> => itemsOf<Ticket>(server, 'support', `/v1/tickets?job=${job.id}`);
const moved = (as: DemoPerson, ticket: Ticket, move: string, body?: object, headers: Record<string, string> = {}) =>
  call<Ticket & { code?: string }>(server, as, 'POST', `/v1/tickets/${ticket.id}/${move}`, body, headers);

async function revised(job: Job, schedule: object): Promise<Job> {
  const answer = await call<Job>(server, 'contractor', 'PUT', `/v1/jobs/${job.id}/schedule`, schedule, {
    'if-match': `"${job.version}"`,
  });
  expect([answer.status, answer.body.state]).toEqual([200, 'measured']);
  return answer.body;
}

describe('a job with a question', () => {
  it('raises one ticket for the same question at three corners, and an ordinary job raises none', async () => {
    const tickets = await ticketsOf(await submitted(server, triangle()));
    expect(tickets).toHaveLength(1);
    expect(tickets[0]).toMatchObject({ state: 'open', severity: 'hold', assignee: null, messages: [] });
    expect(tickets[0]!.number).toMatch(/^T-\d{6}$/);
    expect(tickets[0]!.findings.length).toBeGreaterThanOrEqual(3);
    expect(new Set(tickets[0]!.findings.map(({ code }) => code)).size).toBe(1);
    expect(await ticketsOf(await submitted(server, shed()))).toEqual([]);
  });
});

describe('the desk', () => {
  it('claims, replies, closes; the contractor reads it and opens it again', async () => {
    const [ticket] = await ticketsOf(await submitted(server, triangle()));
    const claimed = await moved('support', ticket!, 'claim');
    expect(claimed.body).toMatchObject({ state: 'claimed', assignee: 'Oda Lindqvist' });
    const commented = await moved('contractor', ticket!, 'reply', { text: 'The plan cannot change.' });
    expect(commented.body).toMatchObject({
      state: 'claimed',
      messages: [{ kind: 'comment', role: 'contractor', by: 'Ines Calder', text: 'The plan cannot change.' }],
    });
    const answered = await moved('support', ticket!, 'reply', { text: 'Form the corner on site and brace it.' });
    expect(answered.body.state).toBe('answered');
    expect((await moved('support', ticket!, 'close')).body.state).toBe('closed');
    const opened = await moved('contractor', ticket!, 'reopen', { text: 'It bulged.' });
    expect(opened.body).toMatchObject({ state: 'open', assignee: null });
    expect(opened.body.messages.map(({ kind }) => kind)).toEqual(['comment', 'answer', 'opened']);
    expect((await call<Ticket>(server, 'contractor', 'GET', `/v1/tickets/${ticket!.id}`)).body).toEqual(opened.body);
  });

  it('cannot close what nobody answered, nor claim what is claimed', async () => {
    const [ticket] = await ticketsOf(await submitted(server, triangle()));
    expect((await moved('support', ticket!, 'close')).body.code).toBe('illegal-move');
    await moved('support', ticket!, 'claim');
    expect((await moved('admin', ticket!, 'claim')).body.code).toBe('illegal-move');
  });

  it('honours If-Match where it is sent', async () => {
    const [ticket] = await ticketsOf(await submitted(server, triangle()));
    expect((await moved('support', ticket!, 'claim', undefined, { 'if-match': '"9"' })).body.code).toBe('stale');
    expect((await moved('support', ticket!, 'claim', undefined, { 'if-match': `"${ticket!.version}"` })).body.state).toBe(
      'claimed',
    );
  });

  it.each([
    { person: 'contractor', move: 'claim' },
    { person: 'sales', move: 'claim' },
    { person: 'contractor', move: 'close' },
    { person: 'sales', move: 'close' },
  ] as const)('$person may not $move', async ({ person, move }) => {
    const [ticket] = await ticketsOf(await submitted(server, triangle()));
    expect((await moved(person, ticket!, move)).body.code).toBe('forbidden');
  });

  it.each([
    { body: {} },
    { body: { text: '  ' } },
    { body: { text: 'x'.repeat(10_001) } },
    { body: { text: 'Brace it.', more: 1 } },
  ])('a reply of $body is no reply', async ({ body }) => {
    const [ticket] = await ticketsOf(await submitted(server, triangle()));
    expect((await moved('support', ticket!, 'reply', body)).status).toBe(422);
  });
});

describe('a new revision of the schedule', () => {
  it('keeps the ticket, and its answer, while the question is the same at the same walls', async () => {
    const job = await submitted(server, triangle());
    const [ticket] = await ticketsOf(job);
    await moved('support', ticket!, 'reply', { text: 'Brace it.' });
    const [kept] = await ticketsOf(await revised(job, triangle('Prow, longer', 960)));
    expect(kept).toMatchObject({ id: ticket!.id, state: 'answered' });
    expect(kept!.messages).toHaveLength(1);
  });

  it('closes the ticket, with a note, when its cause is gone, and opens it when the cause is back', async () => {
    const job = await submitted(server, triangle());
    const [ticket] = await ticketsOf(job);
    const without = await revised(job, shed());
    const [closed] = await ticketsOf(without);
    expect(closed).toMatchObject({
      id: ticket!.id,
      state: 'closed',
      messages: [{ kind: 'note', role: 'system', text: 'Closed: revision 2 of the schedule no longer raises the question.' }],
    });
    expect(closed!.findings).toEqual(ticket!.findings);
    const [opened] = await ticketsOf(await revised(without, triangle()));
    expect(opened).toMatchObject({ id: ticket!.id, state: 'open' });
    expect(opened!.messages.map(({ kind }) => kind)).toEqual(['note', 'opened']);
  });

  it('an answered question opens again when it stands at a further wall', async () => {
    const job = await submitted(server, triangle());
    const [ticket] = await ticketsOf(job);
    await moved('support', ticket!, 'reply', { text: 'Brace it.' });
    const renamed = JSON.parse(JSON.stringify(triangle()).replaceAll('"A"', '"Q"')) as object;
    const [opened] = await ticketsOf(await revised(job, renamed));
    expect(opened).toMatchObject({ id: ticket!.id, state: 'open' });
    expect(opened!.messages.map(({ kind }) => kind)).toEqual(['answer', 'opened']);
  });
});

describe('the list', () => {
  it('is filtered by state', async () => {
    const [ticket] = await ticketsOf(await submitted(server, triangle()));
    await moved('support', ticket!, 'claim');
    const claimed = await itemsOf<Ticket>(server, 'support', '/v1/tickets?state=claimed&first=200');
    expect(claimed.map(({ id }) => id)).toContain(ticket!.id);
    expect(new Set(claimed.map(({ state }) => state))).toEqual(new Set(['claimed']));
  });
});
