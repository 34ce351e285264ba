import type { CrewInstruction, MaterialLine } from '../reinforcement/material-line.js';
import { RULES } from '../reinforcement/registry.js';
import { checklistItem, type ChecklistCount, type ChecklistItem } from './checklist-item.js';
import { grouped } from './grouped.js';

const META = new Map(RULES.map(({ meta }) => [meta.id, meta]));

interface Place {
  readonly rule: string;
  readonly storey: string;
  readonly wall: string | null;
  readonly course: number | null;
}

interface Used extends Place {
  readonly counts: ChecklistCount[];
}

/**
 * One item for each rule at each place where it uses material, with what it uses there, and one for each instruction that uses none.
 *
 * An item says the instruction that is nearest to its place: of the course, of the wall, of the storey.
 *
 * @throws a defect where a material is used in no storey
 */
export function ruleItems(materials: readonly MaterialLine[], instructions: readonly CrewInstruction[]): readonly ChecklistItem[] {
  const told = new Told(instructions);
  const said = new Set<CrewInstruction>();
  const using = usedPlaces(materials).map((used) => {
    const nearest = told.nearest(used);
    for (const each of nearest) said.add(each);
    return itemOf(used, nearest, used.counts);
  });
  const others = grouped(instructions.filter((each) => !said.has(each)), keyOf);
  return [...using, ...[...others.values()].flatMap((alike) => alike.slice(0, 1).map((place) => itemOf(place, alike, [])))];
}

const keyOf = ({ rule, storey, wall, course }: Place): string => JSON.stringify([rule, storey, wall, course]);

function usedPlaces(materials: readonly MaterialLine[]): readonly Used[] {
  const places = new Map<string, Used>();
  for (const { sku, unit, because } of materials) {
    for (const { rule, storey, wall, course, quantity, atMm } of because) {
      if (storey === null) throw new Error(`${sku} is used by ${rule} in no storey`);
      const place: Used = { rule, storey, wall, course, counts: [] };
      const known = places.get(keyOf(place)) ?? place;
      known.counts.push({ sku, quantity, unit, ...(atMm ? { atMm } : {}) });
      places.set(keyOf(place), known);
    }
  }
  return [...places.values()];
}

/** What the rules tell, by place: looked up, since a large job has an instruction for each of its walls. */
class Told {
  private readonly byPlace: ReadonlyMap<string, readonly CrewInstruction[]>;
  private readonly byRule: ReadonlyMap<string, readonly CrewInstruction[]>;

  constructor(instructions: readonly CrewInstruction[]) {
    this.byPlace = grouped(instructions, keyOf);
    this.byRule = grouped(instructions, ({ rule, storey }) => JSON.stringify([rule, storey]));
  }

  /** The instructions of the smallest place that holds this one; where a rule speaks of another wall of the storey, all it says there. */
  nearest({ rule, storey, wall, course }: Place): readonly CrewInstruction[] {
    for (const [ofWall, ofCourse] of [[wall, course], [wall, null], [null, course], [null, null]] as const) {
      const here = this.byPlace.get(keyOf({ rule, storey, wall: ofWall, course: ofCourse }));
      if (here) return here;
    }
    return this.byRule.get(JSON.stringify([rule, storey])) ?? [];
  }
}

/** A rule that tells the crew nothing of a place is told by its title. */
function itemOf({ rule, storey, wall, course }: Place, told: readonly CrewInstruction[], counts: readonly ChecklistCount[]): ChecklistItem {
  const meta = META.get(rule);
  const text = told.map((each) => each.text).join('\n') || (meta?.title ?? rule);
  return checklistItem({ phase: 'laying', rule, storey, wall, course, text, counts, basis: meta?.basis ?? 'common practice' });
}
