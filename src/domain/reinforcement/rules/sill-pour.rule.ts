import { toFeet } from '../../quantity/length.js';
import { forceText, lengthText, lineForceText, pressureText } from '../crew-text.js';
import type { CrewInstruction } from '../material-line.js';
import { corePressureAt, openingPlaces, openingText, type OpeningPlace } from '../opening-places.js';
import type { Rule, RuleContext, RuleMeta } from '../rule.js';

const meta: RuleMeta = {
  id: 'sill-pour',
  title: 'Keeps the sill of every window open to pour and vibrate the wall under it, then closes it and holds it down.',
  trigger: 'openings with concrete under the sill',
  consumes: [],
  parameters: [],
  basis: 'common practice and statics',
};

export const sillPour: Rule = {
  meta,
  evaluate(context) {
    const sills = openingPlaces(context.job).filter(({ opening }) => opening.sill > 0 && opening.to > opening.from);
    return { materials: [], instructions: sills.map((place) => instruction(place, context)), findings: [] };
  },
};

function instruction(place: OpeningPlace, { pressureOf }: RuleContext): CrewInstruction {
  const { storey, wall, opening } = place;
  const width = opening.to - opening.from;
  const { lbPerFt, pressure } = corePressureAt(place, pressureOf);
  return {
    rule: meta.id,
    storey: storey.id,
    wall: wall.mark,
    course: null,
    text:
      `Sill of ${openingText(place)}, ${lengthText(width)} long, ${lengthText(opening.sill)} up: leave it open or holed, pour and vibrate the wall under it through it, then close it and hold it down before the concrete beside it rises. ` +
      `It is lifted with up to ${lineForceText(lbPerFt)} of length, ${forceText(lbPerFt * toFeet(width))} in all, at ${pressureText(pressure)}. Lids and what holds them are by others.`,
  };
}
