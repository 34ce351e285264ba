import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { startServer, type TestServer } from '../support/server.js';
import { call, itemsOf, submitted } from './api.js';
import { shed } from './schedules.js';

const sample = (name: string): Record<string, unknown> =>
  JSON.parse(readFileSync(`shared/samples/${name}`, 'utf8')) as Record<string, unknown>;

interface Entry {
  readonly id: string;
  readonly code: string;
  readonly version: number;
}

let server: TestServer;

beforeAll(async () => {
  server = await startServer();
});

afterAll(async () => {
  await server.stop();
});

describe('ranges', () => {
  it('the demo range is there as it was written, for everybody', async () => {
    const [range] = await itemsOf<Entry>(server, 'contractor', '/v1/ranges');
    expect(range).toMatchObject({ code: 'HERON-16', version: 1, inForceFrom: '2026-01-01' });
    expect((await call(server, 'contractor', 'GET', `/v1/ranges/${range!.id}`)).body).toEqual(sample('heron-16.range.json'));
  });

  it('a new version measures the next job, and leaves the measured one as it is', async () => {
    const before = await submitted(server, shed());
    const measuredWith = async (id: string) =>
      (await call<{ range: object }>(server, 'contractor', 'GET', `/v1/jobs/${id}/takeoff`)).body.range;
    const added = await call<Entry>(server, 'admin', 'POST', '/v1/ranges', { ...sample('heron-16.range.json'), version: 2 });
    expect([added.status, added.body.version]).toEqual([201, 2]);
    expect(await measuredWith((await submitted(server, shed())).id)).toEqual({ code: 'HERON-16', version: 2 });
    expect(await measuredWith(before.id)).toEqual({ code: 'HERON-16', version: 1 });
  });

  it('a version that is not in force yet measures nothing', async () => {
    expect(
      (
        await call(server, 'admin', 'POST', '/v1/ranges', {
          ...sample('heron-16.range.json'),
          version: 9,
          inForceFrom: '2999-01-01',
        })
      ).status,
    ).toBe(201);
    const { id } = await submitted(server, shed());
    const { body } = await call<{ range: { version: number } }>(server, 'contractor', 'GET', `/v1/jobs/${id}/takeoff`);
    expect(body.range.version).toBeLessThan(9);
  });

  it('a version that is known is not written over', async () => {
    const answer = await call<{ errors: { pointer: string }[] }>(server, 'admin', 'POST', '/v1/ranges', {
      ...sample('heron-16.range.json'),
      name: 'Another',
    });
    expect([answer.status, answer.body.errors[0]?.pointer]).toEqual([422, '/version']);
  });

  it('a range that does not hold together is refused where it is wrong', async () => {
    const answer = await call<{ errors: { pointer: string }[] }>(server, 'admin', 'POST', '/v1/ranges', {
      ...sample('heron-16.range.json'),
      version: 3,
      courseHeight: 'tall',
    });
    expect([answer.status, answer.body.errors.map(({ pointer }) => pointer)]).toEqual([422, ['/courseHeight']]);
  });

  it('only the admin writes', async () => {
    expect((await call(server, 'sales', 'POST', '/v1/ranges', sample('heron-16.range.json'))).status).toBe(403);
  });
});

