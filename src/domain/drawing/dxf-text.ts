const ASCII_END = 0x7e;
const HEX_DIGITS = 4;
/** Longest string of extended data that a reader must take [bytes]. */
const LONGEST_DATA = 255;
// oxlint-disable-next-line no-control-regex
const CONTROL = /[\u0000-\u001f\u007f-\u009f\u2028\u2029]+/g;
const SPECIAL = /[^ -~]|\\/g;

/**
 * A text as a DXF string in plain ASCII.
 *
 * What the format would read as a code of its own is escaped: `%` twice (`%%d` is a degree sign), `^` (a control character) and the backslash. Other
 * signs become `\U+XXXX`, two of them for a sign beyond the basic plane. Control characters become one space, for a line break would end the group.
 */
export function dxfText(text: string): string {
  return escapeSigns(text.replace(CONTROL, ' '))
    .replace(/%%/g, '%%%%%%')
    .replace(/\^/g, '^ ');
}

/** A string of extended data: escaped like a text but for `%` and `^`, which mean themselves there, and cut to what a reader must take. */
export function dxfData(text: string): string {
  let kept = '';
  for (const unit of text.replace(CONTROL, ' ').match(/[\s\S]/g) ?? []) {
    const longer = kept + escapeSigns(unit);
    if (longer.length > LONGEST_DATA) return kept;
    kept = longer;
  }
  return kept;
}

const escapeSigns = (text: string): string => text.replace(SPECIAL, escapeUnits);

const escapeUnits = (sign: string): string =>
  [...Array(sign.length).keys()].map((i) => unicode(sign.charCodeAt(i))).join('');

const unicode = (unit: number): string =>
  unit > ASCII_END || unit === 0x5c ? `\\U+${unit.toString(16).toUpperCase().padStart(HEX_DIGITS, '0')}` : String.fromCharCode(unit);
