import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { pdfPages, pdfPageSizes } from '../support/pdf-text.js';
import { startServer, type DemoPerson, type TestServer } from '../support/server.js';
import { call, itemsOf, submitted, type Answer, type Job } from './api.js';
import { plan, shed, triangle } from './schedules.js';

interface Item {
  readonly id: string;
  readonly n: number;
  readonly phase: string;
  readonly rule: string;
  readonly storey: string;
  readonly wall: string | null;
  readonly course: number | null;
  readonly text: string;
  readonly counts: readonly { readonly sku: string; readonly quantity: number; readonly unit: string; readonly atMm: readonly number[] }[];
  readonly tick: { readonly by: string; readonly at: string; readonly note: string | null; readonly photo: string | null } | null;
}

interface Standing {
  readonly revision: number;
  readonly version: number;
  readonly readyToPour: boolean;
  readonly ticked: number;
  readonly total: number;
  readonly openHolds: readonly { readonly number: string }[];
}

interface Checklist extends Standing {
  readonly items: readonly Item[];
  readonly next: string | null;
}

type Ticked = Item & Standing & { readonly code?: string; readonly detail?: string };

/** One dot, whole and sound. */
const DOT = Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==', 'base64');

/** The shed with a window in wall A. */
const withWindow = () => {
  const house = shed();
  return { ...house, openings: [...house.openings, { mark: 'W1', wall: 'A', at: 300, sill: 32, width: 48, height: 48, lining: 'buck', measured: 'concrete' }] };
};

let server: TestServer;

beforeAll(async () => {
  server = await startServer({ THREADS: '2' });
});

afterAll(async () => {
  await server.stop();
});

const pathOf = (job: Job): string => `/v1/jobs/${job.id}/checklist`;
const jobNow = async ({ id }: Job): Promise<Job> => (await call<Job>(server, 'contractor', 'GET', `/v1/jobs/${id}`)).body;
const page = async (job: Job, query = 'first=200'): Promise<Checklist> => (await call<Checklist>(server, 'contractor', 'GET', `${pathOf(job)}?${query}`)).body;

async function wholeList(job: Job): Promise<Checklist> {
  const first = await page(job);
  const items = [...first.items];
  for (let { next } = first; next !== null; ) {
    const more = await page(job, `first=200&after=${next}`);
    items.push(...more.items);
    ({ next } = more);
  }
  return { ...first, items, next: null };
}

const tick = (as: DemoPerson, job: Job, { id }: Item, body?: object, headers: Record<string, string> = {}): Promise<Answer<Ticked>> =>
  call<Ticked>(server, as, 'POST', `${pathOf(job)}/${id}/tick`, body, headers);
const untick = (as: DemoPerson, job: Job, { id }: Item, body?: object): Promise<Answer<Ticked>> =>
  call<Ticked>(server, as, 'DELETE', `${pathOf(job)}/${id}/tick`, body);

