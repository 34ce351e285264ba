import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { startServer, type DemoPerson, type TestServer } from '../support/server.js';
import { call, itemsOf } from './api.js';

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet';
const SHEETS = ['list', 'items', 'customers', 'discounts', 'taxes', 'zones'];
const SAMPLE = JSON.parse(readFileSync('shared/samples/prices.json', 'utf8')) as Record<string, unknown>;

interface Entry {
  readonly id: string;
  readonly code: string;
  readonly version: number;
}
interface Problem {
  readonly code: string;
  readonly errors: readonly { readonly sheet: string | null; readonly row: number | null; readonly column: string | null; readonly pointer: string | null; readonly read: string; readonly fix: string }[];
}

let server: TestServer;
let first: Entry;

beforeAll(async () => {
  server = await startServer();
  [first] = (await itemsOf<Entry>(server, 'admin', '/v1/price-lists')) as [Entry];
});

afterAll(async () => {
  await server.stop();
});

async function sent(as: DemoPerson, files: readonly (readonly [string, Uint8Array | string])[]): Promise<{ status: number; body: Entry & Problem }> {
  const form = new FormData();
  for (const [name, content] of files) form.append('files', new Blob([Buffer.from(content)]), name);
  const response = await server.fetch('/v1/price-lists', { method: 'POST', body: form, as });
  return { status: response.status, body: (await response.json()) as Entry & Problem };
}

const got = (as: DemoPerson, accept: string, query = ''): Promise<Response> => server.fetch(`/v1/price-lists/${first.id}${query}`, { headers: { accept }, as });
const document = async (id: string) => (await call(server, 'sales', 'GET', `/v1/price-lists/${id}`)).body;

describe('price lists as files', () => {
  it('a workbook that was written comes back as a new version of the same list; the first stays as it was', async () => {
    const answer = await got('sales', XLSX);
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, XLSX]);
    const added = await sent('admin', [['prices.xlsx', new Uint8Array(await answer.arrayBuffer())]]);
    expect([added.status, added.body.code, added.body.version]).toEqual([201, first.code, first.version + 1]);
    expect(await document(added.body.id)).toEqual(SAMPLE);
    expect(await document(first.id)).toEqual(SAMPLE);
  });

  it('so do its sheets as CSV files, and the document as a file', async () => {
    const files = await Promise.all(SHEETS.map(async (sheet) => [`${sheet}.csv`, await (await got('admin', 'text/csv', `?sheet=${sheet}`)).text()] as const));
    expect(files[1]![1].split('\r\n')[0]!.endsWith('sku,unit,price,cost,bundle,breakBundle,group,tier,customer,from,volumeM3,weightKg')).toBe(true);
    for (const upload of [files, [['prices.json', JSON.stringify(SAMPLE)]] as const]) {
      const added = await sent('admin', upload);
      expect(added.status).toBe(201);
      expect(await document(added.body.id)).toEqual(SAMPLE);
    }
  });

  it('a wrong cell is told with its file, row and column, and adds nothing', async () => {
    const before = (await itemsOf<Entry>(server, 'admin', '/v1/price-lists')).length;
    const list = 'key,value\nformat,wallcourse/prices@1\ncode,WRONG\ncurrency,USD\ninForceFrom,2026-01-01\nvalidDays,30\n';
    const { status, body } = await sent('admin', [['list.csv', list], ['items.csv', 'sku,unit,price\nA,each,1\nB,each,cheap\n']]);
    expect([status, body.code]).toEqual([422, 'invalid']);
    expect(body.errors).toEqual([{ sheet: 'items.csv', row: 3, column: 'C (price)', pointer: '/items/1/price', read: 'cheap', fix: expect.stringContaining('a decimal in quotes') }]);
    expect((await itemsOf<Entry>(server, 'admin', '/v1/price-lists')).length).toBe(before);
  });

  it('a list that would hold on days of a list of another code is refused, and names it', async () => {
    const { status, body } = await call<Problem>(server, 'admin', 'POST', '/v1/price-lists', { ...SAMPLE, code: 'SPRING', inForceFrom: '2026-03-01', inForceTo: '2026-05-31' });
    expect([status, body.errors.map(({ pointer }) => pointer)]).toEqual([422, ['/inForceFrom']]);
    expect(body.errors[0]!.read).toContain(`${first.code} holds too from 2026-03-01 to 2026-05-31`);
    expect((await call(server, 'admin', 'POST', '/v1/price-lists', { ...SAMPLE, code: 'BEFORE', inForceFrom: '2025-01-01', inForceTo: '2025-12-31' })).status).toBe(201);
  });

  it('of two lists that overlap and come at once, one is added', async () => {
    const year = (code: string) => call(server, 'admin', 'POST', '/v1/price-lists', { ...SAMPLE, code, inForceFrom: '2024-01-01', inForceTo: '2024-12-31' });
    const answers = await Promise.all(['LEFT', 'RIGHT'].map(year));
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 422]);
  });

  it('a sheet or a type that is not there is refused', async () => {
    expect((await got('sales', 'text/csv', '?sheet=secrets')).status).toBe(422);
    expect((await got('sales', 'application/pdf')).status).toBe(406);
  });

  it('prices and costs are for sales and admin, and only the admin adds', async () => {
    for (const as of ['contractor', 'support'] as const) {
      for (const type of ['application/json', 'text/csv', XLSX]) {
        const answer = await got(as, type);
        expect([answer.status, (await answer.text()).includes('ST6')]).toEqual([403, false]);
      }
    }
    for (const as of ['contractor', 'support', 'sales'] as const) expect((await sent(as, [['prices.json', JSON.stringify(SAMPLE)]])).status).toBe(403);
  });
});
