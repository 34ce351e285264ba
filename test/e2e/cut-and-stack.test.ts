import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { startServer, type TestServer } from '../support/server.js';
import { call } from './api.js';

let server: TestServer;

beforeAll(async () => {
  server = await startServer();
});

afterAll(async () => {
  await server.stop();
});

const ask = (name: string, body: unknown) => call<Record<string, any>>(server, 'contractor', 'POST', `/v1/checks/${name}`, body);

describe('cutting and stacking calculators', () => {
  it('cut-stock: six of 3.5 m and six of 2.5 m are six bars of 6 m', async () => {
    const { status, body } = await ask('cut-stock', { stock: '6 m', pieces: [{ length: '3.5 m', count: 6 }, { length: '2.5 m', count: 6 }] });
    expect(status).toBe(200);
    expect(body['result']).toMatchObject({ bars: 6, lowerBound: 6, waste: { si: { value: 0, unit: 'mm' } } });
    expect(body['result'].patterns).toEqual([{ count: 6, lengths: [expect.objectContaining({ si: { value: 3500, unit: 'mm' } }), expect.objectContaining({ si: { value: 2500, unit: 'mm' } })], offcut: expect.anything() }]);
  });

  it('cut-stock: a piece longer than the stock is refused where it stands', async () => {
    const { status, body } = await ask('cut-stock', { stock: '6 m', pieces: [{ length: '3 m', count: 1 }, { length: '6.1 m', count: 1.5 }] });
    expect([status, body['errors'].map(({ pointer }: { pointer: string }) => pointer).sort()]).toEqual([422, ['/pieces/1/count', '/pieces/1/length']]);
  });

  /** decision 11: 6 courses of 16 in and 4 strips of 3 in are 108 in. */
  it('height-stack: 9 ft of courses and strips, with the next best', async () => {
    const { status, body } = await ask('height-stack', { height: '9 ft', prefers: 'strips' });
    expect(status).toBe(200);
    expect(body['result']).toMatchObject({ courses: 6, strips: 4, ripped: 'none', height: { us: { value: 108, unit: 'in' } } });
    expect(body['result'].alternatives.length).toBeGreaterThan(1);
    expect(body['findings']).toEqual([]);
  });

  it('height-stack: a height that no stack meets is answered with the nearest and a finding', async () => {
    const { status, body } = await ask('height-stack', { height: '20 in' });
    expect([status, body['governs'], body['findings'].map(({ code }: { code: string }) => code)]).toEqual([200, 'nearest', ['height-not-coursed']]);
    expect((await ask('height-stack', {})).status).toBe(422);
  });
});
