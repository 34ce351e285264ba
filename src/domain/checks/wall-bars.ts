import { barsSite, beyondSite, unclearSite, type BarsSite } from './wall-bars-site.js';
import { finding, type Finding } from '../evidence/finding.js';
import { readWall, type StoreyToRead } from './wall-bars-of-wall.js';
import { wallsInside } from './walls-inside.js';
import type { CheckReport } from './check-report.js';
import type { JobCheck } from './job-check.js';
import type { LaidStorey, LaidWall } from '../takeoff/laid.js';
import type { NotRead, WallBars } from './wall-bars-read.js';
import type { Schedule, Storey } from '../schedule/schedule.js';

const SOURCE = { 'irc-2018': 'irc-2018 R404.1.2, R608.6', 'obc-2024': 'obc-2024 9.15.4.5, 9.20.17' } as const;

/**
 * Vertical and horizontal bars of every wall by the prescriptive tables of the site's code, by storey and core.
 *
 * Below grade by backfill, soil and height, above grade by wind, exposure and height; nothing lies between rows. What the code's tables do not
 * cover is a hold for a licensed engineer; what is not stated, or not at hand of the tables, is the note `bars-not-checked`, once a storey.
 * A wall belongs to the core at its foot and is read as if it were of its thinnest core.
 */
export const wallBars: JobCheck = ({ schedule, range, takeoff }) => {
  const site = barsSite(schedule);
  const above = new Map(takeoff.laid.storeys.flatMap(({ grade, walls }) => (grade === 'above' ? walls.map((wall) => [`${wall.storey}/${wall.mark}`, wall] as const) : [])));
  const wallAbove: StoreyToRead['wallAbove'] = (storey, mark) => above.get(`${storey}/${mark}`);
  const known = new Map<string, WallBars>();
  return takeoff.laid.storeys.flatMap((storey) => {
    const asked: StoreyToRead = { storey, wallAbove, site, known, inside: wallsInside(storey), tolerance: range.parameters.stackTolerance, soilBelow: schedule.storeys.some(({ grade }) => grade === 'below') };
    return storeyReports(asked, site, storeysAboveGrade(schedule, storey.id));
  });
};

/** Storeys above grade from the lowest up to the top of the pile that this one stands in. */
function storeysAboveGrade({ storeys }: Pick<Schedule, 'storeys'>, id: string): number {
  const by = new Map(storeys.map((storey) => [storey.id, storey]));
  const under = (storey: Storey | undefined): number => (storey === undefined ? 0 : (storey.grade === 'above' ? 1 : 0) + under(by.get(storey.on ?? '')));
  const stands = (storey: Storey | undefined): boolean => storey !== undefined && (storey.id === id || stands(by.get(storey.on ?? '')));
  return Math.max(0, ...storeys.filter(stands).map(under));
}

function storeyReports(asked: StoreyToRead, site: BarsSite, above: number): readonly CheckReport[] {
  const { storey } = asked;
  const beyond = beyondSite(site, above).map((found) => ({ ...found, storey: storey.id }));
  const cores = [...new Set(storey.walls.map(({ core }) => core.code))];
  const read = storey.walls.map((wall) => ({ wall, bars: readWall(wall, asked) }));
  const unread = notChecked(storey.id, read, unclearSite(site));
  return cores.map((core, index) => {
    const first = index === 0 ? [...beyond, ...unread] : [];
    return report(storey, core, read.filter(({ wall }) => wall.core.code === core), site, beyond.length > 0, first);
  });
}

interface Read {
  readonly wall: LaidWall;
  readonly bars: WallBars;
}

/** No bars are named where the site puts the whole storey beyond the tables. */
const BEYOND_SITE: CheckReport['results'] = { status: 'beyond the tables' };

function report(storey: LaidStorey, core: string, read: readonly Read[], site: BarsSite, held: boolean, first: readonly Finding[]): CheckReport {
  const worst = read.reduce<WallBars | null>((most, { bars }) => (most === null || bars.steel > most.steel ? bars : most), null);
  const written = { check: 'wall-bars', storey: storey.id, core };
  const code = { code: site.code, grade: storey.grade };
  if (held || worst === null) return { ...written, results: { ...code, ...BEYOND_SITE }, places: [], trace: [], source: SOURCE[site.code], defaults: site.defaults, notes: [], findings: first };
  const answers = new Set(read.map(({ bars }) => JSON.stringify(bars.results)));
  return {
    ...written,
    results: { ...code, ...worst.results },
    places: answers.size === 1 ? [] : read.map(({ wall, bars }) => ({ wall: wall.mark, course: null, atMm: null, results: bars.results })),
    trace: worst.trace,
    source: worst.source,
    defaults: [...new Set([...(worst.steel < 0 ? site.defaults.filter((words) => words.startsWith('code')) : site.defaults), ...read.flatMap(({ bars }) => bars.defaults)])],
    notes: [...new Set([worst, ...read.map(({ bars }) => bars)].flatMap(({ notes }) => notes))],
    findings: [...first, ...together(storey.id, read)],
  };
}

/** One finding for all walls that have the same to say. */
function together(storey: string, read: readonly Read[]): readonly Finding[] {
  const alike = new Map<string, { readonly found: Finding; readonly walls: string[] }>();
  for (const { wall, bars } of read)
    for (const found of bars.findings) {
      const key = JSON.stringify([found.code, found.numbers]);
      const known = alike.get(key);
      if (known === undefined) alike.set(key, { found, walls: [wall.mark] });
      else known.walls.push(wall.mark);
    }
  return [...alike.values()].map(({ found: { code, numbers, source }, walls }) => finding(code, { storey, walls, numbers, source }));
}

const REASONS = ['missing', 'notAtHand', 'inside', 'gable'] as const satisfies readonly (keyof NotRead)[];

/** What kept walls from being read, and what of the site is unclear, said once for the storey. */
function notChecked(storey: string, read: readonly Read[], unclear: string | null): readonly Finding[] {
  const unread = read.filter(({ bars }) => Object.keys(bars.notRead).length > 0);
  if (unread.length === 0 && unclear === null) return [];
  const numbers = REASONS.flatMap((reason) => {
    const stated = reason === 'missing' && unclear !== null ? [unclear] : [];
    const words = [...new Set([...unread.flatMap(({ bars }) => bars.notRead[reason] ?? []), ...stated])];
    return words.length === 0 ? [] : [[reason, words.join('; ')] as const];
  });
  const walls = unread.length === read.length || unclear !== null ? [] : unread.map(({ wall }) => wall.mark);
  return [finding('bars-not-checked', { storey, walls, numbers: Object.fromEntries(numbers), source: unread[0]?.bars.source ?? 'irc-2018 R608.2' })];
}
