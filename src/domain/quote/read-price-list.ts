import { InputErrorList, shownText, type InputError } from '../evidence/input-error.js';
import { failure, success, type Result } from '../evidence/result.js';
import { isCurrency, isDecimalText, type Currency } from '../quantity/money.js';
import { isPlainDate } from './plain-date.js';
import type { PriceItem, PriceList, SellingUnit } from './price-list.js';

export const PRICE_LIST_FORMAT = 'wallcourse/prices@1';
export const MAX_PRICE_ITEMS = 20_000;
export const MAX_TAX_PLACES = 5_000;

const NAME = /^\S(.{0,198}\S)?$/u;
const UNITS: readonly string[] = ['each', 'ft', 'pack'] satisfies readonly SellingUnit[];
const LIST_KEYS = ['format', 'code', 'currency', 'inForceFrom', 'validDays', 'items', 'taxes'];
const ITEM_KEYS = ['sku', 'unit', 'price', 'cost', 'bundle'];
const TAX_KEYS = ['place', 'rate'];

type Fields = Readonly<Record<string, unknown>>;

/**
 * Reads a price list as a supplier writes it.
 *
 * Every error is told at once, at most 200, each with its JSON pointer, what was read and what would do. Unknown keys are errors: a
 * price break that nobody reads would be a wrong price.
 *
 * @param json a parsed JSON document
 */
export function readPriceList(json: unknown): Result<PriceList, readonly InputError[]> {
  const reader = new PriceListReader();
  const list = reader.list(json);
  return list && reader.errors.count === 0 ? success(list) : failure(reader.errors.list());
}

class PriceListReader {
  readonly errors = new InputErrorList();

  list(json: unknown): PriceList | null {
    const fields = this.object(json, '', LIST_KEYS);
    if (!fields) return null;
    this.check(fields['format'] === PRICE_LIST_FORMAT, '/format', fields['format'], `"${PRICE_LIST_FORMAT}"`);
    return {
      code: this.name(fields, 'code', ''),
      currency: this.currency(fields['currency']),
      inForceFrom: this.text(fields, 'inForceFrom', '', isPlainDate, 'a day, "2026-01-01"'),
      validDays: this.whole(fields, 'validDays', '', 0, 10_000) ?? 0,
      items: this.items(fields['items']),
      taxes: this.taxes(fields['taxes']),
    };
  }

  private items(json: unknown): ReadonlyMap<string, PriceItem> {
    const items = new Map<string, PriceItem>();
    this.rows(json, '/items', MAX_PRICE_ITEMS, ITEM_KEYS, (fields, pointer) => {
      const item = this.item(fields, pointer);
      this.check(!items.has(item.sku), `${pointer}/sku`, item.sku, 'each sku once');
      items.set(item.sku, item);
    });
    return items;
  }

  private item(fields: Fields, pointer: string): PriceItem {
    return {
      sku: this.name(fields, 'sku', pointer),
      unit: this.text(fields, 'unit', pointer, (text) => UNITS.includes(text), '"each", "ft" or "pack"') as SellingUnit,
      price: this.decimal(fields, 'price', pointer),
      cost: fields['cost'] === undefined ? null : this.decimal(fields, 'cost', pointer),
      bundle: fields['bundle'] === undefined ? null : this.whole(fields, 'bundle', pointer, 1, 1_000_000),
    };
  }

  private taxes(json: unknown): ReadonlyMap<string, string> {
    const taxes = new Map<string, string>();
    this.rows(json, '/taxes', MAX_TAX_PLACES, TAX_KEYS, (fields, pointer) => {
      const place = this.name(fields, 'place', pointer);
      const rate = this.decimal(fields, 'rate', pointer);
      this.check(Number(rate) < 1, `${pointer}/rate`, rate, 'a rate below 1: "0.0825" is 8 1/4 %');
      this.check(!taxes.has(place), `${pointer}/place`, place, 'each place once');
      taxes.set(place, rate);
    });
    return taxes;
  }

  private rows(json: unknown, pointer: string, most: number, keys: readonly string[], read: (fields: Fields, pointer: string) => void): void {
    if (!Array.isArray(json) || json.length > most) return this.add(pointer, json, `a list of at most ${most} entries`);
    json.forEach((row: unknown, index) => {
      const fields = this.object(row, `${pointer}/${index}`, keys);
      if (fields) read(fields, `${pointer}/${index}`);
    });
  }

  private object(json: unknown, pointer: string, keys: readonly string[]): Fields | null {
    if (typeof json !== 'object' || json === null || Array.isArray(json)) {
      this.add(pointer, json, `an object with ${keys.join(', ')}`);
      return null;
    }
    for (const key of Object.keys(json)) {
      if (!keys.includes(key)) this.add(`${pointer}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`, key, `one of ${keys.join(', ')}`);
    }
    return json as Fields;
  }

  private name(fields: Fields, key: string, pointer: string): string {
    return this.text(fields, key, pointer, (text) => NAME.test(text), 'a text of 1 to 200 characters without spaces at its ends');
  }

  private decimal(fields: Fields, key: string, pointer: string): string {
    return this.text(fields, key, pointer, isDecimalText, 'a decimal in quotes, at most 9 digits before and 8 after the point, "12.40"', '0');
  }

  private currency(value: unknown): Currency {
    if (typeof value === 'string' && isCurrency(value)) return value;
    this.add('/currency', value, 'an ISO 4217 code in capitals, "USD"');
    return 'USD';
  }

  /** The text, or `instead` after an error has been noted: the list is then not handed out. */
  private text(fields: Fields, key: string, pointer: string, good: (text: string) => boolean, fix: string, instead = ''): string {
    const value = fields[key];
    if (typeof value === 'string' && good(value)) return value;
    this.add(`${pointer}/${key}`, value, fix);
    return instead;
  }

  private whole(fields: Fields, key: string, pointer: string, least: number, most: number): number | null {
    const value = fields[key];
    if (typeof value === 'number' && Number.isInteger(value) && value >= least && value <= most) return value;
    this.add(`${pointer}/${key}`, value, `a whole number from ${least} to ${most}`);
    return null;
  }

  private check(good: boolean, pointer: string, read: unknown, fix: string): void {
    if (!good) this.add(pointer, read, fix);
  }

  private add(pointer: string, read: unknown, fix: string): void {
    this.errors.add({ sheet: null, row: null, column: null, pointer, read: shownText(read), fix });
  }
}
