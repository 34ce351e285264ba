import type { LaidCourse, LaidStorey, Piece } from '../../takeoff/laid.js';
import { counted, lengthText } from '../crew-text.js';
import { placesOfStorey } from '../laid-places.js';
import { mitredCorners } from '../mitred-corners.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta, RulePlace } from '../rule.js';

const FACES = 2;

const meta: RuleMeta = {
  id: 'footing-corner',
  title: 'Ties corner units, mitred corners and free ends of the first course to their neighbours, so that they do not creep along the footing.',
  trigger: 'corner units (square, paired, hinged), mitred corners and free ends in course 1 of a storey that stands on a footing',
  consumes: ['wire-tie', 'strap'],
  parameters: ['footingCornerBy', 'tapeStripLength'],
  basis: 'common practice',
};

export const footingCorner: Rule = {
  meta,
  evaluate(context) {
    const storeys = context.job.storeys
      .filter((storey) => storey.onFooting)
      .map((storey) => ({ storey, places: [...cornerPlaces(storey), ...mitrePlaces(storey), ...freeEndPlaces(storey)] }))
      .filter(({ places }) => places.length > 0);
    return {
      materials: storeys.flatMap(({ places }) => places.map((place) => fixing(place, context))),
      instructions: storeys.map(({ storey, places }) => instruction(storey, places.length, context)),
      findings: [],
    };
  },
};

/** Corner units with a leg in some wall's course 1, each once, under the arriving wall's mark and course number. */
function cornerPlaces(storey: LaidStorey): readonly RulePlace[] {
  const standing = new Set([...placesOfStorey(storey)].filter(({ course }) => course.n === 1).flatMap(({ course }) => cornerPieces(course)));
  return storey.junctions.flatMap((junction) =>
    junction.units
      .filter((unit) => standing.has(unit.piece))
      .map((unit) => ({ storey: storey.id, wall: junction.walls[0] as string, course: unit.course })),
  );
}

function cornerPieces(course: LaidCourse): readonly string[] {
  return course.pieces.filter((piece) => piece.junction !== null).map((piece) => piece.id);
}

/** Corners of course 1 that a ledge runs round: they have no unit there and creep all the more. */
function mitrePlaces(storey: LaidStorey): readonly RulePlace[] {
  return mitredCorners(storey)
    .filter(({ arriving, leaving }) => arriving.course.n === 1 || leaving.course.n === 1)
    .map(({ arriving }) => ({ storey: storey.id, wall: arriving.wall.mark, course: arriving.course.n }));
}

function freeEndPlaces(storey: LaidStorey): readonly RulePlace[] {
  return [...placesOfStorey(storey)]
    .filter(({ course }) => course.n === 1)
    .flatMap(({ course, place }) => course.pieces.filter(closesFreeEnd).map(() => place));
}

const closesFreeEnd = (piece: Piece): boolean => piece.kind === 'end-closure' && piece.why === 'end';

function fixing(place: RulePlace, { range }: RuleContext): Consumption {
  const { footingCornerBy, tapeStripLength } = range.parameters;
  return footingCornerBy === 'wire-tie'
    ? { place, material: 'wire-tie', count: FACES }
    : { place, material: 'strap', length: FACES * tapeStripLength };
}

function instruction(storey: LaidStorey, ends: number, { range }: RuleContext): CrewInstruction {
  const { footingCornerBy, tapeStripLength } = range.parameters;
  const by = footingCornerBy === 'wire-tie' ? 'a wire tie' : `a strap of ${lengthText(tapeStripLength)}`;
  return {
    rule: meta.id,
    storey: storey.id,
    wall: null,
    course: 1,
    text: `At ${counted(ends, 'corner or free end', 'corners and free ends')} of course 1: ${by} on each face, lapping both neighbours (at a free end the one neighbour and the closure), before the second course goes on.`,
  };
}
