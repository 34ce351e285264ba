import { toFeet } from '../../quantity/length.js';
import { partsToCover } from '../../quantity/rounding.js';
import { topOfWall } from '../../takeoff/index.js';
import { counted, forceText, lengthText, lineForceText, pressureText } from '../crew-text.js';
import type { CrewInstruction } from '../material-line.js';
import { corePressureAt, openingPlaces, openingText, type OpeningPlace } from '../opening-places.js';
import type { Rule, RuleContext, RuleMeta } from '../rule.js';

const meta: RuleMeta = {
  id: 'lintel-shore',
  title: 'Posts the head of every opening that concrete is poured over.',
  trigger: 'openings with concrete over the head',
  consumes: [],
  parameters: ['lintelPost'],
  basis: 'common practice and statics',
};

export const lintelShore: Rule = {
  meta,
  evaluate(context) {
    const covered = openingPlaces(context.job).filter(({ wall, opening }) => opening.head < topOfWall(wall) && opening.to > opening.from);
    return { materials: [], instructions: covered.map((place) => instruction(place, context)), findings: [] };
  },
};

function instruction(place: OpeningPlace, { range, pressureOf }: RuleContext): CrewInstruction {
  const { lintelPost } = range.parameters;
  const { storey, wall, opening } = place;
  const width = opening.to - opening.from;
  const { lbPerFt, pressure } = corePressureAt(place, pressureOf);
  return {
    rule: meta.id,
    storey: storey.id,
    wall: wall.mark,
    course: null,
    text:
      `Head of ${openingText(place)}, ${lengthText(width)} wide: ${counted(partsToCover(width, lintelPost), 'post')} under it, not more than ${lengthText(lintelPost)} apart, on something that does not give. ` +
      `It carries up to ${lineForceText(lbPerFt)} of length, ${forceText(lbPerFt * toFeet(Math.min(lintelPost, width)))} on a post, at ${pressureText(pressure)}. Leave the posts until the lintel carries itself. Posts are by others.`,
  };
}
