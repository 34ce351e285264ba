import type { FormRange } from '../range/range.js';
import type { CrewInstruction, MaterialLine } from '../reinforcement/material-line.js';
import type { LaidJob, LaidStorey } from '../takeoff/laid.js';
import type { ChecklistItem } from './checklist-item.js';
import { grouped } from './grouped.js';
import { ruleItems } from './rule-items.js';
import { beforePour, beforeWork, duringPour, type SeenInStorey } from './storey-items.js';
import { walkingOrder } from './walking-order.js';

/**
 * The pre-pour checklist of a job in the order in which the crew walks it: storey by storey what is seen to before work, what concerns the whole
 * storey, then wall by wall in laying order its courses from the bottom up and what concerns the whole wall, then what is seen to before the pour
 * and during it (decision 33).
 *
 * Over all items the counts of a sku are those of its material line, place by place.
 *
 * @param laid         the laid job; storeys without walls have no items
 * @param materials    what the rules use
 * @param instructions what the rules tell the crew
 * @param range        the range the job is laid in; `liftHeight` is read
 * @param seenIn       bars and braces of each storey, by its id; a tick is for what the items say alone in a storey that is not in it
 * @throws             a defect where a rule uses material, or tells something, of a place the laid job does not have
 */
export function checklistOf(
  laid: LaidJob,
  materials: readonly MaterialLine[],
  instructions: readonly CrewInstruction[],
  range: FormRange,
  seenIn: ReadonlyMap<string, SeenInStorey> = new Map(),
): readonly ChecklistItem[] {
  const items = ruleItems(materials, instructions);
  const byStorey = grouped(items, ({ storey }) => storey);
  const walked = laid.storeys
    .filter(({ walls }) => walls.length > 0)
    .flatMap((storey) => [...beforeWork(storey), ...inWalkingOrder(storey, byStorey.get(storey.id) ?? []), ...beforePour(storey, seenIn.get(storey.id)), ...duringPour(storey, range)]);
  const placed = walked.filter(({ phase }) => phase === 'laying').length;
  if (placed !== items.length) throw new Error(`${items.length - placed} items stand where the laid job has no wall`);
  return walked;
}

/** Within a course in the order of the rules' names; what has no course comes after the wall's courses. */
function inWalkingOrder(storey: LaidStorey, items: readonly ChecklistItem[]): readonly ChecklistItem[] {
  const byWall = grouped(items, ({ wall }) => wall);
  return [null, ...walkingOrder(storey).map(({ mark }) => mark)].flatMap((wall) =>
    [...(byWall.get(wall) ?? [])].sort((a, b) => (a.course ?? Infinity) - (b.course ?? Infinity) || (a.rule < b.rule ? -1 : 1)),
  );
}
