import type { RowReader } from './row-reader.js';
import type { Opening } from './schedule.js';

interface ReadOpening {
  readonly reader: RowReader;
  readonly opening: Opening;
}

/**
 * Tells every opening that overlaps another one of its wall. Openings may touch, and may stand one above the other.
 *
 * A sweep along each wall keeps the openings it stands in, ordered by sill; as these never overlap, only the two neighbours of a new
 * one are looked at, so n openings of a wall take about n·log n steps.
 */
export function reportOverlaps(openings: readonly ReadOpening[]): void {
  const walls = new Map<string, ReadOpening[]>();
  for (const each of openings) {
    const ofWall = walls.get(each.opening.wall);
    if (ofWall) ofWall.push(each);
    else walls.set(each.opening.wall, [each]);
  }
  for (const ofWall of walls.values()) sweep(ofWall);
}

const right = ({ opening }: ReadOpening): number => opening.at + opening.width;
const head = ({ opening }: ReadOpening): number => opening.sill + opening.height;

function sweep(ofWall: readonly ReadOpening[]): void {
  const arriving = [...ofWall].sort((a, b) => a.opening.at - b.opening.at);
  const leaving = [...ofWall].sort((a, b) => right(a) - right(b));
  const open: ReadOpening[] = [];
  let left = 0;
  for (const each of arriving) {
    for (let next = leaving[left]; next && right(next) <= each.opening.at; next = leaving[++left]) remove(open, next);
    const index = place(open, each.opening.sill);
    const other = [open[index - 1], open[index]].find(
      (neighbour) => neighbour && head(neighbour) > each.opening.sill && neighbour.opening.sill < head(each),
    );
    if (other) tell(each, other);
    else open.splice(index, 0, each);
  }
}

function tell({ reader, opening }: ReadOpening, other: ReadOpening): void {
  const name = other.opening.mark === '' ? other.reader.pointer : other.opening.mark;
  reader.fail('at', `an opening clear of the others of wall ${opening.wall}; it overlaps ${name}`);
}

/** First index whose sill is not below the given one. */
function place(open: readonly ReadOpening[], sill: number): number {
  let [low, high] = [0, open.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((open[middle]?.opening.sill ?? 0) < sill) low = middle + 1;
    else high = middle;
  }
  return low;
}

function remove(open: ReadOpening[], gone: ReadOpening): void {
  const index = place(open, gone.opening.sill);
  if (open[index] === gone) open.splice(index, 1);
}
