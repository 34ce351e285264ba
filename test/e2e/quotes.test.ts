import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { startServer, type DemoPerson, type TestServer } from '../support/server.js';
import { call, itemsOf, submitted, type Job } from './api.js';
import { plan, shed, triangle } from './schedules.js';

interface Quote {
  readonly id: string;
  readonly number: string;
  readonly state: string;
  readonly version: number;
  readonly jobRevision: number;
  readonly lines: readonly {
    readonly n: number;
    readonly sku: string;
    readonly text: string;
    readonly quantity: number;
    readonly unitPrice: string;
    readonly discountRate: string | null;
    readonly looseQuantity: number;
    readonly surchargeRate: string | null;
    readonly amountMinor: number;
  }[];
  readonly subtotalMinor: number;
  readonly taxMinor: number;
  readonly totalMinor: number;
  readonly openHolds: readonly { readonly ticket: string; readonly number: string }[];
  readonly code?: string;
  readonly detail?: string;
  readonly tickets?: readonly { readonly ticket: string; readonly number: string }[];
}

interface Because {
  readonly sku: string;
  readonly because: readonly { readonly quantity: number }[];
  readonly selling: { readonly needed: number };
}

let server: TestServer;

beforeAll(async () => {
  server = await startServer();
});

afterAll(async () => {
  await server.stop();
});

async function drafted(job: Job): Promise<Quote> {
  const answer = await call<Quote>(server, 'contractor', 'POST', `/v1/jobs/${job.id}/quotes`);
  expect(answer.status).toBe(201);
  return answer.body;
}

const moved = (as: DemoPerson, quote: Quote, move: string, headers: Record<string, string> = {}) =>
  call<Quote>(server, as, 'POST', `/v1/quotes/${quote.id}/${move}`, undefined, headers);

async function inState(state: string): Promise<Quote> {
  const quote = await drafted(await submitted(server, shed()));
  const way: Readonly<Record<string, readonly (readonly [DemoPerson, string])[]>> = {
    draft: [],
    issued: [['sales', 'issue']],
    accepted: [
      ['sales', 'issue'],
      ['contractor', 'accept'],
    ],
    declined: [
      ['sales', 'issue'],
      ['contractor', 'decline'],
    ],
    withdrawn: [
      ['sales', 'issue'],
      ['sales', 'withdraw'],
    ],
  };
  for (const [person, move] of way[state]!) expect((await moved(person, quote, move)).status).toBe(200);
  return quote;
}

describe('a draft', () => {
  it('adds up: lines to the subtotal, tax at the place of the contractor, to the cent', async () => {
    const quote = await drafted(await submitted(server, shed()));
    expect(quote.number).toMatch(/^Q-\d{6}$/);
    expect(quote.lines.map(({ n }) => n)).toEqual(quote.lines.map((_, index) => index + 1));
    for (const { quantity, unitPrice, discountRate, looseQuantity, surchargeRate, amountMinor } of quote.lines) {
      const exact = (quantity + Number(surchargeRate) * looseQuantity) * Number(unitPrice) * 100 * (1 - Number(discountRate));
      // Half a cent at most, and what doubles lose.
      expect(Math.abs(amountMinor - exact)).toBeLessThanOrEqual(0.5 + 1e-6);
    }
    expect(quote.lines.filter(({ sku }) => sku === 'FREIGHT')).toHaveLength(1);
    expect(quote.subtotalMinor).toBe(quote.lines.reduce((sum, { amountMinor }) => sum + amountMinor, 0));
    expect(quote.taxMinor).toBe(Math.round((quote.subtotalMinor * 825) / 10_000));
    expect(quote.totalMinor).toBe(quote.subtotalMinor + quote.taxMinor);
  });

  it('says of every line which walls and rules caused it: the causes sum to what is needed', async () => {
    const job = await submitted(server, shed());
    const quote = await drafted(job);
    for (const { n, sku } of quote.lines) {
      const { status, body } = await call<Because>(server, 'contractor', 'GET', `/v1/quotes/${quote.id}/lines/${n}/because`);
      expect([status, body.sku]).toEqual([200, sku]);
      expect(body.because.reduce((sum, { quantity }) => sum + quantity, 0)).toBeCloseTo(body.selling.needed, 6);
    }
    expect(
      (await call(server, 'contractor', 'GET', `/v1/quotes/${quote.id}/lines/${quote.lines.length + 1}/because`)).status,
    ).toBe(404);
  });
});