async function withPhoto(job: Job, { id }: Item, bytes: Uint8Array, note?: string): Promise<{ status: number; body: Ticked }> {
  const form = new FormData();
  if (note !== undefined) form.append('note', note);
  form.append('photo', new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' }), '../seam.jpg');
  const response = await server.fetch(`${pathOf(job)}/${id}/tick`, { method: 'POST', body: form, as: 'contractor' });
  return { status: response.status, body: (await response.json()) as Ticked };
}

async function tickAll(job: Job, items: readonly Item[]): Promise<void> {
  for (const item of items) {
    const { status, text } = await tick('contractor', job, item);
    if (status !== 200) throw new Error(`${item.rule}: ${status} ${text}`);
  }
}

async function revised(job: Job, schedule: object): Promise<Job> {
  const { version } = await jobNow(job);
  const answer = await call<Job>(server, 'contractor', 'PUT', `/v1/jobs/${job.id}/schedule`, schedule, { 'if-match': `"${version}"` });
  expect(answer.status).toBe(200);
  return answer.body;
}

const eventsOf = async (job: Job): Promise<readonly { kind: string; by: string | null; data: Record<string, unknown> }[]> =>
  itemsOf(server, 'support', `/v1/jobs/${job.id}/history?first=200`);
const ready = async (job: Job): Promise<readonly string[]> =>
  (await eventsOf(job)).map(({ kind }) => kind).filter((kind) => kind === 'job.ready-to-pour' || kind === 'job.not-ready');

describe('GET /v1/jobs/{id}/checklist', () => {
  it('is the materials of the take-off to the piece, place by place, and numbered as the crew walks', async () => {
    const job = await submitted(server, shed());
    const { items, ticked, total, readyToPour, openHolds, revision, version } = await wholeList(job);
    expect([ticked, total, readyToPour, openHolds, revision, version]).toEqual([0, items.length, false, [], 1, job.version]);
    expect(items.map(({ n }) => n)).toEqual(items.map((_, index) => index + 1));
    expect(new Set(items.map(({ id }) => id)).size).toBe(items.length);
    const { body } = await call<{ materials: { sku: string; because: { rule: string; storey: string; wall: string; course: number; quantity: number; atMm?: number[] }[] }[] }>(
      server, 'contractor', 'GET', `/v1/jobs/${job.id}/takeoff`);
    const because = body.materials.flatMap(({ sku, because: causes }) => causes.map(({ rule, storey, wall, course, quantity, atMm = [] }) => [rule, storey, wall, course, sku, quantity, ...atMm].join(' ')));
    const listed = items.flatMap(({ rule, storey, wall, course, counts }) => counts.map(({ sku, quantity, atMm }) => [rule, storey, wall, course, sku, quantity, ...atMm].join(' ')));
    expect(listed.sort()).toEqual(because.sort());
    expect(listed.length).toBeGreaterThan(20);
  });

  it('goes page by page and carries the version of the job as its tag', async () => {
    const job = await submitted(server, shed());
    const all = await wholeList(job);
    const first = await call<Checklist>(server, 'contractor', 'GET', `${pathOf(job)}?first=7`);
    const second = await page(job, `first=7&after=${first.body.next}`);
    expect([...first.body.items, ...second.items]).toEqual(all.items.slice(0, 14));
    expect([first.headers.get('etag'), first.headers.get('link')]).toEqual([`"${job.version}"`, expect.stringContaining('rel="next"')]);
  });
});

describe('a tick', () => {
  it('says who, when and with which note; a second one is refused and names who was first; it can be taken back and made again', async () => {
    const job = await submitted(server, shed());
    const [item, other] = (await page(job)).items as [Item, Item];
    const answer = await tick('contractor', job, item, { note: '  Two dowels moved. ' });
    expect([answer.status, answer.body.tick]).toEqual([200, { by: 'Ines Calder', at: expect.stringMatching(/^20.*Z$/), note: 'Two dowels moved.', photo: null }]);
    expect([answer.body.ticked, answer.body.id, answer.body.text]).toEqual([1, item.id, item.text]);
    const again = await tick('support', job, item);
    expect([again.status, again.body.code, again.body.detail]).toEqual([409, 'illegal-move', expect.stringContaining('Ines Calder')]);
    expect((await untick('support', job, other)).body.code).toBe('illegal-move');
    const back = await untick('support', job, item, { note: 'Not yet.' });
    expect([back.status, back.body.tick, back.body.ticked]).toEqual([200, null, 0]);
    expect((await tick('support', job, item)).body.tick).toMatchObject({ by: 'Oda Lindqvist', note: null });
    const kept = (await eventsOf(job)).filter(({ kind }) => kind.startsWith('checklist.'));
    expect(kept.map(({ kind, by, data }) => [kind, by, data['note'], data['item']])).toEqual([
      ['checklist.ticked', 'Ines Calder', 'Two dowels moved.', item.id],
      ['checklist.unticked', 'Oda Lindqvist', 'Not yet.', item.id],
      ['checklist.ticked', 'Oda Lindqvist', null, item.id],
    ]);
  });

  it('of another organisation is not there, of no item neither; a strange field is named', async () => {
    const job = await submitted(server, shed());
    const [item] = (await page(job)).items as [Item];
    for (const answer of [
      await tick('neighbour', job, item),
      await untick('neighbour', job, item),
      await call<Ticked>(server, 'neighbour', 'GET', pathOf(job)),
      await tick('contractor', job, { ...item, id: job.id }),
      await tick('contractor', job, { ...item, id: 'dowels' }),
      await call<Ticked>(server, 'contractor', 'GET', `${pathOf(job)}/${item.id}/photo`),
    ])
      expect([answer.status, answer.body.code]).toEqual([404, 'not-found']);
    const strange = await tick('contractor', job, item, { remark: 'x' });
    expect([strange.status, strange.body.code]).toEqual([422, 'invalid']);
    expect((await page(job)).ticked).toBe(0);
  });

  it('is carried out once for one key, and not on a version that is gone', async () => {
    const job = await submitted(server, shed());
    const [item, other] = (await page(job)).items as [Item, Item];
    const key = { 'idempotency-key': 'tick-of-tuesday' };
    const first = await tick('contractor', job, item, { note: 'once' }, key);
    const again = await tick('contractor', job, item, { note: 'once' }, key);
    expect([again.status, again.text]).toEqual([200, first.text]);
    const stale = await tick('contractor', job, other, undefined, { 'if-match': `"${job.version + 1}"` });
    expect([stale.status, stale.body.code]).toEqual([412, 'stale']);
    expect((await tick('contractor', job, other, undefined, { 'if-match': `"${job.version}"` })).status).toBe(200);
  });

  it('keeps a photo as it was sent, and hands it out as a file to nobody but those who may see the job', async () => {
    const job = await submitted(server, shed());
    const [item] = (await page(job)).items as [Item];
    const { status, body } = await withPhoto(job, item, DOT, 'Seam taped.');
    expect([status, body.tick]).toEqual([200, expect.objectContaining({ note: 'Seam taped.', photo: `${pathOf(job)}/${item.id}/photo` })]);
    const response = await server.fetch(body.tick!.photo!, { as: 'sales' });
    const headers = ['content-type', 'content-disposition', 'cache-control', 'x-content-type-options'].map((name) => response.headers.get(name));
    expect(headers).toEqual(['image/png', 'attachment; filename="checklist-photo.png"', 'private, no-store', 'nosniff']);
    expect(Buffer.from(await response.arrayBuffer()).equals(DOT)).toBe(true);
    expect((await server.fetch(body.tick!.photo!, { as: 'neighbour' })).status).toBe(404);
  });

  it.each<{ what: string; bytes: () => Buffer; status: number; code: string }>([
    { what: 'a text that calls itself a picture', bytes: () => Buffer.from('<svg onload="x"/>'.repeat(9)), status: 422, code: 'invalid' },
    { what: 'a picture that breaks off', bytes: () => DOT.subarray(0, 50), status: 422, code: 'invalid' },
    { what: 'a picture of 60,000 by 60,000 pixels in 70 bytes', bytes: () => { const bomb = Buffer.from(DOT); bomb.writeUInt32BE(60_000, 16); bomb.writeUInt32BE(60_000, 20); return bomb; }, status: 422, code: 'invalid' },
    { what: 'more than 10 MiB', bytes: () => Buffer.concat([DOT, Buffer.alloc(10 * 1_048_576)]), status: 413, code: 'too-large' },
  ])('is not taken with $what for a photo', async ({ bytes, status, code }) => {
    const job = await submitted(server, shed());
    const [item] = (await page(job)).items as [Item];
    const answer = await withPhoto(job, item, bytes());
    expect([answer.status, answer.body.code]).toEqual([status, code]);
    expect((await page(job)).ticked).toBe(0);
  });
});

describe('a job', () => {
  it('is ready to pour only with every item ticked; a revision unticks what it changed, and what comes back is ticked again by a person alone', async () => {
    const job = await submitted(server, shed());
    const { items } = await wholeList(job);
    await tickAll(job, items.slice(1));
    expect((await jobNow(job)).state).toBe('measured');
    const last = await tick('contractor', job, items[0]!);
    expect([last.body.readyToPour, last.body.ticked, last.body.total]).toEqual([true, items.length, items.length]);
    expect((await jobNow(job)).state).toBe('ready-to-pour');

    for (const path of ['takeoff', 'findings', 'checks', 'drawings/plan/S1', 'schedule'])
      expect([path, (await server.fetch(`/v1/jobs/${job.id}/${path}`, { as: 'contractor' })).status]).toEqual([path, 200]);
    expect((await call(server, 'contractor', 'POST', `/v1/jobs/${job.id}/quotes`)).status).toBe(201);
    expect((await call(server, 'contractor', 'GET', `/v1/jobs/${job.id}/events`)).text).toContain('"stage":"measured"');

    expect((await untick('contractor', job, items[3]!)).body.readyToPour).toBe(false);
    expect((await jobNow(job)).state).toBe('measured');
    await tick('contractor', job, items[3]!);

    const changed = await revised(job, withWindow());
    expect([changed.state, changed.revision]).toEqual(['measured', 2]);
    const after = await wholeList(job);
    const open = after.items.filter((item) => item.tick === null);
    // The legs of the ring change ends with the window: in the other walls only what stands elsewhere along them is open again.
    const elsewhere = open.filter(({ wall }) => wall !== 'A' && wall !== null);
    expect([...new Set(elsewhere.map(({ rule }) => rule))].sort()).toEqual(['short-piece', 'top-course-hold-down']);
    expect(open.length).toBeLessThan(after.total / 2);
    expect(open.map(({ rule }) => rule)).toEqual(expect.arrayContaining(['buck-bracing', 'sill-pour', 'bucks']));
    const was = new Map(items.map(({ id, text, counts }) => [id, JSON.stringify([text, counts])]));
    // Bars, braces and bucks are ticked for the storey in one go: the window has others, whatever their item says.
    const unseen = ['bars-inspected', 'braces-anchored', 'bucks'];
    for (const { id, rule, text, counts, tick: ticked } of after.items)
      expect([id, ticked !== null]).toEqual([id, was.get(id) === JSON.stringify([text, counts]) && !unseen.includes(rule)]);

    expect((await revised(job, shed())).state).toBe('measured');
    const back = await wholeList(job);
    const stillOpen = back.items.filter((item) => item.tick === null);
    expect(stillOpen.map(({ id }) => id)).toEqual(items.filter(({ id }) => after.items.some((item) => item.id === id && item.tick === null) || !after.items.some((item) => item.id === id)).map(({ id }) => id));
    const fallen = (await eventsOf(job)).filter(({ kind, data }) => kind === 'checklist.unticked' && data['because'] === 'revised');
    expect(fallen.map(({ data }) => data['item']).sort()).toEqual(stillOpen.map(({ id }) => id).sort());
    await tickAll(job, stillOpen);
    expect((await jobNow(job)).state).toBe('ready-to-pour');
    expect(await ready(job)).toEqual(['job.ready-to-pour', 'job.not-ready', 'job.ready-to-pour', 'job.not-ready', 'job.ready-to-pour']);
    const because = (await eventsOf(job)).filter(({ kind }) => kind === 'job.not-ready').map(({ data }) => data['because']);
    expect(because).toEqual(['item-unticked', 'revised']);
  });

  it('with an open hold is not ready though all is ticked; the answer makes it ready, and the question opened again does not leave it so', async () => {
    const job = await submitted(server, triangle());
    const { items, openHolds } = await wholeList(job);
    const [ticket] = await itemsOf<{ id: string; number: string }>(server, 'support', `/v1/tickets?job=${job.id}`);
    expect(openHolds.map(({ number }) => number)).toEqual([ticket!.number]);
    await tickAll(job, items);
    expect([(await jobNow(job)).state, (await page(job)).ticked]).toEqual(['measured', items.length]);
    const move = (name: string, as: DemoPerson) => call(server, as, 'POST', `/v1/tickets/${ticket!.id}/${name}`, { text: 'Form it on site.' });
    await move('reply', 'support');
    expect([(await jobNow(job)).state, (await page(job)).openHolds]).toEqual(['ready-to-pour', []]);
    await move('reopen', 'contractor');
    expect((await jobNow(job)).state).toBe('measured');
    expect(await ready(job)).toEqual(['job.ready-to-pour', 'job.not-ready']);
  });

  it('becomes ready once, however many people tick the last items at the same moment', async () => {
    const job = await submitted(server, shed());
    const { items } = await wholeList(job);
    await tickAll(job, items.slice(6));
    const people: readonly DemoPerson[] = ['contractor', 'support', 'sales'];
    const answers = await Promise.all(items.slice(0, 6).flatMap((item) => people.map((person) => tick(person, job, item))));
    expect(answers.map(({ status }) => status).sort()).toEqual([...Array.from({ length: 6 }, () => 200), ...Array.from({ length: 12 }, () => 409)]);
    expect((await jobNow(job)).state).toBe('ready-to-pour');
    expect(await ready(job)).toEqual(['job.ready-to-pour']);
  });

  it('that is being measured anew takes no tick', async () => {
    const job = await submitted(server, shed());
    const [item] = (await page(job)).items as [Item];
    const long = { ...plan('Long', []), storeys: [{ id: 'S1', height: '8\'-0"', grade: 'above', storeyAbove: false, closed: false }],
      walls: Array.from({ length: 120 }, (_, index) => ({ mark: `W${index}`, storey: 'S1', core: '6', from: [0, index * 60], to: [480, index * 60] })) };
    await call(server, 'contractor', 'PUT', `/v1/jobs/${job.id}/schedule`, long, { 'if-match': `"${job.version}"`, prefer: 'respond-async' });
    const refused = await tick('contractor', job, item);
    expect([refused.status, refused.body.code]).toEqual([409, 'already-running']);
    for (let rounds = 0; (await jobNow(job)).state !== 'measured' && rounds < 300; rounds += 1) await sleep(100);
    expect((await page(job)).total).toBeGreaterThan(120 * 6);
  });
});

describe('the printed checklist', () => {
  async function printed(job: Job, query = ''): Promise<Buffer> {
    const response = await server.fetch(`${pathOf(job)}${query}`, { as: 'contractor', headers: { accept: 'application/pdf' } });
    expect([response.status, response.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    return Buffer.from(await response.arrayBuffer());
  }

  it('says what every item says, who ticked it on which day, what holds the pour, and on every page which job and page it is', async () => {
    const job = await submitted(server, triangle());
    const { items, total, openHolds } = await wholeList(job);
    const ticked = await tick('contractor', job, items[1]!, { note: 'Packed with slate.' });
    const bytes = await printed(job);
    const pages = pdfPages(bytes);
    const text = pages.join(' ');
    for (const { text: words } of items) expect(text).toContain(words.replace(/\s+/g, ' ').slice(0, 40));
    for (const [rule, course] of items.filter(({ wall }) => wall === 'A').map(({ rule: name, course: n }) => [name, n] as const))
      if (course !== null) expect([rule, text.includes(`Course ${course}`)]).toEqual([rule, true]);
    const day = new Intl.DateTimeFormat('en-CA', { timeZone: 'America/Chicago' }).format(new Date(ticked.body.tick!.at));
    expect(text).toContain(`Ines Calder, ${day}`);
    expect(text).toContain('Ines Calder: Packed with slate.');
    expect(text).toContain(`Not ready to pour: 1 of ${total} items ticked. Open question ${openHolds[0]!.number} holds the pour`);
    // Decision 3: the axes of two walls meet half the form's thickness in from the foam; a buck set out from the corner would stand off by that.
    expect(text).toContain('at a square outside corner half the thickness of the form in from the outside of the foam');
    expect(text).toContain('Nobody stands under or beside a wall on its low side while it is being filled.');
    pages.forEach((each, index) => expect(each).toMatch(new RegExp(`job ${job.number}, revision 1, Heron Forms \\(demo\\) Page ${index + 1} of ${pages.length}$`)));
    expect(pdfPageSizes(bytes)[0]).toEqual([612, 792]);
  });

  it('is of one storey where one is asked for, on A4 with metres where the job is drawn in them', async () => {
    const inches = shed('Metric');
    const mm = (value: number): number => Math.round(value * 25.4);
    const metric = { ...inches, units: 'mm', storeys: [{ ...inches.storeys[0], height: '2438 mm' }],
      walls: inches.walls.map((wall) => ({ ...wall, from: [mm(wall.from![0]), mm(wall.from![1])], to: [mm(wall.to![0]), mm(wall.to![1])] })), openings: [] };
    const job = await submitted(server, metric);
    const bytes = await printed(job, '?storey=S1');
    expect(pdfPageSizes(bytes)[0]).toEqual([595.28, 841.89]);
    expect(pdfPages(bytes).join(' ')).toMatch(/[\d.]+ ft \([\d.]+ m\) FOAM-24/);
    expect((await server.fetch(`${pathOf(job)}?storey=S9`, { as: 'contractor', headers: { accept: 'application/pdf' } })).status).toBe(404);
    expect((await page(job, 'storey=S9')).items).toEqual([]);
    expect((await server.fetch(pathOf(job), { as: 'contractor', headers: { accept: 'text/csv' } })).status).toBe(406);
  });
});

describe('GraphQL', () => {
  const asked = async (as: DemoPerson, query: string) =>
    (await call<{ data: Record<string, unknown>; errors?: { extensions: { code: string } }[] }>(server, as, 'POST', '/graphql', { query })).body;

  it('ticks, unticks and lists as REST does', async () => {
    const job = await submitted(server, shed());
    const [item] = (await page(job)).items as [Item];
    const of = `job: "${job.id}", item: "${item.id}"`;
    const made = await asked('contractor', `mutation { tickChecklistItem(${of}, note: "By hand.") { id ticked readyToPour tick { by note photo } } }`);
    expect(made.data['tickChecklistItem']).toEqual({ id: item.id, ticked: 1, readyToPour: false, tick: { by: 'Ines Calder', note: 'By hand.', photo: null } });
    expect((await asked('support', `mutation { tickChecklistItem(${of}) { id } }`)).errors?.[0]?.extensions.code).toBe('illegal-move');
    expect((await asked('neighbour', `mutation { tickChecklistItem(${of}) { id } }`)).errors?.[0]?.extensions.code).toBe('not-found');
    const fields = 'id n phase rule storey wall course text counts { sku quantity unit atMm } basis tick { by at note photo }';
    const graph = await asked('contractor', `{ job(id: "${job.id}") { checklist(first: 5) { items { ${fields} } next revision version readyToPour ticked total openHolds { ticket number question } } } }`);
    expect(graph.data['job']).toEqual({ checklist: await page(job, 'first=5') });
    const back = await asked('contractor', `mutation { untickChecklistItem(${of}) { ticked tick { by } } }`);
    expect(back.data['untickChecklistItem']).toEqual({ ticked: 0, tick: null });
  });
});
