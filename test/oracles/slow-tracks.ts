/** Faces of walls the slow way: every wall's dimension line with anything beside it, ends and meetings worked out for themselves [in]. */
export type At = readonly [x: number, y: number];

export interface SlowTrackWall {
  readonly mark: string;
  readonly from: At;
  readonly to: At;
  readonly core: number;
  /** Over both foam faces. */
  readonly thickness: number;
  /** From the dimension line to the axis, to the left. */
  readonly offset: number;
  readonly height: number;
  readonly arc: { readonly centre: At; readonly radius: number; readonly turn: 1 | -1; readonly sweep: number } | null;
}

/** 2 µm. */
const HALF_TURN_REACH = 0.002 / 25.4;

const plus = (a: At, b: At, share = 1): At => [a[0] + share * b[0], a[1] + share * b[1]];
const minus = (a: At, b: At): At => [a[0] - b[0], a[1] - b[1]];
const apart = (a: At, b: At): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Centre and sweep of the minor arc over a chord: the foot of the centre on the chord's middle by Pythagoras. */
export function slowArc(from: At, to: At, radius: number, turn: 1 | -1): NonNullable<SlowTrackWall['arc']> {
  const chord = apart(from, to);
  const half = Math.abs(2 * radius - chord) < HALF_TURN_REACH;
  const rise = half ? 0 : Math.sqrt(radius ** 2 - (chord / 2) ** 2);
  const [dx, dy] = minus(to, from);
  const middle: At = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  return { centre: plus(middle, [(-turn * rise * dy) / chord, (turn * rise * dx) / chord]), radius, turn, sweep: half ? Math.PI : 2 * Math.atan2(chord / 2, rise) };
}

/** Unit direction of travel at an end. */
export function heading({ from, to, arc }: SlowTrackWall, end: 'start' | 'end'): At {
  const point = end === 'start' ? from : to;
  const [dx, dy] = arc ? minus(point, arc.centre) : minus(to, from);
  const size = Math.hypot(dx, dy);
  return arc ? [(-arc.turn * dy) / size, (arc.turn * dx) / size] : [dx / size, dy / size];
}

/** The end of the line that runs `left` of the dimension line, square to it. */
export function squareEnd(wall: SlowTrackWall, left: number, end: 'start' | 'end'): At {
  const [hx, hy] = heading(wall, end);
  return plus(end === 'start' ? wall.from : wall.to, [-hy, hx], left);
}

export const radiusAt = ({ arc }: SlowTrackWall, left: number): number => arc!.radius - arc!.turn * left;

/** Where the lines `left` of two walls meet, nearest to a point: the first is walked in small steps towards the second by the secant rule. */
export function meeting(a: SlowTrackWall, aLeft: number, b: SlowTrackWall, bLeft: number, near: At): At {
  const off = (point: At): number => {
    if (b.arc) return apart(point, b.arc.centre) - radiusAt(b, bLeft);
    const [hx, hy] = heading(b, 'start');
    const [dx, dy] = minus(point, b.from);
    return hx * dy - hy * dx - bLeft;
  };
  const at = (along: number): At => {
    if (!a.arc) {
      const [hx, hy] = heading(a, 'start');
      const foot = squareEnd(a, aLeft, 'start');
      const past = (near[0] - foot[0]) * hx + (near[1] - foot[1]) * hy;
      return plus(foot, [hx, hy], past + along);
    }
    const [rx, ry] = minus(near, a.arc.centre);
    const radius = radiusAt(a, aLeft);
    const bearing = Math.atan2(ry, rx) + (a.arc.turn * along) / radius;
    return plus(a.arc.centre, [radius * Math.cos(bearing), radius * Math.sin(bearing)]);
  };
  let [low, high] = [0, 0.01];
  for (let step = 0; step < 60 && Math.abs(off(at(high))) > 1e-13 && high !== low; step += 1) {
    const [one, two] = [off(at(low)), off(at(high))];
    if (one === two) break;
    [low, high] = [high, high - (two * (high - low)) / (two - one)];
  }
  return at(high);
}

/** Distance along the axis from its square start to a point on it; negative before it. */
export function station(wall: SlowTrackWall, point: At): number {
  const foot = squareEnd(wall, wall.offset, 'start');
  if (!wall.arc) {
    const [hx, hy] = heading(wall, 'start');
    return (point[0] - foot[0]) * hx + (point[1] - foot[1]) * hy;
  }
  const [fx, fy] = minus(foot, wall.arc.centre);
  const [px, py] = minus(point, wall.arc.centre);
  const angle = wall.arc.turn * Math.atan2(fx * py - fy * px, fx * px + fy * py);
  return radiusAt(wall, wall.offset) * (angle < -1 ? angle + 2 * Math.PI : angle);
}

/** Point `left` of the dimension line, square to the axis at a station of the axis. */
export function pointAt(wall: SlowTrackWall, along: number, left: number): At {
  if (!wall.arc) return plus(squareEnd(wall, left, 'start'), heading(wall, 'start'), along);
  const [fx, fy] = minus(wall.from, wall.arc.centre);
  const bearing = Math.atan2(fy, fx) + (wall.arc.turn * along) / radiusAt(wall, wall.offset);
  return plus(wall.arc.centre, [radiusAt(wall, left) * Math.cos(bearing), radiusAt(wall, left) * Math.sin(bearing)]);
}

/** Area to the left of a closed walk, each step straight or along a wall's curve [in²]. */
export function walkedArea(steps: readonly { readonly to: At; readonly along: SlowTrackWall | null; readonly back?: boolean }[]): number {
  const origin = steps.at(-1)!.to;
  let from: At = origin;
  let area = 0;
  for (const { to, along, back } of steps) {
    const [[px, py], [qx, qy]] = [minus(from, origin), minus(to, origin)];
    area += (px * qy - py * qx) / 2;
    if (along?.arc) {
      const [[ax, ay], [bx, by]] = [minus(from, along.arc.centre), minus(to, along.arc.centre)];
      const angle = Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
      const way = along.arc.turn * (back ? -1 : 1);
      // A step along an arc goes the arc's own way; half a turn comes out with either sign.
      const swept = way * angle < -1e-6 ? angle + 2 * Math.PI * way : angle;
      area += ((ax * ax + ay * ay) * (swept - Math.sin(swept))) / 2;
    }
    from = to;
  }
  return area;
}
