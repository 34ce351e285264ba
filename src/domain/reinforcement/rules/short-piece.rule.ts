import type { Nm } from '../../quantity/length.js';
import type { LaidWall } from '../../takeoff/laid.js';
import { counted, lengthText } from '../crew-text.js';
import { formLines, type FormLine } from '../form-lines.js';
import { lineCourse, type LineCourse, type LineJoint, type LineNotch, type LinePiece } from '../line-course.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta, RulePlace } from '../rule.js';

/** What is weak in one course of one wall. */
interface Weak {
  readonly place: RulePlace;
  readonly seams: number;
  readonly webless: number;
  readonly notches: number;
  readonly ties: number;
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
  return courses.flatMap((n) => weakIn(lineCourse(line, n), n, context));
}

/** The weak places of one course of a line, each under the wall that counts it. */
function weakIn({ walls, pieces, joints, notches }: LineCourse, n: number, { range }: RuleContext): readonly Weak[] {
  const seams = joints.filter(({ kind }) => kind === 'seam' || kind === 'seam-at-leg');
  const webless = pieces.filter((piece) => !piece.webbed && !touches(piece, seams));
  const tied = pieces.filter((piece) => piece.cutEnds === 2 && !piece.chord && touches(piece, joints));
  const thin = notches.filter((notch) => leavesLittle(notch, range.parameters.minRip));
  const openings = thin.filter(({ opening }, index) => thin.findIndex((other) => other.opening === opening) === index);
  const countIn = (wall: LaidWall, items: readonly { readonly wall: LaidWall }[]): number => items.filter((item) => item.wall === wall).length;
  return walls
    .map((wall) => ({
      place: { storey: wall.storey, wall: wall.mark, course: n },
      seams: countIn(wall, seams),
      webless: countIn(wall, webless),
      notches: countIn(wall, openings),
      ties: countIn(wall, tied),
    }))
    .filter(({ seams: a, webless: b, notches: c, ties: d }) => a + b + c + d > 0);
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
  const strips = (seams + webless + notches) * FACES;
  const used: Consumption[] = [];
  if (strips > 0) used.push({ place, material: shortPieceBy, length: strips * tapeStripLength });
  if (ties > 0) used.push({ place, material: holdDownTieBy, count: ties });
  return used;
}

function instruction({ place, seams, webless, notches, ties }: Weak, { range }: RuleContext): CrewInstruction {
  const { shortPieceBy, tapeStripLength, holdDownTieBy, minRip } = range.parameters;
  const across = [
    seams > 0 ? counted(seams, 'seam') : '',
    webless > 0 ? counted(webless, 'piece without a web', 'pieces without a web') : '',
    notches > 0 ? `${counted(notches, 'notch', 'notches')} with less than ${lengthText(minRip)} of foam left` : '',
  ].filter(Boolean);
  const by = shortPieceBy === 'tape' ? 'tape' : 'a screwed strap';
  const strap = across.length > 0 ? `Across ${across.join(', ')}: ${by} of ${lengthText(tapeStripLength)} on each face.` : '';
  const tie = ties > 0 ? `Tie ${counted(ties, 'piece')} sawn at both ends to ${ties === 1 ? 'its neighbour' : 'their neighbours'} with a ${holdDownTieBy.replace('-', ' ')}.` : '';
  return { rule: meta.id, ...place, text: [strap, tie].filter(Boolean).join(' ') };
}
