import { describe, expect, it } from '@jest/globals';
import { bendRadius, endProjection } from '../../src/domain/engineering/bs-8666-2005/bend-radius.js';
import { cuttingLength, SHAPE_CODES } from '../../src/domain/engineering/bs-8666-2005/cutting-length.js';
import { itIsAsPublished, num, publishedRows, type Inputs } from './published-rows.js';

const letters = (i: Inputs) => Object.fromEntries(Object.entries(i).filter(([key]) => /^[A-R]$/.test(key))) as Record<string, number>;
const ASKED: Readonly<Record<string, (inputs: Inputs) => number>> = {
  bendRadius: (i) => bendRadius(num(i, 'd')) ?? Number.NaN,
  endProjection: (i) => endProjection(num(i, 'd')) ?? Number.NaN,
  cuttingLength: (i) => cuttingLength(String(i['code']), num(i, 'd'), num(i, 'r'), letters(i)) ?? Number.NaN,
};

describe('bar shapes', () => {
  itIsAsPublished(publishedRows('bs-8666/shapes'), ASKED);

  /** The printed formulas, each worked by hand for d 10, r 20 and A 1000, B 400, C 300, D 200, E 150, R 200. */
  it.each([
    ['00', 1000], ['01', 1000], ['11', 1380], ['12', 1302], ['13', 1512], ['14', 1260], ['15', 1300], ['21', 1660], ['22', 1840], ['23', 1660],
    ['24', 1700], ['25', 1550], ['26', 1700], ['27', 1680], ['28', 1680], ['29', 1660], ['31', 1840], ['32', 1840], ['33', 3240], ['41', 1970],
    ['44', 1970], ['46', 2250], ['51', 3300], ['63', 3680], ['67', 1000], ['75', 3510.18],
  ] as const)('code %s is %d mm', (code, expected) => {
    const length = cuttingLength(code, 10, 20, { A: 1000, B: 400, C: 300, D: 200, E: 150, R: 200 });
    expect(length).toBeCloseTo(expected, 2);
  });

  it('code 77 counts turns: 12 of a helix 500 mm over, 10 mm thick', () => expect(cuttingLength('77', 10, 20, { A: 500, C: 12 })).toBeCloseTo(18472.56, 2));

  /** The printed rules of links with the least ends: 2A + B + max( 21d, 240 ), 2A + 2B + max( 16d, 160 ), 2A + 3B + max( 14d, 150 ). A 500, B 300. */
  it.each([
    ['47', 8, 1300 + 240], ['47', 12, 1300 + 252], ['51', 8, 1600 + 160], ['51', 12, 1600 + 192], ['63', 8, 1900 + 150], ['63', 12, 1900 + 168],
  ] as const)('code %s of %d mm with the least ends is %d mm', (code, d, expected) => expect(cuttingLength(code, d, 2 * d, { A: 500, B: 300 })).toBe(expected));

  /** From memory: with a pitch B over A / 5 each turn is the hypotenuse of the way round and the rise. π · 488 = 1533.097; 10 · √( 1533.097² + 150² ) = 15404.18. */
  it('a steep helix counts its rise, a flat one does not', () => {
    expect(cuttingLength('77', 12, 24, { A: 500, B: 150, C: 10 })).toBeCloseTo(15404.18, 2);
    expect(cuttingLength('77', 12, 24, { A: 500, B: 100, C: 10 })).toBeCloseTo(15330.97, 2);
  });

  it('knows no code without a formula and no bar without its dimensions', () => {
    expect(SHAPE_CODES).toHaveLength(28);
    for (const code of ['99', '7', '']) expect(cuttingLength(code, 10, 20, { A: 1000, B: 400, C: 300, D: 200, E: 150 })).toBeNull();
    expect(cuttingLength('21', 10, 20, { A: 1000, B: 400 })).toBeNull();
    expect(cuttingLength('47', 10, 20, { A: 1000, B: 400, C: 300 })).toBeNull();
    expect(bendRadius(11)).toBeNull();
  });

  /** Geometry, independent of the standard's rounding: legs 1000 and 300 out to out, bent to r 24, along the centre line. */
  it('a code 11 bar is within a millimetre of its centre line', () => {
    const alongCentre = 1000 + 300 - 2 * (24 + 12) + (Math.PI / 2) * (24 + 6);
    expect(alongCentre).toBeCloseTo(1275.12, 2);
    expect(Math.abs((cuttingLength('11', 12, 24, { A: 1000, B: 300 }) ?? 0) - alongCentre)).toBeLessThan(1);
  });
});
