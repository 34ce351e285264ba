import { decimalText } from '../quantity/rational.js';
import type { TruckSize } from './price-list.js';
import type { LoadedGoods, TruckLoad } from './quote.js';

/** More trucks than these for one delivery are not loaded one by one. */
export const MAX_TRUCKS = 10_000;

/** Goods of one line for one delivery, and the measures of one selling unit as decimal text. */
export interface GoodsToLoad extends LoadedGoods {
  readonly volumeM3: string;
  readonly weightKg: string;
}

/** Volume and weight in units of 10⁻⁸, so that they are whole. */
interface Measures {
  readonly volume: bigint;
  readonly weight: bigint;
  readonly pieces: bigint;
}

interface OpenLoad {
  used: Measures;
  readonly contents: LoadedGoods[];
}

const SCALE = 100_000_000n;

/**
 * Loads trucks one after the other, in the order given (next fit): what does not go onto the truck goes onto the next, and no truck is
 * opened again. Selling units are never split; goods of one line are parted between trucks.
 *
 * @param goods in the order in which they are loaded; none of a size that no truck takes
 * @param truck what one truck takes, by any of volume, pieces and weight
 * @returns     the loads; null where there would be more than `MAX_TRUCKS`
 */
export function loadTrucks(goods: readonly GoodsToLoad[], truck: TruckSize): readonly TruckLoad[] | null {
  const most = { volume: scaled(truck.volumeM3), pieces: truck.pieces === null ? null : BigInt(truck.pieces), weight: scaled(truck.weightKg) };
  const loads: OpenLoad[] = [];
  for (const { line, sku, quantity, volumeM3, weightKg } of goods) {
    const one: Measures = { volume: scaled(volumeM3) ?? 0n, weight: scaled(weightKg) ?? 0n, pieces: 1n };
    let left = BigInt(quantity);
    while (left > 0n) {
      const load = loads.at(-1);
      const count = load ? roomFor(left, load.used, one, most) : 0n;
      if (load && count > 0n) {
        load.contents.push({ line, sku, quantity: Number(count) });
        load.used = { volume: load.used.volume + count * one.volume, weight: load.used.weight + count * one.weight, pieces: load.used.pieces + count };
        left -= count;
      } else {
        if (loads.length === MAX_TRUCKS) return null;
        if (load && load.used.pieces === 0n) throw new RangeError(`one selling unit of ${sku} does not go onto a truck`);
        loads.push({ used: { volume: 0n, weight: 0n, pieces: 0n }, contents: [] });
      }
    }
  }
  return loads.map((load, index) => toldLoad(load, index, most));
}

type Most = { readonly [measure in keyof Measures]: bigint | null };

const MEASURES = ['volume', 'pieces', 'weight'] as const;

/** How many of `wanted` units still go onto the truck. */
function roomFor(wanted: bigint, used: Measures, one: Measures, most: Most): bigint {
  return MEASURES.reduce((room, measure) => {
    const limit = most[measure];
    if (limit === null || one[measure] === 0n) return room;
    const fits = (limit - used[measure]) / one[measure];
    return fits < room ? fits : room;
  }, wanted);
}

function toldLoad({ used, contents }: OpenLoad, index: number, most: Most): TruckLoad {
  const fills = MEASURES.map((measure) => fillOf(used[measure], most[measure]));
  return {
    n: index + 1,
    volumeM3: Number(used.volume) / Number(SCALE),
    pieces: Number(used.pieces),
    weightKg: Number(used.weight) / Number(SCALE),
    fill: Math.max(...fills),
    contents,
  };
}

/** To four places, never rounded up to a full truck. */
const fillOf = (used: bigint, limit: bigint | null): number => (limit === null ? 0 : Number((used * 10_000n) / limit) / 10_000);

function scaled(text: string): bigint;
function scaled(text: string | null): bigint | null;
function scaled(text: string | null): bigint | null {
  if (text === null) return null;
  const { over, under } = decimalText(text);
  return (over * SCALE) / under;
}
