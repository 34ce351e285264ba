import type { SeededRandom } from './seeded-random.js';

/** Corners of an outline in inches, walked with the building on the left; `open` outlines end free. */
export interface Outline {
  readonly points: readonly (readonly [number, number])[];
  readonly open?: boolean;
}

/** A whole number of steps from low to high. */
export type Sizer = (low: number, high: number) => number;

type Shape = (size: Sizer, random: SeededRandom) => readonly Outline[];

const closed = (...points: (readonly [number, number])[]): Outline => ({ points });

const rectangle: Shape = (size) => {
  const [w, d] = [size(100, 600), size(100, 480)];
  return [closed([0, 0], [w, 0], [w, d], [0, d])];
};

const lShape: Shape = (size) => {
  const [w, d, nw, nd] = [size(260, 600), size(260, 560), size(110, 140), size(110, 140)];
  return [closed([0, 0], [w, 0], [w, d - nd], [w - nw, d - nd], [w - nw, d], [0, d])];
};

const uShape: Shape = (size) => {
  const [a, b, c, d, deep] = [size(110, 180), size(120, 240), size(110, 180), size(260, 420), size(110, 140)];
  return [closed([0, 0], [a + b + c, 0], [a + b + c, d], [a + b, d], [a + b, d - deep], [a, d - deep], [a, d], [0, d])];
};

const tShape: Shape = (size) => {
  const [a, b, c, stem, bar] = [size(110, 200), size(120, 220), size(110, 200), size(110, 240), size(120, 240)];
  return [closed([a, 0], [a + b, 0], [a + b, stem], [a + b + c, stem], [a + b + c, stem + bar], [0, stem + bar], [0, stem], [a, stem])];
};

const plus: Shape = (size) => {
  const [a, b, c] = [size(110, 160), size(120, 200), size(110, 160)];
  const [far, end] = [a + b, a + b + c];
  return [closed([a, 0], [far, 0], [far, a], [end, a], [end, far], [far, far], [far, end], [a, end], [a, far], [0, far], [0, a], [a, a])];
};

const courtyard: Shape = (size) => {
  const [w, d, left, low] = [size(460, 700), size(460, 700), size(80, 150), size(80, 150)];
  const [iw, id] = [size(120, 210), size(120, 210)];
  return [
    closed([0, 0], [w, 0], [w, d], [0, d]),
    closed([left, low], [left, low + id], [left + iw, low + id], [left + iw, low]),
  ];
};

const bay: Shape = (size) => {
  const [a, d, b, c, depth] = [size(100, 200), size(66, 96), size(80, 200), size(100, 200), size(200, 360)];
  return [closed([0, 0], [a, 0], [a + d, -d], [a + d + b, -d], [a + 2 * d + b, 0], [a + 2 * d + b + c, 0], [a + 2 * d + b + c, depth], [0, depth])];
};

/** A ring of equal sides, its turns 360 / n. */
const ring = (n: number, side: number): Outline => {
  const points: [number, number][] = [];
  let [x, y] = [0, 0];
  for (let index = 0; index < n; index++) {
    points.push([x, y]);
    x += side * Math.cos((2 * Math.PI * index) / n);
    y += side * Math.sin((2 * Math.PI * index) / n);
  }
  return { points };
};

const octagon: Shape = (size) => [ring(8, size(72, 240))];
const polygon: Shape = (size, random) => [ring(random.pick([5, 6, 7, 9, 10, 12]), size(90, 240))];

const cutCorner: Shape = (size, random) => {
  const [w, d] = [size(300, 560), size(300, 560)];
  const turn = (random.pick([15, 20, 30, 40, 50, 60, 67.5, 75]) * Math.PI) / 180;
  const cut = size(90, 130);
  return [closed([0, 0], [w, 0], [w, d - cut * Math.sin(turn)], [w - cut * Math.cos(turn), d], [0, d])];
};

const hingedChain: Shape = (size, random) => {
  const first = size(120, 360);
  const second = size(120, 360);
  const turn = ((random.whole(10, 100) * Math.PI) / 180) * random.pick([1, -1]);
  return [{ points: [[0, 0], [first, 0], [first + second * Math.cos(turn), second * Math.sin(turn)]], open: true }];
};

const freeWalls: Shape = (size, random) =>
  Array.from({ length: random.whole(1, 3) }, (_, index) => ({ points: [[0, index * 200], [size(30, 500), index * 200]] as const, open: true }));

const zigzag: Shape = (size) => {
  const [a, b, c] = [size(110, 300), size(110, 300), size(110, 300)];
  return [{ points: [[0, 0], [a, 0], [a, b], [a + c, b]], open: true }];
};

const openU: Shape = (size) => {
  const [a, b, c] = [size(110, 300), size(110, 300), size(110, 300)];
  return [{ points: [[0, 0], [a, 0], [a, b], [a - c, b]], open: true }];
};

const twoHouses: Shape = (size, random) => [
  ...rectangle(size, random),
  { points: rectangle(size, random)[0]!.points.map(([x, y]) => [x + 800, y] as const) },
];

export const SHAPES: Readonly<Record<string, Shape>> = {
  rectangle, lShape, uShape, tShape, plus, courtyard, bay, octagon, polygon, cutCorner, hingedChain, freeWalls, zigzag, openU, twoHouses,
};
