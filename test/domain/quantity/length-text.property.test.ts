import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { LENGTH_FORMS } from '../../../src/domain/quantity/length-forms.js';
import { MAX_LENGTH, readLength, readLengthNumber } from '../../../src/domain/quantity/length-text.js';
import { printFeet, printFeetInches, printInches, printMetres, printMillimetres } from '../../../src/domain/quantity/print-length.js';
import { plainText } from '../../../src/domain/quantity/text.js';

const anyLength = fc.integer({ min: -MAX_LENGTH, max: MAX_LENGTH });
const shortLength = fc.integer({ min: -20_000_000_000, max: 20_000_000_000 });
const token = fc.constantFrom("'", '"', ' ', '-', '/', '.', ',', 'ft', 'in', 'mm', 'cm', 'm', 'feet', 'inches', '½', '″', '’', 'e', '0', '1', '2', '6', '12', '64');

describe('lengths, for all values', () => {
  it.each([
    ['feet and inches', printFeetInches],
    ['inches', printInches],
    ['feet', printFeet],
    ['millimetres', printMillimetres],
    ['metres', printMetres],
  ])('printed in %s and read again they are the same nanometre', (_unit, print) => {
    fc.assert(
      fc.property(fc.oneof(anyLength, shortLength), (nm) => {
        expect(readLength(print(nm), { unit: null, signed: true })).toEqual({ ok: true, value: nm });
      }),
      { numRuns: 500 },
    );
  });

  it('every fraction to 1/64 is exact in inches and beside feet', () => {
    fc.assert(
      fc.property(fc.nat(10_000), fc.nat(11), fc.integer({ min: 1, max: 6 }), fc.nat(63), (feet, whole, power, over) => {
        const under = 2 ** power;
        fc.pre(over > 0 && over < under);
        const expected = BigInt(feet) * 304_800_000n + BigInt(whole) * 25_400_000n + (BigInt(over) * 25_400_000n) / BigInt(under);
        expect(readLength(`${feet}'-${whole} ${over}/${under}"`, { unit: null })).toEqual({ ok: true, value: Number(expected) });
        expect(readLength(`${feet}'-${whole} ${over}/${under}`, { unit: 'mm' })).toEqual({ ok: true, value: Number(expected) });
        expect(readLength(`${feet * 12 + whole} ${over}/${under}`, { unit: 'in' })).toEqual({ ok: true, value: Number(expected) });
      }),
    );
  });

  it('any text gives a whole number of nanometres or a refusal that says what would do, and never two readings', () => {
    fc.assert(
      fc.property(fc.oneof(fc.array(token, { maxLength: 12 }).map((parts) => parts.join('')), fc.string({ maxLength: 70 }), fc.string({ unit: 'binary', maxLength: 70 })), (text) => {
        const result = readLength(text, { unit: 'in', signed: true });
        if (result.ok) expect(Number.isSafeInteger(result.value)).toBe(true);
        else expect(result.error).toEqual({ read: text, fix: expect.stringMatching(/\S/) });
        expect(LENGTH_FORMS.filter((form) => form.pattern.test(plainText(text))).length).toBeLessThanOrEqual(1);
      }),
      { numRuns: 5_000 },
    );
  });

  it('any double gives a whole number of nanometres or a refusal', () => {
    fc.assert(
      fc.property(fc.double(), fc.constantFrom('in', 'ft', 'mm', 'm'), (value, unit) => {
        const result = readLengthNumber(value, { unit, signed: true });
        if (result.ok) expect(Number.isSafeInteger(result.value)).toBe(true);
        else expect(result.error.fix).not.toBe('');
      }),
      { numRuns: 2_000 },
    );
  });

  it('a number and the text of that number are one length', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000, max: 1_000_000 }), fc.constantFrom('in', 'ft', 'mm', 'm'), (thousandths, unit) => {
        const value = thousandths / 1000;
        expect(readLength(String(value), { unit, signed: true })).toEqual(readLengthNumber(value, { unit, signed: true }));
      }),
    );
  });
});
