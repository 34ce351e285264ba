import type { Sizer } from './plan-shapes.js';
import type { SeededRandom } from './seeded-random.js';

export type Point = readonly [x: number, y: number];

/** A wall of a curved plan in its intended walking direction, in inches; straight without a radius. */
export interface CurvedDraft {
  readonly from: Point;
  readonly to: Point;
  readonly radius?: number;
  /** 1 to the left, −1 to the right. */
  readonly turn?: 1 | -1;
  /** Lower than the rest. */
  readonly low?: boolean;
}

/** Walls drawn one after another; a branch's ends stand on other walls, by their place among all walls of the plan. */
export interface CurvedChain {
  readonly walls: readonly CurvedDraft[];
  readonly closed: boolean;
  readonly on?: { readonly start?: number; readonly end?: number };
}

export interface Desk {
  readonly random: SeededRandom;
  readonly size: Sizer;
  /** From the dimension line to the axis: branches are drawn to the axis of what they stand on [in]. */
  readonly offset: number;
}

const degrees = (value: number): number => (value * Math.PI) / 180;
const sideOf = (random: SeededRandom): 1 | -1 => (random.chance(0.5) ? 1 : -1);

/** Draws straight runs and arcs one after another, along its heading. */
class Pen {
  readonly walls: CurvedDraft[] = [];
  private at: Point;
  private heading: number;

  constructor(at: Point, headingDeg = 0) {
    this.at = at;
    this.heading = degrees(headingDeg);
  }

  go(length: number): this {
    const to: Point = [this.at[0] + length * Math.cos(this.heading), this.at[1] + length * Math.sin(this.heading)];
    this.walls.push({ from: this.at, to });
    this.at = to;
    return this;
  }

  /** A round corner; a sharp one with no radius. */
  arc(radius: number, sweepDeg: number, turn: 1 | -1): this {
    const [x, y] = this.at;
    const [cx, cy] = [x - turn * radius * Math.sin(this.heading), y + turn * radius * Math.cos(this.heading)];
    this.heading += turn * degrees(sweepDeg);
    if (radius === 0) return this;
    const to: Point = [cx + turn * radius * Math.sin(this.heading), cy - turn * radius * Math.cos(this.heading)];
    this.walls.push({ from: this.at, to, radius, turn });
    this.at = to;
    return this;
  }

  open(on?: CurvedChain['on']): CurvedChain {
    return { walls: this.walls, closed: false, ...(on && { on }) };
  }

  /** Comes back to the very point where it began. */
  ring(): CurvedChain {
    const last = this.walls.length - 1;
    return { walls: this.walls.map((wall, index) => (index === last ? { ...wall, to: this.walls[0]!.from } : wall)), closed: true };
  }
}

type Kind = (desk: Desk) => CurvedChain[];

const free: Kind = ({ random, size }) =>
  [new Pen([size(-200, 200), size(-200, 200)], random.pick([0, 90, 33.3, 251])).arc(size(110, 420), random.pick([20, 45, 60, 90, 123.4, 150, 180]), sideOf(random)).open()];

/** A straight run, a curve, perhaps a second one that turns the other way, and a straight run again, each along the tangent of the last. */
const tangent: Kind = ({ random, size }) => {
  const turn = sideOf(random);
  const pen = new Pen([0, 0], random.pick([0, 90, 17])).go(size(60, 200)).arc(size(120, 300), random.pick([15, 30, 45, 90]), turn);
  if (random.chance(0.4)) pen.arc(size(120, 300), random.pick([15, 30, 45, 90]), -turn as 1 | -1);
  return [pen.go(size(60, 200)).open()];
};

/** A house with one to four corners rounded. */
const bay: Kind = ({ random, size }) => {
  const [width, depth] = [size(440, 640), size(440, 560)];
  const all = random.chance(0.4);
  const corner = (): number => (all || random.chance(0.4) ? size(120, 190) : 0);
  const [first, second, third, last] = [corner(), size(120, 190), corner(), corner()];
  const pen = new Pen([first, 0]);
  pen.go(width - first - second).arc(second, 90, 1).go(depth - second - third).arc(third, 90, 1);
  return [pen.go(width - third - last).arc(last, 90, 1).go(depth - last - first).arc(first, 90, 1).ring()];
};

/** The same with its round corner lower than the walls beside it, which end free above. */
const lowBay: Kind = (desk) => {
  const [house] = bay(desk);
  const low = house!.walls.findIndex(({ radius }) => radius !== undefined);
  return [{ ...house!, walls: house!.walls.map((wall, index) => (index === low ? { ...wall, low: true } : wall)) }];
};

/** A house one side of which is bowed out or in, meeting its neighbours at corners no unit makes. */
const bowed: Kind = ({ random, size }) => {
  const [width, depth] = [size(300, 420), size(260, 320)];
  const corners: readonly Point[] = [[0, 0], [width, 0], [width, depth], [0, depth]];
  const [radius, turn] = [size(depth * 0.65, depth * 2), sideOf(random)];
  return [{ closed: true, walls: corners.map((from, index) => ({ from, to: corners[(index + 1) % 4]!, ...(index === 1 && { radius, turn }) })) }];
};

const stadium: Kind = ({ size }) => {
  const [run, radius] = [size(80, 300), size(130, 220)];
  return [new Pen([0, 0]).go(run).arc(radius, 180, 1).go(run).arc(radius, 180, 1).ring()];
};

/** A ring of two or three arcs. */
const round: Kind = ({ random, size }) => {
  const radius = size(130, 300);
  const pen = new Pen([0, 0], random.pick([0, 37]));
  for (const sweep of random.pick([[180, 180], [120, 90, 150], [60, 155, 145]])) pen.arc(radius, sweep, 1);
  return [pen.ring()];
};

/** Two walls about one centre. */
const concentric: Kind = ({ random, size }) => {
  const [radius, apart, turn, sweep] = [size(130, 240), size(40, 90), sideOf(random), random.pick([60, 90, 180])];
  return [new Pen([0, 0]).arc(radius, sweep, turn).open(), new Pen([0, -turn * apart]).arc(radius + apart, sweep, turn).open()];
};

/** A curve standing on the side of a straight wall, free at its other end. */
const arcTee: Kind = ({ random, size, offset }) => {
  const branch = new Pen([size(180, 220), offset], random.pick([90, 90, 70, 115])).arc(size(130, 260), random.pick([40, 60]), sideOf(random));
  return [new Pen([0, 0]).go(size(400, 480)).open(), branch.open({ start: 0 })];
};

/** A curve across the corner of a house, standing on two of its walls. */
const betweenTees: Kind = ({ random, size, offset }) => {
  const [width, depth, radius, sweep] = [size(420, 560), size(360, 480), size(130, 200), random.pick([90, 90, 70])];
  const house = new Pen([0, 0]).go(width).arc(0, 90, 1).go(depth).arc(0, 90, 1).go(width).arc(0, 90, 1).go(depth).ring();
  const x = width - offset - radius * (1 - Math.cos(degrees(sweep)));
  return [house, new Pen([x, offset], 90).arc(radius, sweep, -1).open({ start: 0, end: 1 })];
};

export const CURVED_KINDS: Readonly<Record<string, Kind>> = { free, tangent, bay, lowBay, bowed, stadium, round, concentric, arcTee, betweenTees };
