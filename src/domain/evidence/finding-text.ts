import { lengthWords } from './length-words.js';
import { numberWords } from './number-words.js';
import type { Finding, FindingCode } from './finding.js';
import type { LengthUnit } from '../quantity/length-unit.js';

const UP_THE_WALL = 'The core changes up this wall; the upper forms stand set back on the lower ones and have to be held on the step';

/** What each finding says. A code without a sentence does not compile. */
const SENTENCES: Readonly<Record<FindingCode, string>> = {
  'turn-not-made': 'No corner unit of the range makes this turn',
  'turn-acute': 'The corner is sharper than any corner unit of the range can be bent',
  'walls-cross': 'Two walls cross; nothing in the range forms a crossing',
  'wall-overlap': 'Two walls stand in the same place for part of their length',
  'plan-open': 'The plan is said to close and does not',
  'radius-tight': 'The curve is too tight for straight forms cut into chords',
  'run-too-short': 'The run is shorter than its corner legs or its shortest piece need',
  'opening-too-wide': 'The opening is wider than the lintel tables go, or no bars and stirrups fit that carry what is over it',
  'wall-beyond-tables': 'The wall is beyond the prescriptive tables; a licensed engineer has to design it',
  'backfill-beyond-tables': 'The backfill is beyond the prescriptive tables; a licensed engineer has to design the wall',
  'soil-not-listed': 'The soil is not one the prescriptive tables list',
  'site-beyond-method': 'The loads of the site are beyond the prescriptive method',
  'pressure-over-rating': 'The fresh concrete would press harder than the form is rated for; pour more slowly, warmer or stiffer',
  'outside-method': 'The case lies outside the limits of the method, which gives no answer for it',
  'tee-skewed': 'The walls meet in a tee that is not square; its forms are cut on the skew',
  'radius-wall': 'The wall is curved; its forms are cut into short chords',
  'mitre-odd': 'The ledge is mitred at a turn that is not square',
  'gable-steep': 'The slope is steeper than fresh concrete stands without a cap',
  'core-change': 'Two cores meet here; the step between them has to be closed and braced',
  'opening-near-corner': 'The opening stands close to a corner; the forms between need support',
  'pier-narrow': 'The pier of wall beside the opening is narrow; its forms need support',
  'single-lift-height': 'The wall is tall for a single placement',
  'height-not-coursed': 'No stack of courses and strips meets this height',
  'height-ripped': 'The top course is cut lower to meet the height',
  seam:
    'The run is not a whole number of cut modules: it has one butt joint off the interlock, above itself in every course that runs from corner to corner',
  'piece-short': 'A stretch between legs, jambs, tees or ledges is shorter than a piece should be; it is laid and strapped to its neighbours',
  'site-not-stated': 'The schedule states no site; wind, soil, snow and earthquake were not checked',
  'pour-not-stated':
    'The schedule does not state the pour; forms are reinforced for their rated pressure, and the pressure was not checked',
  'slump-stiff': 'The concrete is stiffer than the code asks for where forms stay in place; it may not fill the core',
  'stone-large': 'The largest stone of the mix is larger than the core lets through',
  'concrete-hot': 'The concrete is hotter than the specification for hot weather allows without a record that it performs',
  'evaporation-high': 'Water leaves the fresh top of the wall faster than the threshold; shade, fog or cover it',
  'discharge-late': 'A truck is not emptied within the time for its discharge at this pace',
  'pump-outruns-rise': 'At its full output the pump fills faster than the rate of rise for which the pressure was worked out; hold it back to what the rise takes',
  'tee-tie-short': 'The wire tie at the tee does not carry by itself what the concrete puts on the far panel; board that panel over the cut-out and brace it from outside',
  'bars-not-checked': 'Not every wall has its bars from a table',
  'lintel-load-not-stated': 'The load of floors and roof is not stated; a lintel was worked for no more than the wall above it',
  'full-liquid-head':
    'The pour is past a limit of the wall equations; as the standard says, the concrete is counted as a liquid over its whole height',
};

/**
 * A finding in one sentence with its numbers, in the units of the schedule; the place is `findingPlaceText`.
 *
 * @param finding a finding of any code
 * @param units   of the schedule
 */
export function findingText(finding: Finding, units: LengthUnit = 'in'): string {
  const numbers = Object.entries(finding.numbers).map(([key, value]) => numberWords(key, value, units));
  return `${sentence(finding)}${numbers.length > 0 ? `: ${numbers.join(', ')}` : ''}.`;
}

/** A core that changes along a wall and one that changes up it are two questions under one code. */
const sentence = ({ code, numbers }: Finding): string => (code === 'core-change' && 'flush' in numbers ? UP_THE_WALL : SENTENCES[code]);

/**
 * Where a finding stands: `storey S1, walls A and B, course 3, at 12'-6" along its axis`; empty for one that concerns the whole
 * job.
 *
 * @param finding a finding of any code
 * @param units   of the schedule
 */
export function findingPlaceText(finding: Finding, units: LengthUnit = 'in'): string {
  const walls = finding.walls.length > 0 ? finding.walls : finding.wall === null ? [] : [finding.wall];
  return [
    finding.storey !== null && `storey ${finding.storey}`,
    walls.length > 0 && `${walls.length > 1 ? 'walls' : 'wall'} ${listWords(walls)}`,
    finding.course !== null && `course ${finding.course}`,
    finding.atMm !== null && `at ${lengthWords(finding.atMm, units)} along its axis`,
  ]
    .filter((part) => part !== false)
    .join(', ');
}

const listWords = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
