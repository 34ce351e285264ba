import { readPriceList } from '../../src/domain/quote/read-price-list.js';
import type { PriceList } from '../../src/domain/quote/price-list.js';
import type { MeasuredJob } from '../../src/domain/quote/quote.js';
import type { MaterialLine } from '../../src/domain/reinforcement/material-line.js';
import type { OracleItem, OracleList } from '../oracles/price-oracle.js';
import type { UnitCount } from '../../src/domain/takeoff/takeoff.js';

/** What the tests write of a list; the optional parts are as the oracle has them. */
export interface PriceListDocument extends Omit<OracleList, 'items'> {
  readonly format: 'wallcourse/prices@1';
  readonly code: string;
  readonly currency: string;
  readonly inForceFrom: string;
  readonly inForceTo?: string;
  readonly validDays: number;
  readonly items: readonly (OracleItem & { readonly unit: string })[];
}

/** A small invented list: forms by the dozen, corners by six, the rest one by one. */
export const PRICES: PriceListDocument = {
  format: 'wallcourse/prices@1',
  code: 'TEST-1',
  currency: 'USD',
  inForceFrom: '2026-01-01',
  validDays: 30,
  items: [
    { sku: 'ST6', unit: 'each', price: '23.40', cost: '14.05', bundle: 12 },
    { sku: 'SQ6-L', unit: 'each', price: '29.25', bundle: 6 },
    { sku: 'EC6', unit: 'each', price: '2.80' },
    { sku: 'TAPE-4', unit: 'pack', price: '18.60' },
    { sku: 'WIRE-16', unit: 'pack', price: '14.25' },
    { sku: 'STRAP-1x3', unit: 'pack', price: '2.15', bundle: 8 },
    { sku: 'FOAM-24', unit: 'ft', price: '0.315' },
  ],
  taxes: [{ place: 'Alder County', rate: '0.0825' }],
};

/** @throws where a test's own list does not read */
export function priceList(document: PriceListDocument = PRICES): PriceList {
  const read = readPriceList(document);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
}

export const unit = (sku: string, bought: number, rest: Partial<UnitCount> = {}): UnitCount => ({
  sku, kind: 'straight', core: '6', hand: null, pieces: bought, bought, spare: 0, lowerBound: bought,
  because: [{ rule: 'course', storey: 'S1', wall: 'A', course: 1, quantity: bought }], ...rest,
});

export const material = (sku: string, kind: MaterialLine['kind'], quantity: number, pack: MaterialLine['pack']): MaterialLine => ({
  sku, kind, size: '4 in', quantity, unit: pack.unit, pack,
  because: [{ rule: 'end-closure', storey: 'S1', wall: 'A', course: 1, quantity }],
});

export const measuredJob = (changes: { readonly units?: readonly UnitCount[]; readonly materials?: readonly MaterialLine[] } & Partial<Omit<MeasuredJob, 'takeoff' | 'materials'>> & { readonly concrete?: MeasuredJob['takeoff']['concrete'] } = {}): MeasuredJob => {
  const { units = [], materials = [], concrete = [], ...rest } = changes;
  return { engine: '0.1.0', range: { code: 'RULES', version: 1 }, takeoff: { units, concrete }, materials, findings: [], ...rest };
};
