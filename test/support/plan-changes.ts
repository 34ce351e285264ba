import type { Dimension, DocumentPoint, OpeningRow, ScheduleDocument, WallRow } from './schedule-document.js';
import type { Plan } from './plans.js';
import type { SeededRandom } from './seeded-random.js';

/** Changes to a drawing that must change no quantity. Each takes a plan of plain numbers and gives the changed document. */
export type PlanChange = (plan: Plan, random: SeededRandom) => ScheduleDocument;

type Move = (x: number, y: number) => readonly [number, number];

const moved = (document: ScheduleDocument, move: Move): ScheduleDocument => ({
  ...document,
  walls: document.walls.map((wall) => ({ ...wall, from: movePoint(wall.from!, move), to: movePoint(wall.to!, move) })),
});
const movePoint = ([x, y]: DocumentPoint, move: Move): DocumentPoint => move(Number(x), Number(y));
const runOf = ({ from, to }: WallRow): number => Math.hypot(Number(to![0]) - Number(from![0]), Number(to![1]) - Number(from![1]));

/** Turns the sheet by any angle about a point that is not the origin. */
export const rotate: PlanChange = ({ document }, random) => {
  const angle = random.next() * 2 * Math.PI;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return moved(document, (x, y) => [cos * x - sin * y + 1000.25, sin * x + cos * y - 377.5]);
};

/** Holds the sheet against a mirror: walls are walked the other way so that the building stays on their left. */
export const mirror: PlanChange = ({ document }) => {
  const mirrored = moved(document, (x, y) => [-x, y]);
  return mirrored.walls.reduce((changed, wall) => reversed(changed, wall.mark), mirrored);
};

/** Draws walls the other way where the rules turn them round: any of a loop, any but the first row of a chain, any on its axis. */
export const reverse: PlanChange = ({ document, chains }, random) => {
  let changed = document;
  for (const { marks, closed } of chains) {
    const all = random.chance(0.4);
    const first = document.walls.find(({ mark }) => marks.includes(mark))!.mark;
    for (const mark of marks) {
      const may = closed || document.dimensionsTo === 'axis' || (mark !== first && marks.length > 1);
      if (may && (all || random.chance(0.5))) changed = reversed(changed, mark);
    }
  }
  return changed;
};

function reversed(document: ScheduleDocument, mark: string): ScheduleDocument {
  const turn = (opening: OpeningRow, run: number): OpeningRow => ({ ...opening, at: run - Number(opening.at) - Number(opening.width) });
  const wall = document.walls.find((each) => each.mark === mark)!;
  return {
    ...document,
    walls: document.walls.map((each) => (each === wall ? { ...each, from: each.to!, to: each.from! } : each)),
    openings: document.openings.map((opening) => (opening.wall === mark ? turn(opening, runOf(wall)) : opening)),
  };
}

/** Shuffles the rows of the sheets. */
export const reorder: PlanChange = ({ document }, random) => {
  const shuffle = <T>(rows: readonly T[]): T[] =>
    rows.map((row) => ({ row, key: random.next() })).sort((a, b) => a.key - b.key).map(({ row }) => row);
  return { ...document, walls: shuffle(document.walls), openings: shuffle(document.openings) };
};

/** Writes one wall as two that go straight on: never through an opening, nor where a mitre would leave a wall no axis. */
export const split: PlanChange = ({ document }, random) => {
  const wall = random.pick(document.walls);
  const run = runOf(wall);
  const mine = document.openings.filter((opening) => opening.wall === wall.mark);
  const inside = (station: number): boolean => mine.some(({ at, width }) => station > Number(at) && station < Number(at) + Number(width));
  const unit = document.units === 'in' ? 1 : 10;
  const clear = document.units === 'in' ? 16 : 410;
  const stations = Array.from({ length: Math.floor(run / unit) }, (_, index) => index * unit)
    .filter((station) => station >= clear && station <= run - clear && !inside(station));
  if (stations.length === 0) return document;
  const station = random.pick(stations);
  const along = (value: number, from: Dimension, to: Dimension): number => Number(from) + ((Number(to) - Number(from)) * value) / run;
  const middle = [along(station, wall.from![0], wall.to![0]), along(station, wall.from![1], wall.to![1])] as const;
  const second = `${wall.mark}b`;
  return {
    ...document,
    walls: document.walls.flatMap((each) => (each === wall ? [{ ...each, to: middle }, { ...each, mark: second, from: middle }] : [each])),
    openings: document.openings.map((opening) =>
      (opening.wall === wall.mark && Number(opening.at) >= station ? { ...opening, wall: second, at: Number(opening.at) - station } : opening)),
  };
};

const PER_UNIT = { in: 25.4, ft: 304.8, mm: 1, m: 1000 } as const;

const rewritten = (document: ScheduleDocument, units: ScheduleDocument['units'], write: (value: number) => Dimension): ScheduleDocument => {
  const point = ([x, y]: DocumentPoint): DocumentPoint => [write(Number(x)), write(Number(y))];
  const optional = (value: Dimension | undefined): Dimension | undefined => (value === undefined ? undefined : write(Number(value)));
  return {
    ...document, units,
    storeys: document.storeys.map((storey) => ({ ...storey, height: write(Number(storey.height)) })),
    walls: document.walls.map((wall) => ({
      ...wall, from: point(wall.from!), to: point(wall.to!),
      ...(wall.height === undefined ? {} : { height: optional(wall.height)! }), ...(wall.base === undefined ? {} : { base: optional(wall.base)! }),
    })),
    openings: document.openings.map((opening) => ({
      ...opening, at: write(Number(opening.at)), sill: write(Number(opening.sill)), width: write(Number(opening.width)), height: write(Number(opening.height)),
    })),
  };
};

/** The same drawing in another unit of bare numbers. */
export const inUnits = (units: ScheduleDocument['units']): PlanChange => ({ document }) => {
  const factor = PER_UNIT[document.units] / PER_UNIT[units];
  return rewritten(document, units, (value) => value * factor);
};

/** The same drawing with every dimension in words: feet and inches where it is in inches on sixty-fourths, millimetres otherwise. */
export const inWords: PlanChange = ({ document }) => rewritten(document, document.units, (value) => {
  const sixtyFourths = value * 64;
  if (document.units !== 'in' || value < 0 || Math.abs(sixtyFourths - Math.round(sixtyFourths)) > 1e-9) {
    const mm = value * PER_UNIT[document.units];
    return Math.abs(mm) < 1e-6 ? '0 mm' : `${mm.toFixed(6)} mm`;
  }
  const whole = Math.floor(Math.round(sixtyFourths) / 64);
  const parts = Math.round(sixtyFourths) % 64;
  return `${Math.floor(whole / 12)}'-${whole % 12}${parts > 0 ? ` ${parts}/64` : ''}"`;
});

export const CHANGES: Readonly<Record<string, PlanChange>> = {
  rotate, mirror, reverse, reorder, split, feet: inUnits('ft'), millimetres: inUnits('mm'), metres: inUnits('m'), words: inWords,
};
