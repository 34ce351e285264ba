import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { pdfPages } from '../support/pdf-text.js';
import { startServer, type DemoPerson, type TestServer } from '../support/server.js';
import { call, submitted, type Job } from './api.js';
import { shed, triangle } from './schedules.js';

interface Quote {
  readonly id: string;
  readonly number: string;
  readonly lines: readonly { readonly kind: string; readonly sku: string; readonly text: string; readonly unitPrice: string }[];
  readonly conditions: readonly { readonly text: string }[];
  readonly scope: readonly { readonly item: string; readonly status: string }[];
  readonly cautions: readonly string[];
  readonly totalMinor: number;
  readonly openHolds: readonly { readonly number: string }[];
}

let server: TestServer;

beforeAll(async () => {
  server = await startServer();
});

afterAll(async () => {
  await server.stop();
});

async function drafted(job: Job): Promise<Quote> {
  return (await call<Quote>(server, 'contractor', 'POST', `/v1/jobs/${job.id}/quotes`)).body;
}

async function paper(quote: Quote, as: DemoPerson = 'contractor'): Promise<Buffer> {
  const response = await server.fetch(`/v1/quotes/${quote.id}`, { as, headers: { accept: 'application/pdf' } });
  expect([response.status, response.headers.get('content-type')]).toEqual([200, 'application/pdf']);
  return Buffer.from(await response.arrayBuffer());
}

const issue = async (quote: Quote): Promise<void> => {
  expect((await call(server, 'sales', 'POST', `/v1/quotes/${quote.id}/issue`)).status).toBe(200);
};

/** `1,234.50`, by hand. */
const money = (minor: number): string => (minor / 100).toLocaleString('en-US', { minimumFractionDigits: 2 });

describe('the paper of a quote', () => {
  it('says everything that the JSON says', async () => {
    const job = await submitted(server, triangle());
    const quote = await drafted(job);
    await issue(quote);
    const text = pdfPages(await paper(quote)).join(' ');
    for (const { sku, text: words, unitPrice } of quote.lines)
      expect(text).toEqual(expect.stringMatching(new RegExp(`${escaped(sku)} ${escaped(words)}.*${escaped(unitPrice)}`)));
    for (const words of [
      ...quote.conditions.map((condition) => condition.text),
      ...quote.cautions,
      ...quote.openHolds.map(({ number }) => number),
    ])
      expect(text).toContain(words);
    for (const { item, status } of quote.scope) expect(text).toContain(`${item} ${status}`);
    expect(text).toContain(`Total USD ${money(quote.totalMinor)}`);
    for (const words of [quote.number, job.number, 'Prow', 'Quayside Builders', 'Heron Forms (demo)', '12 Kiln Lane, Fenmoor'])
      expect(text).toContain(words);
    expect(quote.openHolds).toHaveLength(1);
    expect(quote.conditions.length).toBeGreaterThan(0);
  });

  it('is frozen at issue: the same bytes after the schedule and the prices have changed', async () => {
    const job = await submitted(server, shed());
    const quote = await drafted(job);
    await issue(quote);
    const before = await paper(quote);
    await call(server, 'contractor', 'PUT', `/v1/jobs/${job.id}/schedule`, triangle(), { 'if-match': `"${job.version}"` });
    const prices = JSON.parse(readFileSync('shared/samples/prices.json', 'utf8')) as { items: { sku: string; unit: string }[] };
    const dearer = { ...prices, items: prices.items.map(({ sku, unit }) => ({ sku, unit, price: '999.00' })) };
    expect((await call(server, 'admin', 'POST', '/v1/price-lists', dearer)).status).toBe(201);
    expect((await paper(quote)).equals(before)).toBe(true);
    expect((await call<Quote>(server, 'contractor', 'GET', `/v1/quotes/${quote.id}`)).body.totalMinor).toBe(quote.totalMinor);
    const anew = await drafted(job);
    expect(anew.lines.filter(({ kind }) => kind !== 'freight').every(({ unitPrice }) => unitPrice === '999.00')).toBe(true);
  });

  it('of a draft can be looked at, and says that it is one', async () => {
    const text = pdfPages(await paper(await drafted(await submitted(server, shed())))).join(' ');
    expect(text).toMatch(/draft/i);
    // its plan and its elevations, with the bracing plan of the measurement
    for (const words of ['braces on the inside, foot', 'Braces from the start: 1 at']) expect(text).toContain(words);
  });

  it('is not shown to a neighbour', async () => {
    const quote = await drafted(await submitted(server, shed()));
    const response = await server.fetch(`/v1/quotes/${quote.id}`, { as: 'neighbour', headers: { accept: 'application/pdf' } });
    expect(response.status).toBe(404);
  });

  it.each([
    { accept: 'application/json', type: 'application/json; charset=utf-8' },
    { accept: '*/*', type: 'application/json; charset=utf-8' },
    { accept: 'application/pdf;q=0.9, application/json;q=0.1', type: 'application/pdf' },
    { accept: 'text/html', type: 'application/problem+json; charset=utf-8' },
  ])('Accept $accept is answered as $type', async ({ accept, type }) => {
    const quote = await drafted(await submitted(server, shed()));
    const response = await server.fetch(`/v1/quotes/${quote.id}`, { as: 'contractor', headers: { accept } });
    await response.arrayBuffer();
    expect(response.headers.get('content-type')).toBe(type);
    expect(response.status).toBe(accept === 'text/html' ? 406 : 200);
  });
});

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
