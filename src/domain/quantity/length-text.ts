import { failure, success, type Result } from '../evidence/result.js';
import type { Nm } from './length.js';
import { LENGTH_FORMS } from './length-forms.js';
import { lengthFault, type LengthFaultKind } from './length-fault.js';
import { NM_PER_UNIT, type WrittenLengthUnit } from './length-unit.js';
import type { QuantityFault } from './quantity-fault.js';
import { decimalOfNumber, nearest, times, type Rational } from './rational.js';
import { MAX_QUANTITY_TEXT, plainText } from './text.js';

/** No length or coordinate is read beyond 1,000 km: sums of ten thousand of them are still exact or refused, never rounded unseen. */
export const MAX_LENGTH: Nm = 1_000_000_000_000_000;

export interface LengthReadingOptions {
  /** Unit of a bare number; null where a bare number has no meaning. */
  readonly unit: WrittenLengthUnit | null;
  /** Negative lengths are read (coordinates); false by default. */
  readonly signed?: boolean;
}

/**
 * A length as people write it, in whole nanometres.
 *
 * Reads `12'-6 1/2"`, `12'-6`, `12ft 6.5in`, `12' 6"`, `150.5"`, `6-1/2"`, `3.81 m`, `3810mm`, typographic primes and fraction glyphs, and bare
 * numbers in the given unit. Arithmetic is exact (whole numbers over whole numbers); a value finer than a nanometre is rounded once
 * to the nearest one. Never NaN or infinite. Commas, exponents, doubled apostrophes, mixed systems and fractions not below one are
 * refused because they have two readings or none.
 *
 * @example readLength(`12'-6 1/2"`, { unit: 'in' }) is 3,822,700,000 nm
 */
export function readLength(raw: string, options: LengthReadingOptions): Result<Nm, QuantityFault> {
  if (raw.length > MAX_QUANTITY_TEXT) return fault(raw, '', 'too-long');
  const text = plainText(raw);
  const refused = (kind: LengthFaultKind, nm?: Rational): Result<Nm, QuantityFault> => fault(raw, text, kind, nm);
  for (const form of LENGTH_FORMS) {
    const match = form.pattern.exec(text);
    if (!match) continue;
    const reading = form.read(match.slice(1), options.unit);
    if ('fault' in reading) return refused(reading.fault, reading.nm);
    return wholeNanometres(text.startsWith('-') ? times(reading.nm, -1n) : reading.nm, options, refused);
  }
  return refused('unread');
}

/** A bare number of a document or a spreadsheet cell, in its unit: the double's shortest decimal, exactly. */
export function readLengthNumber(value: number, options: LengthReadingOptions): Result<Nm, QuantityFault> {
  const refused = (kind: LengthFaultKind): Result<Nm, QuantityFault> => fault(String(value), String(value), kind);
  if (!Number.isFinite(value)) return refused('unread');
  if (options.unit === null) return refused('unit-missing');
  return wholeNanometres(times(decimalOfNumber(value), NM_PER_UNIT[options.unit]), options, refused);
}

function wholeNanometres(
  exact: Rational,
  options: LengthReadingOptions,
  refused: (kind: LengthFaultKind) => Result<Nm, QuantityFault>,
): Result<Nm, QuantityFault> {
  const nm = nearest(exact);
  if (nm < 0n && options.signed !== true) return refused('negative');
  if (nm > BigInt(MAX_LENGTH) || nm < -BigInt(MAX_LENGTH)) return refused('too-far');
  return success(Number(nm));
}

function fault(raw: string, text: string, kind: LengthFaultKind, nm?: Rational): Result<Nm, QuantityFault> {
  return failure({ read: raw, fix: lengthFault(text, kind, nm === undefined ? undefined : Number(nearest(nm))) });
}
