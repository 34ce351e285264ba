import manifoldModule, { type Manifold, type ManifoldToplevel } from 'manifold-3d/manifold.js';
import type { Schedule } from '../../src/domain/schedule/schedule.js';
import { HERON } from './heron-figures.js';
import type { Point } from './slow-lines.js';
import { FACETS, slabsOf, type Slab } from './solid-footprints.js';
import { beside, inchesOf } from './solid-curves.js';
import { sweepsOf, type LegEnd } from './solid-ledges.js';
import { signedArea, solidWalls, type SolidWall } from './solid-lines.js';

/** Concrete of a schedule from solids [in³]. */
export interface SolidVolumes {
  /** Its own body, less the concrete its openings take, be it in a neighbour's half of a corner. */
  readonly ofWall: ReadonlyMap<string, number>;
  /** All walls of a storey as one body, less all openings. */
  readonly ofStorey: ReadonlyMap<string, number>;
  /** Swept along a wall by its ledges and taper tops, part of its own sum but not of the storey's body. */
  readonly sweptOf: ReadonlyMap<string, number>;
  /** As much as the bodies of its walls overlap: none, where footprints are mitred. */
  readonly overlapOf: ReadonlyMap<string, number>;
  readonly slabs: ReadonlyMap<string, readonly Slab[]>;
}

/** Further than any core reaches from its dimension line, either way [in]. */
const CLEAR = 40;

export class SolidKernel {
  private readonly made: Manifold[] = [];
  private constructor(private readonly kernel: ManifoldToplevel) {}

  static async load(): Promise<SolidKernel> {
    const kernel = await manifoldModule();
    kernel.setup();
    return new SolidKernel(kernel);
  }

  /** A prism over an outline, in either sense. */
  prism(outline: readonly Point[], bottom: number, top: number): Manifold {
    const points = (signedArea(outline) > 0 ? [...outline] : outline.toReversed()).map(([x, y]): [number, number] => [x, y]);
    return this.keep(this.keep(this.kernel.Manifold.extrude([points], top - bottom)).translate([0, 0, bottom]));
  }

  /** A three-cornered section of some area, swept along. */
  rib(section: number, length: number): Manifold {
    const depth = (2 * section) / HERON.courseHeight;
    return this.prism([[0, 0], [depth, HERON.courseHeight], [0, HERON.courseHeight]], 0, length);
  }

  union(parts: readonly Manifold[]): Manifold {
    return this.keep(this.kernel.Manifold.union([...parts]));
  }

  subtract(body: Manifold, holes: readonly Manifold[]): Manifold {
    return holes.length === 0 ? body : this.keep(this.kernel.Manifold.difference([body, ...holes]));
  }

  intersect(a: Manifold, b: Manifold): Manifold {
    return this.keep(a.intersect(b));
  }

  /** A profile over stations of a straight wall, as thick as anything, stood up in its place. */
  upright(wall: SolidWall, profile: readonly Point[]): Manifold {
    if (wall.curve.kind !== 'line') throw new Error(`${wall.mark} is not straight`);
    const flat = this.prism(profile, -CLEAR, CLEAR);
    const [[x, y], [ox, oy]] = [wall.curve.along, wall.curve.from];
    // Stations along the wall, heights upwards, the prism's own height across.
    return this.keep(flat.transform([x, y, 0, 0, 0, 0, 1, 0, y, -x, 0, 0, ox, oy, 0, 1]));
  }

  keep(body: Manifold): Manifold {
    this.made.push(body);
    return body;
  }

  /** Gives back the memory of every body made since the last time. */
  clear(): void {
    for (const body of this.made.splice(0)) body.delete();
  }
}

const noLegs: LegEnd = (wall) => {
  throw new Error(`the taper of ${wall.mark} stops at a leg`);
};

