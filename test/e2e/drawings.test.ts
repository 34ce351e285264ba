import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { pdfPages } from '../support/pdf-text.js';
import { startServer, type TestServer } from '../support/server.js';
import { call, submitted, type Job } from './api.js';

interface Takeoff {
  readonly walls: readonly { readonly mark: string; readonly storey: string }[];
  readonly junctions: readonly { readonly id: string; readonly kind: string }[];
}

let server: TestServer;
let job: Job;
let takeoff: Takeoff;

beforeAll(async () => {
  server = await startServer();
  job = await submitted(server, JSON.parse(readFileSync('shared/samples/mill-lane-house.schedule.json', 'utf8')));
  takeoff = (await call<Takeoff>(server, 'contractor', 'GET', `/v1/jobs/${job.id}/takeoff`)).body;
});

afterAll(async () => {
  await server.stop();
});

const drawing = (kind: string, ref: string, accept: string, query = ''): Promise<Response> =>
  server.fetch(`/v1/jobs/${job.id}/drawings/${kind}/${encodeURIComponent(ref)}${query}`, {
    as: 'contractor',
    headers: { accept },
  });

async function drawn(kind: string, ref: string, accept: string, query = ''): Promise<Buffer> {
  const response = await drawing(kind, ref, accept, query);
  expect([kind, ref, response.status]).toEqual([kind, ref, 200]);
  expect(response.headers.get('content-type')).toMatch(new RegExp(`^${accept.replace('+', '\\+')}`));
  return Buffer.from(await response.arrayBuffer());
}

/** Width and height that a PNG says of itself. */
const pixels = (png: Buffer): readonly [number, number] => [png.readUInt32BE(16), png.readUInt32BE(20)];

describe('drawings', () => {
  it('every storey, wall and junction that the take-off names can be drawn', async () => {
    const wanted = [
      ...[...new Set(takeoff.walls.map(({ storey }) => storey))].map((ref) => ['plan', ref] as const),
      ...takeoff.walls.map(({ mark }) => ['elevation', mark] as const),
      ...takeoff.junctions.map(({ id }) => ['junction', id] as const),
    ];
    expect(wanted.length).toBeGreaterThan(takeoff.walls.length);
    for (const [kind, ref] of wanted) {
      const svg = (await drawn(kind, ref, 'image/svg+xml')).toString();
      expect(svg).toMatch(/^(?:<\?xml[^>]*>\s*)?<svg [^>]*xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
      expect(svg.trimEnd().endsWith('</svg>')).toBe(true);
      expect(svg).toContain(job.number);
    }
  });

  it('a picture is as wide as asked for', async () => {
    const png = await drawn('elevation', 'A1', 'image/png', '?width=800');
    expect(png.subarray(1, 4).toString()).toBe('PNG');
    expect(pixels(png)[0]).toBe(800);
    expect(pixels(await drawn('elevation', 'A1', 'image/png'))[0]).toBe(1_600);
  });

  it('a page says of which job it is', async () => {
    const pages = pdfPages(await drawn('plan', 'S1', 'application/pdf'));
    expect(pages).toHaveLength(1);
    for (const words of [job.number, 'Mill Lane house', 'Heron Forms (demo)', 'They are not engineering.'])
      expect(pages[0]).toContain(words);
  });

  it.each([
    { what: 'a wall nobody knows', kind: 'elevation', ref: 'Z9', accept: '*/*', query: '', status: 404 },
    { what: 'a storey nobody knows', kind: 'plan', ref: 'attic', accept: '*/*', query: '', status: 404 },
    { what: 'a junction nobody knows', kind: 'junction', ref: 'S1-J999', accept: '*/*', query: '', status: 404 },
    { what: 'a path in place of a mark', kind: 'elevation', ref: '../../../etc/passwd', accept: '*/*', query: '', status: 404 },
    { what: 'a kind that is none', kind: 'section', ref: 'A1', accept: '*/*', query: '', status: 422 },
    { what: 'a type that is not drawn', kind: 'plan', ref: 'S1', accept: 'image/jpeg', query: '', status: 406 },
    { what: 'a picture wider than a wall', kind: 'plan', ref: 'S1', accept: 'image/png', query: '?width=100000', status: 422 },
  ])('$what: $status', async ({ kind, ref, accept, query, status }) => {
    const response = await drawing(kind, ref, accept, query);
    await response.arrayBuffer();
    expect([response.status, response.headers.get('content-type')]).toEqual([status, 'application/problem+json; charset=utf-8']);
  });
});
