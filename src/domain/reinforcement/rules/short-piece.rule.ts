import type { Nm } from '../../quantity/length.js';
import type { LaidWall } from '../../takeoff/laid.js';
import { counted, lengthText } from '../crew-text.js';
import { formLines, wallStation, type FormLine } from '../form-lines.js';
import { lineCourse, type LineCourse, type LineJoint, type LineNotch, type LinePiece } from '../line-course.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta, RulePlace } from '../rule.js';
import { middleOf } from '../stations.js';

/** What is weak in one course of one wall: the station of each place. */
interface Weak {
  readonly place: RulePlace;
  readonly seams: readonly Nm[];
  readonly webless: readonly Nm[];
  readonly notches: readonly Nm[];
  readonly ties: readonly Nm[];
}

const FACES = 2;

const meta: RuleMeta = {
  id: 'short-piece',
  title: 'Straps web-less pieces, seams and thin foam at notches on both faces, and ties pieces sawn at both ends to a neighbour.',
  trigger: 'pieces without a web, seams, notches that leave little foam, pieces with two cut ends',
  consumes: ['tape', 'strap', 'cable-tie', 'wire-tie'],
  parameters: ['shortPieceBy', 'tapeStripLength', 'minRip', 'holdDownTieBy'],
  basis: 'common practice',
};

export const shortPiece: Rule = {
  meta,
  evaluate(context) {
    const weak = context.job.storeys.flatMap((storey) => formLines(storey).flatMap((line) => weakCourses(line, context)));
    return {
      materials: weak.flatMap((each) => materials(each, context)),
      instructions: weak.map((each) => instruction(each, context)),
      findings: [],
    };
  },
};

function weakCourses(line: FormLine, context: RuleContext): readonly Weak[] {
  const courses = [...new Set(line.walls.flatMap(({ wall }) => wall.courses.map(({ n }) => n)))];
  return courses.flatMap((n) => weakIn(line, lineCourse(line, n), n, context));
}

/** The weak places of one course of a line, each under the wall that counts it. */
function weakIn(line: FormLine, { walls, pieces, joints, notches }: LineCourse, n: number, { range }: RuleContext): readonly Weak[] {
  const seams = joints.filter(({ kind }) => kind === 'seam' || kind === 'seam-at-leg');
  const webless = pieces.filter((piece) => !piece.webbed && !touches(piece, seams));
  const tied = pieces.filter(({ cutEnds, chord }) => cutEnds === 2 && !chord).flatMap((piece) => neighbourly(piece, joints));
  const thin = notches.filter((notch) => leavesLittle(notch, range.parameters.minRip));
  const openings = thin.filter(({ opening }, index) => thin.findIndex((other) => other.opening === opening) === index);
  const stationsIn = (wall: LaidWall, items: readonly Found[]): readonly Nm[] => items.filter((item) => item.wall === wall).map(({ at }) => ownStation(line, wall, at));
  return walls
    .map((wall) => ({
      place: { storey: wall.storey, wall: wall.mark, course: n },
      seams: stationsIn(wall, seams),
      webless: stationsIn(wall, webless.map(inMiddle)),
      notches: stationsIn(wall, openings),
      ties: stationsIn(wall, tied),
    }))
    .filter(({ seams: a, webless: b, notches: c, ties: d }) => a.length + b.length + c.length + d.length > 0);
}

/** Something weak under the wall that counts it, at a station of the line. */
interface Found {
  readonly wall: LaidWall;
  readonly at: Nm;
}

const inMiddle = ({ wall, from, to }: LinePiece): Found => ({ wall, at: middleOf({ from, to }) });

/** Of a piece across a mark the middle may lie in the next wall: it is told at the mark. */
function ownStation({ walls }: FormLine, wall: LaidWall, at: Nm): Nm {
  const own = walls.find((member) => member.wall === wall);
  return own ? Math.min(Math.max(wallStation(own, at), 0), wall.length) : at;
}

/** The joint at which a piece is tied to a neighbour, where it has one. */
function neighbourly(piece: LinePiece, joints: readonly LineJoint[]): readonly Found[] {
  return joints.filter((joint) => touches(piece, [joint])).slice(0, 1).map(({ at }) => ({ wall: piece.wall, at }));
}

/** Whether a joint stands at one of the piece's ends: the strip over a seam also laps a web-less piece beside it. */
function touches({ from, to }: LinePiece, joints: readonly LineJoint[]): boolean {
  return joints.some(({ at }) => at === from || at === to);
}

/** Less than `minRip` of foam over or under the hole; each opening counts once in a course, however many pieces it notches. */
function leavesLittle({ bottom, top, courseHeight }: LineNotch, minRip: Nm): boolean {
  const little = (foam: Nm): boolean => foam > 0 && foam < minRip;
  return little(bottom) || little(courseHeight - top);
}

function materials({ place, seams, webless, notches, ties }: Weak, { range }: RuleContext): readonly Consumption[] {
  const { shortPieceBy, tapeStripLength, holdDownTieBy } = range.parameters;
  const across = [...seams, ...webless, ...notches];
  const used: Consumption[] = [];
  if (across.length > 0) used.push({ place, material: shortPieceBy, at: across, length: across.length * FACES * tapeStripLength });
  if (ties.length > 0) used.push({ place, material: holdDownTieBy, at: ties, count: ties.length });
  return used;
}

function instruction({ place, seams, webless, notches, ties }: Weak, { range }: RuleContext): CrewInstruction {
  const { shortPieceBy, tapeStripLength, holdDownTieBy, minRip } = range.parameters;
  const across = [
    seams.length > 0 ? counted(seams.length, 'seam') : '',
    webless.length > 0 ? counted(webless.length, 'piece without a web', 'pieces without a web') : '',
    notches.length > 0 ? `${counted(notches.length, 'notch', 'notches')} with less than ${lengthText(minRip)} of foam left` : '',
  ].filter(Boolean);
  const by = shortPieceBy === 'tape' ? 'tape' : 'a screwed strap';
  const strap = across.length > 0 ? `Across ${across.join(', ')}: ${by} of ${lengthText(tapeStripLength)} on each face.` : '';
  const tie = ties.length > 0 ? `Tie ${counted(ties.length, 'piece')} sawn at both ends to ${ties.length === 1 ? 'its neighbour' : 'their neighbours'} with a ${holdDownTieBy.replace('-', ' ')}.` : '';
  return { rule: meta.id, ...place, text: [strap, tie].filter(Boolean).join(' ') };
}