/** The concrete of every wall from the schedule's drawn lines alone, but for tapers that stop at a leg; decisions.md 4, 5, 7, 9, 10, 16, 21, 22, 24. */
export function solidVolumes(schedule: Schedule, kernel: SolidKernel, legEnd: LegEnd = noLegs): SolidVolumes {
  const walls = solidWalls(schedule);
  const numbers = (): Map<string, number> => new Map();
  const answer = { ofWall: numbers(), ofStorey: numbers(), sweptOf: numbers(), overlapOf: numbers(), slabs: new Map<string, Slab[]>() };
  const sweeps = sweepsOf(schedule, walls, legEnd);
  for (const storey of new Set(walls.map((wall) => wall.storey))) {
    const here = walls.filter((wall) => wall.storey === storey);
    const bodies = here.map((wall) => {
      const slabs = slabsOf(wall, walls);
      const gables = gablesOf(wall, slabs, schedule, kernel);
      answer.slabs.set(wall.mark, slabs);
      return kernel.union([...slabs.map(({ outline, bottom, top }) => kernel.prism(outline, bottom, top)), ...gables]);
    });
    const together = kernel.union(bodies);
    const holes = here.map((wall) => holesOf(wall, kernel));
    here.forEach(({ mark }, index) => {
      const own = holes[index]!;
      const taken = own.length === 0 ? 0 : kernel.intersect(together, kernel.union(own)).volume();
      const swept = sweeps.filter(({ wall }) => wall === mark).reduce((sum, { section, length }) => sum + kernel.rib(section, length).volume(), 0);
      answer.sweptOf.set(mark, swept);
      answer.ofWall.set(mark, bodies[index]!.volume() - taken + swept);
    });
    answer.overlapOf.set(storey, bodies.reduce((sum, body) => sum + body.volume(), 0) - together.volume());
    answer.ofStorey.set(storey, kernel.subtract(together, holes.flat()).volume());
  }
  kernel.clear();
  return answer;
}

function gablesOf(wall: SolidWall, slabs: readonly Slab[], schedule: Schedule, kernel: SolidKernel): Manifold[] {
  return gableProfiles(wall, schedule).map((profile) => {
    const rise = Math.max(...profile.map(([, z]) => z));
    return kernel.intersect(kernel.prism(slabs.at(-1)!.outline, wall.top, rise), kernel.upright(wall, profile));
  });
}

/** decisions.md 22: what lies under the slope, over stations of the dimension line. */
export function gableProfiles(wall: SolidWall, schedule: Schedule): Point[][] {
  return schedule.features.flatMap((each) => {
    if (each.kind !== 'gable' || each.wall !== wall.mark) return [];
    const peak: Point = [inchesOf(each.peakAt), wall.top + inchesOf(each.rise)];
    return [[[0, wall.top], [wall.curve.length, wall.top], peak]];
  });
}

/**
 * decisions.md 16, 21: from the near jamb along the dimension line, from core face to core face at each level, on into a gable;
 * a radius wall's jambs are radial.
 */
function holesOf(wall: SolidWall, kernel: SolidKernel): Manifold[] {
  const { curve, walk } = wall;
  return wall.openings.flatMap(({ at, width, sill: above, height }) => {
    const [from, to] = [inchesOf(at), inchesOf(at + width)];
    const sill = wall.base + inchesOf(above);
    const parts = curve.kind === 'line' ? 1 : Math.ceil(((to - from) / curve.radius / (2 * Math.PI)) * FACETS);
    const edge = (aside: number): Point[] => Array.from({ length: parts + 1 }, (_, index) => beside(curve, from + ((to - from) * index) / parts, walk * aside));
    // Facets of a hole and of its wall are not the same: on a curve it reaches into the panels, clear of other concrete.
    const over = curve.kind === 'line' ? 0 : 1;
    return wall.levels.flatMap(({ bottom, top, core, offset }, index) => {
      const low = Math.max(sill, bottom);
      const high = Math.min(sill + inchesOf(height), index === wall.levels.length - 1 ? Infinity : top);
      return high > low ? [kernel.prism([...edge(offset - core / 2 - over), ...edge(offset + core / 2 + over).toReversed()], low, high)] : [];
    });
  });
}
