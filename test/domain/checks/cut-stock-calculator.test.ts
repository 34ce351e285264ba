import { describe, expect, it } from '@jest/globals';
import { cutStockCalculator } from '../../../src/domain/checks/cut-stock-calculator.js';
import type { CalculatorAnswer } from '../../../src/domain/checks/calculator-answer.js';
import type { InputError } from '../../../src/domain/evidence/input-error.js';

type Fields = Readonly<Record<string, unknown>>;

function answer(fields: Fields): CalculatorAnswer {
  const answered = cutStockCalculator(fields);
  if (!answered.ok) throw new Error(JSON.stringify(answered.error));
  return answered.value;
}

function errors(fields: Fields): readonly InputError[] {
  const answered = cutStockCalculator(fields);
  return answered.ok ? [] : answered.error;
}

const inches = (value: number) => ({ us: { value, unit: 'in' }, si: { value: Number((value * 25.4).toPrecision(12)), unit: 'mm' } });
const HALVES = { stock: '48 in', pieces: [{ length: '24 in', count: 30 }] };

describe('cut-stock calculator', () => {
  it('thirty halves are fifteen bars and no waste', () => {
    expect(answer(HALVES)).toMatchObject({
      result: { bars: 15, lowerBound: 15, waste: inches(0), usableOffcut: inches(0), patterns: [{ count: 15, lengths: [inches(24), inches(24)], offcut: inches(0) }] },
      governs: 'lower-bound',
      defaults: ['kerf: 0 in', 'minOffcut: none, every offcut is waste'],
      notes: ['No plan can do with fewer bars.'],
      findings: [],
    });
  });

  it('a kerf of an inch leaves one half to a bar; what is left of it is waste, or an offcut where it is long enough', () => {
    const kerfed = { ...HALVES, kerf: '1 in' };
    expect(answer(kerfed).result).toMatchObject({ bars: 30, lowerBound: 30, waste: inches(30 * 24), usableOffcut: inches(0) });
    expect(answer({ ...kerfed, minOffcut: '23 in' }).result).toMatchObject({ bars: 30, waste: inches(30), usableOffcut: inches(30 * 23), patterns: [{ count: 30, offcut: inches(23) }] });
    expect(answer({ ...kerfed, minOffcut: '23 1/64 in' }).result).toMatchObject({ waste: inches(30 * 24), usableOffcut: inches(0) });
  });

  it('a piece that ends at the end of the stock needs no cut: two halves and a kerf are 49 in', () => {
    expect(answer({ ...HALVES, kerf: '1 in', stock: '49 in' }).result).toMatchObject({ bars: 15, lowerBound: 15, waste: inches(15) });
    expect(answer({ ...HALVES, kerf: '1 in', stock: '48 63/64 in' }).result).toMatchObject({ bars: 30, lowerBound: 30 });
  });

  it('buys the bars of a plan made by hand, in millimetres: 6 x 3.5 m and 6 x 2.5 m of 6 m', () => {
    const { result } = answer({ stock: '6 m', pieces: [{ length: '3.5 m', count: 6 }, { length: '2500 mm', count: 6 }] });
    expect(result).toMatchObject({ bars: 6, lowerBound: 6, patterns: [{ count: 6, lengths: [{ si: { value: 3500 } }, { si: { value: 2500 } }] }] });
  });

  it('takes 100,000 pieces', () => {
    const { result } = answer({ stock: '48 in', pieces: [{ length: '16 in', count: 60_000 }, { length: '48 in', count: 40_000 }] });
    expect(result).toMatchObject({ bars: 60_000, lowerBound: 60_000, waste: inches(0) });
  });

  const row = { length: '24 in', count: 1 };
  it.each<{ says: string; fields: Fields; pointer: string; read: string; fix: RegExp }>([
    { says: 'no stock', fields: { pieces: [row] }, pointer: '/stock', read: 'nothing', fix: /length with its unit/ },
    { says: 'a stock without a unit', fields: { stock: '48', pieces: [row] }, pointer: '/stock', read: '48', fix: /unit/ },
    { says: 'no stock at all', fields: { stock: '0 in', pieces: [row] }, pointer: '/stock', read: '0 in', fix: /more than 0/ },
    { says: 'a negative kerf', fields: { ...HALVES, kerf: '-1 in' }, pointer: '/kerf', read: '-1 in', fix: /./ },
    { says: 'a field nobody knows', fields: { ...HALVES, curf: '1 in' }, pointer: '/curf', read: '1 in', fix: /stock, kerf, minOffcut, pieces/ },
    { says: 'no pieces', fields: { stock: '48 in' }, pointer: '/pieces', read: 'nothing', fix: /a list of rows/ },
    { says: 'an empty list', fields: { stock: '48 in', pieces: [] }, pointer: '/pieces', read: 'a list of 0', fix: /a list of rows/ },
    { says: 'a row that is a text', fields: { stock: '48 in', pieces: ['24 in'] }, pointer: '/pieces/0', read: '24 in', fix: /"count": 30/ },
    { says: 'half a piece', fields: { stock: '48 in', pieces: [row, { ...row, count: 1.5 }] }, pointer: '/pieces/1/count', read: '1.5', fix: /row 2, count: a whole number from 1/ },
    { says: 'a negative count', fields: { stock: '48 in', pieces: [{ ...row, count: -3 }] }, pointer: '/pieces/0/count', read: '-3', fix: /a whole number from 1/ },
    { says: 'a count as text', fields: { stock: '48 in', pieces: [{ ...row, count: '3' }] }, pointer: '/pieces/0/count', read: '3', fix: /written as a number/ },
    { says: 'a negative length', fields: { stock: '48 in', pieces: [{ ...row, length: '-24 in' }] }, pointer: '/pieces/0/length', read: '-24 in', fix: /./ },
    { says: 'a piece longer than the stock', fields: { stock: '48 in', pieces: [row, row, { length: '4 ft 1 in', count: 2 }] }, pointer: '/pieces/2/length', read: '4 ft 1 in', fix: /row 3, length: not longer than the stock, which is 4'-0" \(1219.2 mm\)/ },
    { says: 'too many pieces', fields: { stock: '48 in', pieces: [{ ...row, count: 100_000 }, row] }, pointer: '/pieces', read: '100001 pieces', fix: /at most 100000/ },
    { says: 'too many of one row', fields: { stock: '48 in', pieces: [{ ...row, count: 1e9 }] }, pointer: '/pieces/0/count', read: '1000000000', fix: /at most 100000/ },
    { says: 'too many rows', fields: { stock: '48 in', pieces: Array.from({ length: 2_001 }, () => row) }, pointer: '/pieces', read: '2001 rows', fix: /at most 2000 rows/ },
  ])('refuses $says', ({ fields, pointer, read, fix }) => {
    expect(errors(fields)).toEqual([expect.objectContaining({ pointer, read, fix: expect.stringMatching(fix) })]);
  });

  it('tells at most two hundred errors and how many more there are', () => {
    const told = errors({ stock: '48 in', pieces: Array.from({ length: 500 }, () => ({ ...row, count: 0 })) });
    expect(told).toHaveLength(200);
    expect(told.at(-1)!.fix).toMatch(/^301 more errors/);
  });
});
