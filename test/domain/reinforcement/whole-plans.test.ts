import { describe, expect, it } from '@jest/globals';
import { measure, type Measurement } from '../../../src/domain/pipeline.js';
import { canonicalSchedule } from '../../support/canonical-schedule.js';
import { CHANGES } from '../../support/plan-changes.js';
import { randomPlan } from '../../support/plans.js';
import { seededRandom } from '../../support/seeded-random.js';
import { heron, loopOf, scheduleOf, type WallInput } from '../../support/small-schedules.js';

// The rules on real take-offs. Quantities are worked by hand beside each case from the demo range's common practice (no source).

const rectangle = loopOf([[0, 0], [480, 0], [480, 336], [0, 336]]);
const quantities = ({ materials }: Measurement) => Object.fromEntries(materials.map(({ sku, quantity }) => [sku, quantity]));
const byRule = ({ materials }: Measurement, rule: string, sku: string): number =>
  materials.filter((line) => line.sku === sku).flatMap(({ because }) => because).filter((cause) => cause.rule === rule).reduce((sum, cause) => sum + cause.quantity, 0);

describe("a free wall 20'-0\" x 8'-0\", core 6, six courses", () => {
  const measured = measure(scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }]), heron());

  it.each([
    { sku: 'FOAM-24', quantity: 40, why: 'two beads of 20 ft' },
    { sku: 'WIRE-16', quantity: 4, why: 'two free ends, two faces' },
    { sku: 'TAPE-4', quantity: 84, why: '12 closures x 2 ft, and 240 / 16 = 15 strips x 2 faces x 2 ft over the top bed joint' },
    { sku: 'BOARD-1x4', quantity: 24, why: '12 closures x 2 ft, the strength of the tape not being stated' },
    { sku: 'CTIE-14', quantity: 5, why: 'top course 24 + 4 x 48 + 24: five head joints; no piece is sawn at both ends' },
  ])('$sku $quantity: $why', ({ sku, quantity }) => expect(quantities(measured)[sku]).toBe(quantity));

  it('takes nothing else', () => expect(measured.materials).toHaveLength(5));

  it('closures hold 750 psf x 6 in x 16 in = 500 lb', () => {
    expect(measured.instructions.find(({ rule }) => rule === 'end-closure')?.text).toContain('500 lb');
  });
});

describe("a rectangle 40'-0\" x 28'-0\", core 6, eight feet: axis 469 and 325 in", () => {
  const measured = measure(scheduleOf(rectangle, { storey: { closed: true } }), heron());

  it('beads under 1588 in of axis, twice', () => expect(quantities(measured)['FOAM-24']).toBe((1588 * 2) / 12));
  it('four corners in course 1, two ties each', () => expect(quantities(measured)['WIRE-16']).toBe(8));
  it('top strips by wall: 2 x (ceil(469/16) + ceil(325/16)) = 2 x (30 + 21), two faces of 2 ft', () => expect(quantities(measured)['TAPE-4']).toBe(408));
  it('no closures, no straps', () => expect(Object.keys(quantities(measured)).sort()).toEqual(['CTIE-14', 'FOAM-24', 'TAPE-4', 'WIRE-16']));
});

describe('the same at nine feet', () => {
  it('ripped: a strap along 1588 in on both faces', () => {
    const measured = measure(scheduleOf(rectangle, { height: 108 }), heron());
    expect(quantities(measured)['STRAP-1x3']).toBe((1588 * 2) / 12);
    expect(quantities(measured)['TAPE-4']).toBe(408);
  });

  it('by four strips: 4 x 408 ft across them and 408 ft on top', () => {
    const measured = measure(scheduleOf(rectangle, { height: 108 }), heron({ parameters: { stackPrefers: 'strips' } }));
    expect(byRule(measured, 'strip-course', 'TAPE-4')).toBe(1632);
    expect(byRule(measured, 'top-course-hold-down', 'TAPE-4')).toBe(408);
    expect(quantities(measured)['STRAP-1x3']).toBeUndefined();
  });
});

describe('a partition of core 6 on the first wall, six courses', () => {
  const partition: WallInput = { mark: 'P', from: [220, 11], to: [220, 180] };
  const measured = measure(scheduleOf([...rectangle, partition]), heron());

  it.each([
    { sku: 'BAR-4', quantity: 23, why: '6 bars of 6 + 16 + 24 = 46 in' },
    { sku: 'WIRE-16', quantity: 6, why: 'one wire a course' },
    { sku: 'FOAM-24', quantity: 16, why: '96 in of butt joint on both faces' },
    { sku: 'STRAP-1x3', quantity: 16, why: 'the same in strap' },
  ])('tee: $sku $quantity, $why', ({ sku, quantity }) => expect(byRule(measured, 'tee-cut-out', sku)).toBeCloseTo(quantity, 9));
});

describe('a corner of 67.5 degrees, six courses', () => {
  const [cos, sin] = [Math.cos((67.5 * Math.PI) / 180), Math.sin((67.5 * Math.PI) / 180)];
  const measured = measure(scheduleOf([{ mark: 'A', from: [0, 0], to: [240, 0] }, { mark: 'B', from: [240, 0], to: [240 + 200 * cos, 200 * sin] }]), heron());

  it('four strips of 2 ft a unit, thrust 2 x 750 x 0.5 x sin 33.75 = 416.7 lb/ft', () => {
    expect(byRule(measured, 'hinged-corner', 'TAPE-4')).toBe(48);
    expect(measured.instructions.find(({ rule }) => rule === 'hinged-corner')?.text).toContain('417 lb/ft');
  });

  it('is fixed to the footing, as are its two free ends', () => expect(byRule(measured, 'footing-corner', 'WIRE-16')).toBe(6));
});

describe('drawn otherwise, a plan takes the same', () => {
  /** Ties stand at head joints, and where forms of equal number may be laid in two ways a mirrored drawing may take the other. */
  const withoutTies = (measured: Measurement) => measured.materials.filter(({ kind }) => kind !== 'cable-tie').map(({ sku, quantity }) => [sku, Number(quantity.toFixed(6))]);

  it.each([1, 2, 4])('plan %p', (seed) => {
    const plan = randomPlan(seed, { tight: seed % 2 === 0 });
    const expected = withoutTies(measure(canonicalSchedule(plan.document), heron()));
    for (const change of Object.keys(CHANGES)) {
      const changed = measure(canonicalSchedule(CHANGES[change]!(plan, seededRandom(seed))), heron());
      expect([change, withoutTies(changed)]).toEqual([change, expected]);
    }
  });
});
