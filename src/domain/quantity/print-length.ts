import type { Nm } from './length.js';
import { NM_PER_UNIT, type LengthUnit } from './length-unit.js';
import { nearest } from './rational.js';

const NM_PER_64TH = 396_875n;

/**
 * `12'-6 1/2"`, `11'-0 7/64"`: feet, inches and a fraction to 1/64; a zero inch is written, since `11'-7/64"` reads as 11'-7". What
 * is not a whole number of 64ths is shown in decimal inches, as many as give the same nanometre back (`0'-6.49606299"`).
 */
export function printFeetInches(nm: Nm): string {
  const whole = size(nm);
  return `${sign(nm)}${whole / NM_PER_UNIT.ft}'-${inchesText(whole % NM_PER_UNIT.ft, '0 ')}"`;
}

/** `150 1/2"`, or decimals where the length is not a whole number of 64ths. */
export const printInches = (nm: Nm): string => `${sign(nm)}${inchesText(size(nm))}"`;

/** `12.5 ft`: decimal feet to 1e-9, which gives the same nanometre back. */
export const printFeet = (nm: Nm): string => `${sign(nm)}${decimals(size(nm), NM_PER_UNIT.ft, 9)} ft`;

/** `3810 mm`: exact, at most six decimals. */
export const printMillimetres = (nm: Nm): string => `${sign(nm)}${decimals(size(nm), NM_PER_UNIT.mm, 6)} mm`;

/** `3.81 m`: exact, at most nine decimals. */
export const printMetres = (nm: Nm): string => `${sign(nm)}${decimals(size(nm), NM_PER_UNIT.m, 9)} m`;

/** A length as a document in that unit dimensions it: feet and inches for both `in` and `ft`. */
export function printLength(nm: Nm, unit: LengthUnit): string {
  if (unit === 'mm') return printMillimetres(nm);
  return unit === 'm' ? printMetres(nm) : printFeetInches(nm);
}

/** A computed position may carry a fraction of a nanometre; what is printed is the nearest whole one. */
const size = (nm: Nm): bigint => BigInt(Math.round(Math.abs(nm)));
const sign = (nm: Nm): string => (Math.round(nm) < 0 ? '-' : '');

/** @param none what stands before a fraction where there is no whole inch */
function inchesText(size: bigint, none = ''): string {
  if (size % NM_PER_64TH !== 0n) return decimals(size, NM_PER_UNIT.in, 8);
  const whole = size / NM_PER_UNIT.in;
  let over = (size % NM_PER_UNIT.in) / NM_PER_64TH;
  let under = 64n;
  while (over !== 0n && over % 2n === 0n) [over, under] = [over / 2n, under / 2n];
  if (over === 0n) return String(whole);
  return whole === 0n ? `${none}${over}/${under}` : `${whole} ${over}/${under}`;
}

/** `size / unit` to a number of decimals, trailing zeros dropped. */
function decimals(size: bigint, unit: bigint, places: number): string {
  const scale = 10n ** BigInt(places);
  const scaled = nearest({ over: size * scale, under: unit });
  const part = (scaled % scale).toString().padStart(places, '0').replace(/0+$/, '');
  return part === '' ? String(scaled / scale) : `${scaled / scale}.${part}`;
}
