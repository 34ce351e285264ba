import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { startServer, type TestServer } from '../support/server.js';
import { call, submitted } from './api.js';
import { shed } from './schedules.js';

let server: TestServer;

beforeAll(async () => {
  server = await startServer();
});

afterAll(async () => {
  await server.stop();
});

interface Quantity {
  readonly value: number;
  readonly unit: string;
}
interface Calculated {
  readonly result: Readonly<Record<string, { readonly us: Quantity; readonly si: Quantity }>>;
  readonly governs: string;
  readonly source: string;
  readonly trace: readonly unknown[];
  readonly findings: readonly { readonly code: string; readonly severity: string }[];
  readonly errors: readonly { readonly pointer: string }[];
}
const ask = (name: string, body: unknown) => call<Calculated>(server, 'contractor', 'POST', `/v1/checks/${name}`, body);

/** Worked examples over HTTP; where each comes from stands in test/published and the test of its calculator. */
const ROWS = [
  { name: 'bend-thrust', example: '600 psf on 6 in at 90 degrees, by hand', fields: { pressure: '600 psf', core: '6 in', turn: '90' }, result: 'thrustPerHeight', us: '424', unit: 'lb/ft', si: '6.19' },
  { name: 'hoop-tension', example: '600 psf on 6 in, by hand', fields: { pressure: '600 psf', core: '6 in', radius: '5 ft' }, result: 'tensionPerHeight', us: '300', unit: 'lb/ft', si: '4.38' },
  { name: 'tee', example: 'decision 9', fields: { pressure: '600 psf', core: '6 in', courseHeight: '16 in', wireGauge: '9' }, result: 'force', us: '400', unit: 'lb', si: '1.78' },
  { name: 'uplift', example: '600 psf on 4 in, by hand', fields: { pressure: '600 psf', lean: '4 in' }, result: 'forcePerLength', us: '200', unit: 'lb/ft', si: '2.92' },
  { name: 'wind', example: 'W4 of permit-wind-sheet', fields: { speed: '115 mph', exposure: 'B', height: '30 ft' }, result: 'velocityPressure', us: '20.1', unit: 'psf', si: '0.96' },
  { name: 'brace', example: 'B1 of peurifoy-oberlender-4', fields: { height: '10 ft', pressure: '25 psf', spacing: '9 ft', braceTop: '10 ft', braceFoot: '6 ft' }, result: 'uplift', us: '1875', unit: 'lb', si: '8.34' },
  { name: 'timber-column', example: 'N1 of peurifoy-oberlender-4, unrounded', fields: { section: '4x6', length: '6 ft', fcStar: '1600 psi', eMin: '580000 psi' }, result: 'stress', us: '897.4', unit: 'psi', si: '6.19' },
  { name: 'evaporation', example: 'E1 by equation', fields: { air: '80 F', concrete: '87 F', humidity: '50 %', wind: '12 mph' }, result: 'rate', us: '0.2435', unit: 'lb/ft2/h', si: '1.19' },
  { name: 'concrete-temperature', example: 'T1 of ice-and-mix-blog', fields: { aggregate: '1828.2 kg', aggregateTemperature: '37 C', cement: '360 kg', cementTemperature: '40 C', water: '122.8 kg', waterTemperature: '30 C', ice: '50 kg' }, result: 'temperature', us: '81', unit: '°F', si: '27' },
  { name: 'pour-plan', example: 'engineering-forum-pours', fields: { planArea: '40 ft2', lift: '10 ft', pump: '10 yd3/h', truck: '10 yd3' }, result: 'volume', us: '14.8', unit: 'yd3', si: '11.3' },
  { name: 'form-pressure', example: 'C1 of ciria-forum-sheet', fields: { method: 'ciria-108', height: '9.05 m', rise: '1 m/h', concrete: '12.5 C', section: 'column', c2: '0.45' }, result: 'pressure', us: '1813', unit: 'psf', si: '86.82' },
  { name: 'form-pressure', example: 'DIN 18218 Eq. (1), SCC', fields: { method: 'din-18218', height: '6 m', rise: '2 m/h', class: 'SCC', setting: '7 h' }, result: 'pressure', us: '2423', unit: 'psf', si: '116.0' },
] as const;

const decimals = (printed: string): number => printed.split('.')[1]?.length ?? 0;

