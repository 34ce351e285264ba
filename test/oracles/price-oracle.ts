/**
 * A second, slow pricing that shares nothing with the program: fractions of big integers, written from the words of the price list's
 * contract. Bundles are counted up one by one, storeys get their units one by one, trucks are loaded one unit at a time.
 */
export interface OraclePrice {
  readonly price: string;
  readonly breaks?: readonly { readonly from: number; readonly price: string }[];
}

export interface OracleItem extends OraclePrice {
  readonly sku: string;
  readonly cost?: string;
  readonly bundle?: number;
  readonly breakBundle?: string;
  readonly group?: string;
  readonly tiers?: Readonly<Record<string, OraclePrice>>;
  readonly customers?: Readonly<Record<string, OraclePrice>>;
  readonly volumeM3?: string;
  readonly weightKg?: string;
}

/** The parts of a price list as its JSON has them. */
export interface OracleList {
  readonly items: readonly OracleItem[];
  readonly customers?: readonly { readonly organisation: string; readonly tier?: string; readonly taxExempt?: string }[];
  readonly discounts?: readonly { readonly group: string; readonly tier?: string; readonly organisation?: string; readonly rate: string }[];
  readonly minimumOrder?: { readonly amount: string; readonly charge?: string };
  readonly taxes: readonly { readonly place: string; readonly name?: string; readonly rate: string; readonly freight?: boolean }[];
  readonly freight?: {
    readonly truck: { readonly volumeM3?: string; readonly pieces?: number; readonly weightKg?: string };
    readonly split?: string;
    readonly zones: readonly { readonly zone: string; readonly places: readonly string[]; readonly perTruck: string; readonly perDelivery?: string }[];
  };
}

export interface OracleCause {
  readonly storey: string;
  readonly course: number;
  readonly weight: bigint;
}

export interface OracleJob {
  /** From the bottom up. */
  readonly storeys: readonly string[];
  /** In the order of the quote's lines. */
  readonly units: readonly { readonly sku: string; readonly group: string; readonly bought: bigint; readonly spare: bigint; readonly causes: readonly OracleCause[] }[];
  /** Lengths in nanometres or counts of pieces, with the pack in the same measure. */
  readonly materials: readonly { readonly sku: string; readonly group: string; readonly amount: bigint; readonly pack: bigint; readonly causes: readonly OracleCause[] }[];
}

export interface OracleQuote {
  /** `kind sku storey quantity loose amount`, sorted by nothing: in the order of the quote. */
  readonly lines: readonly string[];
  readonly taxes: readonly bigint[];
  readonly subtotal: bigint;
  readonly total: bigint;
}

interface Fraction {
  readonly n: bigint;
  readonly d: bigint;
}

interface Goods {
  readonly kind: string;
  readonly sku: string;
  readonly group: string;
  readonly demand: bigint;
  readonly causes: readonly OracleCause[];
  quantity: bigint;
  loose: bigint;
  price: string;
}

export function pricedByOracle(job: OracleJob, list: OracleList, minorDigits: number, organisation: string, place: string | null): OracleQuote {
  const one = 10n ** BigInt(minorDigits);
  const customer = (list.customers ?? []).filter((each) => each.organisation === organisation)[0];
  const item = (sku: string): OracleItem => list.items.filter((each) => each.sku === sku)[0] as OracleItem;
  const goods = goodsOf(job);
  for (const sku of new Set(goods.map((line) => line.sku))) sellTogether(goods.filter((line) => line.sku === sku), item(sku), organisation, customer?.tier);
  const lines: { readonly kind: string; readonly words: string; readonly amount: bigint }[] = goods.map((line) => {
    const off = discount(list, item(line.sku).group ?? line.group, organisation, customer?.tier);
    const charged = plus(whole(line.quantity), by(whole(line.loose), fraction(item(line.sku).breakBundle ?? '0')));
    const amount = halfEven(by(by(by(charged, fraction(line.price)), minus(whole(1n), fraction(off))), whole(one)));
    return { kind: line.kind, words: `${line.kind} ${line.sku} - ${line.quantity} ${line.loose} ${amount}`, amount };
  });
  const sumOfGoods = lines.reduce((sum, { amount }) => sum + amount, 0n);
  const least = by(fraction(list.minimumOrder?.amount ?? '0'), whole(one));
  if (lines.length > 0 && sumOfGoods * least.d < least.n) {
    const charge = list.minimumOrder?.charge;
    const amount = halfEven(charge === undefined ? minus(least, whole(sumOfGoods)) : by(fraction(charge), whole(one)));
    lines.push({ kind: 'minimum', words: `minimum MINIMUM - 1 0 ${amount}`, amount });
  }
  for (const { storey, trucks, zone } of deliveries(goods, job.storeys, list, item, place)) {
    const amount = halfEven(by(plus(by(fraction(zone.perTruck), whole(trucks)), fraction(zone.perDelivery ?? '0')), whole(one)));
    lines.push({ kind: 'freight', words: `freight FREIGHT ${storey ?? '-'} 1 0 ${amount} on ${trucks}`, amount });
  }
  const taxes = place === null || customer?.taxExempt !== undefined ? [] : list.taxes.filter((tax) => tax.place === place).map(({ rate, freight }) => {
    const base = lines.filter(({ kind }) => kind !== 'freight' || freight !== false).reduce((sum, { amount }) => sum + amount, 0n);
    return halfEven(by(whole(base), fraction(rate)));
  });
  const subtotal = lines.reduce((sum, { amount }) => sum + amount, 0n);
  return { lines: lines.map(({ words }) => words), taxes, subtotal, total: taxes.reduce((sum, tax) => sum + tax, subtotal) };
}

