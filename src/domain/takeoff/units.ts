import { cutStock, type CutPlan } from '../cutting/index.js';
import type { FormRange, Hand, UnitKind } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import { isForm } from './course-units.js';
import { leastLength, sawnLengths, type SawnLength, type SlopeShape } from './slope-cutting.js';
import type { Because, CutLine, UnitCount } from './takeoff.js';

/** A physical piece to be bought or sawn, with the place it is laid. */
export interface PieceOrder {
  readonly id: string;
  readonly sku: string;
  readonly kind: UnitKind;
  readonly core: string;
  readonly hand: Hand | null;
  readonly storey: string;
  readonly wall: string;
  readonly course: number;
  /** Length along the form; height for a closure. */
  readonly length: Nm;
  /** Takes a whole form whatever its length: a piece ripped lower (decision 11). */
  readonly whole: boolean;
  /** Cut to the slope of a gable. */
  readonly slope: SlopeShape | null;
}

/** Where in its form a piece was cut, counted from the other end of the form for one laid end for end. */
export interface CutPlace {
  readonly offset: Nm;
  readonly cutEnds: 0 | 1 | 2;
}

export interface Order {
  readonly units: readonly UnitCount[];
  readonly cuts: readonly CutLine[];
  readonly cutOf: ReadonlyMap<string, CutPlace>;
}

function groupedBy<T, K>(rows: readonly T[], keyOf: (row: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group) group.push(row);
    else groups.set(key, [row]);
  }
  return groups;
}

function stockOf(kind: UnitKind, range: FormRange): Nm {
  return kind === 'end-closure' ? range.closure.height : range.formLength;
}

/** Spare forms: a share of what is bought, at least one, of straight forms only (decision 19). */
export function spareForms(bought: number, kind: UnitKind, share: number): number {
  if (kind !== 'straight' || bought === 0 || share === 0) return 0;
  return Math.max(1, Math.ceil(bought * share - 1e-9));
}

/** Blanks to saw pairs from: each gives one left and one right (decision 18). */
export const pairBlanks = (left: number, right: number): number => Math.max(left, right);

function becauseOf(pieces: readonly PieceOrder[]): Because[] {
  const counts = new Map<string, Because & { quantity: number }>();
  let last: (Because & { quantity: number }) | null = null;
  for (const { kind, storey, wall, course } of pieces) {
    if (!last || last.course !== course || last.wall !== wall || last.storey !== storey) {
      const key: string = `${storey}/${wall}/${course}`;
      last = counts.get(key) ?? { rule: kind, storey, wall, course, quantity: 0 };
      counts.set(key, last);
    }
    last.quantity += 1;
  }
  return [...counts.values()];
}

/** What cutting saves: pieces that share a form with others, as a negative number, so that the causes sum to what is bought. */
function savedByCutting(rule: string, storey: string | null, bought: number, pieces: number): Because[] {
  return bought === pieces ? [] : [{ rule, storey, wall: null, course: null, quantity: bought - pieces }];
}

/** What an offcut may serve: its own storey, or any storey of the job (decision 19). */
export type OffcutsServe = 'storey' | 'job';

/** A plan for one unit, of one storey or of the whole job, and what each length it saws is made of where that is not one piece. */
interface StoreyCuts {
  readonly storey: string | null;
  readonly pieces: number;
  readonly plan: CutPlan;
  readonly lowerBound: number;
  readonly sawn: ReadonlyMap<string, SawnLength>;
}

/** A plan for one sku: storey by storey, or one for the job where offcuts may serve all of it. */
function cutPlans(pieces: readonly PieceOrder[], range: FormRange, offcuts: OffcutsServe): StoreyCuts[] {
  const storeys = groupedBy(pieces, (piece) => (offcuts === 'job' ? null : piece.storey));
  const stock = stockOf(pieces[0]!.kind, range);
  const cut = (items: readonly { id: string; length: Nm }[]): CutPlan => cutStock({ stock, kerf: range.parameters.formKerf, minOffcut: range.minPiece, items });
  return [...storeys].map(([storey, own]): StoreyCuts => {
    const level = own.filter(({ slope }) => slope === null).map(({ id, length, whole }) => ({ id, length: whole ? stock : length }));
    const sloped = own.flatMap(({ id, slope }) => (slope ? [{ id, slope }] : []));
    const sawn = sawnLengths(sloped, range);
    const plan = cut([...level, ...sawn]);
    const least = sloped.map(({ id, slope }) => ({ id, length: leastLength(slope, range) }));
    const lowerBound = sloped.length === 0 ? plan.lowerBound : cut([...level, ...least]).lowerBound;
    return { storey, pieces: own.length, plan, lowerBound, sawn: new Map(sawn.map((length) => [length.id, length])) };
  });
}

