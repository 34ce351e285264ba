import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { startServer, type TestServer } from '../support/server.js';
import { call, itemsOf, submitted } from './api.js';
import { shed } from './schedules.js';

interface Noted {
  readonly code: string;
  readonly severity: string;
  readonly storey: string | null;
  readonly numbers: Readonly<Record<string, number | string>>;
}
interface Quote {
  readonly conditions: readonly { readonly severity: string; readonly text: string; readonly finding: Noted }[];
  readonly openHolds: readonly unknown[];
}

let server: TestServer;

beforeAll(async () => {
  server = await startServer();
});

afterAll(async () => {
  await server.stop();
});

/** 4 ft of liquid at 150 pcf are 600 psf, which the 6 in core of the demo range carries: a note and nothing else. */
const low = () => {
  const drawn = shed('Wet mix');
  const openings = [{ ...drawn.openings[0], height: 32 }];
  return { ...drawn, storeys: [{ ...drawn.storeys[0], height: '4\'-0"' }], openings, pour: { rise: '3 ft/h', concrete: '70 F', unitWeight: '150 pcf', slump: '8 in' } };
};

describe('a pour past a limit at which the standard says what to do', () => {
  it('is noted among the findings and on the quote, and asks nobody', async () => {
    const job = await submitted(server, low());
    const findings = (await itemsOf<Noted>(server, 'contractor', `/v1/jobs/${job.id}/findings`)).filter(({ code }) => code === 'full-liquid-head');
    expect(findings).toEqual([
      expect.objectContaining({ severity: 'note', storey: 'S1', numbers: { slumpIn: 8, limitIn: 7, pressurePsf: 600, core: '6' }, source: expect.stringContaining('aci-347-04') }),
    ]);
    const { body: quote } = await call<Quote>(server, 'contractor', 'POST', `/v1/jobs/${job.id}/quotes`);
    const printed = quote.conditions.filter(({ finding }) => finding.code === 'full-liquid-head');
    expect(printed).toHaveLength(1);
    expect(printed[0]).toMatchObject({ severity: 'note', text: expect.stringMatching(/^Storey S1: .*core 6, slump limit 7 in \(178 mm\), slump 8 in \(203 mm\), pressure 600 psf/) });
    expect(quote.openHolds).toEqual([]);
  });

  it('SI questions reach the SI set over HTTP: 35.44 kPa at 1 m/h and 10 C', async () => {
    const ask = { height: '3 m', rise: '1 m/h', concrete: '10 C' };
    const { status, body } = await call<{ result: Record<string, { si: { value: number } }>; notes: string[] }>(server, 'contractor', 'POST', '/v1/checks/form-pressure', ask);
    expect(status).toBe(200);
    expect(body.result['pressure']?.si.value.toFixed(2)).toBe('35.44');
    expect(body.notes).toEqual([expect.stringMatching(/^SI equations of ACI 347-04/)]);
  });
});
