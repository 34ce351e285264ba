import { toFeet } from '../../quantity/length.js';
import { partsToCover } from '../../quantity/rounding.js';
import { counted, forceText, lengthText, lineForceText, pressureText } from '../crew-text.js';
import type { CrewInstruction } from '../material-line.js';
import { corePressureAt, openingPlaces, openingText, type OpeningPlace } from '../opening-places.js';
import type { Rule, RuleContext, RuleMeta } from '../rule.js';

const meta: RuleMeta = {
  id: 'buck-bracing',
  title: 'Spreads the jambs of every buck against the concrete and keeps the buck square.',
  trigger: 'openings lined with a buck',
  consumes: [],
  parameters: ['buckSpreader', 'buckDiagonals'],
  basis: 'common practice and statics',
};

export const buckBracing: Rule = {
  meta,
  evaluate(context) {
    const bucks = openingPlaces(context.job).filter(({ opening }) => opening.lining === 'buck' && opening.head > opening.sill);
    return { materials: [], instructions: bucks.map((place) => instruction(place, context)), findings: [] };
  },
};

function instruction(place: OpeningPlace, { range, pressureOf }: RuleContext): CrewInstruction {
  const { buckSpreader, buckDiagonals } = range.parameters;
  const { storey, wall, opening } = place;
  const height = opening.head - opening.sill;
  const { lbPerFt, pressure } = corePressureAt(place, pressureOf);
  const spreaders = counted(partsToCover(height, buckSpreader), 'spreader');
  const each = lbPerFt * toFeet(Math.min(buckSpreader, height));
  return {
    rule: meta.id,
    storey: storey.id,
    wall: wall.mark,
    course: null,
    text:
      `Buck ${openingText(place)}: ${spreaders} between the jambs, ${lengthText(height)} high, not more than ${lengthText(buckSpreader)} apart, and ${counted(buckDiagonals, 'diagonal')}. ` +
      `Each jamb is pushed into the hole with up to ${lineForceText(lbPerFt)} of height, ${forceText(each)} on a spreader, at ${pressureText(pressure)}. Bucks, spreaders and diagonals are by others.`,
  };
}
