import type { LaidWall, Takeoff } from '../../src/domain/takeoff/index.js';
import { runOf, type FeaturedPlan, type FeatureRow } from '../support/featured-plans.js';
import { HERON } from './heron-figures.js';
import { cross, dot, keyOf, length, minus, other, slowLines, unit, type End, type SlowJoint, type SlowWall } from './slow-lines.js';
import { slowCourses, slowStacks } from './slow-stack.js';
import { slowTakeoff } from './slow-takeoff.js';

// Ledges and taper tops the slow way, in inches, from decision 23 alone: how long their forms and their own concrete are on each wall.

const NM = 25_400_000;
const PROJECTION = 5;
const SECTION = { ledge: 40, one: 14, both: 28 } as const;
const WITH_UNITS = ['6', '8'];
/** Each station is rounded once, to 2 µm at most (decision 6). */
const ROOM = 4e-4;

/** Closer than 1 mm is together. */
const MEET = 1 / 25.4;

type Ledge = Extract<FeatureRow, { kind: 'ledge' }>;
interface Site {
  readonly walls: ReadonlyMap<string, SlowWall>;
  readonly jointOf: ReadonlyMap<string, SlowJoint>;
  readonly ledges: ReadonlyMap<string, Planned>;
  readonly tapers: ReadonlyMap<string, 'one' | 'both'>;
}
/** A ledge on the dimension line of its wall as turned round; full: from end to end. */
interface Planned {
  readonly face: 'outside' | 'inside';
  readonly from: number;
  readonly to: number;
  readonly full: boolean;
  readonly bottom: number;
}

const coursesOf = (wall: SlowWall): { bottom: number; top: number; ripped: boolean }[] => {
  const stack = slowStacks(wall.height, HERON)[0]!;
  const courses = slowCourses(stack, HERON);
  return courses.map((course, index) => ({ ...course, ripped: stack.ripped > 0 && index === courses.length - 1 }));
};
const tan = (turn: number): number => Math.tan((Math.abs(turn) * Math.PI) / 360);
const same = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;
const drawn = (wall: SlowWall): number => length(minus(wall.to, wall.from));

function siteOf({ plan: { document }, features }: FeaturedPlan): Site {
  const lines = slowLines(document, HERON);
  const walls = new Map(lines.walls.map((wall) => [wall.mark, wall]));
  const per = { in: 1, ft: 1 / 12, mm: 25.4, m: 0.0254 }[document.units];
  const tapers = new Map(features.flatMap((row) => {
    const wall = walls.get(row.wall)!;
    return row.kind === 'taper-top' && WITH_UNITS.includes(wall.coreCode) && !coursesOf(wall).at(-1)!.ripped ? [[row.wall, row.faces] as const] : [];
  }));
  const site = { walls, jointOf: lines.jointOf, tapers };
  const ledges = new Map(features.flatMap((row) => {
    const planned = row.kind === 'ledge' ? plannedLedge(row, per, document.walls.find(({ mark }) => mark === row.wall)!, site) : null;
    return planned ? [[row.wall, planned] as const] : [];
  }));
  return { ...site, ledges };
}

/** Null where it is a hold: no unit for the core, a ripped or tapered course, a branch on its own face. */
function plannedLedge(row: Ledge, per: number, drawing: Parameters<typeof runOf>[0], { walls, jointOf, tapers }: Omit<Site, 'ledges'>): Planned | null {
  const wall = walls.get(row.wall)!;
  const courses = coursesOf(wall);
  const course = courses.find(({ top }) => Math.abs(top - row.at / per) <= HERON.stackTolerance)!;
  const run = drawn(wall);
  const turned = Math.sign(Number(drawing.from![0]) - Number(drawing.to![0])) !== Math.sign(wall.from[0] - wall.to[0]) ||
    Math.sign(Number(drawing.from![1]) - Number(drawing.to![1])) !== Math.sign(wall.from[1] - wall.to[1]);
  const full = same(row.from, 0) && same(row.to / per, run);
  const [a, b] = [row.from / per, row.to / per];
  const [from, to] = turned ? [run - b, run - a] : [a, b];
  if (!WITH_UNITS.includes(wall.coreCode) || course.ripped || (tapers.has(row.wall) && course === courses.at(-1))) return null;
  const bottom = wall.base + course.bottom;
  const branches = [...walls.values()].flatMap((branch) => (['from', 'to'] as const).map((end) => ({ branch, end })))
    .filter(({ branch, end }) => {
      const joint = jointOf.get(keyOf({ wall: branch.mark, end }))!;
      return joint.kind === 'tee' && joint.through.includes(row.wall) && bottom >= branch.base && bottom < branch.base + branch.height - 1e-6;
    });
  const inWay = branches.some(({ branch, end }) => {
    const away = minus(branch[other(end)], wall.from);
    const station = dot(unit(wall), minus(branch[end], wall.from)) + branchShift(branch, wall);
    const onLeft = cross(unit(wall), away) > 0;
    const half = branch.thickness / 2;
    return onLeft === (row.face === 'inside') && station + half > (full ? 0 : from) + MEET && station - half < (full ? run : to) - MEET;
  });
  return inWay ? null : { face: row.face, from, to, full, bottom };
}

