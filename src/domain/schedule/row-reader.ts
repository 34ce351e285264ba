import type { Result } from '../evidence/result.js';
import type { Nm } from '../quantity/length.js';
import { readLength, readLengthNumber } from '../quantity/length-text.js';
import { printLength } from '../quantity/print-length.js';
import { readQuantity } from '../quantity/quantity.js';
import { inSpan, type Span } from '../quantity/span.js';
import type { WrittenLengthUnit } from '../quantity/length-unit.js';
import type { QuantityFault } from '../quantity/quantity-fault.js';
import { readTurn } from '../quantity/turn-text.js';
import type { Dimension } from '../quantity/unit.js';
import type { Reading } from './reading.js';

type Row = Readonly<Record<string, unknown>>;

export interface LengthRule {
  readonly signed?: boolean;
  /** Zero is refused. */
  readonly positive?: boolean;
  readonly most?: Nm;
  readonly span?: Span;
  /** A bare number has no unit here, whatever the document's is. */
  readonly unitNeeded?: boolean;
}

/**
 * Reads the fields of one object of the document. Every method records what is wrong and then answers undefined, so a caller reads
 * all fields first and gives up the object afterwards: all errors of a row are told at once.
 */
export class RowReader {
  private constructor(
    private readonly reading: Reading,
    private readonly row: Row,
    readonly pointer: string,
  ) {}

  /** A reader of a value that should be an object; lists the keys nobody knows. */
  static of(reading: Reading, value: unknown, pointer: string, keys: readonly string[]): RowReader | undefined {
    if (typeof value !== 'object' || value === null || Array.isArray(value))
      return reading.fail(pointer, value, `an object with ${keys.join(', ')}`);
    for (const key of Object.keys(value)) if (!keys.includes(key)) reading.unknownKey(pointer, key);
    return new RowReader(reading, value as Row, pointer);
  }

  /** The raw value; null and an absent key are both undefined. */
  value(key: string): unknown {
    return Object.hasOwn(this.row, key) ? (this.row[key] ?? undefined) : undefined;
  }

  has(key: string): boolean {
    return this.value(key) !== undefined;
  }

  fail(key: string | null, fix: string, value: unknown = key === null ? undefined : this.value(key)): undefined {
    return this.reading.fail(key === null ? this.pointer : this.at(key), value, fix);
  }

  /** A length in the unit of the document, for an error. */
  print(nm: Nm): string {
    return printLength(nm, this.reading.unit ?? 'in');
  }

  at(key: string): string {
    return `${this.pointer}/${key}`;
  }

  /** A line of text, 1 to `most` characters, trimmed; a number stands for its digits (a spreadsheet's `101`). */
  text(key: string, most: number): string | undefined {
    const value = this.value(key);
    const text =
      typeof value === 'number' && Number.isFinite(value) ? String(value) : typeof value === 'string' ? value.trim() : '';
    const fits = text !== '' && (text.length <= most || (text.length <= 2 * most && [...text].length <= most));
    if (fits && !/[\p{Cc}\p{Cs}]/u.test(text)) return text;
    const plain = text !== '' && fits ? ' without line breaks or control characters' : '';
    return this.fail(key, `one line of text, 1 to ${most} characters${plain}`);
  }

  /** One of a few words, whatever its case and punctuation (`Foam face`); the fallback where it is absent. */
  choice<T extends string>(key: string, words: readonly T[], fallback?: T): T | undefined {
    const value = this.value(key);
    if (value === undefined && fallback !== undefined) return fallback;
    const written = typeof value === 'string' ? plainWord(value) : null;
    return words.find((word) => plainWord(word) === written) ?? this.fail(key, `one of: ${words.join(', ')}`);
  }

  flag(key: string, fallback: boolean): boolean | undefined {
    const value = this.value(key);
    if (value === undefined) return fallback;
    const word = typeof value === 'object' ? '' : String(value).trim().toLowerCase();
    if (['true', 'yes', 'y', '1'].includes(word)) return true;
    if (['false', 'no', 'n', '0'].includes(word)) return false;
    return this.fail(key, 'true or false');
  }

  length(key: string, rule: LengthRule = {}): Nm | undefined {
    return this.lengthOf(this.value(key), this.at(key), rule);
  }

  /** A length that may be left out: null where it is absent. */
  optionalLength(key: string, rule: LengthRule = {}): Nm | null | undefined {
    return this.has(key) ? this.length(key, rule) : null;
  }

  /** A length at any pointer below this object (a coordinate). Where the document states no unit, that one error stands for all bare numbers. */
  lengthOf(value: unknown, pointer: string, rule: LengthRule): Nm | undefined {
    if (typeof value !== 'string' && typeof value !== 'number')
      return this.reading.fail(pointer, value, `a length such as 12'-6 1/2", 150.5", 3.81 m or 3810 mm`);
    const read = (unit: WrittenLengthUnit | null): Result<Nm, QuantityFault> => {
      const options = { unit, signed: rule.signed === true };
      return typeof value === 'number' ? readLengthNumber(value, options) : readLength(value, options);
    };
    const unit = this.reading.unitAt(pointer);
    const length = read(rule.unitNeeded ? this.reading.columnUnitAt(pointer) : unit);
    if (!length.ok && unit === null && !rule.unitNeeded && read('in').ok) return undefined;
    if (!length.ok) return this.reading.fail(pointer, value, length.error.fix);
    if (rule.positive && length.value <= 0) return this.reading.fail(pointer, value, 'a length of more than zero');
    if (rule.span && !inSpan(length.value, rule.span)) return this.reading.fail(pointer, value, rule.span.says);
    if (rule.most !== undefined && length.value > rule.most)
      return this.reading.fail(pointer, value, `a length of at most ${rule.most / 1e9} m`);
    return length.value;
  }

  /** A turn in degrees. */
  turn(key: string): number | undefined {
    return this.measured(key, readTurn);
  }

  /** A quantity with its unit, in SI; undefined where it is absent, wrong or not in its span. */
  quantity(key: string, dimension: Dimension, span: Span): number | undefined {
    if (!this.has(key)) return undefined;
    const unit = this.reading.places.at(this.at(key)).unit;
    const value = this.measured(key, (raw) => readQuantity(raw, dimension, { unit }));
    return value === undefined || inSpan(value, span) ? value : this.fail(key, span.says);
  }

  /** A nested object: null where it is absent. */
  object(key: string, keys: readonly string[]): RowReader | null | undefined {
    return this.has(key) ? RowReader.of(this.reading, this.value(key), this.at(key), keys) : null;
  }

  private measured(key: string, read: (raw: string | number) => Result<number, QuantityFault>): number | undefined {
    const value = this.value(key);
    const result = read(typeof value === 'number' || typeof value === 'string' ? value : '');
    return result.ok ? result.value : this.fail(key, result.error.fix);
  }
}

const plainWord = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]/g, '')
    .replace(/^center$/, 'centre');
