import { describe, expect, it } from '@jest/globals';
import { canonicalSchedule } from '../../support/canonical-schedule.js';
import { heron } from '../../support/small-schedules.js';
import { measure, type Measurement } from '../../../src/domain/pipeline.js';
import { PLAN_KINDS, randomPlan } from '../../support/plans.js';
import { rectangle } from '../../support/schedule-documents.js';
import type { CheckPlace, CheckReport } from '../../../src/domain/checks/check-report.js';

const range = heron();
/** Shapes that differ from the others in their corners' angles alone. */
const WITHOUT_MORE: readonly string[] = ['plus', 'octagon', 'bay', 'uShape', 'zigzag', 'twoHouses', 'tShape'];
/** Every second opening is lined with closures, so that jambs of both kinds stand in most plans. */
const PLANS = PLAN_KINDS.filter((kind) => !WITHOUT_MORE.includes(kind)).map((kind, index) => {
  const { document } = randomPlan(index + 401, { kind });
  return { kind, document: { ...document, openings: document.openings.map((opening, at) => (at % 2 === 0 ? opening : { ...opening, lining: 'end-closure' as const })) } };
});
/** Checks that had a place in one of the plans. */
const SEEN = new Set<string>();
const reportsOf = ({ checks }: Measurement, check: string): readonly CheckReport[] => checks.filter((report) => report.check === check);
const placesOf = (measurement: Measurement, check: string): readonly (CheckPlace & { readonly storey: string })[] =>
  reportsOf(measurement, check).flatMap(({ storey, places }) => places.map((place) => ({ ...place, storey })));
const keyOf = ({ storey, wall, course }: { storey: string | null; wall: string | null; course: number | null }): string => `${storey} ${wall} ${course}`;
const usedBy = ({ materials }: Measurement, rule: string): ReadonlySet<string> =>
  new Set(materials.flatMap(({ because }) => because.filter((each) => each.rule === rule).map(keyOf)));

describe('places of restraint on random plans, counted from the laid job and the schedule', () => {
  it.each(PLANS)('$kind', ({ document }) => {
    const schedule = canonicalSchedule(document);
    const measurement = measure(schedule, range);
    const { laid } = measurement.takeoff;
    const junctions = laid.storeys.flatMap((storey) => storey.junctions.map((junction) => ({ ...junction, storey: storey.id })));
    const count = (check: string): number => {
      const { length } = placesOf(measurement, check);
      if (length > 0) SEEN.add(check);
      return length;
    };

    // One place for each two walls that meet in a corner, however many levels it is laid in.
    const corners = new Set(junctions.filter(({ kind, courses }) => kind === 'corner' && courses.length > 0).map(({ storey, walls, at }) => `${storey} ${walls.join()} ${Math.round(at.x)} ${Math.round(at.y)}`));
    expect(['bend-thrust', count('bend-thrust')]).toEqual(['bend-thrust', corners.size]);
    expect(['tee', count('tee')]).toEqual(['tee', junctions.reduce((sum, { kind, courses }) => sum + (kind === 'tee' ? courses.length : 0), 0)]);
    // Without height strips closures are bought one for a place; strips have closures of their own, so there the ends and jambs are counted.
    const walls = laid.storeys.flatMap((storey) => storey.walls);
    const pieces = measurement.takeoff.units.filter(({ kind }) => kind === 'end-closure').reduce((sum, unit) => sum + unit.pieces, 0);
    const ends = junctions.reduce((sum, { kind, courses }) => sum + (kind === 'free-end' ? courses.length : 0), 0);
    const jambs = walls.flatMap(({ openings, courses }) => openings.filter(({ lining }) => lining === 'end-closure')
      .flatMap(({ sill, head }) => courses.filter(({ bottom, height }) => bottom < head && bottom + height > sill))).length * 2;
    expect(['end-closure', count('end-closure')]).toEqual(['end-closure', walls.some(({ strips }) => strips.length > 0) ? ends + jambs : pieces]);
    // Openings as they were drawn: two jambs of every buck; a head below the top of its wall; a sill above its foot.
    const tops = new Map(laid.storeys.flatMap(({ walls }) => walls.map(({ mark, stack }) => [mark, stack.height] as const)));
    expect(['jamb', count('jamb')]).toEqual(['jamb', 2 * schedule.openings.filter(({ lining }) => lining === 'buck').length]);
    expect(['head', count('head')]).toEqual(['head', schedule.openings.filter(({ wall, sill, height }) => sill + height < (tops.get(wall) ?? 0)).length]);
    expect(['sill', count('sill')]).toEqual(['sill', schedule.openings.filter(({ sill }) => sill > 0).length]);
    for (const report of measurement.checks.filter(({ results }) => 'placesOverCapacity' in results)) expect(report.results['places']).toBe(report.places.length);

    // What resists a place stands at that place, and nothing is bought for another.
    for (const [check, rule] of [['end-closure', 'end-closure'], ['tee', 'tee-cut-out']] as const) {
      expect([check, [...new Set(placesOf(measurement, check).map(keyOf))].sort()]).toEqual([check, [...usedBy(measurement, rule)].sort()]);
    }
  });

  it('every kind of place stood in one of the plans', () => {
    expect([...SEEN].sort()).toEqual(['bend-thrust', 'end-closure', 'head', 'jamb', 'sill', 'tee']);
  });
});

describe('a wall that runs straight on with another core', () => {
  it('has a bulkhead in every course, pushed with p times the difference of cores', () => {
    const document = {
      ...rectangle(), openings: [], storeys: [{ ...rectangle().storeys[0], height: 96, closed: false }],
      walls: [
        { mark: 'A', storey: 'S1', core: '6', from: [0, 0], to: [120, 0] },
        { mark: 'B', storey: 'S1', core: '8', from: [120, 0], to: [240, 0] },
      ],
    };
    const measurement = measure(canonicalSchedule(document), range);
    const places = placesOf(measurement, 'core-step');
    expect(places.map(({ wall, course }) => [wall, course])).toEqual([1, 2, 3, 4, 5, 6].map((course) => ['A', course]));
    // No pour is stated: p is the rated pressure of the 8 in core. p · 2 / 12 ft · 16 / 12 ft.
    const rated = range.cores.get('8')?.ratedPressurePsf ?? Number.NaN;
    for (const { results, atMm } of places) {
      expect(results['forceLb']).toBeCloseTo((rated * 2 * 16) / 144, 2);
      expect(results).toMatchObject({ with: 'B', narrowCore: '6' });
      expect(atMm).toBeCloseTo(3048, 0);
    }
    expect(reportsOf(measurement, 'core-step').map(({ core }) => core)).toEqual(['8']);
    const same = { ...document, walls: document.walls.map((wall: object) => ({ ...wall, core: '6' })) };
    expect(reportsOf(measure(canonicalSchedule(same), range), 'core-step')).toEqual([]);
  });
});
