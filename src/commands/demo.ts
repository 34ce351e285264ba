import { mkdir, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { isDeepStrictEqual } from 'node:util';
import type { ChecklistAnswer } from '../modules/checklists/checklists.schemas.js';
import type { JobAnswer } from '../modules/jobs/jobs.schemas.js';
import type { BecauseAnswer, QuoteAnswer } from '../modules/quotes/quotes.schemas.js';
import type { FindingAnswer } from '../modules/takeoffs/findings.schemas.js';
import type { BracingAnswer } from '../modules/takeoffs/bracing.schemas.js';
import type { CheckAnswer, TakeoffAnswer } from '../modules/takeoffs/takeoffs.schemas.js';
import type { TicketAnswer } from '../modules/tickets/tickets.schemas.js';
import { PACKAGE_ROOT } from '../platform/config/package-root.js';
import { stopAsked } from '../platform/process/stop-asked.js';
import { bracingText, checklistText, checksText } from './demo/checks-text.js';
import { DemoClient } from './demo/demo-client.js';
import { startDemoServer, type DemoServer } from './demo/demo-server.js';
import { becauseText, findingsText, quoteText, takeoffText, ticketsText } from './demo/tables.js';

const SAMPLES = join(PACKAGE_ROOT, 'shared', 'samples');
const OUT = resolve('out');
const HOUSE = 'mill-lane-house';

type List<T> = { readonly items: readonly T[] };
type Refused = { readonly code: string; readonly detail: string };

const say = (text: string): void => void process.stdout.write(`${text}\n`);
const head = (text: string): void => say(`\n${text}\n${'='.repeat(text.length)}`);

async function shown(client: DemoClient, job: JobAnswer): Promise<TakeoffAnswer> {
  const takeoff = await client.get<TakeoffAnswer>('contractor', `/v1/jobs/${job.id}/takeoff`);
  head(`${job.number} ${job.name}`);
  say(takeoffText(takeoff));
  const findings = await client.get<List<FindingAnswer>>('contractor', `/v1/jobs/${job.id}/findings?first=200`);
  say(`\nFindings\n\n${findingsText(findings.items)}`);
  say(`\nTickets\n\n${ticketsText(await ticketsOf(client, job))}`);
  const checks = await client.get<List<CheckAnswer>>('contractor', `/v1/jobs/${job.id}/checks?first=200`);
  say(`\nChecks\n\n${checksText(checks.items)}`);
  const bracing = await client.get<List<BracingAnswer>>('contractor', `/v1/jobs/${job.id}/bracing`);
  say(`\nBraces, all on the inside\n\n${bracingText(bracing.items)}`);
  return takeoff;
}

const ticketsOf = async (client: DemoClient, job: JobAnswer): Promise<readonly TicketAnswer[]> =>
  (await client.get<List<TicketAnswer>>('support', `/v1/tickets?job=${job.id}&first=200`)).items;

/** Draft, issue, paper, signature; where open questions stand in the way the desk answers them and a new quote is signed. */
async function quoted(client: DemoClient, job: JobAnswer, name: string): Promise<void> {
  const quote = await issued(client, job, name);
  const { status, body } = await client.ask<Refused>('contractor', 'POST', `/v1/quotes/${quote.id}/accept`);
  if (status === 200) return say(`  ${quote.number} is accepted.`);
  say(`  ${quote.number} cannot be accepted yet: ${body.code}. ${body.detail}`);
  await answered(client, job);
  await client.post<QuoteAnswer>('sales', `/v1/quotes/${quote.id}/withdraw`);
  say(`  ${quote.number} is withdrawn; its paper could not be signed. A new quote takes its place.`);
  const next = await issued(client, job, name);
  const { number, state } = await client.post<QuoteAnswer>('contractor', `/v1/quotes/${next.id}/accept`);
  say(`  ${number} is ${state}.`);
}

async function issued(client: DemoClient, job: JobAnswer, name: string): Promise<QuoteAnswer> {
  const draft = await client.post<QuoteAnswer>('contractor', `/v1/jobs/${job.id}/quotes`);
  const quote = await client.post<QuoteAnswer>('sales', `/v1/quotes/${draft.id}/issue`);
  const because = await client.get<BecauseAnswer>('contractor', `/v1/quotes/${quote.id}/lines/1/because`);
  say(`\nQuote\n\n${quoteText(quote)}\n`);
  say(`  why line 1 (/v1/quotes/${quote.id}/lines/1/because):\n${becauseText(because)}`);
  await written(`${name}.quote.pdf`, await client.bytes('contractor', `/v1/quotes/${quote.id}`, 'application/pdf'));
  return quote;
}

/** The desk answers every question that holds the quote. */
async function answered(client: DemoClient, job: JobAnswer): Promise<void> {
  for (const ticket of await ticketsOf(client, job)) {
    if (ticket.severity !== 'hold') continue;
    const text = deskAnswer(ticket);
    await client.post('support', `/v1/tickets/${ticket.id}/claim`);
    await client.post('support', `/v1/tickets/${ticket.id}/reply`, { text });
    say(`  ${ticket.number} is claimed and answered by the desk: ${text}`);
  }
}

/** What the invented desk says, by the question's code; a pressure over the rating is never waved through. */
function deskAnswer({ findings: [first] }: TicketAnswer): string {
  if (first?.code === 'pressure-over-rating') {
    const limit = first.numbers['riseLimitFtPerH'];
    const rate = typeof limit === 'number' ? `at no more than ${limit.toFixed(1)} ft/h` : 'at the rate the forms are rated for';
    return `Pour ${rate}, in lifts; at the planned rate these forms must not be filled. The pour foreman has agreed to it in writing.`;
  }
  if (first?.code === 'turn-acute' || first?.code === 'turn-not-made') {
    return 'No unit makes this corner: mitre straight forms on site to our drawing, strap both faces each course, brace it outside its full height.';
  }
  return 'Hold the work at this place until our drawing has arrived, and build it as drawn.';
}

async function drawn(client: DemoClient, job: JobAnswer, takeoff: TakeoffAnswer, name: string): Promise<void> {
  const storeys = [...new Set(takeoff.walls.map(({ storey }) => storey))].map((storey) => ['plan', storey] as const);
  const walls = takeoff.walls.slice(0, 1).map(({ mark }) => ['elevation', mark] as const);
  for (const [kind, ref] of [...storeys, ...walls, ...oneOfEach(takeoff)]) {
    const path = `/v1/jobs/${job.id}/drawings/${kind}/${encodeURIComponent(ref)}`;
    await written(`${name}.${kind}-${ref}.svg`, await client.bytes('contractor', path, 'image/svg+xml'));
    await written(`${name}.${kind}-${ref}.png`, await client.bytes('contractor', path, 'image/png'));
  }
}

/** The pre-pour checklist, as it is printed for the site. */
async function listed(client: DemoClient, job: JobAnswer, name: string): Promise<void> {
  const path = `/v1/jobs/${job.id}/checklist`;
  say(`\nPre-pour checklist\n\n${checklistText(await client.get<ChecklistAnswer>('contractor', path))}`);
  await written(`${name}.checklist.pdf`, await client.bytes('contractor', path, 'application/pdf'));
}

/** The first corner of every turn and the first tee of every angle. */
function oneOfEach(takeoff: TakeoffAnswer): (readonly ['junction', string])[] {
  const first = new Map<string, string>();
  for (const { id, kind, turn } of takeoff.junctions) {
    const like = `${kind} ${Math.abs(turn).toFixed(1)}`;
    if ((kind === 'corner' || kind === 'tee') && !first.has(like)) first.set(like, id);
  }
  return [...first.values()].map((id) => ['junction', id] as const);
}

async function written(name: string, content: Buffer): Promise<void> {
  await mkdir(OUT, { recursive: true });
  await writeFile(join(OUT, name), content);
  say(`  written: ${join('out', name)}, ${content.length} bytes`);
}

/** The same house as a workbook and as a folder of CSV files: every course and cut must be the same. */
async function sameFromTables(client: DemoClient, house: JobAnswer): Promise<void> {
  head('The same house from tables');
  const courses = (job: JobAnswer) => client.get<TakeoffAnswer>('contractor', `/v1/jobs/${job.id}/takeoff?detail=courses`);
  const wanted = await courses(house);
  for (const place of [`${HOUSE}.xlsx`, `${HOUSE}-csv`]) {
    const job = await client.submitFiles(join(SAMPLES, place));
    if (!isDeepStrictEqual(await courses(job), wanted))
      throw new Error(`${place} does not give the take-off of ${HOUSE}.schedule.json`);
    say(`  ${place}: ${job.number}, the take-off is identical to that of ${HOUSE}.schedule.json, course by course`);
  }
}

async function tour(server: DemoServer): Promise<void> {
  const client = new DemoClient(server);
  for (const name of ['harbour-store', HOUSE, 'quay-workshop', 'lantern-hall']) {
    const job = await client.submitDocument(join(SAMPLES, `${name}.schedule.json`));
    const takeoff = await shown(client, job);
    await quoted(client, job, name);
    await drawn(client, job, takeoff, name);
    await listed(client, job, name);
    if (name === HOUSE) await sameFromTables(client, job);
  }
}

async function stayed(server: DemoServer): Promise<void> {
  head('Still serving');
  say(
    `  ${server.address}/v1/docs\n  tokens: ${join(server.dataDir, 'demo-tokens.json')}\n  Ctrl-C ends it and removes the folder.`,
  );
  await server.ended;
}

const began = performance.now();
const staying = process.argv.includes('--stay');
const asked = stopAsked(process.env).then((reason) => (staying ? null : `stopped: ${reason}`));
const server = await startDemoServer();

async function shownAndStayed(): Promise<null> {
  say(`Wallcourse demo on ${server.address}, in ${server.dataDir}`);
  await tour(server);
  say(`\nDone in ${((performance.now() - began) / 1000).toFixed(1)} s.`);
  if (staying) await stayed(server);
  return null;
}

const trouble = await Promise.race([shownAndStayed(), asked]).catch((error: unknown) =>
  error instanceof Error ? error.message : String(error),
);
if (trouble !== null) process.stderr.write(`${trouble}\n`);
await server.stop();
process.exit(trouble === null ? 0 : 1);