function goodsOf({ units, materials }: OracleJob): readonly Goods[] {
  const goods: Goods[] = [];
  for (const { sku, group, bought, spare, causes } of units) {
    if (bought > 0n) goods.push({ kind: 'unit', sku, group, demand: bought, causes, quantity: 0n, loose: 0n, price: '' });
    if (spare > 0n) goods.push({ kind: 'spare', sku, group, demand: spare, causes: [], quantity: 0n, loose: 0n, price: '' });
  }
  for (const { sku, group, amount, pack, causes } of materials) {
    let packs = amount / pack;
    while (packs * pack < amount) packs += 1n;
    goods.push({ kind: 'material', sku, group, demand: packs, causes, quantity: 0n, loose: 0n, price: '' });
  }
  return goods;
}

/** Tries whole bundles and, where a bundle may be broken, loose units; the cheaper is sold, whole bundles at equal cost. */
function sellTogether(lines: readonly Goods[], item: OracleItem, organisation: string, tier: string | undefined): void {
  const prices = item.customers?.[organisation] ?? (tier === undefined ? undefined : item.tiers?.[tier]) ?? item;
  const priceAt = (quantity: bigint): string => {
    let price = prices.price;
    for (const each of prices.breaks ?? []) if (BigInt(each.from) <= quantity) price = each.price;
    return price;
  };
  const bundle = BigInt(item.bundle ?? 1);
  const needed = lines.reduce((sum, { demand }) => sum + demand, 0n);
  let full = 0n;
  while (full + bundle <= needed) full += bundle;
  const loose = needed - full;
  const up = loose > 0n ? full + bundle : full;
  const wholeCost = by(whole(up), fraction(priceAt(up)));
  const looseCost = by(plus(whole(needed), by(whole(loose), fraction(item.breakBundle ?? '0'))), fraction(priceAt(needed)));
  const breaks = item.breakBundle !== undefined && wholeCost.n * looseCost.d > looseCost.n * wholeCost.d;
  let open = breaks ? full : 0n;
  let spareInBundle = 0n;
  for (const line of lines) {
    line.price = priceAt(breaks ? needed : up);
    if (breaks) {
      line.quantity = line.demand;
      line.loose = line.demand > open ? line.demand - open : 0n;
      open = line.demand > open ? 0n : open - line.demand;
      continue;
    }
    let missing = line.demand > spareInBundle ? line.demand - spareInBundle : 0n;
    spareInBundle = line.demand > spareInBundle ? 0n : spareInBundle - line.demand;
    while (missing > 0n) {
      line.quantity += bundle;
      if (bundle > missing) spareInBundle = bundle - missing;
      missing = bundle > missing ? 0n : missing - bundle;
    }
  }
}

function discount(list: OracleList, group: string, organisation: string, tier: string | undefined): string {
  const rates = (list.discounts ?? []).filter((each) => each.group === group);
  for (const each of rates) if (each.organisation === organisation) return each.rate;
  for (const each of rates) if (each.tier !== undefined && each.tier === tier) return each.rate;
  for (const each of rates) if (each.organisation === undefined && each.tier === undefined) return each.rate;
  return '0';
}

interface OracleDelivery {
  readonly storey: string | null;
  readonly trucks: bigint;
  readonly zone: { readonly perTruck: string; readonly perDelivery?: string };
}

