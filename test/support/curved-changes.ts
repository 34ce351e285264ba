import type { Dimension, DocumentPoint, OpeningRow } from './schedule-document.js';
import { lengthOf, PER_INCH, type CurvedDocument, type CurvedPlan, type CurvedRow } from './curved-plans.js';
import type { SeededRandom } from './seeded-random.js';

/** Changes to a drawing with curves that must change no quantity. */
export type CurvedChange = (plan: CurvedPlan, random: SeededRandom) => CurvedDocument;

type Move = (x: number, y: number) => DocumentPoint;

const moved = (document: CurvedDocument, move: Move): CurvedDocument => ({
  ...document,
  walls: document.walls.map((wall) => ({ ...wall, from: move(Number(wall.from![0]), Number(wall.from![1])), to: move(Number(wall.to![0]), Number(wall.to![1])) })),
});
const otherTurn = (row: CurvedRow): CurvedRow => (row.arc ? { ...row, arc: { ...row.arc, turns: row.arc.turns === 'left' ? 'right' : 'left' } } : row);

/** A wall drawn from its other end: its arc turns the other way, its openings are told from there. */
function reversedWall(document: CurvedDocument, mark: string): CurvedDocument {
  const wall = document.walls.find((each) => each.mark === mark)!;
  const turn = (opening: OpeningRow): OpeningRow => ({ ...opening, at: lengthOf(wall) - Number(opening.at) - Number(opening.width) });
  return {
    ...document,
    walls: document.walls.map((each) => (each === wall ? otherTurn({ ...each, from: each.to!, to: each.from! }) : each)),
    openings: document.openings.map((opening) => (opening.wall === mark ? turn(opening) : opening)),
  };
}

/** The sheet turned by 37° about a point that is not the origin. */
const rotate: CurvedChange = ({ document }) => {
  const [cos, sin] = [Math.cos((37 * Math.PI) / 180), Math.sin((37 * Math.PI) / 180)];
  return moved(document, (x, y) => [cos * x - sin * y + 1000.25, sin * x + cos * y - 377.5]);
};

/** Held against a mirror: walls are drawn the other way so that the building stays on their left. */
const mirror: CurvedChange = ({ document }) => {
  const mirrored = moved(document, (x, y) => [-x, y]);
  const turned = { ...mirrored, walls: mirrored.walls.map(otherTurn) };
  return turned.walls.reduce<CurvedDocument>((changed, { mark }) => reversedWall(changed, mark), turned);
};

/** Walls drawn the other way where the rules turn them round: any of a ring, any but the first of a chain, any on its axis. */
const reverse: CurvedChange = ({ document, chains }, random) => {
  let changed = document;
  const all = random.chance(0.4);
  for (const { marks, closed } of chains) {
    for (const [index, mark] of marks.entries()) {
      const may = closed || document.dimensionsTo === 'axis' || index > 0;
      if (may && (all || random.chance(0.6))) changed = reversedWall(changed, mark);
    }
  }
  return changed;
};

const reorder: CurvedChange = ({ document }, random) => {
  const shuffle = <T>(rows: readonly T[]): T[] => rows.map((row) => ({ row, key: random.next() })).sort((a, b) => a.key - b.key).map(({ row }) => row);
  return { ...document, walls: shuffle(document.walls), openings: shuffle(document.openings) };
};

const inUnits = (units: CurvedDocument['units']): CurvedChange => ({ document }) => {
  const factor = PER_INCH[units] / PER_INCH[document.units];
  const write = (value: Dimension): number => Number(value) * factor;
  const point = ([x, y]: DocumentPoint): DocumentPoint => [write(x), write(y)];
  return {
    ...document, units,
    storeys: document.storeys.map((storey) => ({ ...storey, height: write(storey.height) })),
    walls: document.walls.map(({ height, arc, ...wall }): CurvedRow => ({
      ...wall, from: point(wall.from!), to: point(wall.to!), ...(height !== undefined && { height: write(height) }), ...(arc && { arc: { ...arc, radius: arc.radius * factor } }),
    })),
    openings: document.openings.map((opening) => ({ ...opening, at: write(opening.at), sill: write(opening.sill), width: write(opening.width), height: write(opening.height) })),
  };
};

export const CURVED_CHANGES: Readonly<Record<string, CurvedChange>> = {
  rotate, mirror, reverse, reorder, feet: inUnits('ft'), millimetres: inUnits('mm'),
};
