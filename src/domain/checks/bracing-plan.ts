import { braceForces, type BraceForces } from './brace-forces.js';
import { braceLines } from './brace-lines.js';
import { braceStations, type BraceRules, type BraceStation } from './brace-stations.js';
import { CoherentUnits } from './both-units.js';
import { finding, type Finding } from '../evidence/finding.js';
import type { FormRange } from '../range/range.js';
import type { LaidStorey, LaidWall } from '../takeoff/laid.js';
import type { Nm } from '../quantity/length.js';
import type { Schedule, Storey } from '../schedule/schedule.js';
import type { TraceStep } from '../evidence/trace.js';
import type { WindQuestion } from './wind-input.js';

/** A brace of the plan; forces in kN, null where the wind is outside the method. */
export interface PlannedBrace extends BraceStation {
  /** Of the forms at the brace, over the wall's base. */
  readonly height: Nm;
  readonly axial: number | null;
  readonly horizontal: number | null;
  readonly uplift: number | null;
}

export interface BracedWall {
  readonly mark: string;
  readonly braces: readonly PlannedBrace[];
}

/** Lateral load along the top [kN/m]; null where the wind is outside the method. */
export interface BraceCase {
  readonly forms: 'empty' | 'filled';
  readonly topLoad: number | null;
  readonly governs: BraceForces['governs'] | 'outside-method';
}

/** The braces of a storey, all on one side of its walls. */
export interface StoreyBracing {
  readonly storey: string;
  readonly side: 'inside';
  readonly spacing: Nm;
  readonly walls: readonly BracedWall[];
  readonly count: number;
  /** Load along the top of the forms while they stand empty and while they are filled, at the brace with the greatest axial force. */
  readonly cases: readonly BraceCase[];
  /** Of the brace with the greatest axial force. */
  readonly trace: readonly TraceStep[];
  readonly source: string;
  readonly defaults: readonly string[];
  readonly notes: readonly string[];
  readonly findings: readonly Finding[];
}

const SOURCE = 'hanna-formwork section on bracing';
const EDITION = 'asce-7-16';

/**
 * Where the forms of each storey are braced, empty and filled, and what each brace takes.
 *
 * @param schedule its storeys, units and site; `site.durationH`, how long the forms stand empty, reduces the wind
 * @param range    spacing, distance from corners, top and foot of the braces: common practice of the range
 * @param laid     the laid job, whole or one storey of it
 * @returns        storeys in the order of the laid job
 * @source statement of the project's decisions 20 and 30; asce-7-16 and asce-37-14 for the wind
 */
export function bracingPlan(
  schedule: Schedule,
  { parameters }: Pick<FormRange, 'parameters'>,
  laid: { readonly storeys: readonly LaidStorey[] },
): readonly StoreyBracing[] {
  const units = new CoherentUnits(schedule.units === 'mm' || schedule.units === 'm' ? 'si' : 'us-customary');
  const wind = windOf(schedule);
  return laid.storeys.map((storey) => {
    const force = forcesBy(wind, parameters, units, groundUnder(schedule.storeys, storey.id));
    const walls = bracedWalls(storey, parameters, force);
    return { storey: storey.id, side: 'inside', spacing: parameters.braceSpacing, walls, ...told(storey.id, walls, force, schedule, wind) };
  });
}

/** In the order of the storey's walls, the braces of each in order of station. */
function bracedWalls(storey: LaidStorey, rules: BraceRules, force: Known): readonly BracedWall[] {
  const stations = new Map<string, BraceStation[]>(storey.walls.map(({ mark }) => [mark, []]));
  for (const line of braceLines(storey)) for (const { wall, ...station } of braceStations(line, rules)) stations.get(wall.mark)?.push(station);
  return storey.walls.map((wall) => ({
    mark: wall.mark,
    braces: (stations.get(wall.mark) ?? []).sort((one, other) => one.at - other.at).map((station) => planned(wall, station, force)),
  }));
}

type Force = (height: Nm, base: Nm, width: Nm) => ReturnType<typeof braceForces>;

interface Known {
  readonly of: Force;
  readonly all: ReadonlyMap<string, ReturnType<typeof braceForces>>;
}

/** Forces by height and width: most braces of a storey are alike. */
function forcesBy(wind: WindQuestion | null, { braceTop, braceFoot }: FormRange['parameters'], units: CoherentUnits, ground: Nm): Known {
  const all = new Map<string, ReturnType<typeof braceForces>>();
  const of: Force = (height, base, width) => {
    const key = `${height} ${base} ${width}`;
    const known = all.get(key) ?? braceForces(wind, { height, overGround: ground + base + height, width, braceTop, braceFoot }, units);
    all.set(key, known);
    return known;
  };
  return { of, all };
}

