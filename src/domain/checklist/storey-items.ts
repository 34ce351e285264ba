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

type Said = readonly [name: string, text: string, of?: string];

/** What the items of a storey that are seen to in one go stand for, in words that differ where it does: a tick holds only for what was seen. */
export interface SeenInStorey {
  readonly braces: number;
  /** Bars of walls and lintels, place by place. */
  readonly barsAs: string;
  /** What the code's tables ask of the walls at least, core by core; empty where none was read. */
  readonly barsAsked: string;
  /** Braces, station by station. */
  readonly bracesAs: string;
}

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
 * @param seen its bars and braces; where they are not known their number is not said, and a tick is for what is said alone
 */
export function beforePour(storey: LaidStorey, seen?: SeenInStorey): readonly ChecklistItem[] {
  const bucks = storey.walls.flatMap(({ mark: wall, openings }) =>
    openings.filter(({ lining }) => lining === 'buck').map(({ mark, from, to, sill, head }) => ({ name: `${wall} ${mark}`, hole: [from, to, sill, head] })),
  );
  return itemsOf(storey, 'before-pour', [
    ['bars-inspected', `Bars in place and tied as drawn, inspected, and the inspection noted.${seen?.barsAsked ? ` The tables ask at least: ${seen.barsAsked}. What is drawn for the job governs.` : ''}`, seen?.barsAs],
    ['sleeves', 'Sleeves for services in place, fixed and closed.'],
    ['anchor-bolts', 'Anchor bolts at hand or in place as drawn.'],
    ['ledger-embeds', 'Embeds for ledgers in place and held.'],
    ['beam-pockets', 'Beam pockets formed, at their height, and held.'],
    ...(bucks.length > 0 ? [['bucks', `Openings lined with bucks: each buck plumb, braced and shored: ${bucks.map(({ name }) => name).join(', ')}.`, JSON.stringify(bucks)] as const] : []),
    ['braces-anchored', `${seen ? `Braces of the storey, ${seen.braces} in number: every one` : 'Every brace'} anchored at its foot and fixed to the wall; walls plumb and straight to the line.`, seen?.bracesAs],
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
  return said.map(([rule, text, of]) => checklistItem({ phase, rule, storey: storey.id, wall: null, course: null, text, counts: [], basis: 'common practice' }, of));
}
