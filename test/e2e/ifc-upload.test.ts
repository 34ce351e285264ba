import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { freeWall, IfcFile } from '../support/ifc-files.js';
import { startServer, type TestServer } from '../support/server.js';
import { call, itemsOf, type Job } from './api.js';

interface Problem {
  readonly code: string;
  readonly status: number;
  readonly detail: string;
  readonly errors: readonly { readonly sheet: string | null; readonly column: string | null; readonly read: string; readonly fix: string }[];
}

let server: TestServer;
beforeAll(async () => {
  server = await startServer();
}, 180_000);
afterAll(() => server.stop());

function upload(to: TestServer, model: string | Buffer, name = 'house.ifc', signal: AbortSignal | null = null): Promise<Response> {
  const form = new FormData();
  form.append('files', new Blob([new Uint8Array(Buffer.from(model))], { type: 'application/octet-stream' }), name);
  return to.fetch('/v1/jobs', { method: 'POST', as: 'contractor', body: form, signal });
}
const problem = async (to: TestServer, model: string | Buffer): Promise<Problem> => (await upload(to, model)).json() as Promise<Problem>;

/** Programs of opened models that a process started, by Linux's list. */
function openModels(parent: number): number {
  return readdirSync('/proc').filter((name) => {
    if (!/^\d+$/.test(name)) return false;
    try {
      const stat = readFileSync(`/proc/${name}/stat`, 'utf8');
      return Number(stat.slice(stat.lastIndexOf(')') + 2).split(' ')[1]) === parent && readFileSync(`/proc/${name}/cmdline`, 'utf8').includes('ifc-child');
    } catch {
      return false;
    }
  }).length;
}

describe('a model that is uploaded', () => {
  it('is known by its content, measured like any schedule, and lists what is left out', async () => {
    const file = freeWall('ft', { turn: 37 });
    file.other('IFCSLAB', 'Floor', file.storey('Roof', 12));
    const response = await upload(server, file.toString(), 'drawing.txt');
    const job = (await response.json()) as Job;
    expect([response.status, job.state, job.name]).toEqual([201, 'measured', 'Pier house']);
    const { body: schedule } = await call(server, 'contractor', 'GET', `/v1/jobs/${job.id}/schedule`);
    expect(schedule).toMatchObject({
      units: 'ft',
      dimensionsTo: 'axis',
      walls: [{ mark: 'A', core: '6' }],
      skipped: [{ kind: 'IfcSlab', name: 'Floor', globalId: expect.stringMatching(/^Floor/), reason: expect.any(String) }],
      noted: [],
    });
    // Decisions 13: the free wall 20'-0" × 8'-0" is 30 forms, 12 closures.
    const { body: takeoff } = await call<{ units: { kind: string; bought: number }[]; walls: { lengthMm: number }[] }>(server, 'contractor', 'GET', `/v1/jobs/${job.id}/takeoff`);
    expect(takeoff.walls.map(({ lengthMm }) => lengthMm)).toEqual([6096]);
    expect(takeoff.units.filter(({ bought }) => bought > 0).map(({ kind, bought }) => [kind, bought]).sort()).toEqual([['end-closure', 12], ['straight', 30]]);
  });

  it('replaces a schedule under If-Match, and tells nothing of models where there was none', async () => {
    const first = (await (await upload(server, freeWall('mm').toString())).json()) as Job;
    const form = new FormData();
    form.append('files', new Blob([freeWall('m').toString()]), 'again.ifc');
    const revised = await server.fetch(`/v1/jobs/${first.id}/schedule`, { method: 'PUT', as: 'contractor', body: form, headers: { 'if-match': `"${first.version}"` } });
    expect([revised.status, ((await revised.json()) as Job).revision]).toEqual([200, 2]);
  });

  it('is refused where it is broken off, damaged, of another schema, or holds no wall that can be read', async () => {
    const whole = freeWall('mm').toString();
    const empty = new IfcFile('mm');
    const storey = empty.storey('S1', 0);
    empty.wall({ name: 'Thin', storey, body: empty.shape('Body', 'SweptSolid', empty.extruded(empty.rectangle(4000, 100), 2600)) });
    expect(await problem(server, whole.slice(0, -40))).toMatchObject({ code: 'unreadable', status: 400, errors: [{ sheet: 'house.ifc' }] });
    expect(await problem(server, whole.replace("('IFC4')", "('AP214')"))).toMatchObject({ code: 'unreadable', status: 400 });
    expect(await problem(server, empty.toString())).toMatchObject({
      code: 'invalid',
      status: 422,
      errors: [{ fix: expect.stringContaining('a wall that can be read') }, { column: 'IfcWall', read: expect.stringMatching(/^Thin/), fix: expect.stringContaining('100 mm is no core of the range: 4 (101.6 mm)') }],
    });
  });

  it('is opened no longer when whoever sent it has gone, and nothing is stored', async () => {
    if (!existsSync('/proc/self/stat')) return;
    const points = Array.from({ length: 400_000 }, (_, index) => `#${1_000 + index}=IFCCARTESIANPOINT((${index}.5,0.25,1.125));`).join('\n');
    const big = freeWall('mm').toString().replace('ENDSEC;\nEND-ISO', () => `${points}\nENDSEC;\nEND-ISO`);
    const before = (await itemsOf<Job>(server, 'contractor', '/v1/jobs')).length;
    const leaving = new AbortController();
    const gone = upload(server, big, 'big.ifc', leaving.signal).then(() => 'answered', () => 'gone');
    for (let look = 0; look < 2_000 && openModels(server.pid) === 0; look += 1) await sleep(10);
    expect(openModels(server.pid)).toBe(1);
    leaving.abort();
    expect(await gone).toBe('gone');
    for (let look = 0; look < 2_000 && openModels(server.pid) > 0; look += 1) await sleep(10);
    expect(openModels(server.pid)).toBe(0);
    await sleep(1_000);
    expect((await itemsOf<Job>(server, 'contractor', '/v1/jobs')).length).toBe(before);
  });
});

it('a model that needs more memory than is configured is refused, and the next request is answered', async () => {
  const small = await startServer({ IFC_MEMORY_MB: '64' });
  try {
    // The parser alone takes more than 64 MB.
    expect(await problem(small, freeWall('mm').toString())).toMatchObject({ code: 'too-large', status: 413, detail: 'The model needs more than the 64 MB it may need.' });
    expect((await small.fetch('/health/ready')).status).toBe(200);
  } finally {
    await small.stop();
  }
}, 180_000);
