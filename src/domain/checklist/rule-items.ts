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
  const byRule = grouped(instructions, ({ rule, storey }) => JSON.stringify([rule, storey]));
  const said = new Set<CrewInstruction>();
  const using = usedPlaces(materials).map((used) => {
    const told = nearest(used, byRule.get(JSON.stringify([used.rule, used.storey])) ?? []);
    for (const each of told) said.add(each);
    return itemOf(used, told, used.counts);
  });
  const others = grouped(instructions.filter((each) => !said.has(each)), keyOf);
  return [...using, ...[...others.values()].flatMap((told) => told.slice(0, 1).map((place) => itemOf(place, told, [])))];
}

const keyOf = ({ rule, storey, wall, course }: Place): string => JSON.stringify([rule, storey, wall, course]);

function usedPlaces(materials: readonly MaterialLine[]): readonly Used[] {
  const places = new Map<string, Used>();
  for (const { sku, unit, because } of materials) {
    for (const { rule, storey, wall, course, quantity } of because) {
      if (storey === null) throw new Error(`${sku} is used by ${rule} in no storey`);
      const place: Used = { rule, storey, wall, course, counts: [] };
      const known = places.get(keyOf(place)) ?? place;
      known.counts.push({ sku, quantity, unit });
      places.set(keyOf(place), known);
    }
  }
  return [...places.values()];
}

/** The instructions of the smallest place that holds this one; where a rule speaks of another wall of the storey, all it says there. */
function nearest({ wall, course }: Place, told: readonly CrewInstruction[]): readonly CrewInstruction[] {
  const at = (ofWall: string | null, ofCourse: number | null): readonly CrewInstruction[] => told.filter((each) => each.wall === ofWall && each.course === ofCourse);
  const tiers = [at(wall, course), at(wall, null), at(null, course), at(null, null)];
  return tiers.find((tier) => tier.length > 0) ?? told;
}

/** A rule that tells the crew nothing of a place is told by its title. */
function itemOf({ rule, storey, wall, course }: Place, told: readonly CrewInstruction[], counts: readonly ChecklistCount[]): ChecklistItem {
  const meta = META.get(rule);
  const text = told.map((each) => each.text).join('\n') || (meta?.title ?? rule);
  return checklistItem({ phase: 'laying', rule, storey, wall, course, text, counts, basis: meta?.basis ?? 'common practice' });
}
