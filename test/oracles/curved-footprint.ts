import { shoelace, type Corner } from './union-area.js';

/** Facets to an arc of these footprints: 200,000 of them leave less than 1e-10 of the area of any arc of half a turn out. */
const FACETS = 200_000;

/** Points along a circle from one bearing to another [rad], both ends included; either direction. */
export function arcPath([x, y]: Corner, radius: number, from: number, to: number): Corner[] {
  return Array.from({ length: FACETS + 1 }, (_, index): Corner => {
    const bearing = from + ((to - from) * index) / FACETS;
    return [x + radius * Math.cos(bearing), y + radius * Math.sin(bearing)];
  });
}

/** Area of a figure walked once round, the slow way: every arc is many straight facets (shoelace rule). */
export const pathArea = (path: readonly Corner[]): number => Math.abs(shoelace(path));

/** The point of a circle about the origin on an upright or level line, on the side given. */
export const onLevel = (radius: number, y: number, side: 1 | -1): Corner => [side * Math.sqrt(radius ** 2 - y ** 2), y];
