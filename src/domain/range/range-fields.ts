import { z } from 'zod';
import type { Nm } from '../quantity/length.js';
import { LENGTH_UNITS, type LengthUnit } from '../quantity/length-unit.js';
import { readLength, readLengthNumber } from '../quantity/length-text.js';
import { inUnit, readQuantity } from '../quantity/quantity.js';

/** Where a parameter's number comes from: nothing else is taken, so that no unsourced number looks like a sourced one. */
export const BASIS = /^(common practice|supplier's test|published: \S.{0,199})$/;

const BASIS_WORDS = `a basis: "common practice", "supplier's test" or "published: …" with the source`;
const basis = z.string(BASIS_WORDS).regex(BASIS, BASIS_WORDS);
const number = z.number('a number');

/** A short word or name: no control characters, so that it can be stored and printed anywhere. */
export const word = (max: number) =>
  z
    .string(`a text of 1 to ${max} characters`)
    .min(1, `a text of 1 to ${max} characters`)
    .max(max, `a text of 1 to ${max} characters`)
    .regex(/^[^\p{Cc}\p{Cs}]*$/u, 'a text without control characters');

/** A length of the range file in its unit, or a text with a unit, in nm: more than zero unless `orZero`. */
export const length = (unit: LengthUnit, orZero = false) =>
  z.union([number, z.string()], 'a length, such as 16 or "16 in"').transform((value, context): Nm => {
    const reading = typeof value === 'number' ? readLengthNumber(value, { unit }) : readLength(value, { unit });
    if (reading.ok && (orZero || reading.value > 0)) return reading.value;
    context.issues.push({ code: 'custom', input: value, message: reading.ok ? 'a length of more than zero' : reading.error.fix });
    return z.NEVER;
  });

export const positive = number.positive('a number of more than zero').max(1e9, 'a number below 1e9');
export const count = number.int('a whole number').min(1, 'a whole number of 1 or more').max(1000, 'a whole number up to 1000');

/** `{ value, unit, basis }` with a length, in nm. */
export const lengthParameter = (orZero = false) =>
  z
    .strictObject({
      value: z.union([number, z.string()], 'a length'),
      unit: z.enum(LENGTH_UNITS, 'a unit: in, ft, mm or m'),
      basis,
    })
    .transform(({ value, unit }, context): Nm => {
      const reading = length(unit, orZero).safeParse(value);
      if (reading.success) return reading.data;
      context.issues.push({
        code: 'custom',
        input: value,
        path: ['value'],
        message: reading.error.issues[0]?.message ?? 'a length',
      });
      return z.NEVER;
    });

/** A share between 0 and 1, unit `1`. */
export const shareParameter = () =>
  z
    .strictObject({
      value: number.min(0, 'a share from 0 to 1').max(1, 'a share from 0 to 1'),
      unit: z.literal('1', 'the unit "1"'),
      basis,
    })
    .transform(({ value }) => value);

/** Degrees, more than 0 and less than 180. */
export const degreesParameter = () =>
  z
    .strictObject({
      value: number.positive('degrees of more than 0').lt(180, 'degrees below 180'),
      unit: z.literal('deg', 'the unit "deg"'),
      basis,
    })
    .transform(({ value }) => value);

/** A volume of concrete in yd³ or m³, in yd³. */
export const yardsParameter = (orZero: boolean) =>
  z
    .strictObject({
      value: orZero ? number.min(0, 'zero or more').max(1e6, 'below a million') : positive,
      unit: z.enum(['yd3', 'm3'], 'a unit: yd3 or m3'),
      basis,
    })
    .transform(({ value, unit }) => {
      if (unit === 'yd3') return value;
      const volume = readQuantity(value, 'volume', { unit });
      return volume.ok ? inUnit('volume', 'yd3', volume.value) : value;
    });

/** A whole number of something; the unit says of what, in words. */
export const countParameter = () => z.strictObject({ value: count, unit: word(40), basis }).transform(({ value }) => value);

/** One of a few words. */
export const choiceParameter = <const T extends readonly [string, ...string[]]>(words: T) =>
  z
    .strictObject({ value: z.enum(words, `one of: ${words.join(', ')}`), unit: z.literal('', 'no unit').optional(), basis })
    .transform(({ value }) => value);

export const wordParameter = () =>
  z.strictObject({ value: word(40), unit: z.literal('', 'no unit').optional(), basis }).transform(({ value }) => value);
