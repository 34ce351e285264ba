import { describe, expect, it } from '@jest/globals';
import Big from 'big.js';
import { amountOf, exactMinor, isCountable, isCurrency, isDecimalText, majorText, MINOR_DIGITS, moneyText, priceText, roundMinor, taxOn } from '../../../src/domain/quantity/money.js';

describe('half to even, the one place at which money is rounded', () => {
  it.each([
    ['0.5', 0], ['1.5', 2], ['2.5', 2], ['3.5', 4], ['2.4999999999', 2], ['2.5000000001', 3], ['-0.5', 0], ['-1.5', -2], ['-2.5', -2], ['7', 7],
  ])('%s minor units are %p', (exact, minor) => expect(roundMinor(new Big(exact))).toBe(minor));

  it('refuses what a double cannot count', () => expect(() => roundMinor(new Big('9007199254740993'))).toThrow(RangeError));
});

describe('amount of a line', () => {
  it.each([
    { quantity: 30, unitPrice: '23.40', currency: 'USD', minor: 70_200, from: '30 x 23.40' },
    { quantity: 3, unitPrice: '0.125', currency: 'USD', minor: 38, from: '37.5 cents, to the even 38' },
    { quantity: 1, unitPrice: '0.125', currency: 'USD', minor: 12, from: '12.5 cents, to the even 12' },
    { quantity: 100_000, unitPrice: '0.07', currency: 'USD', minor: 700_000, from: '0.07 is not a double' },
    { quantity: 3, unitPrice: '1.005', currency: 'USD', minor: 302, from: '301.5 cents, to the even 302' },
    { quantity: 1, unitPrice: '1.005', currency: 'USD', minor: 100, from: '100.5 cents, to the even 100; as a double it is 100.49999' },
    { quantity: 7, unitPrice: '120.5', currency: 'JPY', minor: 844, from: '843.5 yen, to the even 844' },
    { quantity: 1, unitPrice: '1.2345', currency: 'KWD', minor: 1234, from: '1234.5 fils, to the even 1234' },
    { quantity: 0, unitPrice: '23.40', currency: 'USD', minor: 0, from: 'nothing' },
  ] as const)('$quantity x $unitPrice $currency = $minor ($from)', ({ quantity, unitPrice, currency, minor }) => {
    expect(amountOf(quantity, unitPrice, currency)).toBe(minor);
  });
});

describe('tax', () => {
  it.each([
    { amount: 10_000, rate: '0.0825', tax: 825 },
    { amount: 200, rate: '0.0825', tax: 16 },
    { amount: 600, rate: '0.0825', tax: 50 },
    { amount: 10, rate: '0.05', tax: 0 },
    { amount: 30, rate: '0.05', tax: 2 },
    { amount: 99_999, rate: '0', tax: 0 },
  ])('$amount at $rate is $tax', ({ amount, rate, tax }) => expect(taxOn(amount, rate)).toBe(tax));
});

describe('decimal text', () => {
  it.each(['0', '12.40', '999999999.99999999', '0.0825'])('%s is kept', (text) => expect(isDecimalText(text)).toBe(true));
  it.each(['', '.5', '5.', '-1', '+1', '1e3', '1,000.00', '1 000', 'NaN', 'Infinity', '0x10', '1234567890', '1.123456789', ' 1', '1\n', '١٢'])('%j is not', (text) => {
    expect(isDecimalText(text)).toBe(false);
  });
});

describe('currencies', () => {
  it.each([
    { currency: 'USD', minor: 123_450, text: 'USD 1,234.50' },
    { currency: 'USD', minor: 5, text: 'USD 0.05' },
    { currency: 'USD', minor: -123_456_789, text: 'USD -1,234,567.89' },
    { currency: 'JPY', minor: 1_234_567, text: 'JPY 1,234,567' },
    { currency: 'KWD', minor: 1_234_567, text: 'KWD 1,234.567' },
    { currency: 'EUR', minor: 100_000_000, text: 'EUR 1,000,000.00' },
  ] as const)('$text', ({ currency, minor, text }) => expect(moneyText(minor, currency)).toBe(text));

  it('does not word money of a currency it does not know', () => expect(() => moneyText(1, 'XXX')).toThrow(RangeError));

  it('knows codes in capitals only, and nothing from the prototype', () => {
    expect(isCurrency('USD')).toBe(true);
    for (const text of ['usd', 'XXX', 'toString', '']) expect(isCurrency(text)).toBe(false);
  });

  it('agrees with the minor units this runtime knows (CLDR data, an implementation of ISO 4217)', () => {
    for (const [currency, digits] of Object.entries(MINOR_DIGITS)) {
      const known = new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits;
      if (!CLDR_ROUNDS_CASH.includes(currency)) expect([currency, known]).toEqual([currency, digits]);
    }
  });
});

/** CLDR shows these without the minor unit that ISO 4217 still lists, as no coin of it is in use. */
const CLDR_ROUNDS_CASH: readonly string[] = ['COP', 'HUF', 'IQD', 'TWD'];

describe('major and minor units', () => {
  it.each([
    { major: '480', currency: 'USD', minor: '48000', text: '480.00' },
    { major: '0.315', currency: 'USD', minor: '31.5', text: '0.315' },
    { major: '480', currency: 'JPY', minor: '480', text: '480' },
    { major: '1.5', currency: 'KWD', minor: '1500', text: '1.500' },
  ] as const)('$major $currency', ({ major, currency, minor, text }) => {
    expect([exactMinor(major, currency).toFixed(), priceText(new Big(major), currency), majorText(new Big(minor), currency)]).toEqual([minor, text, text]);
  });

  it('2^53 - 1 minor units can be counted, 2^53 cannot', () => {
    expect([isCountable(new Big('9007199254740991')), isCountable(new Big('9007199254740992')), isCountable(2 ** 53 - 1), isCountable(2 ** 53)]).toEqual([true, false, true, false]);
  });
});
