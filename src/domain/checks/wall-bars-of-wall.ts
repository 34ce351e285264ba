import { barsAbove } from './wall-bars-above.js';
import { barsBelow } from './wall-bars-below.js';
import { barsMetric } from './wall-bars-metric.js';
import { coresOfWall } from '../takeoff/index.js';
import { feet, inches, NM_PER_METRE, toMm, type Nm } from '../quantity/length.js';
import { beyondTables } from './wall-bars-answer.js';
import { greaterOf, notRead, wallBarsOf, type NotRead, type WallBars, type WallToRead } from './wall-bars-read.js';
import type { BarsSite } from './wall-bars-site.js';
import type { Finding } from '../evidence/finding.js';
import type { Core } from '../range/range.js';
import type { LaidStorey, LaidWall } from '../takeoff/laid.js';

/** A storey and what is known around it. */
export interface StoreyToRead {
  readonly storey: LaidStorey;
  /** A wall of the job by its storey and mark, where that storey stands above grade. */
  readonly wallAbove: (storey: string, mark: string) => LaidWall | undefined;
  readonly site: BarsSite;
  /** Answers by table, core and height: most walls of a job are alike. */
  readonly known: Map<string, WallBars>;
  /** Marks of its walls that stand inside. */
  readonly inside: ReadonlySet<string>;
  /** A stack this much off the asked height counts as that height. */
  readonly tolerance: Nm;
  /** A storey of the job stands below grade: the backfill is against that one. */
  readonly soilBelow: boolean;
}

/** Greatest height of a wall of the tables. irc-2018 R608.2, Tables R404.1.2; obc-2024 9.15.4.5. */
const TALLEST: Readonly<Record<BarsSite['code'], Nm>> = { 'irc-2018': feet(10), 'obc-2024': 3 * NM_PER_METRE };
/** Soil up to here leaves a wall above grade to the tables above grade. irc-2018 R404.1.3.2.1, read in public pages. */
const LOW_FILL = inches(18);

/** What the tables answer for a wall of a storey, by its grade and the site's code. */
export function readWall(wall: LaidWall, asked: StoreyToRead): WallBars {
  const { storey, site, inside } = asked;
  if (inside.has(wall.mark)) return { ...notRead({ inside: '(the tables are of walls with soil or wind against them)' }, site.code), results: { status: 'not checked', stands: 'inside' } };
  const families = [...new Set(coresOfWall(wall).map(({ family }) => family))];
  if (families.length > 1) return wallBarsOf(beyondTables('wall-beyond-tables', { families: families.join(', '), limit: 'one kind of core up the wall' }, site.code));
  const { read, gable } = toRead(wall, asked);
  const below = storey.grade === 'below';
  const bars = below && site.code === 'irc-2018' ? withWallAbove(wall, fromTable(read, asked, true), asked) : lowFill(fromTable(read, asked, below), asked);
  const changes = wall.coreChanges.length === 0 ? [] : [`A wall whose core changes up it is read as if it were of its thinnest core, ${read.core.code}, all the way up, its bars in one line.`];
  const presumed = bars.steel < 0 ? [] : ['The wall is taken to be held by floors or roof at top and foot.'];
  return { ...bars, results: { ...bars.results, ...(wall.coreChanges.length === 0 ? {} : { coreRead: read.core.code }) }, notes: [...bars.notes, ...changes, ...presumed], findings: bars.findings.map((found) => ofThisWall(found, read, below ? site.backfill : null)), notRead: { ...bars.notRead, ...gable } };
}

function fromTable(read: WallToRead, { site, known }: StoreyToRead, below: boolean): WallBars {
  const key = `${below} ${read.core.code} ${read.height}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const bars = site.code === 'obc-2024' ? barsMetric(read, site, below) : below ? barsBelow(read, site) : barsAbove(read, site);
  known.set(key, bars);
  return bars;
}

/** A hold of the wall itself is asked with its core, height and backfill, so that walls alike are one question. */
function ofThisWall(found: Finding, { core, height }: WallToRead, backfill: Nm | null): Finding {
  if (found.code !== 'wall-beyond-tables' && found.code !== 'backfill-beyond-tables') return found;
  const { heightFt: _ft, backfillFt: _fill, heightM: _m, groundM: _ground, ...numbers } = found.numbers;
  return { ...found, numbers: { core: core.code, heightMm: toMm(height), ...(backfill === null ? {} : { backfillMm: toMm(backfill) }), ...numbers } };
}

/** A gable counts with its rise where that is within the tables; beyond, the wall under it is read and the rise is not. */
function toRead(wall: LaidWall, { site, tolerance }: StoreyToRead): { readonly read: WallToRead; readonly gable: NotRead } {
  const level = wall.stack.height - wall.askedHeight > tolerance ? wall.stack.height : wall.askedHeight;
  const whole = level + (wall.gable?.rise ?? 0);
  const over = wall.gable !== null && whole > TALLEST[site.code];
  const core = thinnest(coresOfWall(wall));
  return { read: { mark: wall.mark, core, height: over ? level : whole }, gable: over ? { gable: 'read up to the foot of its slope; no table is for the slope, and what holds the wall there is not stated' } : {} };
}

const thinnest = (cores: readonly Core[]): Core => cores.reduce((thin, core) => (core.width < thin.width ? core : thin));

/** The greater of the soil's table and that of the concrete that stands on the wall, where it is known. */
function withWallAbove(wall: LaidWall, below: WallBars, asked: StoreyToRead): WallBars {
  if (below.steel < 0) return below;
  const carried = wall.carries.flatMap(({ storey, wall: mark }) => asked.wallAbove(storey, mark) ?? []);
  const above = carried.map((each) => ({ mark: each.mark, bars: fromTable(toRead(each, asked).read, asked, false) }));
  const most = above.reduce<(typeof above)[number] | null>((first, each) => (first === null || each.bars.steel > first.bars.steel ? each : first), null);
  if (most !== null) return greaterOf(below, most.bars, most.mark);
  return asked.storey.storeyAbove ? { ...below, notes: [...below.notes, 'Concrete is said to stand on this storey; its wall is not in the schedule, and its bars may be more.'] } : below;
}

/** Soil against a storey that is said to stand above grade. */
function lowFill(bars: WallBars, { storey, site, soilBelow }: StoreyToRead): WallBars {
  if (site.code !== 'irc-2018' || storey.grade === 'below' || soilBelow || !storey.onFooting || site.backfill === null || site.backfill === 0) return bars;
  if (site.backfill <= LOW_FILL) return { ...bars, notes: [...bars.notes, 'At most 18 in of soil stands against the wall, which leaves it to the tables above grade (R404.1.3.2.1).'] };
  return { ...bars, notRead: { ...bars.notRead, missing: [bars.notRead.missing, 'a storey below grade for more than 18 in of backfill'].filter((words) => words !== undefined).join(', ') } };
}
