import type { Nm } from '../../quantity/length.js';
import type { LaidCourse, LaidStorey, Piece } from '../../takeoff/laid.js';
import { counted, lengthText, stationText } from '../crew-text.js';
import { placesOfStorey, wallFinder } from '../laid-places.js';
import { mitredCorners } from '../mitred-corners.js';
import type { CrewInstruction } from '../material-line.js';
import type { Consumption, Rule, RuleContext, RuleMeta, RulePlace } from '../rule.js';
import { closedEnd, cornerStation } from '../stations.js';

/** A corner or a free end at which the first course would creep. */
interface Loose {
  readonly place: RulePlace;
  readonly at: Nm;
}

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
    const loose = context.job.storeys
      .filter((storey) => storey.onFooting)
      .flatMap((storey) => [...corners(storey), ...mitres(storey), ...freeEnds(storey)]);
    return {
      materials: loose.map((each) => fixing(each, context)),
      instructions: byPlace(loose).map((here) => instruction(here, context)),
      findings: [],
    };
  },
};

/** Corner units with a leg in some wall's course 1, each once, under the arriving wall's mark and course number. */
function corners(storey: LaidStorey): readonly Loose[] {
  const wall = wallFinder(storey);
  const standing = new Set([...placesOfStorey(storey)].filter(({ course }) => course.n === 1).flatMap(({ course }) => cornerPieces(course)));
  return storey.junctions.flatMap((junction) =>
    junction.units
      .filter((unit) => standing.has(unit.piece))
      .map(({ course }) => looseAt({ storey: storey.id, wall: junction.walls[0] as string, course }, cornerStation(wall(junction.walls[0] as string), course))),
  );
}

const looseAt = (place: RulePlace, at: Nm): Loose => ({ place, at });

function cornerPieces(course: LaidCourse): readonly string[] {
  return course.pieces.filter((piece) => piece.junction !== null).map((piece) => piece.id);
}

/** Corners of course 1 that a ledge runs round: they have no unit there and creep all the more. */
function mitres(storey: LaidStorey): readonly Loose[] {
  return mitredCorners(storey)
    .filter(({ arriving, leaving }) => arriving.course.n === 1 || leaving.course.n === 1)
    .map(({ arriving }) => looseAt({ storey: storey.id, wall: arriving.wall.mark, course: arriving.course.n }, arriving.node));
}

function freeEnds(storey: LaidStorey): readonly Loose[] {
  return [...placesOfStorey(storey)]
    .filter(({ course }) => course.n === 1)
    .flatMap(({ wall, course, place }) => course.pieces.filter(closesFreeEnd).map((piece) => looseAt(place, closedEnd(wall, course, piece))));
}

const closesFreeEnd = (piece: Piece): boolean => piece.kind === 'end-closure' && piece.why === 'end';

function fixing({ place, at }: Loose, { range }: RuleContext): Consumption {
  const { footingCornerBy, tapeStripLength } = range.parameters;
  return footingCornerBy === 'wire-tie'
    ? { place, material: 'wire-tie', at: [at], count: FACES }
    : { place, material: 'strap', at: [at], length: FACES * tapeStripLength };
}

/** Those of one course of one wall together. */
function byPlace(loose: readonly Loose[]): readonly (readonly [Loose, ...Loose[]])[] {
  const places = new Map<string, [Loose, ...Loose[]]>();
  for (const each of loose) {
    const key = JSON.stringify([each.place.storey, each.place.wall, each.place.course]);
    const here = places.get(key);
    if (here) here.push(each);
    else places.set(key, [each]);
  }
  return [...places.values()];
}

function instruction(here: readonly [Loose, ...Loose[]], { range }: RuleContext): CrewInstruction {
  const { footingCornerBy, tapeStripLength } = range.parameters;
  const by = footingCornerBy === 'wire-tie' ? 'a wire tie' : `a strap of ${lengthText(tapeStripLength)}`;
  return {
    rule: meta.id,
    ...here[0].place,
    text: `At ${counted(here.length, 'corner or free end', 'corners and free ends')}, ${[...here].sort((a, b) => a.at - b.at).map(({ at }) => stationText(at)).join(', ')}: ${by} on each face, lapping both neighbours (at a free end the one neighbour and the closure), before the second course goes on.`,
  };
}
