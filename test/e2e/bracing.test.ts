import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { startServer, type TestServer } from '../support/server.js';
import { call, itemsOf, submitted, type List } from './api.js';
import { shed } from './schedules.js';

interface Brace {
  readonly atMm: number;
  readonly reason: string;
  readonly heightMm: number;
  readonly axialKn: number | null;
  readonly axialLb: number | null;
  readonly horizontalLb: number | null;
  readonly upliftLb: number | null;
}

interface Bracing {
  readonly storey: string;
  readonly side: string;
  readonly spacingMm: number;
  readonly count: number;
  readonly cases: readonly { readonly forms: string; readonly topLoadLbPerFt: number | null; readonly governs: string }[];
  readonly walls: readonly { readonly mark: string; readonly braces: readonly Brace[] }[];
  readonly trace: readonly unknown[];
  readonly notes: readonly string[];
  readonly findings: readonly { readonly code: string }[];
}

const MM_PER_IN = 25.4;
let server: TestServer;

beforeAll(async () => {
  server = await startServer();
});

afterAll(async () => {
  await server.stop();
});

describe('the braces of a shed of 40 by 28 ft, 8 ft high, without a stated wind', () => {
  /**
   * Axes lie 5 1/2 in inside the foam: 469 and 325 in long. The door of wall A takes 174 1/2 to 210 1/2 in of it:
   * ⌈174.5/72⌉ + 1 = 4 and ⌈258.5/72⌉ + 1 = 5. B and D: ⌈325/72⌉ + 1 = 6. C: ⌈469/72⌉ + 1 = 8. Together 29.
   */
  it('are told wall by wall, with the least load that forms are braced for', async () => {
    const job = await submitted(server, shed());
    const { status, body } = await call<List<Bracing>>(server, 'contractor', 'GET', `/v1/jobs/${job.id}/bracing`);
    expect([status, body.items.length, body.next]).toEqual([200, 1, null]);
    const [bracing] = body.items as [Bracing];
    expect(bracing).toMatchObject({ storey: 'S1', side: 'inside', spacingMm: 72 * MM_PER_IN, count: 29, findings: [] });
    expect(bracing.walls.map(({ mark, braces }) => [mark, braces.length])).toEqual([['A', 9], ['B', 6], ['C', 8], ['D', 6]]);
    const jambs = bracing.walls[0]!.braces.filter(({ reason }) => reason === 'opening');
    expect(jambs.map(({ atMm }) => atMm)).toEqual([174.5 * MM_PER_IN, 210.5 * MM_PER_IN]);
    // max( 15 · 8 / 2, 100 ) = 100 lb/ft; 6 ft of it on a brace 8 ft up and 6 ft out: 100 · 8 · 10 / 48 · 6 = 1000 lb, 600 along and 800 up.
    const [brace] = bracing.walls[2]!.braces as [Brace];
    expect([brace.heightMm, brace.axialLb, brace.horizontalLb, brace.upliftLb]).toEqual([2438.4, expect.closeTo(1000, 6), expect.closeTo(600, 6), expect.closeTo(800, 6)]);
    expect(brace.axialKn).toBeCloseTo(4.448_221_615_260_5, 9);
    expect(bracing.cases.map(({ forms, topLoadLbPerFt, governs }) => [forms, topLoadLbPerFt, governs])).toEqual([
      ['empty', expect.closeTo(100, 9), 'minimum-load'],
      ['filled', expect.closeTo(100, 9), 'minimum-load'],
    ]);
    expect(bracing.trace.length).toBeGreaterThan(0);

    const query = { query: `{ job(id: "${job.id}") { bracing { items { storey count walls { mark braces { atMm axialLb } } } next } } }` };
    const graph = await call<{ data: { job: { bracing: List<Bracing> } } }>(server, 'contractor', 'POST', '/graphql', query);
    const walls = bracing.walls.map(({ mark, braces }) => ({ mark, braces: braces.map(({ atMm, axialLb }) => ({ atMm, axialLb })) }));
    expect(graph.body.data.job.bracing).toEqual({ items: [{ storey: 'S1', count: 29, walls }], next: null });

    const items = await itemsOf<{ rule: string; text: string }>(server, 'contractor', `/v1/jobs/${job.id}/checklist?first=200`);
    expect(items.find(({ rule }) => rule === 'braces-anchored')?.text).toContain('29 in number');
  });
});

describe('the braces of a shed in a stated wind', () => {
  it('take what the brace calculator says', async () => {
    const job = await submitted(server, { ...shed(), site: { wind: '120 mph', exposure: 'C', duration: '8 weeks' } });
    const [bracing] = await itemsOf<Bracing>(server, 'contractor', `/v1/jobs/${job.id}/bracing`);
    const asked = { height: '8 ft', spacing: '6 ft', braceTop: '8 ft', braceFoot: '6 ft', speed: '120 mph', exposure: 'C', duration: '8 weeks' };
    const { body } = await call<{ result: { axial: { si: { value: number } } } }>(server, 'contractor', 'POST', '/v1/checks/brace', asked);
    expect(bracing!.walls[1]!.braces[0]!.axialKn! / body.result.axial.si.value).toBeCloseTo(1, 9);
    expect(bracing!.cases.map(({ governs }) => governs)).toEqual(['wind', 'wind']);
  });

  it('that stands longer than the standard has a factor for are not told, and somebody is asked, once', async () => {
    const job = await submitted(server, { ...shed(), site: { wind: '120 mph', exposure: 'C', duration: '300 weeks' } });
    const [bracing] = await itemsOf<Bracing>(server, 'contractor', `/v1/jobs/${job.id}/bracing`);
    expect(bracing!.walls[0]!.braces[0]).toMatchObject({ axialKn: null, axialLb: null });
    expect(bracing!.cases.map(({ topLoadLbPerFt, governs }) => [topLoadLbPerFt, governs])).toEqual([[null, 'outside-method'], [null, 'outside-method']]);
    const findings = await itemsOf<{ code: string; storey: string | null; numbers: Record<string, unknown> }>(server, 'contractor', `/v1/jobs/${job.id}/findings`);
    expect(findings.filter(({ code, numbers }) => code === 'outside-method' && 'durationYears' in numbers)).toHaveLength(1);
    expect(await itemsOf(server, 'contractor', `/v1/tickets?job=${job.id}`)).toHaveLength(1);
  });
});

describe('pages and doors', () => {
  it('a storey a page where one is asked for', async () => {
    const house = shed();
    const upper = house.walls.map((wall) => ({ ...wall, mark: `${wall.mark}2`, storey: 'S2' }));
    const [first] = house.storeys;
    const job = await submitted(server, { ...house, storeys: [{ ...first, storeyAbove: true }, { ...first, id: 'S2', on: 'S1' }], walls: [...house.walls, ...upper] });
    const one = (await call<List<Bracing>>(server, 'contractor', 'GET', `/v1/jobs/${job.id}/bracing?first=1`)).body;
    const other = (await call<List<Bracing>>(server, 'contractor', 'GET', `/v1/jobs/${job.id}/bracing?first=1&after=${one.next}`)).body;
    // Above there is no door: 2 · (8 + 6) = 28.
    expect([one, other].flatMap(({ items }) => items.map(({ storey, count }) => [storey, count]))).toEqual([['S1', 29], ['S2', 28]]);
    expect(other.next).toBeNull();
  });
});