const firstPart = (id: string, sawn: StoreyCuts['sawn']): string => sawn.get(id)?.parts[0]!.id ?? id;

function partsOf({ items }: CutPlan['bins'][number], sawn: StoreyCuts['sawn'], pieces: ReadonlyMap<string, PieceOrder>): CutLine['parts'] {
  const part = (id: string, offset: Nm, turned: boolean): CutLine['parts'][number] => {
    const { length, wall, course } = pieces.get(id)!;
    return { piece: id, offset, length, wall, course, turned };
  };
  if (sawn.size === 0) return items.map(({ id, offset }) => part(id, offset, false));
  return items.flatMap((item) => sawn.get(item.id)?.parts.map(({ id, offset, turned }) => part(id, item.offset + offset, turned)) ?? [part(item.id, item.offset, false)]);
}

function cutLines(plans: readonly StoreyCuts[], sku: string, pieces: ReadonlyMap<string, PieceOrder>): CutLine[] {
  return plans.flatMap(({ storey, plan, sawn }) =>
    plan.bins.map((bin, index): CutLine => ({
      storey: storey ?? pieces.get(firstPart(bin.items[0]!.id, sawn))!.storey,
      sku,
      form: index + 1,
      parts: partsOf(bin, sawn, pieces),
      offcut: bin.offcut,
    })),
  );
}

/**
 * Units to buy, the cut list, and where in its form every sawn piece was cut.
 *
 * A form of the cut list is told in the storey of its first part.
 */
export function orderUnits(pieces: readonly PieceOrder[], range: FormRange, offcuts: OffcutsServe = 'storey'): Order {
  const units: UnitCount[] = [];
  const cuts: CutLine[] = [];
  const cutOf = new Map<string, CutPlace>();
  for (const [sku, group] of groupedBy(pieces, (piece) => piece.sku)) {
    const { kind, core, hand } = group[0]!;
    const count = { sku, kind, core, pieces: group.length, because: becauseOf(group) };
    if (kind === 'corner-pair') {
      const left = group.filter((piece) => piece.hand === 'left').length;
      const bought = pairBlanks(left, group.length - left);
      const because = [...count.because, ...savedByCutting('paired-unit', null, bought, group.length)];
      units.push({ ...count, because, hand: null, bought, spare: 0, lowerBound: bought });
    } else if (isForm(kind) || kind === 'strip' || kind === 'end-closure') {
      const plans = cutPlans(group, range, offcuts);
      const bought = plans.reduce((sum, { plan }) => sum + plan.bins.length, 0);
      const lowerBound = plans.reduce((sum, plan) => sum + plan.lowerBound, 0);
      const causes = groupedBy(count.because, (cause) => (offcuts === 'job' ? null : cause.storey));
      const because = plans.flatMap(({ storey, pieces: own, plan }) => [...causes.get(storey)!, ...savedByCutting('cutting', storey, plan.bins.length, own)]);
      units.push({ ...count, because, hand: null, bought, spare: spareForms(bought, kind, range.parameters.spareForms), lowerBound });
      const byId = new Map(group.map((piece) => [piece.id, piece]));
      const lines = cutLines(plans, sku, byId);
      const stock = stockOf(kind, range);
      const endForEnd = new Set(plans.flatMap(({ sawn }) => [...sawn.values()].flatMap(({ parts }) => parts.filter(({ reversed }) => reversed).map(({ id }) => id))));
      for (const { parts } of lines) {
        for (const { piece, offset, length } of parts) {
          cutOf.set(piece, { offset: endForEnd.has(piece) ? stock - offset - length : offset, cutEnds: ((offset > 0 ? 1 : 0) + (offset + length < stock ? 1 : 0)) as CutPlace['cutEnds'] });
        }
      }
      if (kind !== 'end-closure') cuts.push(...lines.filter(({ parts }) => parts.some(({ piece, length }) => length < stock || byId.get(piece)!.slope !== null)));
    } else {
      const handed = range.corners.some((unit) => unit.kind === kind && unit.hands === 'two-skus');
      units.push({ ...count, hand: handed ? hand : null, bought: group.length, spare: 0, lowerBound: group.length });
    }
  }
  return { units: units.sort((a, b) => (a.sku < b.sku ? -1 : 1)), cuts, cutOf };
}