function deliveries(goods: readonly Goods[], storeys: readonly string[], list: OracleList, item: (sku: string) => OracleItem, place: string | null): readonly OracleDelivery[] {
  const { freight } = list;
  const zone = freight?.zones.filter(({ places }) => place !== null && places.includes(place))[0];
  if (!freight || !zone) return [];
  const caused = storeys.filter((storey) => goods.some(({ causes }) => causes.some((cause) => cause.storey === storey)));
  const split = freight.split === 'storey' && caused.length > 0;
  const parts = (split ? caused : [null]).map((storey) => ({ storey, counts: goods.map((line) => (storey === null ? line.quantity : 0n)) }));
  if (split) goods.forEach((line, index) => shareOut(line, goods, caused).forEach((count, part) => { parts[part]!.counts[index] = count; }));
  return parts.filter(({ counts }) => counts.some((count) => count > 0n)).map(({ storey, counts }) => {
    const rank = (line: Goods): readonly [number, number] => {
      const laid = line.causes.filter((cause) => storey === null || cause.storey === storey).map((cause) => [storeys.indexOf(cause.storey), cause.course] as const);
      return laid.sort((a, b) => a[0] - b[0] || a[1] - b[1])[0] ?? [Infinity, Infinity];
    };
    const order = goods.map((line, index) => ({ index, rank: rank(line), sku: line.sku }))
      .sort((a, b) => (a.rank[0] === b.rank[0] ? (a.rank[1] === b.rank[1] ? a.index - b.index : a.rank[1] - b.rank[1]) : a.rank[0] - b.rank[0]));
    return { storey, trucks: loaded(order.map(({ index, sku }) => ({ count: counts[index]!, item: item(sku) })), freight.truck), zone };
  });
}

/** One by one to the storey that is furthest below its share; exactly equal, to the lower storey. */
function shareOut(line: Goods, goods: readonly Goods[], storeys: readonly string[]): readonly bigint[] {
  const weigh = (causes: readonly OracleCause[]): bigint[] => storeys.map((storey) => causes.reduce((sum, cause) => (cause.storey === storey ? sum + cause.weight : sum), 0n));
  let weights = weigh(line.causes);
  if (weights.every((weight) => weight === 0n)) weights = weigh(goods.filter(({ sku }) => sku === line.sku).flatMap(({ causes }) => causes));
  if (weights.every((weight) => weight === 0n)) weights = storeys.map((_, index) => (index === 0 ? 1n : 0n));
  const all = weights.reduce((sum, weight) => sum + weight, 0n);
  const counts = weights.map((weight) => (line.quantity * weight) / all);
  while (counts.reduce((sum, count) => sum + count, 0n) < line.quantity) {
    let furthest = 0;
    storeys.forEach((_, index) => {
      const lack = line.quantity * weights[index]! - counts[index]! * all;
      if (lack > line.quantity * weights[furthest]! - counts[furthest]! * all) furthest = index;
    });
    counts[furthest]! += 1n;
  }
  return counts;
}

function loaded(goods: readonly { readonly count: bigint; readonly item: OracleItem }[], truck: NonNullable<OracleList['freight']>['truck']): bigint {
  const most = { volume: parts(truck.volumeM3), weight: parts(truck.weightKg), pieces: truck.pieces };
  let trucks = 0n;
  let [volume, weight, pieces] = [0n, 0n, 0];
  for (const { count, item } of goods) {
    const [own, heavy] = [parts(item.volumeM3) ?? 0n, parts(item.weightKg) ?? 0n];
    for (let unit = 0n; unit < count; unit += 1n) {
      volume += own;
      weight += heavy;
      pieces += 1;
      const over = (most.volume !== null && volume > most.volume) || (most.weight !== null && weight > most.weight) || (most.pieces !== undefined && pieces > most.pieces);
      if (trucks > 0n && !over) continue;
      trucks += 1n;
      [volume, weight, pieces] = [own, heavy, 1];
    }
  }
  return trucks;
}

/** In parts of a hundred millionth, which every decimal of a list is a whole number of. */
function parts(text: string | undefined): bigint | null {
  if (text === undefined) return null;
  const { n, d } = fraction(text);
  return (n * 10n ** 8n) / d;
}

const whole = (n: bigint): Fraction => ({ n, d: 1n });
const plus = (a: Fraction, b: Fraction): Fraction => (a.d === b.d ? { n: a.n + b.n, d: a.d } : { n: a.n * b.d + b.n * a.d, d: a.d * b.d });
const minus = (a: Fraction, b: Fraction): Fraction => plus(a, { n: -b.n, d: b.d });
const by = (a: Fraction, b: Fraction): Fraction => ({ n: a.n * b.n, d: a.d * b.d });

function fraction(text: string): Fraction {
  const point = text.indexOf('.');
  const places = point < 0 ? 0 : text.length - point - 1;
  return { n: BigInt(text.replace('.', '')), d: 10n ** BigInt(places) };
}

/** The whole number nearest to n/d; from exactly between, the even one. Written by comparing distances. */
function halfEven({ n, d }: Fraction): bigint {
  const below = n / d;
  const above = below + 1n;
  const toBelow = n - below * d;
  const toAbove = above * d - n;
  if (toBelow < toAbove) return below;
  if (toAbove < toBelow) return above;
  return below % 2n === 0n ? below : above;
}
