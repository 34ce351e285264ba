import { describe, expect, it } from '@jest/globals';
import { NM_PER_FOOT, NM_PER_INCH } from '../../../src/domain/quantity/length.js';
import { evaluateRules, type Reinforcement } from '../../../src/domain/reinforcement/evaluate.js';
import { RULES } from '../../../src/domain/reinforcement/registry.js';
import type { Schedule } from '../../../src/domain/schedule/schedule.js';
import { takeOff, type Takeoff } from '../../../src/domain/takeoff/index.js';
import { curvedCanonical, curvedPlan } from '../../support/curved-plans.js';
import { featuredPlan, featuredSchedule } from '../../support/featured-plans.js';
import { mirroredSchedule } from '../../support/mirrored-schedule.js';
import { heron } from '../../support/small-schedules.js';
import { solidPlan } from '../../support/solid-plans.js';

// Every rule on random plans with ledges, tapers, gables, changes of the core and curves. Figures are worked from the schedule or from
// what the take-off tells of a feature, by closed forms beside each check.

const range = heron();
const PSF = 600;

interface Drawn {
  readonly name: string;
  readonly schedule: Schedule;
}

const PLANS: readonly Drawn[] = [
  ...Array.from({ length: 12 }, (_, n): Drawn => ({ name: `ledges and tapers ${700 + n}`, schedule: featuredSchedule(featuredPlan(700 + n)) })),
  ...Array.from({ length: 24 }, (_, n): Drawn => ({ name: `solid ${700 + n}`, schedule: solidPlan(700 + n).schedule })),
  ...Array.from({ length: 12 }, (_, n): Drawn => ({ name: `curved ${700 + n}`, schedule: curvedCanonical(curvedPlan(700 + n, { tight: n % 3 === 0 }).document) })),
];

const evaluated = (takeoff: Takeoff): Reinforcement => evaluateRules(takeoff.laid, range, () => ({ psf: PSF, basis: 'pour' }));
const wallsOf = ({ laid }: Takeoff) => laid.storeys.flatMap(({ walls }) => walls);

function usedBy({ materials }: Reinforcement, rule: string, kind: string): number {
  return materials.filter((line) => line.kind === kind).flatMap(({ because }) => because).filter((cause) => cause.rule === rule).reduce((sum, { quantity }) => sum + quantity, 0);
}
const toldBy = ({ instructions }: Reinforcement, rule: string): number => instructions.filter((each) => each.rule === rule).length;

