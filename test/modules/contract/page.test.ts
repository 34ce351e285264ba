import { describe, expect, it } from '@jest/globals';
import { cursorOf, idAfter, isId, numberAfter, pageOf } from '../../../src/modules/contract/page.js';

const ID = '01990f2a-5d3c-7b1e-9c7e-0a5c3f2b1d00';
const query = (after?: string) => ({ first: 2, ...(after === undefined ? {} : { after }) });

describe('a page', () => {
  it('of fewer rows than asked for is the last', () => {
    expect(
      pageOf(
        [1, 2],
        2,
        (row) => row,
        (row) => row * 10,
      ),
    ).toEqual({ items: [10, 20], next: null });
  });

  it('of one row more shows it on the next page, which begins after the last one shown', () => {
    const page = pageOf(
      [7, 8, 9],
      2,
      (row) => row,
      (row) => row,
    );
    expect(page.items).toEqual([7, 8]);
    expect(numberAfter(query(page.next!))).toBe(8);
  });

  it('of nothing is the last', () => {
    expect(pageOf([], 2, String, String)).toEqual({ items: [], next: null });
  });
});

describe('a cursor', () => {
  it('carries an id or a number there and back, and nothing is the beginning', () => {
    expect(idAfter(query(cursorOf(ID)))).toBe(ID);
    expect(numberAfter(query(cursorOf(200)))).toBe(200);
    expect([idAfter(query()), numberAfter(query())]).toEqual([null, 0]);
  });

  it.each([
    { what: 'a word', after: 'abc' },
    { what: 'an id as it is', after: ID },
    { what: 'a number where an id is meant', after: cursorOf(7) },
    { what: 'text where an id is meant', after: cursorOf("' or 1=1 --") },
    { what: 'a cursor with something behind it', after: `${cursorOf(ID)}=` },
  ])('$what is refused', ({ after }) => {
    expect(() => idAfter(query(after))).toThrow('invalid');
  });

  it.each([cursorOf(ID), cursorOf('-1'), cursorOf('1e3'), cursorOf('9999999999')])('%s is no number', (after) => {
    expect(() => numberAfter(query(after))).toThrow('invalid');
  });
});

describe('isId', () => {
  it.each([
    [ID, true],
    [ID.toUpperCase(), false],
    ['7', false],
    [`${ID} `, false],
    ['', false],
  ])('%s: %s', (text, id) => {
    expect(isId(text)).toBe(id);
  });
});
