import type { Nm } from '../quantity/length.js';
import { isGableCourse } from '../takeoff/index.js';
import type { LaidCourse, LaidGable, LaidSlope, LaidWall, Piece } from '../takeoff/laid.js';

/** A part of a piece's face: stations, and heights above the course's bottom. */
export interface FacePart {
  readonly from: Nm;
  readonly to: Nm;
  readonly bottom: Nm;
  readonly top: Nm;
}

/** A point of a wall's face: station along the axis, and a height [nm]. */
export interface FacePoint {
  readonly at: Nm;
  readonly height: Nm;
}

/** Shares of a sloped piece's height at which room for its letters is looked for, the most first. */
const SHARES = [1, 0.8, 0.65, 0.5, 0.4, 0.3, 0.2];

/** Height of the wall's top above its base at a station [nm, fractional]; past the slopes' ends as at the ends. */
export function topAt({ stack, gable }: Pick<LaidWall, 'stack' | 'gable'>, station: number): number {
  const [first, last] = [gable?.slopes[0], gable?.slopes.at(-1)];
  if (gable === null || first === undefined || last === undefined) return stack.height;
  const at = Math.max(first.from, Math.min(last.to, station));
  const slope = at <= first.to ? first : last;
  const run = slope.rises === 'with-stations' ? at - slope.from : slope.to - at;
  return stack.height + (gable.rise * run) / (slope.to - slope.from);
}

/** Foot and head of a slope, as stations and heights above the stack's top. */
export function slopeEnds({ from, to, rises }: LaidSlope, { rise }: LaidGable): { readonly foot: FacePoint; readonly head: FacePoint } {
  const [low, high] = rises === 'with-stations' ? [from, to] : [to, from];
  return { foot: { at: low, height: 0 }, head: { at: high, height: rise } };
}

/**
 * The top edge of a sloped piece from its start to its end, in heights above the course's bottom: its two ends, the peak, and where the
 * slope leaves the course through its top.
 */
export function pieceProfile(piece: Pick<Piece, 'from' | 'to' | 'slope'>, course: LaidCourse): FacePoint[] {
  const { slope } = piece;
  const [from, to] = [slope?.fromHeight ?? course.height, slope?.toHeight ?? course.height];
  const ends = [{ at: piece.from, height: from }, { at: piece.to, height: to }] as const;
  if (slope === null || slope.peak === null) return [...ends];
  return [ends[0], { at: slope.peak.at, height: slope.peak.height }, ends[1]];
}

/** Heights left of a corner unit that a slope passes through: it is sawn in place. */
function cornerSlope(wall: Pick<LaidWall, 'stack' | 'gable'>, course: LaidCourse, { from, to }: Pick<Piece, 'from' | 'to'>): Piece['slope'] {
  const left = (at: Nm): Nm => Math.round(Math.min(course.height, Math.max(0, topAt(wall, at) - course.bottom)));
  const [fromHeight, toHeight] = [left(from), left(to)];
  return fromHeight === course.height && toHeight === course.height ? null : { fromHeight, toHeight, peak: null };
}

const slopeThrough = (wall: Pick<LaidWall, 'stack' | 'gable'>, course: LaidCourse, piece: Piece): Piece['slope'] =>
  piece.slope ?? (wall.gable !== null && isGableCourse(wall, course.n) ? cornerSlope(wall, course, piece) : null);

/** Whether the slope passes through a piece, or through what runs on from it to the face of a corner. */
export const isSloped = (wall: Pick<LaidWall, 'stack' | 'gable'>, course: LaidCourse, piece: Piece): boolean =>
  slopeThrough(wall, course, piece) !== null;

/** A piece's face, counter-clockwise from the lower start: a rectangle, cut to the slope where it is sawn; heights above the wall's base. */
export function pieceOutline(wall: Pick<LaidWall, 'stack' | 'gable'>, course: LaidCourse, piece: Piece): FacePoint[] {
  const cut = { ...piece, slope: slopeThrough(wall, course, piece) };
  const tops = [...pieceProfile(cut, course), ...leavingTop(wall, course, cut)].sort((a, b) => b.at - a.at || b.height - a.height);
  const round = [
    { at: piece.from, height: 0 },
    { at: piece.to, height: 0 },
    ...tops,
  ].map(({ at, height }) => ({ at, height: course.bottom + height }));
  return round.filter((point, i) => {
    const before = round[(i + round.length - 1) % round.length] as FacePoint;
    return point.at !== before.at || point.height !== before.height;
  });
}

/** Where a slope passes through the top of a course within a piece. */
function leavingTop({ stack, gable }: Pick<LaidWall, 'stack' | 'gable'>, course: LaidCourse, piece: Piece): FacePoint[] {
  if (gable === null || piece.slope === null) return [];
  const above = course.bottom + course.height - stack.height;
  return gable.slopes
    .map((slope) => {
      const run = Math.round(((slope.to - slope.from) * above) / gable.rise);
      return slope.rises === 'with-stations' ? slope.from + run : slope.to - run;
    })
    .filter((at) => at > piece.from && at < piece.to && above < gable.rise)
    .map((at) => ({ at, height: course.height }));
}

/** Rectangles under a top edge that rises to one height and falls again, the highest first. */
export function partsUnderSlope(profile: readonly FacePoint[]): FacePart[] {
  const highest = Math.max(...profile.map(({ height }) => height));
  return SHARES.map((share) => share * highest).flatMap((top) => {
    const reached = profile.slice(1).flatMap((b, i) => {
      const a = profile[i] as FacePoint;
      const crossing = a.height === b.height ? [] : [a.at + ((b.at - a.at) * (top - a.height)) / (b.height - a.height)];
      return [...(a.height >= top ? [a.at] : []), ...(b.height >= top ? [b.at] : []), ...crossing.filter((at) => at > a.at && at < b.at)];
    });
    const [from, to] = [Math.ceil(Math.min(...reached)), Math.floor(Math.max(...reached))];
    return to > from ? [{ from, to, bottom: 0, top: Math.floor(top) }] : [];
  });
}