/** Nothing negative, nothing that is no number, every cause at a course that stands, causes sum to the quantity. */
function lawless(takeoff: Takeoff, { materials, instructions }: Reinforcement): string[] {
  const courses = new Set(takeoff.laid.storeys.flatMap(({ id, walls }) => walls.flatMap(({ mark, courses: own }) => own.map(({ n }) => `${id}/${mark}/${n}`))));
  const marks = new Set(takeoff.laid.storeys.flatMap(({ id, walls }) => walls.map(({ mark }) => `${id}/${mark}`)));
  const ids = new Set(RULES.map(({ meta }) => meta.id));
  return [
    ...materials.flatMap(({ sku, quantity, unit, because }) => {
      const whole = (value: number): number => Math.round(value * (unit === 'ft' ? NM_PER_FOOT : 1));
      const sum = because.reduce((total, cause) => total + whole(cause.quantity), 0);
      return [
        ...(Number.isFinite(quantity) && quantity > 0 ? [] : [`${sku}: ${quantity}`]),
        ...(sum === whole(quantity) ? [] : [`${sku}: causes sum to ${sum}, not ${whole(quantity)}`]),
        ...because.filter(({ quantity: part }) => !(part > 0)).map(({ rule }) => `${sku}: a cause of ${rule} is not more than nothing`),
        ...because.filter(({ storey, wall, course }) => !courses.has(`${storey}/${wall}/${course}`)).map(({ rule, wall, course }) => `${rule}: no course ${course} of ${wall}`),
      ];
    }),
    ...instructions.flatMap(({ rule, storey, wall, text }) => [
      ...(ids.has(rule) ? [] : [`no rule ${rule}`]),
      ...(wall === null || marks.has(`${storey}/${wall}`) ? [] : [`${rule}: no wall ${wall}`]),
      ...(/NaN|Infinity|undefined|null|\[object|(?<![\w.])-\d+ (?:lb|course|strip|spreader|post)/.test(text) ? [`${rule}: ${text}`] : []),
    ]),
  ];
}

const close = (told: number, worked: number): boolean => Math.abs(told - worked) <= 1e-6 * Math.max(1, Math.abs(worked));

/** What closed forms and the take-off's own figures of a feature say, against what the rules take. */
function misses({ schedule }: Drawn, takeoff: Takeoff, reinforcement: Reinforcement): string[] {
  const walls = wallsOf(takeoff);
  const differ = (what: string, told: number, worked: number): string[] => (close(told, worked) ? [] : [`${what}: ${told}, worked ${worked}`]);
  const laidGables = new Set(walls.filter(({ gable }) => gable).map(({ mark }) => mark));
  // Pythagoras on the dimension line; a slope of 30 degrees or more takes ceil(core / 3 1/2 in) boards besides the two faces.
  const board = schedule.features.flatMap((feature) => {
    if (feature.kind !== 'gable' || !laidGables.has(feature.wall)) return [];
    const wall = schedule.walls.find(({ mark }) => mark === feature.wall)!;
    const core = walls.find(({ mark }) => mark === feature.wall)!.coreChanges.at(-1)?.core.width ?? range.cores.get(wall.core)!.width;
    return [feature.peakAt, wall.length - feature.peakAt].filter((run) => run > 0).map((run) => {
      const steep = (Math.atan2(feature.rise, run) * 180) / Math.PI >= 30;
      return (Math.hypot(run, feature.rise) / NM_PER_FOOT) * (2 + (steep ? Math.ceil(core / (3.5 * NM_PER_INCH)) : 0));
    });
  }).reduce((sum, each) => sum + each, 0);
  const joints = takeoff.findings.filter(({ code }) => code === 'radius-wall').reduce((sum, { numbers }) => sum + Number(numbers['jointMm']), 0);
  const taper = walls.flatMap(({ taper: own, length }) => own ? own.spans.map(({ from, to }) => ((Math.min(to, length) - Math.max(from, 0)) * (own.faces === 'both' ? 2 : 1)) / NM_PER_FOOT) : []);
  const upright = walls.filter(({ coreChanges }) => coreChanges.length === 0).length === walls.length;
  return [
    ...differ('gable boards', usedBy(reinforcement, 'gable-edge', 'board'), board),
    ...(walls.every(({ arc, gable }) => arc?.chord !== null && !gable) ? differ('foam of chord joints', usedBy(reinforcement, 'radius-band', 'foam'), joints / 304.8) : []),
    ...(upright && takeoff.laid.storeys.every(({ junctions }) => junctions.every(({ kind }) => kind === 'corner' || kind === 'straight')) ? differ('taper straps', usedBy(reinforcement, 'taper-top-edge', 'strap'), taper.reduce((sum, each) => sum + each, 0)) : []),
    ...differ('cleats', toldBy(reinforcement, 'core-change-cleat'), walls.reduce((sum, { coreChanges }) => sum + coreChanges.length, 0)),
    ...differ('bucks', toldBy(reinforcement, 'buck-bracing'), walls.reduce((sum, { openings }) => sum + openings.filter(({ lining, sill, head }) => lining === 'buck' && head > sill).length, 0)),
    ...differ('tape of mitres', usedBy(reinforcement, 'mitred-ledge', 'tape'), 8 * toldBy(reinforcement, 'mitred-ledge')),
  ];
}

describe(`every rule on ${PLANS.length} random plans with features`, () => {
  const seen = new Set<string>();

  it.each(Array.from({ length: 12 }, (_, group) => group))('group %i: nothing lawless, and what closed forms say', (group) => {
    const faults = PLANS.filter((_, index) => index % 12 === group).flatMap((drawn) => {
      const takeoff = takeOff(drawn.schedule, range);
      const reinforcement = evaluated(takeoff);
      for (const { rule } of reinforcement.instructions) seen.add(rule);
      return [...lawless(takeoff, reinforcement), ...misses(drawn, takeoff, reinforcement)].map((fault) => `${drawn.name}: ${fault}`);
    });
    expect(faults).toEqual([]);
  });

  it('every rule had something to say, but those for what these plans do not have', () => {
    expect(RULES.map(({ meta }) => meta.id).filter((id) => !seen.has(id))).toEqual(['top-protect']);
  });
});

/**
 * Ties stand at head joints, and short pieces where forms of equal number were cut: a stretch may be laid in two ways, and a mirrored
 * drawing may take the other. All else is the same, rule by rule.
 */
function takenBy({ materials }: Reinforcement): Record<string, number> {
  const sums: Record<string, number> = {};
  for (const { sku, kind, because } of materials.filter((line) => line.kind !== 'cable-tie')) {
    for (const { rule, quantity } of because.filter((cause) => cause.rule !== 'short-piece')) sums[`${rule} ${kind} ${sku}`] = (sums[`${rule} ${kind} ${sku}`] ?? 0) + quantity;
  }
  return Object.fromEntries(Object.entries(sums).map(([key, sum]) => [key, Number(sum.toFixed(5))]));
}

/** Where a gable's slope comes down beside a curve the take-off lists a chord joint at the slope's foot, on the wall that arrives there alone. */
const slopesToCurve = ({ schedule }: Drawn): boolean => schedule.features.some(({ kind }) => kind === 'gable') && schedule.walls.some(({ arc }) => arc !== null);

describe('held against a mirror', () => {
  it.each(Array.from({ length: 6 }, (_, group) => group))('group %i: every rule takes the same', (group) => {
    for (const { name, schedule } of PLANS.filter((drawn, index) => index % 12 === group && !slopesToCurve(drawn))) {
      const [drawn, mirrored] = [schedule, mirroredSchedule(schedule)].map((each) => takenBy(evaluated(takeOff(each, range))));
      expect([name, mirrored]).toEqual([name, drawn]);
    }
  });
});
