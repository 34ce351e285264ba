import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { lineLengths, readDxf } from '../domain/drawing/read-dxf.js';
import { pdfPages } from '../support/pdf-text.js';
import { startServer, type TestServer } from '../support/server.js';
import { call, submitted, type Job } from './api.js';

interface Takeoff {
  readonly walls: readonly { readonly mark: string; readonly storey: string; readonly lengthMm: number }[];
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

  it('a DXF is read by a general-purpose reader, in millimetres, with the wall as one of its lengths', async () => {
    const dxf = readDxf((await drawn('elevation', 'A1', 'image/vnd.dxf')).toString('latin1'));
    expect(dxf.header['$INSUNITS']).toBe(4);
    const lengths = lineLengths(dxf, 'dimensions');
    const wanted = takeoff.walls.find(({ mark }) => mark === 'A1')?.lengthMm ?? NaN;
    expect(Math.min(...lengths.map((length) => Math.abs(length - wanted)))).toBeLessThan(1e-6);
  });

  /** A1 is parted by its door: 4'-0" and 3'-10" beside it, each under 6'-0", so two braces each (decision 20: ⌈L/s⌉ + 1). */
  it('show the bracing plan of the measurement', async () => {
    expect((await drawn('plan', 'S1', 'image/svg+xml')).toString()).toMatch(/braces on the inside, foot [^<]* braces, [^<]* apart at most/);
    const dxf = readDxf((await drawn('elevation', 'A1', 'image/vnd.dxf')).toString('latin1'));
    // a wall of 9'-4" is held at 8 ft: uprights of 2438.4 mm
    expect(lineLengths(dxf, 'braces').filter((length) => Math.abs(length - 2438.4) < 1e-6)).toHaveLength(4);
  });

  it('carries the cautions in every type that has words', async () => {
    const page = pdfPages(await drawn('elevation', 'A1', 'application/pdf'))[0] ?? '';
    const svg = (await drawn('elevation', 'A1', 'image/svg+xml')).toString();
    const dxf = (await drawn('elevation', 'A1', 'image/vnd.dxf')).toString('latin1');
    for (const words of [page, svg, dxf]) expect(words).toContain('not engineering');
  });

  it.each([
    { accept: undefined, type: 'image/svg+xml' },
    { accept: '*/*', type: 'image/svg+xml' },
    { accept: 'image/*', type: 'image/svg+xml' },
    { accept: 'image/svg+xml;q=0.2, image/png;q=0.9, application/pdf;q=0.5', type: 'image/png' },
    { accept: 'image/svg+xml;q=0, image/png;q=0, */*;q=0.1', type: 'image/vnd.dxf' },
    { accept: 'text/html, application/pdf;q=0.9, */*;q=0.8', type: 'application/pdf' },
    { accept: 'IMAGE/VND.DXF', type: 'image/vnd.dxf' },
  ])('who accepts $accept gets $type', async ({ accept, type }) => {
    const response = await server.fetch(`/v1/jobs/${job.id}/drawings/elevation/A1`, {
      as: 'contractor',
      headers: accept === undefined ? {} : { accept },
    });
    await response.arrayBuffer();
    expect([response.status, response.headers.get('content-type')?.split(';')[0]]).toEqual([200, type]);
    expect(response.headers.get('vary')?.toLowerCase()).toContain('accept');
  });

  it('is named after job, kind and mark', async () => {
    const nameOf = async (accept: string): Promise<string | null> => {
      const response = await drawing('elevation', 'A1', accept);
      await response.arrayBuffer();
      return response.headers.get('content-disposition');
    };
    expect(await nameOf('image/svg+xml')).toBe(`inline; filename="${job.number}-elevation-A1.svg"`);
    expect(await nameOf('image/png')).toBe(`inline; filename="${job.number}-elevation-A1.png"`);
    expect(await nameOf('application/pdf')).toBe(`inline; filename="${job.number}-elevation-A1.pdf"`);
    expect(await nameOf('image/vnd.dxf')).toBe(`attachment; filename="${job.number}-elevation-A1.dxf"`);
  });

  it('what is known is not sent again', async () => {
    const first = await drawing('plan', 'S1', 'image/vnd.dxf');
    await first.arrayBuffer();
    const tag = first.headers.get('etag') ?? '';
    expect(tag).toMatch(/^"[\w-]{43}"$/);
    const again = async (accept: string): Promise<Response> =>
      server.fetch(`/v1/jobs/${job.id}/drawings/plan/S1`, { as: 'contractor', headers: { accept, 'if-none-match': tag } });
    const known = await again('image/vnd.dxf');
    expect([known.status, (await known.arrayBuffer()).byteLength, known.headers.get('etag')]).toEqual([304, 0, tag]);
    const other = await again('image/svg+xml');
    await other.arrayBuffer();
    expect(other.status).toBe(200);
  });

  it('another contractor’s job has no drawings', async () => {
    for (const accept of ['image/svg+xml', 'image/vnd.dxf']) {
      const response = await server.fetch(`/v1/jobs/${job.id}/drawings/plan/S1`, { as: 'neighbour', headers: { accept } });
      await response.arrayBuffer();
      expect(response.status).toBe(404);
    }
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
