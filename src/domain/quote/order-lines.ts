import type { UnitKind } from '../range/range.js';
import type { UnitCount } from '../takeoff/takeoff.js';

const KIND_ORDER: readonly UnitKind[] = ['straight', 'corner', 'corner-pair', 'corner-hinged', 'strip', 'ledge', 'taper-top', 'end-closure'];

/** The order of a quote's unit lines: by kind, then core from thin to thick, then sku; the order of walls plays no part. */
export function inLineOrder<T extends Pick<UnitCount, 'kind' | 'core' | 'sku'>>(units: readonly T[]): readonly T[] {
  return [...units].sort((a, b) => KIND_ORDER.indexOf(a.kind) - KIND_ORDER.indexOf(b.kind) || byCore(a.core, b.core) || byText(a.sku, b.sku));
}

/** Core codes are numbers in most ranges and names in some: numbers first, by size. */
function byCore(a: string, b: string): number {
  const [first, second] = [sizeOf(a), sizeOf(b)];
  return first === second ? byText(a, b) : first - second;
}

const sizeOf = (core: string): number => (Number.isFinite(Number(core)) ? Number(core) : Number.MAX_VALUE);

const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
