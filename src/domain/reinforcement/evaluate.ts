import { finding, type Finding } from '../evidence/finding.js';
import { toFeet } from '../quantity/length.js';
import type { FormRange, Material } from '../range/range.js';
import type { LaidJob } from '../takeoff/laid.js';
import type { Because } from '../takeoff/takeoff.js';
import type { CrewInstruction, MaterialLine } from './material-line.js';
import { RULES } from './registry.js';
import type { Consumption, PressureOf, Rule, RulePlace } from './rule.js';

export interface Reinforcement {
  readonly materials: readonly MaterialLine[];
  readonly instructions: readonly CrewInstruction[];
  readonly findings: readonly Finding[];
}

/** What one rule uses of one material in one course of one wall; feet are held as whole nanometres until the end. */
interface Entry {
  readonly rule: string;
  readonly place: RulePlace;
  amount: number;
}

/**
 * Evaluates every rule on a laid job and sums what they consume over the job, in the order of the range's materials.
 *
 * A material that is needed and that the range does not have, or has by the piece where a length is needed, is an
 * `outside-method` finding of that rule.
 */
export function evaluateRules(job: LaidJob, range: FormRange, pressureOf: PressureOf, rules: readonly Rule[] = RULES): Reinforcement {
  const used = new Map<string, Map<string, Entry>>();
  const instructions: CrewInstruction[][] = [];
  const findings: Finding[][] = [];
  for (const rule of rules) {
    const outcome = rule.evaluate({ job, range, pressureOf });
    const unserved = new Map<string, Finding>();
    for (const consumption of outcome.materials) {
      const material = materialFor(consumption, range);
      if (material) enter(used, material.sku, rule.meta.id, consumption);
      else unserved.set(`${nameOf(consumption)} ${unitOf(consumption)}`, unservedFinding(rule.meta.id, consumption));
    }
    instructions.push([...outcome.instructions]);
    findings.push([...outcome.findings, ...unserved.values()]);
  }
  return {
    materials: range.materials.flatMap((material) => lineOf(material, used.get(material.sku))),
    instructions: instructions.flat(),
    findings: findings.flat(),
  };
}

const unitOf = (consumption: Consumption): 'ft' | 'each' => ('length' in consumption ? 'ft' : 'each');
const amountOf = (consumption: Consumption): number => ('length' in consumption ? consumption.length : consumption.count);
const nameOf = ({ material }: Consumption): string => (typeof material === 'string' ? material : `bar ${material.bar}`);

/** The range's first material of the kind, or bar of the size, that is measured as the rule measures it. */
function materialFor(consumption: Consumption, range: FormRange): Material | undefined {
  const { material } = consumption;
  const listed = range.materials.filter((each) => (typeof material === 'string' ? each.kind === material : each.kind === 'bar' && each.size === material.bar));
  return listed.find(({ pack }) => pack.unit === unitOf(consumption));
}

function enter(used: Map<string, Map<string, Entry>>, sku: string, rule: string, consumption: Consumption): void {
  const entries = used.get(sku) ?? new Map<string, Entry>();
  used.set(sku, entries);
  const { place } = consumption;
  const key = JSON.stringify([rule, place.storey, place.wall, place.course]);
  const entry = entries.get(key);
  if (entry) entry.amount += amountOf(consumption);
  else entries.set(key, { rule, place, amount: amountOf(consumption) });
}

function unservedFinding(rule: string, consumption: Consumption): Finding {
  const numbers = { rule, material: nameOf(consumption), measuredIn: unitOf(consumption) };
  return finding('outside-method', { storey: consumption.place.storey, numbers, source: 'common practice' });
}

function lineOf(material: Material, entries: ReadonlyMap<string, Entry> | undefined): readonly MaterialLine[] {
  if (!entries) return [];
  const { sku, kind, size, pack } = material;
  const asSold = (amount: number): number => (pack.unit === 'ft' ? toFeet(amount) : amount);
  const all = [...entries.values()].filter(({ amount }) => amount > 0);
  const total = all.reduce((sum, { amount }) => sum + amount, 0);
  if (total === 0) return [];
  const because = all.map(({ rule, place, amount }): Because => ({ rule, ...place, quantity: asSold(amount) }));
  return [{ sku, kind, size, quantity: asSold(total), unit: pack.unit, pack, because }];
}
