const FRACTION_GLYPHS: ReadonlyMap<string, string> = new Map([
  ['½', '1/2'],
  ['⅓', '1/3'],
  ['⅔', '2/3'],
  ['¼', '1/4'],
  ['¾', '3/4'],
  ['⅕', '1/5'],
  ['⅖', '2/5'],
  ['⅗', '3/5'],
  ['⅘', '4/5'],
  ['⅙', '1/6'],
  ['⅚', '5/6'],
  ['⅐', '1/7'],
  ['⅛', '1/8'],
  ['⅜', '3/8'],
  ['⅝', '5/8'],
  ['⅞', '7/8'],
  ['⅑', '1/9'],
  ['⅒', '1/10'],
]);

/** Longest text that can be a quantity; anything longer is refused unread. */
export const MAX_QUANTITY_TEXT = 60;

/**
 * The text of a quantity with every way of typing the same sign made one, in lower case.
 *
 * Typographic primes and quotation marks become `'` and `"`, a fraction glyph becomes ` 1/2` (with a space, so that `6½` stays six
 * and a half), every dash becomes `-`, every run of spaces one space, superscripts plain digits. Nothing else is changed or dropped.
 */
export function plainText(raw: string): string {
  return raw
    .replace(/[\u2032\u2018\u2019\u02b9\u00b4\u0060]/g, "'")
    .replace(/[\u2033\u201c\u201d\u02ba]/g, '"')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]/g, (glyph) => ` ${FRACTION_GLYPHS.get(glyph)}`)
    .replace(/\u2044/g, '/')
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/[ \t\n\r\u00a0\u2000-\u200a\u202f]+/g, ' ')
    .trim()
    .toLowerCase();
}
