import type { Dimension, ScheduleDocument } from '../support/schedule-document.js';

const INCHES: Readonly<Record<string, number>> = { in: 1, '"': 1, ft: 12, "'": 12, mm: 1 / 25.4, m: 1000 / 25.4 };

/** A dimension of a test schedule in inches, to the nanometre: a bare number in the document's unit, or feet and inches as a plan shows them. */
export function readInches(value: Dimension, units: ScheduleDocument['units']): number {
  return Math.round(unrounded(value, units) * NM_PER_INCH) / NM_PER_INCH;
}

const NM_PER_INCH = 25_400_000;

function unrounded(value: Dimension, units: ScheduleDocument['units']): number {
  if (typeof value === 'number') return value * INCHES[units]!;
  const plain = /^(-?[\d.]+) ?(mm|m|in|ft|"|')$/.exec(value);
  if (plain) return Number(plain[1]) * INCHES[plain[2]!]!;
  const mixed = /^(\d+)'-(\d+)(?: (\d+)\/(\d+))?"$/.exec(value);
  if (!mixed) throw new Error(`the slow reader does not know ${value}`);
  const fraction = mixed[3] ? Number(mixed[3]) / Number(mixed[4]) : 0;
  return Number(mixed[1]) * 12 + Number(mixed[2]) + fraction;
}
