import { finding, type Finding } from '../evidence/finding.js';
import { feet, toFeet, toMm, type Nm } from '../quantity/length.js';
import type { FormRange, Material } from '../range/range.js';
import type { LaidJob } from '../takeoff/laid.js';
import type { Because } from '../takeoff/takeoff.js';
import type { BarPiece, CrewInstruction, MaterialLine } from './material-line.js';
import { RULES } from './registry.js';
import type { Consumption, PressureOf, Rule, RulePlace } from './rule.js';

export interface Reinforcement {
  readonly materials: readonly MaterialLine[];
  readonly instructions: readonly CrewInstruction[];
  readonly findings: readonly Finding[];
}

/** What the rules use of one material: by place, and piece by piece where it is a bar. */
interface Use {
  readonly entries: Map<string, Entry>;
  readonly pieces: Map<Nm, number>;
}

/** What one rule uses of one material in one course of one wall; feet are held as whole nanometres until the end. */
interface Entry {
  readonly rule: string;
  readonly place: RulePlace;
  amount: number;
  readonly at: Nm[];
}

/**
 * Evaluates every rule on a laid job and sums what they consume over the job, in the order of the range's materials.
 *
 * A material that is needed and that the range does not have, or has by the piece where a length is needed, is an
 * `outside-method` finding of that rule; so is a piece of bar that is longer than the stock bar it would be cut from.
 */
export function evaluateRules(job: LaidJob, range: FormRange, pressureOf: PressureOf, rules: readonly Rule[] = RULES): Reinforcement {
  const used = new Map<string, Use>();
  const instructions: CrewInstruction[][] = [];
  const findings: Finding[][] = [];
  for (const rule of rules) {
    const outcome = rule.evaluate({ job, range, pressureOf });
    const unserved = new Map<string, Finding>();
    for (const consumption of outcome.materials) {
      const material = materialFor(consumption, range);
      const tooLong = material ? longerThanStock(consumption, material) : null;
      if (material && tooLong === null) enter(used, material, rule.meta.id, consumption);
      else {
        const numbers = { rule: rule.meta.id, material: nameOf(consumption), measuredIn: unitOf(consumption), ...tooLong };
        unserved.set(JSON.stringify(numbers), unservedFinding(consumption, numbers));
      }
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

/** A bar by length is cut from stock bars, one pack each. */
const isCutBar = ({ kind, pack }: Material): boolean => kind === 'bar' && pack.unit === 'ft';

function longerThanStock(consumption: Consumption, material: Material): { readonly pieceMm: number; readonly stockMm: number } | null {
  const stock = feet(material.pack.quantity);
  const over = isCutBar(material) && Math.ceil(amountOf(consumption)) > stock;
  return over ? { pieceMm: toMm(amountOf(consumption)), stockMm: toMm(stock) } : null;
}

function enter(used: Map<string, Use>, material: Material, rule: string, consumption: Consumption): void {
  const { entries, pieces } = used.get(material.sku) ?? { entries: new Map<string, Entry>(), pieces: new Map<Nm, number>() };
  used.set(material.sku, { entries, pieces });
  const { place, at = [] } = consumption;
  const amount = amountOf(consumption);
  const key = JSON.stringify([rule, place.storey, place.wall, place.course]);
  const entry = entries.get(key);
  if (entry) {
    entry.amount += amount;
    entry.at.push(...at);
  } else entries.set(key, { rule, place, amount, at: [...at] });
  const piece = Math.ceil(amount);
  if (isCutBar(material) && piece > 0) pieces.set(piece, (pieces.get(piece) ?? 0) + 1);
}

function unservedFinding({ place }: Consumption, numbers: Finding['numbers']): Finding {
  return finding('outside-method', { storey: place.storey, numbers, source: 'common practice' });
}

function lineOf(material: Material, use: Use | undefined): readonly MaterialLine[] {
  if (!use) return [];
  const { sku, kind, size, pack } = material;
  const asSold = (amount: number): number => (pack.unit === 'ft' ? toFeet(amount) : amount);
  const all = [...use.entries.values()].filter(({ amount }) => amount > 0);
  const total = all.reduce((sum, { amount }) => sum + amount, 0);
  if (total === 0) return [];
  const because = all.map(({ rule, place, amount, at }): Because => ({ rule, ...place, quantity: asSold(amount), atMm: inOrder(at) }));
  const pieces = isCutBar(material) ? { pieces: longestFirst(use.pieces) } : {};
  return [{ sku, kind, size, quantity: asSold(total), unit: pack.unit, pack, ...pieces, because }];
}

/** Each station once, from the wall's `from` on [mm]. */
const inOrder = (at: readonly Nm[]): readonly number[] => [...new Set(at)].sort((a, b) => a - b).map(toMm);

const longestFirst = (pieces: ReadonlyMap<Nm, number>): readonly BarPiece[] =>
  [...pieces].map(([length, count]) => ({ length, count })).sort((a, b) => b.length - a.length);
