import { CAUTIONS } from '../evidence/cautions.js';
import { inches } from '../quantity/length.js';
import type { FormRange } from '../range/range.js';
import { lengthText } from '../reinforcement/crew-text.js';
import type { LaidStorey } from '../takeoff/laid.js';
import { checklistItem, type ChecklistItem, type ChecklistPhase } from './checklist-item.js';

/** Head of the vibrator and mouth of the hose: common practice, no source. */
const VIBRATOR_HEAD = inches(1);
const HOSE_LEAST = inches(2);
const HOSE_MOST = inches(3);

type Said = readonly [name: string, text: string];

/** What is seen to in a storey before its first form is laid. */
export function beforeWork(storey: LaidStorey): readonly ChecklistItem[] {
  const [bars, bearing] = storey.onFooting
    ? ['Dowels of the footing', 'Footing level, clean and dry along every run; mark where course 1 has to be packed.']
    : ['Bars out of the storey below', 'Top of the storey below level and clean, its connectors free of concrete; mark where course 1 has to be packed.'];
  return itemsOf(storey, 'before-work', [
    ['dowels-against-webs', `${bars} against the webs of course 1: mark every one that stands where a web comes, and have it settled before the form is laid.`],
    ['bearing-level', bearing],
  ]);
}

/**
 * What is seen to in a storey when its walls are laid and before concrete is placed.
 *
 * @param braces how many braces stand in the storey; not said where it is not known
 */
export function beforePour(storey: LaidStorey, braces?: number): readonly ChecklistItem[] {
  const bucks = storey.walls.flatMap(({ mark, openings }) => openings.filter(({ lining }) => lining === 'buck').map((opening) => `${mark} ${opening.mark}`));
  return itemsOf(storey, 'before-pour', [
    ['bars-inspected', 'Bars in place and tied as drawn, inspected, and the inspection noted.'],
    ['sleeves', 'Sleeves for services in place, fixed and closed.'],
    ['anchor-bolts', 'Anchor bolts at hand or in place as drawn.'],
    ['ledger-embeds', 'Embeds for ledgers in place and held.'],
    ['beam-pockets', 'Beam pockets formed, at their height, and held.'],
    ...(bucks.length > 0 ? [['bucks', `Openings lined with bucks: each buck plumb, braced and shored: ${bucks.join(', ')}.`] as const] : []),
    ['braces-anchored', `${braces === undefined ? 'Every brace' : `Braces of the storey, ${braces} in number: every one`} anchored at its foot and fixed to the wall; walls plumb and straight to the line.`],
    ['blow-out-kit', 'Blow-out kit by the wall: plywood, screws, lumber and a spare brace.'],
    ['vibrator', `Vibrator with a head of not more than ${lengthText(VIBRATOR_HEAD)}, tried, and a spare one.`],
    ['hose', `Hose of the pump reduced to ${lengthText(HOSE_LEAST)} to ${lengthText(HOSE_MOST)}.`],
    ['cautions', CAUTIONS.join(' ')],
  ]);
}

/** What is to be done while a storey is poured: ticked before the pour, when the crew has been told. */
export function duringPour(storey: LaidStorey, { parameters }: FormRange): readonly ChecklistItem[] {
  return itemsOf(storey, 'during-pour', [
    ['pour-start', 'Crew told: start away from corners; bring the concrete to them from both sides.'],
    ['re-plumb', `Crew told: lifts of not more than ${lengthText(parameters.liftHeight)}; after each lift walk every wall and plumb it again.`],
  ]);
}

function itemsOf(storey: LaidStorey, phase: ChecklistPhase, said: readonly Said[]): readonly ChecklistItem[] {
  return said.map(([rule, text]) => checklistItem({ phase, rule, storey: storey.id, wall: null, course: null, text, counts: [], basis: 'common practice' }));
}