describe('states', () => {
  const NEXT: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    draft: { issue: 'issued', withdraw: 'withdrawn' },
    issued: { accept: 'accepted', decline: 'declined', withdraw: 'withdrawn' },
    accepted: {},
    declined: {},
    withdrawn: {},
  };

  it.each(
    Object.keys(NEXT).flatMap((state) =>
      ['issue', 'accept', 'decline', 'withdraw'].map((move) => ({ state, move, next: NEXT[state]![move] ?? null })),
    ),
  )('$state, $move: $next', async ({ state, move, next }) => {
    const quote = await inState(state);
    const answer = await moved('admin', quote, move);
    if (next === null) expect([answer.status, answer.body.code]).toEqual([409, 'illegal-move']);
    else expect([answer.status, answer.body.state]).toEqual([200, next]);
  });

  it.each([
    ['contractor', 'issue'],
    ['support', 'issue'],
    ['support', 'accept'],
    ['contractor', 'withdraw'],
  ] as const)('%s may not %s', async (person, move) => {
    expect((await moved(person, await inState('issued'), move)).body.code).toBe('forbidden');
  });

  it('honours If-Match where it is sent', async () => {
    const quote = await inState('draft');
    expect((await moved('sales', quote, 'issue', { 'if-match': `"${quote.version + 1}"` })).body.code).toBe('stale');
    expect((await moved('sales', quote, 'issue', { 'if-match': `"${quote.version}"` })).body.state).toBe('issued');
  });

  it('is accepted once for one Idempotency-Key, however often it is sent', async () => {
    const quote = await inState('issued');
    const key = { 'idempotency-key': `accept-${quote.id}` };
    const [first, again] = [await moved('contractor', quote, 'accept', key), await moved('contractor', quote, 'accept', key)];
    expect([first.status, again.status, again.text]).toEqual([200, 200, first.text]);
  });
});

describe('a job with an open question that holds', () => {
  it('cannot be accepted, and the refusal names the ticket; once it is answered it can', async () => {
    const job = await submitted(server, triangle());
    const [ticket] = await itemsOf<{ id: string; number: string }>(server, 'support', `/v1/tickets?job=${job.id}`);
    const quote = await drafted(job);
    expect(quote.openHolds).toEqual([expect.objectContaining({ ticket: ticket!.id, number: ticket!.number })]);
    await moved('sales', quote, 'issue');
    const held = await moved('contractor', quote, 'accept');
    expect([held.status, held.body.code]).toEqual([409, 'open-hold']);
    expect(held.body.detail).toContain(ticket!.number);
    expect(held.body.tickets).toEqual([expect.objectContaining({ ticket: ticket!.id, number: ticket!.number })]);
    await call(server, 'support', 'POST', `/v1/tickets/${ticket!.id}/reply`, { text: 'Form it on site.' });
    const accepted = await moved('contractor', quote, 'accept');
    expect([accepted.status, accepted.body.state, accepted.body.openHolds]).toEqual([200, 'accepted', []]);
  });
});

describe('a schedule that changes after the quote', () => {
  it('makes the old quote unacceptable, though its own question is gone, and leaves it as it was', async () => {
    const job = await submitted(server, triangle());
    const quote = await drafted(job);
    await moved('sales', quote, 'issue');
    const before = await call<Quote>(server, 'contractor', 'GET', `/v1/quotes/${quote.id}`);
    await call(
      server,
      'contractor',
      'PUT',
      `/v1/jobs/${job.id}/schedule`,
      plan('Smaller', [
        [0, 0],
        [240, 0],
        [240, 240],
        [0, 240],
      ]),
      { 'if-match': `"${job.version}"` },
    );
    const answer = await moved('contractor', quote, 'accept');
    expect([answer.status, answer.body.code]).toEqual([409, 'illegal-move']);
    const after = await call<Quote>(server, 'contractor', 'GET', `/v1/quotes/${quote.id}`);
    expect(after.body.lines).toEqual(before.body.lines);
    expect(after.body.totalMinor).toBe(before.body.totalMinor);
  });
});