describe('calculators over HTTP', () => {
  it.each(ROWS)('$name: $result of $example', async ({ name, fields, result, us, unit, si }) => {
    const { status, body } = await ask(name, fields);
    expect(status).toBe(200);
    expect(body.result[result]?.us.value.toFixed(decimals(us))).toBe(us);
    expect(body.result[result]?.us.unit).toBe(unit);
    expect(body.result[result]?.si.value.toFixed(decimals(si))).toBe(si);
    expect(body.trace.length).toBeGreaterThan(0);
    expect(body.source).not.toBe('');
    expect(body.findings).toEqual([]);
  });

  it.each([
    { name: 'timber-column', fields: { section: '4x4', length: '15 ft', fcStar: '1650 psi', eMin: '580000 psi' } },
    { name: 'wind', fields: { speed: '115 mph', exposure: 'C', height: '9 ft', duration: '6 years' } },
    { name: 'evaporation', fields: { air: '20 F', concrete: '60 F', humidity: '50 %', wind: '12 mph' } },
    { name: 'form-pressure', fields: { method: 'din-18218', height: '4 m', rise: '8 m/h', class: 'F3', setting: '5 h' } },
  ])('$name outside its method answers with the finding and no number', async ({ name, fields }) => {
    const { status, body } = await ask(name, fields);
    expect([status, body.result, body.governs]).toEqual([200, {}, 'outside-method']);
    expect(body.findings).toEqual([expect.objectContaining({ code: 'outside-method', severity: 'hold' })]);
  });

  it.each([
    { name: 'bend-thrust', fields: { pressure: '600 ft', core: '6 in', turn: '200' }, pointers: ['/pressure', '/turn'] },
    { name: 'hoop-tension', fields: {}, pointers: ['/core', '/pressure'] },
    { name: 'tee', fields: { pressure: '600 psf', core: '6 in', courseHeight: '16 in', wireGauge: '7' }, pointers: ['/wireGauge'] },
    { name: 'uplift', fields: { pressure: '600 psf' }, pointers: ['/lean'] },
    { name: 'wind', fields: { speed: '115 ft', exposure: 'A', height: '9 ft' }, pointers: ['/exposure', '/speed'] },
    { name: 'brace', fields: { height: '8 psi', pressure: '15 psf', spacing: '6 ft', braceTop: '8 ft', braceFoot: '6 ft' }, pointers: ['/height'] },
    { name: 'timber-column', fields: { section: 'round', length: '6 ft', fcStar: '1600 psi', eMin: '580000 psi' }, pointers: ['/section'] },
    { name: 'evaporation', fields: { air: '80 F', concrete: '87 F', humidity: '150 %', wind: '12 mph' }, pointers: ['/humidity'] },
    { name: 'concrete-temperature', fields: { aggregate: '1828 kg' }, pointers: ['/aggregateTemperature', '/cement', '/cementTemperature', '/water', '/waterTemperature'] },
    { name: 'pour-plan', fields: { planArea: '40 ft2', lift: '10 ft', pump: '10 yd3', truck: '10 yd3' }, pointers: ['/pump'] },
    { name: 'form-pressure', fields: { method: 'ciria-108', height: '3 m', rise: '1 m/h', concrete: '15 C', slump: '5 in' }, pointers: ['/slump'] },
  ])('$name refuses $pointers', async ({ name, fields, pointers }) => {
    const { status, body } = await ask(name, fields);
    expect([status, body.errors.map(({ pointer }) => pointer).sort()]).toEqual([422, pointers]);
  });
});

/** The shed is 40 by 28 ft of 6 in core; its concrete is the take-off's, the rest by hand: A = V / h, R = Q / A. */
describe('pour plan of a job', () => {
  const POUR = { lift: '4 ft', pump: '20 yd3/h', truck: '10 yd3' };
  let job: string;
  beforeAll(async () => {
    job = (await submitted(server, shed('Pour'))).id;
  });

  it('takes the plan area of the storey measured', async () => {
    const { body: takeoff } = await call<{ concrete: { concreteM3: number }[]; walls: { stack: { heightMm: number } }[] }>(server, 'contractor', 'GET', `/v1/jobs/${job}/takeoff`);
    const area = takeoff.concrete[0]!.concreteM3 / (takeoff.walls[0]!.stack.heightMm / 1000);
    // 136 ft of centre lines and more at the outside, less a door: between 120 and 136 ft of 6 in wall.
    expect(area / 0.09290304).toBeGreaterThan(60);
    expect(area / 0.09290304).toBeLessThan(68);
    const { status, body } = await ask('pour-plan', { job, ...POUR });
    expect([status, body.findings]).toEqual([200, []]);
    expect(body.result['volume']?.si.value).toBeCloseTo(area * 1.2192, 6);
    expect(body.result['rise']?.si.value).toBeCloseTo((20 * 0.764554857984) / area, 6);
    expect(body.trace[0]).toMatchObject({ equation: 'A = V / h', unit: 'm2' });
  });

  it.each([
    { more: { storey: 'S9' }, pointers: ['/storey'] },
    { more: { planArea: '80 ft2' }, pointers: ['/planArea'] },
    { more: { job: 7 }, pointers: ['/job'] },
    { more: { lift: '8 psi' }, pointers: ['/lift'] },
  ])('refuses $more', async ({ more, pointers }) => {
    const { status, body } = await ask('pour-plan', { job, ...POUR, ...more });
    expect([status, body.errors.map(({ pointer }) => pointer)]).toEqual([422, pointers]);
  });

  it('knows no other job', async () => {
    expect((await ask('pour-plan', { job: '01990000-0000-7000-8000-000000000000', ...POUR })).status).toBe(404);
    expect((await ask('pour-plan', { job: 'nonsense', ...POUR })).status).toBe(404);
  });
});