/** From a branch's dimension line to its axis, along the wall it stands on: square tees alone. */
const branchShift = (branch: SlowWall, wall: SlowWall): number => {
  const [x, y] = unit(branch);
  return dot(unit(wall), [-y * branch.offset, x * branch.offset]);
};

const standsAt = (wall: SlowWall, z: number): boolean => z >= wall.base - 1e-6 && z < wall.base + slowStacks(wall.height, HERON)[0]!.height - 1e-6;

/** Where the forms and the concrete of a full ledge end past the wall's drawn end, outward positive. */
function endsOf(wall: SlowWall, end: End, ledge: Planned, site: Site): { forms: number; concrete: number } {
  const joint = site.jointOf.get(keyOf({ wall: wall.mark, end }))!;
  if (joint.kind === 'free') return { forms: 0, concrete: -HERON.closure };
  const beside = site.walls.get(joint.kind === 'tee' ? joint.through[0]! : joint.other.wall)!;
  if (joint.kind === 'tee') {
    if (!joint.through.some((mark) => standsAt(site.walls.get(mark)!, ledge.bottom))) return { forms: 0, concrete: -HERON.closure };
    const across = cross(unit(beside), minus(wall[end], beside.from)) - beside.offset;
    const way = end === 'to' ? unit(wall) : minus([0, 0], unit(wall));
    const toAxis = -across / cross(unit(beside), way);
    return { forms: toAxis - beside.thickness / 2, concrete: toAxis - beside.thickness / 2 };
  }
  if (!standsAt(beside, ledge.bottom)) return { forms: 0, concrete: -HERON.closure };
  if (joint.kind === 'straight') return { forms: 0, concrete: 0 };
  const node = -wall.offset * Math.sign(joint.turn) * tan(joint.turn);
  const partner = site.ledges.get(beside.mark);
  const meet = partner?.full === true && partner.face === ledge.face && same(partner.bottom, ledge.bottom);
  const convex = joint.turn > 0 === (ledge.face === 'outside');
  const half = (wall.thickness / 2) * tan(joint.turn);
  const out = meet ? PROJECTION * tan(joint.turn) : 0;
  return { forms: node + half + (convex ? out : 0), concrete: node + (convex ? half + out : -half - out) };
}

/** What openings that meet the course leave of a stretch; `lap`: forms run that far into a hole lined with closures. */
function clear(wall: SlowWall, from: number, to: number, bottom: number, top: number, lap: number): number {
  return wall.openings.reduce((left, { at, width, sill, height, lining }) => {
    const [low, high] = [wall.base + sill, wall.base + sill + height];
    if (low >= top - 1e-9 || high <= bottom + 1e-9) return left;
    const into = lining === 'end-closure' ? lap : 0;
    return left - Math.max(0, Math.min(to, at + width - into) - Math.max(from, at + into));
  }, to - from);
}

/** Where the ledges, tapers and corner units of a take-off differ from the slow count, in words. Tees are square and cores alike at corners. */
export function unitDifferences(featured: FeaturedPlan, takeoff: Takeoff): string[] {
  const site = siteOf(featured);
  const laid = new Map(takeoff.laid.storeys.flatMap(({ walls }) => walls).map((wall) => [wall.mark, wall]));
  return [
    ...[...site.walls.values()].flatMap((wall) => [...ledgeDifferences(wall, laid.get(wall.mark)!, site), ...taperDifferences(wall, laid.get(wall.mark)!, site)]),
    ...cornerDifferences(featured, site, takeoff),
  ];
}

function ledgeDifferences(wall: SlowWall, laid: LaidWall, site: Site): string[] {
  const ledge = site.ledges.get(wall.mark);
  if (!ledge || laid.ledges.length === 0) return Boolean(ledge) === laid.ledges.length > 0 ? [] : [`${wall.mark}: ${laid.ledges.length} ledges laid, slow ${ledge ? 1 : 0}`];
  const [start, end] = (['from', 'to'] as const).map((name) => endsOf(wall, name, ledge, site)) as [ReturnType<typeof endsOf>, ReturnType<typeof endsOf>];
  const run = drawn(wall);
  const stretch = (kind: 'forms' | 'concrete', lap: number): number =>
    clear(wall, ledge.full ? -start[kind] : ledge.from, ledge.full ? run + end[kind] : ledge.to, ledge.bottom, ledge.bottom + HERON.courseHeight, lap);
  const pieces = laid.courses.flatMap((course) => course.pieces.filter(({ kind }) => kind === 'ledge'));
  const forms = pieces.reduce((sum, { from, to }) => sum + to - from, 0) / NM;
  const concrete = laid.ledges[0]!.concreteMm3 / 25.4 ** 3 / SECTION.ledge;
  const wanted = { forms: stretch('forms', HERON.closure), concrete: stretch('concrete', 0) };
  const apart = (a: number, b: number): boolean => Math.abs(a - b) > ROOM;
  return [
    ...(apart(forms, wanted.forms) ? [`${wall.mark}: ${forms} in of ledge forms, slow ${wanted.forms}`] : []),
    ...(apart(concrete, wanted.concrete) ? [`${wall.mark}: ${concrete} in of ledge concrete, slow ${wanted.concrete}`] : []),
  ];
}

