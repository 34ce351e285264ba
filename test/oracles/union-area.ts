export type Corner = readonly [number, number];

/**
 * Area of the union of simple polygons, the slow way: cut the plane into upright slabs at every corner and every crossing of
 * two edges. Inside a slab edges are straight and do not cross, so the covered width is linear in x and its value at the
 * middle times the slab is exact.
 */
export function unionArea(polygons: readonly (readonly Corner[])[]): number {
  const cuts = [...new Set([...polygons.flat().map(([x]) => x), ...crossings(polygons)])].sort((a, b) => a - b);
  let area = 0;
  for (let index = 1; index < cuts.length; index++) {
    const width = cuts[index]! - cuts[index - 1]!;
    if (width > 0) area += width * coveredAt((cuts[index]! + cuts[index - 1]!) / 2, polygons);
  }
  return area;
}

/** Area by the shoelace rule, positive where the corners run counter-clockwise. */
export function shoelace(polygon: readonly Corner[]): number {
  let twice = 0;
  polygon.forEach(([x, y], index) => {
    const [nextX, nextY] = polygon[(index + 1) % polygon.length]!;
    twice += x * nextY - nextX * y;
  });
  return twice / 2;
}

const edges = (polygon: readonly Corner[]): readonly (readonly [Corner, Corner])[] =>
  polygon.map((corner, index) => [corner, polygon[(index + 1) % polygon.length]!]);

function coveredAt(x: number, polygons: readonly (readonly Corner[])[]): number {
  const spans: [number, number][] = [];
  for (const polygon of polygons) {
    const heights = edges(polygon)
      .filter(([[x1], [x2]]) => Math.min(x1, x2) < x && x < Math.max(x1, x2))
      .map(([[x1, y1], [x2, y2]]) => y1 + ((y2 - y1) * (x - x1)) / (x2 - x1))
      .sort((a, b) => a - b);
    for (let index = 0; index + 1 < heights.length; index += 2) spans.push([heights[index]!, heights[index + 1]!]);
  }
  spans.sort((a, b) => a[0] - b[0]);
  let covered = 0;
  let reach = -Infinity;
  for (const [low, high] of spans) {
    covered += Math.max(0, high - Math.max(low, reach));
    reach = Math.max(reach, high);
  }
  return covered;
}

function crossings(polygons: readonly (readonly Corner[])[]): number[] {
  const all = polygons.flatMap((polygon) => edges(polygon));
  const found: number[] = [];
  for (let a = 0; a < all.length; a++) {
    for (let b = a + 1; b < all.length; b++) {
      const [[x1, y1], [x2, y2]] = all[a]!;
      const [[x3, y3], [x4, y4]] = all[b]!;
      const turn = (x2 - x1) * (y4 - y3) - (y2 - y1) * (x4 - x3);
      if (turn === 0) continue;
      const along = ((x3 - x1) * (y4 - y3) - (y3 - y1) * (x4 - x3)) / turn;
      const across = ((x3 - x1) * (y2 - y1) - (y3 - y1) * (x2 - x1)) / turn;
      if (along > 0 && along < 1 && across > 0 && across < 1) found.push(x1 + along * (x2 - x1));
    }
  }
  return found;
}
