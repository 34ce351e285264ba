import { NM_PER_MM } from '../quantity/length.js';
import type { DrawingPoint } from './shapes.js';

/** A group code with its value as written. */
export type Group = readonly [code: number, value: string];

const DECIMALS = 9;
const ZEROS = /\.?0+$/;

/** An angle or a bulge: a long radius makes a length of its last decimals. */
export const fine = (value: number): string => decimal(value, 15);

/** A number in fixed point: no exponent, no trailing zeros, no negative zero. */
export function decimal(value: number, decimals = DECIMALS): string {
  const text = value.toFixed(decimals).replace(ZEROS, '');
  return text === '-0' || text === '' ? '0' : text;
}

/**
 * A length of the model in millimetres. Whole nanometres are written exactly; a point with an irrational place to a millionth of one.
 *
 * @param value [nm]
 */
export const lengthMm = (value: number): string => decimal(value / NM_PER_MM);

/** A point as its x and y groups; `offset` 0 is the first point of an entity, 1 the second. */
export const place = (point: DrawingPoint, offset: 0 | 1 = 0): Group[] => [
  [10 + offset, lengthMm(point.x)],
  [20 + offset, lengthMm(point.y)],
];

/** As `place`, with a height of nought. */
export const spot = (point: DrawingPoint, offset: 0 | 1 = 0): Group[] => [...place(point, offset), [30 + offset, '0']];

/** Hands out the numbers by which the parts of one file name each other. */
export class Handles {
  private last = 0;

  next(): string {
    this.last += 1;
    return this.last.toString(16).toUpperCase();
  }
}

/** The file's lines: code and value by turns. */
export const written = (groups: readonly Group[]): string => groups.map(([code, value]) => `${code}\n${value}\n`).join('');