describe('price lists', () => {
  it('the demo list is there as it was written, for those who price', async () => {
    const [list] = await itemsOf<Entry>(server, 'sales', '/v1/price-lists');
    expect(list).toMatchObject({ code: 'HERON-2026', version: 1, currency: 'USD' });
    expect((await call(server, 'sales', 'GET', `/v1/price-lists/${list!.id}`)).body).toEqual(sample('prices.json'));
  });

  it('a list that lacks what the job takes prices nothing and says what it lacks', async () => {
    const prices = sample('prices.json') as { items: { sku: string }[] };
    const added = await call<Entry>(server, 'admin', 'POST', '/v1/price-lists', {
      ...prices,
      items: prices.items.filter(({ sku }) => sku !== 'ST6'),
    });
    expect([added.status, added.body.version]).toEqual([201, 2]);
    const { id } = await submitted(server, shed());
    const quote = await call<{ code: string; detail: string; unpriced: object[] }>(
      server,
      'contractor',
      'POST',
      `/v1/jobs/${id}/quotes`,
    );
    expect([quote.status, quote.body.code]).toEqual([409, 'illegal-move']);
    expect(quote.body.detail).toContain('ST6 (not listed)');
    expect(quote.body.unpriced[0]).toMatchObject({ sku: 'ST6', reason: 'not-listed', because: expect.arrayContaining([expect.objectContaining({ storey: 'S1', wall: 'A' })]) });
    expect((await call(server, 'admin', 'POST', '/v1/price-lists', prices)).status).toBe(201);
    expect((await call(server, 'contractor', 'POST', `/v1/jobs/${id}/quotes`)).status).toBe(201);
  });

  it('a list that has ended prices nothing, though it began last', async () => {
    const prices = sample('prices.json') as object;
    const ended = { ...prices, inForceFrom: '2026-01-02', inForceTo: '2026-01-03', currency: 'CAD' };
    expect((await call(server, 'admin', 'POST', '/v1/price-lists', ended)).status).toBe(201);
    const { id } = await submitted(server, shed());
    const quote = await call<{ currency: string }>(server, 'contractor', 'POST', `/v1/jobs/${id}/quotes`);
    expect([quote.status, quote.body.currency]).toEqual([201, 'USD']);
  });

  it('a list that does not hold together is refused where it is wrong', async () => {
    const answer = await call<{ errors: { pointer: string }[] }>(server, 'admin', 'POST', '/v1/price-lists', {
      ...sample('prices.json'),
      currency: 'dollars',
    });
    expect([answer.status, answer.body.errors.map(({ pointer }) => pointer)]).toEqual([422, ['/currency']]);
  });
});

describe('calculators', () => {
  /** ACI 347-04 Eq. (2-1): p = Cw Cc (150 + 9000 R / T) [psf, ft/h, F], here 150 + 9000 * 6 / 70 with both coefficients 1. */
  it('form pressure: the equation for walls, in both systems', async () => {
    const { status, body } = await call<Record<string, any>>(server, 'contractor', 'POST', '/v1/checks/form-pressure', {
      height: '12 ft',
      rise: '6 ft/h',
      concrete: '70 F',
    });
    expect(status).toBe(200);
    expect(body['result'].pressure.us).toEqual({ value: Number((150 + (9000 * 6) / 70).toPrecision(12)), unit: 'psf' });
    expect(body['result'].pressure.si.value).toBeCloseTo((150 + (9000 * 6) / 70) * 0.0478802589804, 6);
    expect(body['trace'].length).toBeGreaterThan(0);
    expect(body['findings']).toEqual([]);
  });

  it('rise limit: the same equation turned round', async () => {
    const { body } = await call<Record<string, any>>(server, 'contractor', 'POST', '/v1/checks/rise-limit', {
      rating: '750 psf',
      height: '12 ft',
      concrete: '70 F',
    });
    expect(body['result'].rise.us.value).toBeCloseTo(((750 - 150) * 70) / 9000, 9);
  });

  it('outside the method: 200 with the finding, and no number', async () => {
    const { status, body } = await call<Record<string, any>>(server, 'contractor', 'POST', '/v1/checks/form-pressure', {
      height: '12 ft',
      rise: '6 ft/h',
      concrete: '20 F',
    });
    expect([status, body['result'], body['governs']]).toEqual([200, {}, 'outside-method']);
    expect(body['findings']).toEqual([expect.objectContaining({ code: 'outside-method', severity: 'hold' })]);
  });

  it.each([
    { body: {}, pointers: ['/height', '/concrete', '/rise'] },
    { body: { height: '8', rise: '6 ft/h', concrete: '70 F' }, pointers: ['/height'] },
    { body: { height: '8 ft', rise: 'fast', concrete: '70 F' }, pointers: ['/rise'] },
  ])('what cannot be read is refused, all of it: $pointers', async ({ body, pointers }) => {
    const answer = await call<{ errors: { pointer: string }[] }>(server, 'contractor', 'POST', '/v1/checks/form-pressure', body);
    expect(answer.status).toBe(422);
    expect(answer.body.errors.map(({ pointer }) => pointer).sort()).toEqual([...pointers].sort());
  });
});
