import { readLength } from '../quantity/length-text.js';
import { readQuantity } from '../quantity/quantity.js';
import { inSpan, type Span } from '../quantity/span.js';
import { writtenSystem, type UnitSystem } from './written-system.js';
import type { Dimension } from '../quantity/unit.js';
import type { InputError } from '../evidence/input-error.js';
import type { QuantityFault } from '../quantity/quantity-fault.js';
import type { Result } from '../evidence/result.js';

const MAX_READ = 80;

/**
 * Reads a calculator's fields one by one and collects what is wrong with each, so that all errors are told at once.
 *
 * A field that is wrong reads as undefined; `errors` is empty when everything could be read. Fields nobody knows are errors too: a
 * misspelt one must not be an assumed one.
 */
export class CalculatorInput {
  readonly errors: InputError[] = [];
  readonly defaults: string[] = [];

  constructor(
    private readonly input: Readonly<Record<string, unknown>>,
    known: readonly string[],
  ) {
    for (const name of Object.keys(input))
      if (!known.includes(name)) this.refuse(name, `a field of this calculator: ${known.join(', ')}`);
  }

  has(name: string): boolean {
    return Object.hasOwn(this.input, name) && this.input[name] !== undefined && this.input[name] !== null;
  }

  /** A length as text with its unit [nm]. */
  length(name: string, example: string, span: Span): number | undefined {
    return this.measured(name, `a length with its unit such as ${example}`, span, (text) => readLength(text, { unit: null }));
  }

  /** A quantity as text with its unit, in SI. */
  quantity(name: string, dimension: Dimension, example: string, span: Span): number | undefined {
    return this.measured(name, `a quantity with its unit such as ${example}`, span, (text) => readQuantity(text, dimension));
  }

  /** The system of units in which a field is written; null where it cannot be read. */
  system(name: string, dimension: Dimension | 'length'): UnitSystem | null {
    return writtenSystem(this.input[name], dimension);
  }

  /** True or false, also written `yes`, and `no` or `none`. */
  flag(name: string): boolean | undefined {
    const value = this.input[name];
    const written = typeof value === 'string' ? value.trim().toLowerCase() : value;
    if (written === true || written === 'true' || written === 'yes') return true;
    if (written === false || written === 'false' || written === 'no' || written === 'none') return false;
    return this.refuse(name, 'true or false');
  }

  /** One of the names that `of` knows. */
  name<T>(name: string, of: (written: string) => T | null, known: readonly string[]): T | undefined {
    const value = this.input[name];
    const found = typeof value === 'string' ? (of(value) ?? ofOne(value, of, known)) : null;
    return found ?? this.refuse(name, `one of ${known.join(', ')}`);
  }

  /** The field where it is given, otherwise what is assumed, listed. */
  orElse<T>(name: string, read: () => T | undefined, assumed: T, words: string): T | undefined {
    if (this.has(name)) return read();
    this.defaults.push(words);
    return assumed;
  }

  private measured(
    name: string,
    fix: string,
    span: Span,
    read: (text: string) => Result<number, QuantityFault>,
  ): number | undefined {
    const value = this.input[name];
    if (typeof value !== 'string') return this.refuse(name, fix);
    const answer = read(value);
    if (!answer.ok) return this.refuse(name, answer.error.fix);
    return inSpan(answer.value, span) ? answer.value : this.refuse(name, span.says);
  }

  /** Lists a field as wrong: what was read stands beside what would do. */
  refuse(name: string, fix: string): undefined {
    const value = this.input[name];
    const read = value === undefined ? 'nothing' : typeof value === 'string' ? value : (JSON.stringify(value) ?? String(value));
    const pointer = `/${name.slice(0, MAX_READ).replace(/~/g, '~0').replace(/\//g, '~1')}`;
    this.errors.push({
      sheet: null,
      row: null,
      column: null,
      pointer,
      read: read.slice(0, MAX_READ),
      fix: `${name.slice(0, MAX_READ)}: ${fix}`,
    });
    return undefined;
  }
}

/** What a name means that is written with other marks (`ACI 347`), or cut short so that one name alone can be meant (`waffle`, `2018`). */
function ofOne<T>(written: string, of: (written: string) => T | null, known: readonly string[]): T | null {
  const plain = (name: string): string => name.toLowerCase().replace(/[\s_-]/g, '');
  const asked = plain(written);
  if (asked.length < LEAST_CUT) return null;
  const meant = known.filter((name) => plain(name) === asked);
  if (meant.length === 0)
    meant.push(...known.filter((name) => plain(name).startsWith(asked) || (/^\d{4}$/.test(asked) && plain(name).endsWith(asked))));
  return meant.length === 1 ? of(meant[0]!) : null;
}

/** Fewer letters of a name say too little. */
const LEAST_CUT = 3;
