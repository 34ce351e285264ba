import { NM_PER_FOOT } from '../../src/domain/quantity/length.js';
import { MINOR_DIGITS } from '../../src/domain/quantity/money.js';
import type { MeasuredJob, QuoteBecause } from '../../src/domain/quote/quote.js';
import type { OracleCause, OracleItem, OracleJob, OracleList, OraclePrice } from '../oracles/price-oracle.js';
import { material, measuredJob, unit, type PriceListDocument } from './priced-job.js';
import type { SeededRandom } from './seeded-random.js';

/** A small random job with a random list, as the program reads them and as the oracle does. */
export interface RandomQuote {
  readonly document: PriceListDocument;
  readonly job: MeasuredJob;
  readonly plain: OracleJob;
  readonly digits: number;
  readonly organisation: string;
  readonly place: string | null;
}

const CURRENCIES = ['USD', 'JPY', 'KWD', 'EUR'] as const;
const ORGANISATIONS = ['Open Ltd', 'Tiered Ltd', 'Own Ltd', 'Free Ltd'] as const;
const STOREYS = ['S1', 'S2', 'S3'] as const;

function decimal(random: SeededRandom, whole: number, places: number): string {
  const length = random.whole(0, places);
  return `${random.whole(0, whole)}${length === 0 ? '' : `.${`${random.whole(0, 10 ** length - 1)}`.padStart(length, '0')}`}`;
}

/** Prices with halves in them on purpose: many end in a five one place past the currency's digits; some are nought. */
function priceText(random: SeededRandom, digits: number): string {
  if (random.chance(0.3)) return `${random.whole(0, 99)}.${'0'.repeat(digits)}5`;
  return random.chance(0.05) ? '0' : decimal(random, 999, 8);
}

function prices(random: SeededRandom, digits: number): OraclePrice {
  const froms = random.chance(0.5) ? [] : [random.whole(2, 20), random.whole(21, 80)].slice(0, random.whole(1, 2));
  return { price: priceText(random, digits), ...(froms.length > 0 && { breaks: froms.map((from) => ({ from, price: priceText(random, digits) })) }) };
}

function randomItem(random: SeededRandom, n: number, digits: number): OracleItem & { readonly unit: string } {
  const bundle = random.chance(0.6) ? random.whole(1, 15) : undefined;
  return {
    sku: `S${n}`, unit: n % 2 === 0 ? 'each' : 'pack', ...prices(random, digits),
    ...(bundle !== undefined && { bundle, ...(random.chance(0.6) && { breakBundle: random.pick(['0', '0.1', '0.25', '0.5', '0.125']) }) }),
    ...(random.chance(0.2) && { group: 'odd' }),
    ...(random.chance(0.4) && { tiers: { builder: prices(random, digits) } }),
    ...(random.chance(0.3) && { customers: { 'Own Ltd': prices(random, digits) } }),
    ...(random.chance(0.8) && { volumeM3: random.pick(['0.149', '1.5', '0.3333', '2']) }),
    ...(random.chance(0.7) && { weightKg: random.pick(['3.1', '12', '0.25']) }),
  };
}

function randomTerms(random: SeededRandom, digits: number): Omit<OracleList, 'items'> {
  const groups = ['forms', 'corners', 'materials', 'odd'].filter(() => random.chance(0.5));
  return {
    customers: [{ organisation: 'Tiered Ltd', tier: 'builder' }, { organisation: 'Own Ltd', tier: 'builder' }, { organisation: 'Free Ltd', taxExempt: 'EX-1' }],
    discounts: groups.flatMap((group) => [
      { group, rate: decimal(random, 0, 4) },
      ...(random.chance(0.5) ? [{ group, tier: 'builder', rate: decimal(random, 0, 4) }] : []),
      ...(random.chance(0.5) ? [{ group, organisation: 'Own Ltd', rate: decimal(random, 0, 4) }] : []),
    ]),
    ...(random.chance(0.4) && { minimumOrder: { amount: decimal(random, 99_999, digits + 1), ...(random.chance(0.4) && { charge: priceText(random, digits) }) } }),
    taxes: [{ place: 'Here', rate: decimal(random, 0, 5), freight: random.chance(0.5) }, ...(random.chance(0.5) ? [{ place: 'Here', name: 'county tax', rate: decimal(random, 0, 3) }] : []), { place: 'There', rate: '0.06' }],
    ...(random.chance(0.7) && {
      freight: {
        truck: random.pick([{ volumeM3: '10' }, { pieces: 17 }, { volumeM3: '12.5', weightKg: '80.5' }, { volumeM3: '9', pieces: 30, weightKg: '120' }]),
        split: random.pick(['job', 'storey']),
        zones: [{ zone: 'A', places: ['Here'], perTruck: priceText(random, digits), ...(random.chance(0.5) && { perDelivery: priceText(random, digits) }) }],
      },
    }),
  };
}

const randomCauses = (random: SeededRandom): readonly OracleCause[] =>
  Array.from({ length: random.whole(1, 4) }, () => ({ storey: random.pick(STOREYS), course: random.whole(1, 6), weight: BigInt(random.whole(1, 9)) }));

const because = (causes: readonly OracleCause[]): readonly QuoteBecause[] =>
  causes.map(({ storey, course, weight }) => ({ rule: 'r', storey, wall: 'A', course, quantity: Number(weight) / 8 }));

export function randomQuote(random: SeededRandom): RandomQuote {
  const currency = random.pick(CURRENCIES);
  const digits = MINOR_DIGITS[currency];
  const items = Array.from({ length: random.whole(1, 4) }, (_, n) => randomItem(random, n, digits));
  const units = items.filter((item) => item.unit === 'each').map(({ sku }) => ({ sku, group: 'forms', bought: random.whole(0, 70), spare: random.whole(0, 9), causes: randomCauses(random) }));
  const materials = items.filter((item) => item.unit === 'pack').map(({ sku }) => {
    const packFeet = random.whole(1, 200);
    const exact = random.chance(0.4);
    return { sku, group: 'materials', nm: exact ? random.whole(1, 40) * packFeet * NM_PER_FOOT : random.whole(1, 40 * packFeet * NM_PER_FOOT), packFeet, causes: randomCauses(random) };
  });
  return {
    document: { format: 'wallcourse/prices@1', code: 'R', currency, inForceFrom: '2026-01-01', validDays: 30, items, ...randomTerms(random, digits) },
    job: measuredJob({
      units: units.map(({ sku, bought, spare, causes }) => unit(sku, bought, { spare, because: because(causes) })),
      materials: materials.map(({ sku, nm, packFeet, causes }) => ({ ...material(sku, 'tape', nm / NM_PER_FOOT, { quantity: packFeet, unit: 'ft' }), because: because(causes) })),
      concrete: STOREYS.map((storey) => ({ storey, nm3: 0n, orderYd3: 1 })),
    }),
    plain: {
      storeys: STOREYS,
      units: units.map(({ bought, spare, ...rest }) => ({ ...rest, bought: BigInt(bought), spare: BigInt(spare) })),
      materials: materials.map(({ nm, packFeet, ...rest }) => ({ ...rest, amount: BigInt(nm), pack: BigInt(packFeet) * BigInt(NM_PER_FOOT) })),
    },
    digits,
    organisation: random.pick(ORGANISATIONS),
    place: random.chance(0.8) ? 'Here' : random.pick(['There', 'Nowhere', null]),
  };
}
