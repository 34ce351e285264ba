import { area, difference, FillRule, intersect, union, type Path64, type Paths64 } from 'clipper2-ts';
import type { Schedule } from '../../src/domain/schedule/schedule.js';
import type { Point } from './slow-lines.js';
import type { Slab } from './solid-footprints.js';
import { inchesOf } from './solid-curves.js';
import type { SolidWall } from './solid-lines.js';
import { gableProfiles } from './solid-volumes.js';

/** One face of a wall [in²]. */
export interface FaceAreas {
  readonly gross: number;
  readonly openings: number;
  readonly net: number;
}

/** Whole steps to the inch: a tenth of a micrometre, 4e-8 of the shortest wall. */
const STEPS = 254_000;
const CURVED = [-1, -0.5, 0, 0.5, 1];

/**
 * One face of a wall, by polygons: what the concrete covers of a plane parallel to its faces, slopes and all, holes united and
 * cut to it; the mean over the core's width, as a mitred wall's two faces differ (decisions.md 5: footprint ÷ core × height).
 */
export function faceAreas(wall: SolidWall, slabs: readonly Slab[], schedule: Schedule): FaceAreas {
  // Ends of curves are no straight lines in plan: four strips of the core, each smooth.
  const kinks = wall.curve.kind === 'arc' ? CURVED : [-1, ...kinksOf(wall, slabs.at(-1)!, schedule), 1];
  const samples = kinks.slice(1).flatMap((right, index) => {
    const left = kinks[index]!;
    // Simpson's rule: between kinks a plane's area is at most quadratic in its place across a straight core.
    return [[left, 1], [(left + right) / 2, 4], [right, 1]].map(([side, weight]) => ({ side: side!, weight: (weight! * (right - left)) / 12 }));
  });
  const areas = samples.map(({ side, weight }) => ({ weight, ...planeAreas(wall, slabs, side, schedule) }));
  const mean = (of: keyof FaceAreas): number => areas.reduce((sum, each) => sum + each.weight * each[of], 0);
  return { gross: mean('gross'), openings: mean('openings'), net: mean('net') };
}

/** Places across the core at which its end passes the foot or the peak of a slope; ends of straight cores are straight in plan. */
function kinksOf(wall: SolidWall, { planeAt }: Slab, schedule: Schedule): number[] {
  const stations = gableProfiles(wall, schedule).flatMap((profile) => profile.map(([station]) => station));
  const [right, left] = [planeAt(-1), planeAt(1)];
  const places = (['from', 'to'] as const).flatMap((end) => stations.map((station) => -1 + (2 * (station - right[end])) / (left[end] - right[end])));
  return [...new Set(places.filter((place) => place > -1 && place < 1))].sort((a, b) => a - b);
}

/** Stations to steps, heights to steps. */
const path = (points: readonly Point[], scale: number): Path64 => points.map(([x, y]) => ({ x: Math.round(x * scale * STEPS), y: Math.round(y * STEPS) }));
const rectangle = (from: number, to: number, bottom: number, top: number, scale: number): Path64 =>
  path([[from, bottom], [to, bottom], [to, top], [from, top]], scale);
const squareInches = (paths: Paths64): number => paths.reduce((sum, each) => sum + area(each), 0) / STEPS ** 2;

function planeAreas(wall: SolidWall, slabs: readonly Slab[], side: number, schedule: Schedule): FaceAreas {
  const planes = slabs.map(({ planeAt }) => planeAt(side));
  const levels = slabs.map(({ bottom, top }, index) => rectangle(planes[index]!.from, planes[index]!.to, bottom, top, planes[index]!.scale));
  const { from, to, scale } = planes.at(-1)!;
  const gables = gableProfiles(wall, schedule).flatMap((profile) => {
    const rise = Math.max(...profile.map(([, z]) => z));
    return intersect([path(profile, scale)], [rectangle(from, to, wall.top, rise, scale)], FillRule.NonZero);
  });
  const gross = union([...levels, ...gables], FillRule.NonZero);
  const holes = union(slabs.flatMap((slab, index) => holesIn(wall, slab, planes[index]!.scale, index === slabs.length - 1)), FillRule.NonZero);
  return {
    gross: squareInches(gross),
    openings: squareInches(intersect(gross, holes, FillRule.NonZero)),
    net: squareInches(difference(gross, holes, FillRule.NonZero)),
  };
}

/** Holes at the height of a slab, on from the last one into a gable. */
function holesIn(wall: SolidWall, slab: Slab, scale: number, last: boolean): Paths64 {
  return wall.openings.flatMap((opening) => {
    const sill = wall.base + inchesOf(opening.sill);
    const head = sill + inchesOf(opening.height);
    const [bottom, top] = [Math.max(sill, slab.bottom), last ? head : Math.min(head, slab.top)];
    return top > bottom ? [rectangle(inchesOf(opening.at), inchesOf(opening.at + opening.width), bottom, top, scale)] : [];
  });
}
