import type { Vector } from '../geometry/vector.js';

/** A convex quadrilateral in order round. */
export type Quad = readonly [Vector, Vector, Vector, Vector];

/** A rectangle about its middle, turned [deg]. */
export function turnedBox(centre: Vector, width: number, height: number, degrees: number): Quad {
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const at = (u: number, v: number): Vector => ({ x: centre.x + u * cos - v * sin, y: centre.y + u * sin + v * cos });
  const [w, h] = [width / 2, height / 2];
  return [at(-w, -h), at(w, -h), at(w, h), at(-w, h)];
}

/**
 * What already stands on the sheet, so that the next label finds a free place: solids that nothing may cover, texts that no line may
 * cross, and thin lines that other lines may cross but letters may not.
 */
export class Obstacles {
  private readonly solids: RoomGrid;
  private readonly texts: RoomGrid;
  private readonly lines: RoomGrid;

  /** @param cell side of the squares by which rooms are looked up, about the size of a label [nm] */
  constructor(cell: number) {
    this.solids = new RoomGrid(cell);
    this.texts = new RoomGrid(cell);
    this.lines = new RoomGrid(cell);
  }

  addSolids(quads: readonly Quad[]): void {
    for (const quad of quads) this.solids.add(quad);
  }

  addTexts(quads: readonly Quad[]): void {
    for (const quad of quads) this.texts.add(quad);
  }

  addLine(from: Vector, to: Vector, weight: number): void {
    this.lines.add(lineQuad(from, to, weight));
  }

  /** Free for a solid. */
  isFree(quads: readonly Quad[]): boolean {
    return !quads.some((quad) => this.solids.touches(quad) || this.texts.touches(quad));
  }

  /** Free for letters. */
  isClear(quads: readonly Quad[]): boolean {
    return this.isFree(quads) && !quads.some((quad) => this.lines.touches(quad));
  }

  /** A line from point to point would cross letters. */
  crossesText(from: Vector, to: Vector, weight: number): boolean {
    return this.texts.touches(lineQuad(from, to, weight));
  }
}

/** A quadrilateral with its upright bounds, which most comparisons end at. */
interface Room {
  readonly quad: Quad;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** Quadrilaterals found by the squares of the plane that their upright bounds reach into. */
class RoomGrid {
  private readonly cells = new Map<string, Room[]>();

  constructor(private readonly cell: number) {}

  add(quad: Quad): void {
    const room = roomOf(quad);
    for (const key of this.keysOf(room)) {
      const rooms = this.cells.get(key);
      if (rooms === undefined) this.cells.set(key, [room]);
      else rooms.push(room);
    }
  }

  touches(quad: Quad): boolean {
    const room = roomOf(quad);
    return this.keysOf(room).some(
      (key) => this.cells.get(key)?.some((other) => boundsTouch(room, other) && quadsTouch(quad, other.quad)) ?? false,
    );
  }

  private keysOf(room: Room): string[] {
    const keys: string[] = [];
    for (let column = Math.floor(room.left / this.cell); column <= Math.floor(room.right / this.cell); column += 1) {
      for (let row = Math.floor(room.bottom / this.cell); row <= Math.floor(room.top / this.cell); row += 1)
        keys.push(`${column}/${row}`);
    }
    return keys;
  }
}

function roomOf(quad: Quad): Room {
  const [a, b, c, d] = quad;
  return {
    quad,
    left: Math.min(a.x, b.x, c.x, d.x),
    right: Math.max(a.x, b.x, c.x, d.x),
    bottom: Math.min(a.y, b.y, c.y, d.y),
    top: Math.max(a.y, b.y, c.y, d.y),
  };
}

const boundsTouch = (a: Room, b: Room): boolean => a.left < b.right && b.left < a.right && a.bottom < b.top && b.bottom < a.top;

/** A line as a thin quadrilateral. */
export function lineQuad(from: Vector, to: Vector, weight: number): Quad {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const degrees = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  return turnedBox({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }, length, weight, degrees);
}

/** Convex shapes are apart exactly where some edge of one has the other wholly beyond it (separating axes). */
export function quadsTouch(a: Quad, b: Quad): boolean {
  return !hasSeparatingEdge(a, b) && !hasSeparatingEdge(b, a);
}

function hasSeparatingEdge(a: Quad, b: Quad): boolean {
  return a.some((from, i) => {
    const to = a[(i + 1) % a.length] as Vector;
    const across = (point: Vector): number => (to.x - from.x) * (point.y - from.y) - (to.y - from.y) * (point.x - from.x);
    const own = a.map(across);
    const others = b.map(across);
    return Math.max(...own) <= Math.min(...others) || Math.max(...others) <= Math.min(...own);
  });
}
