import type { Takeoff } from '../../src/domain/takeoff/index.js';
import { HERON } from './heron-figures.js';
import type { SlowTakeoff } from './slow-takeoff.js';

const NM_PER_INCH = 25_400_000;
const INCHES_PER_YARD = 36;
/** decisions.md 6: a length within 2 µm of a round one is that one. */
const SNAP_INCHES = 0.002 / 25.4;

/** Where a take-off and the slow one differ, in words; nothing where they agree. */
export function differences(fast: Takeoff, slow: SlowTakeoff): string[] {
  return [
    ...wallDifferences(fast, slow),
    ...unitDifferences(fast, slow),
    ...laidDifferences(fast, slow),
    ...concreteDifferences(fast, slow),
    ...orderDifferences(fast, slow),
    ...seamDifferences(fast, slow),
  ];
}

function wallDifferences({ laid }: Takeoff, slow: SlowTakeoff): string[] {
  return laid.storeys.flatMap((storey) => storey.walls).flatMap(({ mark, length, stack, alternatives }) => {
    const wall = slow.walls.find((each) => each.mark === mark);
    if (!wall) return [`${mark}: not a wall`];
    const found: string[] = [];
    if (Math.abs(length / NM_PER_INCH - wall.axis) > SNAP_INCHES) found.push(`${mark}: axis ${length / NM_PER_INCH}, slow ${wall.axis}`);
    const { full, strips, ripped, deviation } = wall.stack;
    const same = stack.courses === full + (ripped > 0 ? 1 : 0) && stack.strips === strips && near((stack.ripped ?? 0) / NM_PER_INCH, ripped) &&
      near(stack.deviation / NM_PER_INCH, deviation);
    if (!same) found.push(`${mark}: stack ${JSON.stringify(stack)}, slow ${JSON.stringify(wall.stack)}`);
    if (alternatives.length === 0 && wall.alternatives.length > 0) found.push(`${mark}: no other stack listed`);
    return found;
  });
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;

function unitDifferences({ units }: Takeoff, slow: SlowTakeoff): string[] {
  const found: string[] = [];
  const pieces = new Map<string, number>();
  const bought = new Map<string, number>();
  for (const unit of units) {
    const key = `${unit.kind} ${unit.core}`;
    pieces.set(key, (pieces.get(key) ?? 0) + unit.pieces);
    bought.set(unit.core, (bought.get(unit.core) ?? 0) + (unit.kind === 'straight' ? unit.bought : 0));
  }
  const expected = new Map([...slow.corners, ...[...slow.closures].map(([core, count]) => [`end-closure ${core}`, count] as const)]);
  const counted = [...pieces.keys()].filter((key) => /^(corner|end-closure)/.test(key));
  for (const key of new Set([...expected.keys(), ...counted])) {
    if (pieces.get(key) !== expected.get(key)) found.push(`${key}: ${pieces.get(key)} pieces, slow ${expected.get(key)}`);
  }
  for (const [core, least] of slow.leastForms) {
    if ((bought.get(core) ?? 0) < least) found.push(`core ${core}: ${bought.get(core)} forms bought, the material alone is ${least}`);
  }
  return found;
}

function laidDifferences({ laid }: Takeoff, slow: SlowTakeoff): string[] {
  const sums = new Map<string, number>();
  const keyOf = (storey: string, core: string, bottom: number): string => `${storey} core ${core} at ${bottom.toFixed(4)}`;
  for (const storey of laid.storeys) {
    for (const wall of storey.walls) {
      for (const course of wall.courses) {
        const key = keyOf(storey.id, wall.core.code, (wall.base + course.bottom) / NM_PER_INCH);
        const straight = course.pieces.filter(({ kind, inside }) => kind === 'straight' && !inside);
        sums.set(key, straight.reduce((sum, { from, to }) => sum + to - from, sums.get(key) ?? 0));
      }
    }
  }
  // Each wall's length and legs are rounded once, to 2 µm at most.
  const room = SNAP_INCHES * 4 * slow.walls.length;
  return slow.laid.flatMap(({ storey, core, bottom, length }) => {
    const got = (sums.get(keyOf(storey, core, bottom)) ?? 0) / NM_PER_INCH;
    return Math.abs(got - length) > room ? [`${keyOf(storey, core, bottom)}: ${got} laid, slow ${length}`] : [];
  });
}

/** To 1e-9 where no axis length was snapped to a round one; else to the volume of what the snapping moved, computed wall by wall. */
function concreteDifferences({ concrete, laid }: Takeoff, slow: SlowTakeoff): string[] {
  const fast = Number(concrete.reduce((sum, storey) => sum + storey.nm3, 0n)) / NM_PER_INCH ** 3;
  const snapped = laid.storeys.flatMap((storey) => storey.walls).reduce((sum, { mark, length, core, stack }) => {
    const moved = length / NM_PER_INCH - (slow.walls.find((each) => each.mark === mark)?.axis ?? 0);
    return sum + moved * (core.width / NM_PER_INCH) * (stack.height / NM_PER_INCH);
  }, 0);
  return [slow.concreteByLengths, slow.concreteByUnion].flatMap((volume) =>
    (Math.abs((fast - snapped) / volume - 1) > 1e-9 ? [`concrete ${fast} in³ less ${snapped} snapped, slow ${volume}`] : []));
}

/** decisions.md 5: overage and pump loss are added and the sum is rounded up, storey by storey. */
function orderDifferences({ concrete }: Takeoff, slow: SlowTakeoff): string[] {
  const step = HERON.orderStepYd3;
  const rounded = (yd3: number): number => Math.ceil((yd3 * (1 + HERON.overage) + HERON.pumpLossYd3) / step) * step;
  return concrete.flatMap(({ storey, orderYd3 }) => {
    const yd3 = slow.concreteOf.get(storey)! / INCHES_PER_YARD ** 3;
    const fits = [rounded(yd3 * (1 - 1e-6)), rounded(yd3 * (1 + 1e-6))].includes(orderYd3);
    return fits ? [] : [`${storey}: ${orderYd3} yd³ ordered, slow ${rounded(yd3)}`];
  });
}

function seamDifferences({ findings }: Takeoff, slow: SlowTakeoff): string[] {
  const named = (lines: readonly (readonly string[])[]): string => lines.map((marks) => [...marks].sort().join('+')).sort().join(', ');
  const fast = named(findings.filter(({ code }) => code === 'seam').map(({ walls }) => walls));
  return fast === named(slow.seams) ? [] : [`seams ${fast}, slow ${named(slow.seams)}`];
}
