import { beforeAll, describe, expect, it } from '@jest/globals';
import type { Feature } from '../../../src/domain/schedule/schedule.js';
import { takeOff } from '../../../src/domain/takeoff/index.js';
import { solidDifferences } from '../../oracles/solid-differences.js';
import { SolidKernel } from '../../oracles/solid-volumes.js';
import { SOLID_KINDS, solidPlan, type SolidPlan } from '../../support/solid-plans.js';
import { heron } from '../../support/small-schedules.js';

const PLANS = 160;
const GROUP = 20;
const plans = Array.from({ length: PLANS }, (_, index) => solidPlan(index + 1));
const groups = Array.from({ length: PLANS / GROUP }, (_, index) => [index * GROUP + 1, (index + 1) * GROUP] as const);
const nameOf = ({ kind, seed, schedule }: SolidPlan): string => `${kind} ${seed}, ${schedule.units}, to ${schedule.dimensionsTo}`;

let kernel: SolidKernel;
beforeAll(async () => {
  kernel = await SolidKernel.load();
});

describe(`${PLANS} random plans against solids and polygons built of their drawn lines`, () => {
  it.each(groups)('seeds %i to %i: concrete and faces of every wall and storey within 1e-6', (from, to) => {
    const range = heron();
    const faults = plans.slice(from - 1, to).flatMap((plan) =>
      solidDifferences(takeOff(plan.schedule, range), plan.schedule, kernel).map((fault) => `${nameOf(plan)}: ${fault}`));
    expect(faults).toEqual([]);
  });

  it('tell a wall, a face and a storey that are two millionths off', () => {
    const { schedule } = plans.find(({ kind }) => kind === 'rectangle')!;
    const takeoff = takeOff(schedule, heron());
    const off = (value: bigint): bigint => value + value / 500_000n;
    const [storey] = takeoff.laid.storeys;
    const walls = storey!.walls.map((wall, index) => (index === 0 ? { ...wall, concreteNm3: off(wall.concreteNm3), faceNm2: off(wall.faceNm2) } : wall));
    const spoilt = { ...takeoff, laid: { storeys: [{ ...storey!, walls }] }, concrete: takeoff.concrete.map((each) => ({ ...each, nm3: off(each.nm3) })) };
    expect(solidDifferences(takeoff, schedule, kernel)).toEqual([]);
    expect(solidDifferences(spoilt, schedule, kernel).map((fault) => fault.split(/ \d/)[0])).toEqual(['W1: concrete', 'W1: gross face', 'W1: net face', 'S1: concrete']);
  });

  it('have every kind of plan, unit, dimension line and feature', () => {
    const seen = (of: (plan: SolidPlan) => readonly (string | boolean)[]): unknown[] => [...new Set(plans.flatMap((plan) => of(plan)))].sort();
    expect(seen(({ kind }) => [kind])).toEqual([...SOLID_KINDS].sort());
    expect(seen(({ schedule }) => [schedule.units])).toEqual(['in', 'mm']);
    expect(seen(({ schedule }) => [schedule.dimensionsTo])).toEqual(['axis', 'concrete-face', 'foam-face']);
    const manner = (each: Feature): string => ('face' in each ? each.face : 'faces' in each ? each.faces : 'flush' in each ? each.flush : 'sloped');
    expect(seen(({ schedule }) => schedule.features.map((each) => `${each.kind} ${manner(each)}`))).toEqual([
      'core-change centre', 'core-change inside', 'core-change outside', 'gable sloped', 'ledge inside', 'ledge outside', 'taper-top both', 'taper-top one',
    ]);
    expect(seen(({ schedule }) => schedule.walls.map((wall) => wall.arc?.turns ?? 'straight'))).toEqual(['left', 'right', 'straight']);
    const inGable = plans.flatMap(({ schedule }) => schedule.openings.filter((opening) => {
      const wall = schedule.walls.find(({ mark }) => mark === opening.wall)!;
      return opening.sill + opening.height > wall.height;
    }));
    const curved = plans.flatMap(({ schedule }) => schedule.openings.filter((opening) => schedule.walls.find(({ mark }) => mark === opening.wall)!.arc));
    expect([inGable.length > 20, curved.length > 20]).toEqual([true, true]);
  });
});