/** Length of a taper's own concrete: where a corner unit stays it is one of two, by the leg that stands there. */
function taperDifferences(wall: SlowWall, laid: LaidWall, site: Site): string[] {
  const faces = site.tapers.get(wall.mark);
  if (!faces || !laid.taper) return Boolean(faces) === (laid.taper !== null) ? [] : [`${wall.mark}: taper ${laid.taper ? 'laid' : 'not laid'}`];
  const top = coursesOf(wall).at(-1)!;
  const [bottom, above] = [wall.base + top.bottom, wall.base + top.top];
  const options = (end: End): readonly number[] => {
    const plain = endsOf(wall, end, { face: 'outside', from: 0, to: 0, full: true, bottom }, { ...site, ledges: new Map() });
    const joint = site.jointOf.get(keyOf({ wall: wall.mark, end }))!;
    if (joint.kind !== 'corner' || !standsAt(site.walls.get(joint.other.wall)!, bottom)) return [plain.concrete];
    const node = -wall.offset * Math.sign(joint.turn) * tan(joint.turn);
    const beside = site.walls.get(joint.other.wall)!;
    const roundIt = site.tapers.get(beside.mark) === faces && same(beside.base + coursesOf(beside).at(-1)!.bottom, bottom);
    const ledge = site.ledges.get(beside.mark);
    if (roundIt || (ledge?.full === true && same(ledge.bottom, bottom))) return [node];
    const turn = Math.abs(joint.turn);
    const legs = same(turn, 90) || Math.abs(turn - 90) <= HERON.turnTolerance ? HERON.square : Math.abs(turn - 45) <= HERON.turnTolerance ? HERON.pair : HERON.hinged;
    return legs[wall.coreCode]!.map((leg) => node - leg + (wall.thickness / 2) * tan(joint.turn));
  };
  const wanted = options('from').flatMap((start) => options('to').map((end) => clear(wall, -start, drawn(wall) + end, bottom, above, 0)));
  const got = laid.taper.concreteMm3 / 25.4 ** 3 / SECTION[faces];
  const uplift = laid.taper.upliftMm2 / 25.4 ** 2 / (faces === 'one' ? 2 : 4);
  return [
    ...(wanted.some((value) => Math.abs(value - got) <= ROOM) ? [] : [`${wall.mark}: ${got} in of taper concrete, slow ${wanted.join(' or ')}`]),
    ...(Math.abs(uplift - got) > ROOM ? [`${wall.mark}: uplift over ${uplift} in, concrete over ${got}`] : []),
  ];
}

/** Corner units: as without features, less one for each course of a corner that a full ledge or two like tapers mitre. */
function cornerDifferences({ plan: { document } }: FeaturedPlan, site: Site, { units }: Takeoff): string[] {
  const wanted = new Map(slowTakeoff(document).corners);
  for (const wall of site.walls.values()) {
    const joint = site.jointOf.get(keyOf({ wall: wall.mark, end: 'to' }))!;
    if (joint.kind !== 'corner') continue;
    const beside = site.walls.get(joint.other.wall)!;
    const turn = Math.abs(joint.turn);
    const kind = Math.abs(turn - 90) <= HERON.turnTolerance ? 'corner' : Math.abs(turn - 45) <= HERON.turnTolerance ? 'corner-pair' : 'corner-hinged';
    const lost = coursesOf(wall).filter(({ bottom }) => {
      const bed = wall.base + bottom;
      if (!standsAt(beside, bed)) return false;
      const ledged = [wall, beside].some(({ mark }) => site.ledges.get(mark)?.full === true && same(site.ledges.get(mark)!.bottom, bed));
      const isTop = ({ base, ...each }: SlowWall): boolean => same(base + coursesOf({ base, ...each }).at(-1)!.bottom, bed);
      const tapered = site.tapers.has(wall.mark) && site.tapers.get(wall.mark) === site.tapers.get(beside.mark) && isTop(wall) && isTop(beside);
      return ledged || tapered;
    }).length;
    const key = `${kind} ${wall.coreCode}`;
    wanted.set(key, (wanted.get(key) ?? 0) - lost);
  }
  const got = new Map<string, number>();
  for (const { kind, core, pieces } of units) if (kind.startsWith('corner')) got.set(`${kind} ${core}`, (got.get(`${kind} ${core}`) ?? 0) + pieces);
  return [...wanted].flatMap(([key, count]) => ((got.get(key) ?? 0) === count ? [] : [`${key}: ${got.get(key)} pieces, slow ${count}`]));
}
