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

/** One worked figure of each, with its source in the calculator's own test; the answer as it comes over the wire. */
describe('calculators of bars and strength', () => {
  it.each([
    { name: 'flexure', body: { bar: '#4', spacing: '12 in', d: '10.25 in', fc: '3000 psi' }, of: 'moment', us: 9048.53, unit: 'ft·lb/ft' },
    { name: 'basement-wall', body: { soil: '30 psf/ft', backfill: '8 ft', height: '8 ft' }, of: 'moment', us: 985.34, unit: 'ft·lb/ft' },
    { name: 'lap', body: { method: 'aci-318-general', bar: '#4', fc: '3000 psi', fy: '60 ksi', class: 'B', confinement: 2.5 }, of: 'exact', us: 17.09, unit: 'in' },
    { name: 'bar-shape', body: { standard: 'bs-8666', code: '21', diameter: '12 mm', dimensions: { A: '600 mm', B: '200 mm', C: '600 mm' } }, of: 'cuttingLength', us: 53.23, unit: 'in' },
    { name: 'wall-bars', body: { nominal: '8 in', height: '9 ft', backfill: '8 ft', soil: 'GW' }, of: 'spacing', us: 41, unit: 'in' },
    { name: 'lintel', body: { span: '6 ft', core: '6 in', depth: '16 in', loads: '1500 lb/ft', fc: '3000 psi' }, of: 'moment', us: 6750, unit: 'ft·lb' },
  ])('$name: $of is $us $unit', async ({ name, body, of, us, unit }) => {
    const answer = await ask(name, body);
    expect([answer.status, answer.body['findings']]).toEqual([200, []]);
    expect(answer.body['result'][of].us.unit).toBe(unit);
    expect(answer.body['result'][of].us.value).toBeCloseTo(us, 2);
    expect(answer.body['trace'].length).toBeGreaterThan(0);
  });

  it.each([
    { name: 'flexure', body: { d: '8 psi' }, pointers: ['/As', '/d', '/fc'] },
    { name: 'basement-wall', body: {}, pointers: ['/backfill', '/height', '/soil'] },
    { name: 'lap', body: { method: 'guess', bar: '#4' }, pointers: ['/method'] },
    { name: 'bar-shape', body: { code: '21', diameter: '12 mm', dimensions: { A: '1 m' } }, pointers: ['/dimensions/B', '/dimensions/C'] },
    { name: 'wall-bars', body: { nominal: '8 in', height: '8 psi', backfill: '8 ft', soil: 'GW' }, pointers: ['/height'] },
    { name: 'lintel', body: { span: '-6 ft', core: '6 in', depth: '16 in', loads: { dead: '100 lb/ft' }, fc: '3000 psi' }, pointers: ['/span'] },
  ])('$name refuses $body', async ({ name, body, pointers }) => {
    const answer = await ask(name, body);
    expect([answer.status, answer.body['errors'].map(({ pointer }: { pointer: string }) => pointer).sort()]).toEqual([422, pointers]);
  });

  it('a wall beyond the tables is a hold and no number', async () => {
    const { status, body } = await ask('wall-bars', { nominal: '8 in', height: '12 ft', backfill: '8 ft', soil: 'GW' });
    expect([status, body['result'], body['findings'].map(({ code, severity }: { code: string; severity: string }) => [code, severity])]).toEqual([200, {}, [['wall-beyond-tables', 'hold']]]);
  });
});
