import { finding, type Finding } from '../evidence/finding.js';
import { toMm } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import { chordsOf } from './chords.js';
import { laidArc } from './radius-walls.js';
import type { LineResult } from './storey-layout.js';
import type { StoreyPlan } from './storey-plan.js';

const FACES = 2;

/** Height of all head joints of a wall: those between chords, and where it meets a straight wall or runs on into another curve. */
function jointHeight({ line, courses }: LineResult, plan: StoreyPlan): number {
  const beforeStraight = line.start.kind === 'straight' && !plan.walls[line.start.partner]!.arc;
  return courses.reduce((sum, { run, pieces, joints }) => {
    const atStart = beforeStraight && run.closureStart?.height !== run.height && pieces[0]?.from === run.from ? 1 : 0;
    return sum + (joints.length + atStart) * run.height;
  }, 0);
}

/** A laid line with the plan of the level it stands in. */
interface PlannedLine {
  readonly plan: StoreyPlan;
  readonly line: LineResult;
}

/**
 * What the curves of a storey ask for: their chords, joints to foam and band (`radius-wall`), or that no chord fits the gap allowed
 * (`radius-tight`); each wall once, its joints over all its levels.
 *
 * @source statement of the project's decision 21
 */
export function radiusFindings(lines: readonly PlannedLine[], range: FormRange): Finding[] {
  const byWall = new Map<number, PlannedLine[]>();
  for (const planned of lines) {
    const { line } = planned.line;
    const wall = line.walls[0]!.wall.index;
    if (line.arc) byWall.set(wall, [...(byWall.get(wall) ?? []), planned]);
  }
  return [...byWall.values()].flatMap((levels) => [radiusFinding(levels, range), ...coreChanged(levels)]);
}

/** Another core further up moves the axis onto another radius: its stations are no longer those of the foot, and a person decides. */
function coreChanged(levels: readonly PlannedLine[]): Finding[] {
  const { plan, line: result } = levels[0]!;
  const { line } = result;
  const other = levels.find((level) => level.line.line.core.code !== line.core.code);
  if (!other) return [];
  const numbers = { feature: 'core change of a radius wall', core: line.core.code, otherCore: other.line.line.core.code };
  return [finding('outside-method', { storey: plan.storey.id, wall: line.walls[0]!.wall.wall.mark, numbers, source: 'take-off' })];
}

function radiusFinding(levels: readonly PlannedLine[], range: FormRange): Finding {
  const { plan, line: result } = levels[0]!;
  const { line } = result;
  const { wall } = line.walls[0]!;
  const chords = chordsOf(line.arc!, line.thickness, range);
  const place = { storey: plan.storey.id, wall: wall.wall.mark };
  const radiusMm = toMm(Math.round(chords.concaveRadius));
  const laid = laidArc(line, result.laid.runs, wall, range)!;
  if (chords.chord === null || laid.lastChord === null) {
    const smallest: Record<string, number> = Number.isFinite(chords.gap) ? { smallestGapMm: toMm(Math.round(chords.gap)) } : {};
    return finding('radius-tight', { ...place, numbers: { radiusMm, core: line.core.code, gapMm: toMm(range.parameters.radiusGap), ...smallest } });
  }
  const courses = levels.flatMap((level) => level.line.courses);
  const shortest = Math.min(...courses.flatMap(({ pieces }) => pieces.filter(({ inside }) => !inside).map(({ cutLength }) => cutLength)));
  const numbers = {
    radiusMm,
    core: line.core.code,
    chordMm: toMm(chords.chord),
    chords: laid.chords,
    lastChordMm: toMm(laid.lastChord),
    gapMm: toMm(laid.gap),
    jointMm: toMm(FACES * levels.reduce((sum, level) => sum + jointHeight(level.line, level.plan), 0)),
    bandMm: toMm(laid.bandLength),
    ...(shortest < range.minPiece ? { shortestMm: toMm(shortest), minPieceMm: toMm(range.minPiece) } : {}),
  };
  return finding('radius-wall', { ...place, numbers });
}
