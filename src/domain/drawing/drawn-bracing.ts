import type { PlannedBrace, StoreyBracing } from '../checks/bracing-plan.js';
import { inUnit } from '../quantity/quantity.js';
import type { LengthUnit } from '../schedule/schedule.js';

/** What a drawing shows of a storey's bracing plan. */
export type DrawnBracing = Pick<StoreyBracing, 'spacing' | 'walls' | 'count'>;

/** A brace with its number on the drawings: 1 nearest the wall's own start. */
export interface NumberedBrace extends PlannedBrace {
  readonly n: number;
}

/** Of one wall in order of station; none where the drawing is made without a bracing plan. */
export const bracesOn = (bracing: DrawnBracing | null, mark: string): readonly NumberedBrace[] =>
  [...(bracing?.walls.find((wall) => wall.mark === mark)?.braces ?? [])].sort((a, b) => a.at - b.at).map((brace, i) => ({ ...brace, n: i + 1 }));

/** `2417 lb` where the schedule is in feet or inches, `10.75 kN` where it is metric. */
export const forceLabel = (kN: number, units: LengthUnit): string =>
  units === 'mm' || units === 'm' ? `${kN.toFixed(2)} kN` : `${Math.round(inUnit('force', 'lb', kN))} lb`;

/** `1`, `1 to 4, 7`: numbers in order, runs of three and more told by their ends. */
export function runsOf(numbers: readonly number[]): string {
  const runs: { from: number; to: number }[] = [];
  for (const n of numbers) {
    const last = runs.at(-1);
    if (last !== undefined && n === last.to + 1) last.to = n;
    else runs.push({ from: n, to: n });
  }
  return runs.map(({ from, to }) => (from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from} to ${to}`)).join(', ');
}
