import type { InputError } from '../evidence/input-error.js';
import { failure, success, type Result } from '../evidence/result.js';
import { isCurrency, type Currency } from '../quantity/money.js';
import { isPlainDate } from './plain-date.js';
import type { PriceList } from './price-list.js';
import { PriceListFields } from './price-list-fields.js';
import { readItems } from './read-price-items.js';
import { readCustomers, readDiscounts, readFreight, readMinimumOrder, readTaxes } from './read-price-terms.js';

export { MAX_PRICE_ITEMS } from './read-price-items.js';
export { MAX_TAX_PLACES } from './read-price-terms.js';

export const PRICE_LIST_FORMAT = 'wallcourse/prices@1';

const LIST_KEYS = [
  'format', 'code', 'currency', 'inForceFrom', 'inForceTo', 'validDays', 'items', 'customers', 'discounts', 'minimumOrder', 'taxes', 'freight',
];
const DAY = 'a day, "2026-01-01"';

/**
 * Reads a price list as a supplier writes it.
 *
 * Every error is told at once, at most 200, each with its JSON pointer, what was read and what would do. Unknown keys are errors: a
 * price break that nobody reads would be a wrong price. A name is compared letter by letter: places, organisations, tiers, groups.
 *
 * Left out, these mean: `inForceTo` until another list begins; `taxes[].name` the name `tax`, `taxes[].freight` freight is taxed;
 * `freight.split` one delivery for the job; `items[].group` the group of the item's kind; `items[].breakBundle` whole bundles only.
 *
 * @param json a parsed JSON document
 */
export function readPriceList(json: unknown): Result<PriceList, readonly InputError[]> {
  const fields = new PriceListFields();
  const list = read(json, fields);
  return list && fields.errors.count === 0 ? success(list) : failure(fields.errors.list());
}

function read(json: unknown, fields: PriceListFields): PriceList | null {
  const row = fields.object(json, '', LIST_KEYS);
  if (!row) return null;
  fields.check(row['format'] === PRICE_LIST_FORMAT, '/format', row['format'], `"${PRICE_LIST_FORMAT}"`);
  const code = fields.name(row, 'code', '');
  const currency = readCurrency(row['currency'], fields);
  const inForceFrom = fields.text(row, 'inForceFrom', '', isPlainDate, DAY);
  const inForceTo = row['inForceTo'] === undefined ? null : fields.text(row, 'inForceTo', '', isPlainDate, DAY);
  fields.check(!inForceTo || inForceTo >= inForceFrom, '/inForceTo', inForceTo, `${inForceFrom} or later, the day on which the list begins`);
  const validDays = fields.whole(row, 'validDays', '', 0, 10_000) ?? 0;
  const customers = readCustomers(row['customers'], fields);
  const tiers = new Set([...customers.values()].flatMap(({ tier }) => (tier === null ? [] : [tier])));
  const items = readItems(row['items'], tiers, fields);
  return {
    code, currency, inForceFrom, inForceTo, validDays, items, customers,
    discounts: readDiscounts(row['discounts'], tiers, fields),
    minimumOrder: readMinimumOrder(row['minimumOrder'], fields),
    taxes: readTaxes(row['taxes'], fields),
    freight: readFreight(row['freight'], items, fields),
  };
}

function readCurrency(value: unknown, fields: PriceListFields): Currency {
  if (typeof value === 'string' && isCurrency(value)) return value;
  fields.add('/currency', value, 'an ISO 4217 code in capitals, "USD"');
  return 'USD';
}
