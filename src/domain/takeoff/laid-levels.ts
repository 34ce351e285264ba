import type { Nm } from '../quantity/length.js';
import type { Junction, LaidCoreChange, LaidCourse, LaidOpening, LaidStrip, LaidWall, Piece } from './laid.js';

const movedPiece = (piece: Piece, by: Nm): Piece => ({
  ...piece,
  from: piece.from + by,
  to: piece.to + by,
  webs: piece.webs && piece.webs.map((at) => at + by),
  slope: piece.slope && { ...piece.slope, peak: piece.slope.peak && { ...piece.slope.peak, at: piece.slope.peak.at + by } },
  notches: piece.notches.map((notch) => ({ ...notch, from: notch.from + by, to: notch.to + by })),
});

const movedSpan = <T extends { readonly from: Nm; readonly to: Nm }>(span: T, by: Nm): T => ({ ...span, from: span.from + by, to: span.to + by });

const movedCourse = (course: LaidCourse, by: Nm): LaidCourse => ({
  ...movedSpan(course, by),
  voids: course.voids.map((gap) => movedSpan(gap, by)),
  pieces: course.pieces.map((piece) => movedPiece(piece, by)),
  headJoints: course.headJoints.map((joint) => ({ ...joint, at: joint.at + by })),
});

const movedStrip = (strip: LaidStrip, by: Nm): LaidStrip => ({ ...strip, runs: strip.runs.map((run) => movedSpan(run, by)) });

/** The lowest level in which a wall stands. */
const footOf = (parts: readonly LaidWall[]): LaidWall => parts.find(({ courses }) => courses.length > 0) ?? parts[0]!;

/** One wall of several levels: everything above its foot is told along the axis of its foot. */
function wallOf(parts: readonly LaidWall[], changes: readonly LaidCoreChange[]): LaidWall {
  const foot = footOf(parts);
  const above = parts.slice(parts.indexOf(foot) + 1);
  return above.reduce<LaidWall>(
    (wall, part) => {
      const by = part.startOffset - foot.startOffset;
      return {
        ...wall,
        courses: [...wall.courses, ...part.courses.map((course) => movedCourse(course, by))],
        strips: [...wall.strips, ...part.strips.map((strip) => movedStrip(strip, by))],
        gable: wall.gable ?? movedGable(part.gable, by),
        openings: part.courses.length > 0 ? part.openings.map((opening) => movedOpening(opening, by)) : wall.openings,
        ledges: [...wall.ledges, ...part.ledges.map((ledge) => ({ ...ledge, spans: ledge.spans.map((span) => movedSpan(span, by)) }))],
        taper: wall.taper ?? (part.taper && { ...part.taper, spans: part.taper.spans.map((span) => movedSpan(span, by)) }),
        concreteNm3: wall.concreteNm3 + part.concreteNm3,
        faceNm2: wall.faceNm2 + part.faceNm2,
        openingNm2: wall.openingNm2 + part.openingNm2,
      };
    },
    { ...foot, coreChanges: changes },
  );
}

/** An opening is told as the highest level knows it: under a gable its head stands above the stack. */
const movedOpening = (opening: LaidOpening, by: Nm): LaidOpening => ({ ...movedSpan(opening, by), formsFrom: opening.formsFrom + by, formsTo: opening.formsTo + by });

const movedGable = (gable: LaidWall['gable'], by: Nm): LaidWall['gable'] =>
  gable && { ...gable, peakAt: gable.peakAt + by, slopes: gable.slopes.map((slope) => movedSpan(slope, by)) };

/** The walls of a storey laid level by level, one row a wall. */
function mergedWalls(levels: readonly (readonly LaidWall[])[], changes: ReadonlyMap<string, readonly LaidCoreChange[]>): LaidWall[] {
  if (levels.length === 1) return [...levels[0]!];
  const parts = new Map<string, LaidWall[]>();
  for (const wall of levels.flat()) parts.set(wall.mark, [...(parts.get(wall.mark) ?? []), wall]);
  return [...parts.values()].map((own) => wallOf(own, changes.get(own[0]!.mark) ?? []));
}

export interface LevelParts {
  readonly walls: readonly LaidWall[];
  readonly junctions: readonly Junction[];
}

const madeAlike = (a: Junction, b: Junction): boolean =>
  a.kind === b.kind && a.sku === b.sku && a.tee?.through === b.tee?.through && a.tee?.cutFrom === b.tee?.cutFrom && a.tee?.cutTo === b.tee?.cutTo;

/** A junction of a level above, with a tee's cut-out told along the axis of the through wall's foot. */
function onFoot(junction: Junction, wall: (mark: string) => LaidWall, foot: (mark: string) => LaidWall): Junction {
  const { tee } = junction;
  if (!tee) return junction;
  const by = wall(tee.through).startOffset - foot(tee.through).startOffset;
  return { ...junction, tee: { ...tee, cutFrom: tee.cutFrom + by, cutTo: tee.cutTo + by } };
}

/**
 * A storey laid level by level, as one: a junction that is made alike in the next level goes on, another is one more row with the
 * number of its level behind its id.
 */
export function mergedLevels(levels: readonly LevelParts[], changes: ReadonlyMap<string, readonly LaidCoreChange[]>): { walls: LaidWall[]; junctions: Junction[] } {
  const junctions: Junction[] = [...levels[0]!.junctions];
  const foot = (mark: string): LaidWall => footOf(levels.flatMap((level) => level.walls.filter((wall) => wall.mark === mark)));
  const walls = levels.map((level, index) => {
    if (index === 0) return level.walls;
    const names = new Map<string, string>();
    const here = (mark: string): LaidWall => level.walls.find((wall) => wall.mark === mark)!;
    for (const junction of level.junctions.filter(({ courses }) => courses.length > 0).map((each) => onFoot(each, here, foot))) {
      const known = junctions.findLastIndex(({ id }) => id === junction.id || id.startsWith(`${junction.id}-L`));
      const below = junctions[known];
      const id = !below ? junction.id : madeAlike(below, junction) ? below.id : `${junction.id}-L${index + 1}`;
      names.set(junction.id, id);
      if (below?.id === id) junctions[known] = { ...below, courses: [...below.courses, ...junction.courses], units: [...below.units, ...junction.units] };
      else junctions.push({ ...junction, id });
    }
    return level.walls.map((wall) => ({ ...wall, courses: wall.courses.map((course) => renamed(course, names)) }));
  });
  return { walls: mergedWalls(walls, changes), junctions };
}

const renamed = (course: LaidCourse, names: ReadonlyMap<string, string>): LaidCourse => ({
  ...course,
  pieces: course.pieces.map((piece) => (piece.junction === null ? piece : { ...piece, junction: names.get(piece.junction) ?? piece.junction })),
});
