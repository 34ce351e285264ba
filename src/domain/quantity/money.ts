import Big from 'big.js';

/** Money as a whole number of the currency's smallest unit (cents of a dollar). */
export type Minor = number;

/**
 * Digits after the point of a currency's smallest unit.
 *
 * @source ISO 4217, list one: minor unit (from memory)
 */
export const MINOR_DIGITS = {
  AED: 2, ARS: 2, AUD: 2, BHD: 3, BRL: 2, CAD: 2, CHF: 2, CLP: 0, CNY: 2, COP: 2, CZK: 2, DKK: 2, EUR: 2, GBP: 2, HKD: 2, HUF: 2, ILS: 2,
  INR: 2, IQD: 3, ISK: 0, JOD: 3, JPY: 0, KRW: 0, KWD: 3, LYD: 3, MXN: 2, MYR: 2, NOK: 2, NZD: 2, OMR: 3, PEN: 2, PHP: 2, PLN: 2, PYG: 0,
  RON: 2, SAR: 2, SEK: 2, SGD: 2, THB: 2, TND: 3, TRY: 2, TWD: 2, UAH: 2, UGX: 0, USD: 2, VND: 0, XAF: 0, XOF: 0, ZAR: 2,
} as const satisfies Readonly<Record<string, number>>;

export type Currency = keyof typeof MINOR_DIGITS;

export const isCurrency = (text: string): text is Currency => Object.hasOwn(MINOR_DIGITS, text);

const DECIMAL = /^\d{1,9}(\.\d{1,8})?$/;

/** Whether a text is a price or rate that is kept exactly: digits, at most nine before and eight after the point, no sign, no exponent. */
export const isDecimalText = (text: string): boolean => DECIMAL.test(text);

/** Whether an amount in minor units can still be counted exactly: its size is at most 2^53 - 1. */
export const isCountable = (exact: Big | Minor): boolean => (typeof exact === 'number' ? Math.abs(exact) <= Number.MAX_SAFE_INTEGER : exact.abs().lte(MOST));

const MOST = new Big(Number.MAX_SAFE_INTEGER);

/** Minor units of one major unit, by digits. */
const MINOR_PER_MAJOR: readonly Big[] = ['1', '10', '100', '1000'].map((text) => new Big(text));

const minorPerMajor = (currency: Currency): Big => MINOR_PER_MAJOR[MINOR_DIGITS[currency]]!;

/** An amount in major units as written, in minor units, not rounded. */
export const exactMinor = (major: Big | string, currency: Currency): Big => minorPerMajor(currency).times(major);

/** An amount in major units as decimal text, exactly, with at least the digits of the currency: 480 dollars are `480.00`. */
export function priceText(major: Big, currency: Currency): string {
  const text = major.toFixed();
  const places = text.split('.')[1]?.length ?? 0;
  return places < MINOR_DIGITS[currency] ? major.toFixed(MINOR_DIGITS[currency]) : text;
}

/** The other way: an amount in minor units, rounded or not, in major ones. */
export const majorText = (minor: Big, currency: Currency): string => priceText(minor.div(minorPerMajor(currency)), currency);

/**
 * Half to even: the one place at which money is rounded.
 *
 * @param exact amount in minor units, as a decimal of any length
 * @throws      a defect where the amount is beyond the whole numbers that a double holds exactly
 */
export function roundMinor(exact: Big): Minor {
  const minor = exact.round(0, 2).toNumber();
  if (!Number.isSafeInteger(minor)) throw new RangeError(`${exact.toFixed()} minor units are more than can be counted exactly`);
  return minor === 0 ? 0 : minor;
}

/**
 * What a quantity costs.
 *
 * @equation amount = quantity · unit price, to the nearest minor unit, a half to the even one
 * @param quantity  whole number of selling units
 * @param unitPrice decimal text in major units, `12.40`
 * @example  3 × 0.125 USD = 37.5 cents → 38; 1 × 0.125 USD = 12.5 cents → 12
 */
export function amountOf(quantity: number, unitPrice: string, currency: Currency): Minor {
  return roundMinor(exactMinor(new Big(unitPrice).times(quantity), currency));
}

/**
 * Tax on an amount.
 *
 * @equation tax = amount · rate, to the nearest minor unit, a half to the even one
 * @param rate decimal text, `0.0825` is 8 1/4 %
 */
export const taxOn = (amount: Minor, rate: string): Minor => roundMinor(new Big(rate).times(amount));

/**
 * `USD 1,234.50`: currency code, digits in groups of three, as many after the point as the currency has.
 *
 * @throws a defect where the currency is not listed
 */
export function moneyText(minor: Minor, currency: string): string {
  if (!isCurrency(currency)) throw new RangeError(`${currency} is no currency that can be counted in`);
  const digits = MINOR_DIGITS[currency];
  const [whole = '0', part = ''] = new Big(Math.abs(minor)).div(new Big(10).pow(digits)).toFixed(digits).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return `${currency} ${minor < 0 ? '-' : ''}${grouped}${part && `.${part}`}`;
}