function planned(wall: LaidWall, station: BraceStation, { of }: Known): PlannedBrace {
  const height = wall.stack.height + slopeAt(wall, station.at);
  const forces = of(height, wall.base, station.width);
  if (forces.kind === 'outside-method') return { ...station, height, axial: null, horizontal: null, uplift: null };
  const { axial, horizontal, uplift } = forces;
  return { ...station, height, axial, horizontal, uplift };
}

/** Of a sloped top over the level courses. */
function slopeAt({ gable }: LaidWall, at: Nm): Nm {
  const slope = gable?.slopes.find(({ from, to }) => at >= from && at <= to);
  if (!gable || !slope) return 0;
  const { from, to, rises } = slope;
  return Math.round((gable.rise * (rises === 'with-stations' ? at - from : to - at)) / (to - from));
}

/** The storey's bottom over the ground: the heights of the storeys under it that stand above grade. */
function groundUnder(storeys: readonly Storey[], id: string): Nm {
  const under = storeys.find((storey) => storey.id === id)?.on ?? null;
  if (under === null) return 0;
  const below = storeys.find((storey) => storey.id === under);
  return (below?.grade === 'above' ? below.height : 0) + groundUnder(storeys, under);
}

function windOf({ site }: Schedule): WindQuestion | null {
  if (site?.windMps === undefined) return null;
  return { speed: site.windMps, exposure: site.exposure ?? 'D', duration: site.durationH ?? null, wallLength: null, edition: EDITION, importance: 1, topography: 1 };
}

function told(storey: string, walls: readonly BracedWall[], { all }: Known, { site }: Schedule, wind: WindQuestion | null) {
  const worked = [...all.values()];
  const [outside] = worked.filter((each) => each.kind === 'outside-method');
  const forces = worked.filter((each): each is BraceForces => each.kind === 'forces');
  const worst = forces.reduce<BraceForces | null>((most, each) => (most === null || each.axial > most.axial ? each : most), null);
  return {
    count: walls.reduce((sum, { braces }) => sum + braces.length, 0),
    cases: worked.length === 0 ? [] : (['empty', 'filled'] as const).map((forms) => caseOf(forms, worst)),
    trace: worst?.trace ?? [],
    source: wind === null ? SOURCE : `${SOURCE}; ${EDITION} chapter 29`,
    defaults: wind === null ? [] : defaultsOf(wind, site?.exposure !== undefined),
    notes: [...(worst?.notes ?? []), ...notesOf(wind)],
    findings: (outside?.limits ?? []).map(({ numbers, source }) => finding('outside-method', { storey, numbers: { method: 'ASCE 37', ...numbers }, source })),
  };
}

/** The wind does not ask what is between the panels: one lateral load holds in both cases, as `notesOf` says. */
const caseOf = (forms: BraceCase['forms'], worst: BraceForces | null): BraceCase => ({ forms, topLoad: worst?.topLoad ?? null, governs: worst?.governs ?? 'outside-method' });

const FILLED = [
  'Empty and filled forms ask for the same: the wind of the site, not under 15 psf on the forms and 100 lb/ft along their top (hanna-formwork §7.2.2). Neither case governs over the other.',
  'Filled, before the concrete holds itself: it presses both panels alike and the ties carry that (statics), so a plumb wall gets no lateral load from it. A wall out of plumb does: that eccentricity is not covered.',
  'Nobody pours in the design wind, but no lower wind is counted on for the filled forms (common practice); the period of the wind is the whole time until the concrete holds the wall.',
];

const defaultsOf = ({ duration }: WindQuestion, exposed: boolean): readonly string[] => [
  `edition: ${EDITION}`,
  'topography: 1, no hill',
  'wallLength: not stated, the highest force coefficient',
  ...(exposed ? [] : ['exposure: not stated, D, the highest']),
  ...(duration === null ? ['duration: not stated, no reduction of the speed'] : []),
];

const notesOf = (wind: WindQuestion | null): readonly string[] => [
  ...(wind === null ? ['No wind is stated: braces are worked for the least load alone, 15 psf and 100 lb/ft. The site may need more.'] : []),
  ...FILLED,
  'The wind blows either way: each brace pushes and pulls, and its anchor is lifted by the uplift; state the ground or slab it is anchored in.',
  'A brace meets the wall at its top height, or at the top of a lower wall; its foot stands level with the wall\'s base.',
  'Set a string line along the top and plumb the walls again after the pour. Braces are by others unless the quote says so.',
];
