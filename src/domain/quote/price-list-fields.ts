import { InputErrorList, shownText } from '../evidence/input-error.js';
import { isDecimalText } from '../quantity/money.js';

export type Fields = Readonly<Record<string, unknown>>;

const NAME = /^\S(.{0,198}\S)?$/u;
const NAME_FIX = 'a text of 1 to 200 characters without spaces at its ends';
const DECIMAL_FIX = 'a decimal in quotes, at most 9 digits before and 8 after the point, "12.40"';

/** Reads the fields of a price list and keeps what is wrong with them; where something is, what is handed on only fills the place. */
export class PriceListFields {
  readonly errors = new InputErrorList();

  object(json: unknown, pointer: string, keys: readonly string[]): Fields | null {
    const fields = this.record(json, pointer, `an object with ${keys.join(', ')}`);
    for (const key of Object.keys(fields ?? {})) {
      if (!keys.includes(key)) this.add(`${pointer}/${escaped(key)}`, key, `one of ${keys.join(', ')}`);
    }
    return fields;
  }

  rows(json: unknown, pointer: string, most: number, keys: readonly string[], read: (fields: Fields, pointer: string) => void): void {
    for (const [index, row] of this.list(json, pointer, most).entries()) {
      const fields = this.object(row, `${pointer}/${index}`, keys);
      if (fields) read(fields, `${pointer}/${index}`);
    }
  }

  /** An object whose keys are names: each is read with its own pointer. */
  named(json: unknown, pointer: string, most: number, read: (name: string, value: unknown, pointer: string) => void): void {
    const entries = Object.entries(this.record(json, pointer, 'an object with a price for each name') ?? {});
    if (entries.length > most) return this.add(pointer, `${entries.length} names`, `at most ${most} names`);
    for (const [name, value] of entries) {
      this.check(NAME.test(name), `${pointer}/${escaped(name)}`, name, NAME_FIX);
      read(name, value, `${pointer}/${escaped(name)}`);
    }
  }

  list(json: unknown, pointer: string, most: number): readonly unknown[] {
    if (Array.isArray(json) && json.length <= most) return json;
    this.add(pointer, json, `a list of at most ${most} entries`);
    return [];
  }

  name(fields: Fields, key: string, pointer: string): string {
    return this.text(fields, key, pointer, (text) => NAME.test(text), NAME_FIX);
  }

  optionalName(fields: Fields, key: string, pointer: string): string | null {
    return fields[key] === undefined ? null : this.name(fields, key, pointer);
  }

  decimal(fields: Fields, key: string, pointer: string): string {
    return this.text(fields, key, pointer, isDecimalText, DECIMAL_FIX, '0');
  }

  optionalDecimal(fields: Fields, key: string, pointer: string): string | null {
    return fields[key] === undefined ? null : this.decimal(fields, key, pointer);
  }

  /** A decimal below one; `what` says what a rate of that kind means. */
  rate(fields: Fields, key: string, pointer: string, what: string): string {
    const rate = this.decimal(fields, key, pointer);
    this.check(Number(rate) < 1, `${pointer}/${key}`, rate, what);
    return rate;
  }

  /** The text, or `instead` after an error has been noted: the list is then not handed out. */
  text(fields: Fields, key: string, pointer: string, good: (text: string) => boolean, fix: string, instead = ''): string {
    const value = fields[key];
    if (typeof value === 'string' && good(value)) return value;
    this.add(`${pointer}/${key}`, value, fix);
    return instead;
  }

  whole(fields: Fields, key: string, pointer: string, least: number, most: number): number | null {
    const value = fields[key];
    if (typeof value === 'number' && Number.isInteger(value) && value >= least && value <= most) return value;
    this.add(`${pointer}/${key}`, value, `a whole number from ${least} to ${most}`);
    return null;
  }

  check(good: boolean, pointer: string, read: unknown, fix: string): void {
    if (!good) this.add(pointer, read, fix);
  }

  add(pointer: string, read: unknown, fix: string): void {
    this.errors.add({ sheet: null, row: null, column: null, pointer, read: shownText(read), fix });
  }

  private record(json: unknown, pointer: string, fix: string): Fields | null {
    if (typeof json === 'object' && json !== null && !Array.isArray(json)) return json as Fields;
    this.add(pointer, json, fix);
    return null;
  }
}

const escaped = (key: string): string => key.replaceAll('~', '~0').replaceAll('/', '~1');
