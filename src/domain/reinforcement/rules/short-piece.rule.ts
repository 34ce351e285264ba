import type { Nm } from '../../quantity/length.js';
import type { LaidCourse, LaidStorey, Notch, Piece } from '../../takeoff/laid.js';
import { counted, lengthText } from '../crew-text.js';
import { placesOfStorey, type LaidPlace } from '../laid-places.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta } from '../rule.js';

/** What is weak in one course of one wall. */
interface Weak {
  readonly at: LaidPlace;
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
    const weak = context.job.storeys.flatMap((storey) => weakCourses(storey, context));
    return {
      materials: weak.flatMap((each) => materials(each, context)),
      instructions: weak.map((each) => instruction(each, context)),
      findings: [],
    };
  },
};

function weakCourses(storey: LaidStorey, { range }: RuleContext): readonly Weak[] {
  const webbed = webbedPieces(storey);
  return [...placesOfStorey(storey)]
    .map((at) => {
      const straights = at.course.pieces.filter((piece) => piece.kind === 'straight' && piece.counted);
      const seams = at.course.headJoints.filter(({ kind }) => kind === 'seam').map((joint) => joint.at);
      return {
        at,
        seams: seams.length,
        webless: straights.filter((piece) => !webbed.has(piece.id) && !touches(piece, seams)).length,
        notches: thinNotches(at.course, range.parameters.minRip),
        ties: straights.filter((piece) => piece.cutEnds === 2 && touches(piece, at.course.headJoints.map((joint) => joint.at))).length,
      };
    })
    .filter(({ seams, webless, notches, ties }) => seams + webless + notches + ties > 0);
}

/** A form across a mark shows each wall its own webs, so the storey is asked, not the wall. */
function webbedPieces(storey: LaidStorey): ReadonlySet<string> {
  const ids = new Set<string>();
  for (const { course } of placesOfStorey(storey)) {
    for (const piece of course.pieces) if (piece.webs !== null && piece.webs.length > 0) ids.add(piece.id);
  }
  return ids;
}

/** Whether a joint stands at one of the piece's ends: the strip over a seam also laps a web-less piece beside it. */
function touches({ from, to }: Piece, joints: readonly Nm[]): boolean {
  return joints.some((at) => at === from || at === to);
}

/** Openings that leave less than `minRip` of foam over or under themselves in this course; each opening once, however many pieces it notches. */
function thinNotches(course: LaidCourse, minRip: Nm): number {
  const thin = course.pieces.flatMap(({ notches }) => notches).filter((notch) => leavesLittle(notch, course.height, minRip));
  return new Set(thin.map(({ opening }) => opening)).size;
}

function leavesLittle({ bottom, top }: Notch, height: Nm, minRip: Nm): boolean {
  const little = (foam: Nm): boolean => foam > 0 && foam < minRip;
  return little(bottom) || little(height - top);
}

function materials({ at, seams, webless, notches, ties }: Weak, { range }: RuleContext): readonly Consumption[] {
  const { shortPieceBy, tapeStripLength, holdDownTieBy } = range.parameters;
  const strips = (seams + webless + notches) * FACES;
  const used: Consumption[] = [];
  if (strips > 0) used.push({ place: at.place, material: shortPieceBy, length: strips * tapeStripLength });
  if (ties > 0) used.push({ place: at.place, material: holdDownTieBy, count: ties });
  return used;
}

function instruction({ at, seams, webless, notches, ties }: Weak, { range }: RuleContext): CrewInstruction {
  const { shortPieceBy, tapeStripLength, holdDownTieBy, minRip } = range.parameters;
  const across = [
    seams > 0 ? counted(seams, 'seam') : '',
    webless > 0 ? counted(webless, 'piece without a web', 'pieces without a web') : '',
    notches > 0 ? `${counted(notches, 'notch', 'notches')} with less than ${lengthText(minRip)} of foam left` : '',
  ].filter(Boolean);
  const by = shortPieceBy === 'tape' ? 'tape' : 'a screwed strap';
  const strap = across.length > 0 ? `Across ${across.join(', ')}: ${by} of ${lengthText(tapeStripLength)} on each face.` : '';
  const tie = ties > 0 ? `Tie ${counted(ties, 'piece')} sawn at both ends to its neighbour with a ${holdDownTieBy.replace('-', ' ')}.` : '';
  return { rule: meta.id, ...at.place, text: [strap, tie].filter(Boolean).join(' ') };
}
