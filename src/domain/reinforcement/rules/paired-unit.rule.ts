import type { FormRange } from '../../range/range.js';
import type { LaidJob, LaidStorey } from '../../takeoff/laid.js';
import { counted } from '../crew-text.js';
import { placesOfStorey } from '../laid-places.js';
import type { CrewInstruction } from '../material-line.js';
import type { Rule, RuleContext, RuleMeta } from '../rule.js';

interface Halves {
  readonly left: number;
  readonly right: number;
}

const meta: RuleMeta = {
  id: 'paired-unit',
  title: 'Says how many paired blanks are sawn into left and right corner units.',
  trigger: 'corner units that come as one blank for two',
  consumes: [],
  parameters: [],
  basis: 'common practice',
};

export const pairedUnit: Rule = {
  meta,
  evaluate(context) {
    const job = halvesBySku(context.job.storeys);
    return {
      materials: [],
      instructions: context.job.storeys.flatMap((storey) => instructions(storey, job, context)),
      findings: [],
    };
  },
};

/** Physical halves by blank: both walls of a corner show the same half, one of them counts it. */
function halvesBySku(storeys: LaidJob['storeys']): ReadonlyMap<string, Halves> {
  const halves = new Map<string, Halves>();
  for (const storey of storeys) {
    for (const { course } of placesOfStorey(storey)) {
      for (const piece of course.pieces) {
        if (piece.kind !== 'corner-pair' || !piece.counted || piece.hand === null) continue;
        const sofar = halves.get(piece.sku) ?? { left: 0, right: 0 };
        halves.set(piece.sku, { ...sofar, [piece.hand]: sofar[piece.hand] + 1 });
      }
    }
  }
  return halves;
}

/** A blank gives one left and one right half; where the halves are alike, any two. */
function blanks({ left, right }: Halves, sku: string, range: FormRange): number {
  const unit = range.corners.find(({ kind, prefix }) => kind === 'corner-pair' && sku.startsWith(prefix));
  return unit?.hands === 'either' ? Math.ceil((left + right) / 2) : Math.max(left, right);
}

function instructions(storey: LaidStorey, job: ReadonlyMap<string, Halves>, { range }: RuleContext): readonly CrewInstruction[] {
  return [...halvesBySku([storey])].map(([sku, { left, right }]) => {
    const all = job.get(sku) as Halves;
    return {
      rule: meta.id,
      storey: storey.id,
      wall: null,
      course: null,
      text: `${sku}: saw the blanks into halves. This storey takes ${left} left and ${right} right; the job takes ${all.left} left and ${all.right} right, which is ${counted(blanks(all, sku, range), 'blank')}. Mark each half left or right as it is sawn and keep the spare halves.`,
    };
  });
}
