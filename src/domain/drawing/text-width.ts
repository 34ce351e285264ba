/** Advance widths of ASCII 32–126 in the shipped family, units of 1/2048 em; a test holds them to the font files. */
const REGULAR = [
  585, 738, 847, 1544, 1172, 1751, 1437, 506, 719, 719, 921, 1544, 585, 665, 585, 621, 1172, 1172, 1172, 1172, 1172, 1172, 1172,
  1172, 1172, 1172, 621, 621, 1544, 1544, 1544, 978, 1843, 1260, 1264, 1287, 1419, 1164, 1060, 1428, 1386, 543, 543, 1208, 1026,
  1590, 1378, 1450, 1111, 1450, 1280, 1170, 1125, 1349, 1260, 1822, 1262, 1125, 1262, 719, 621, 719, 1544, 921, 921, 1129, 1170,
  1013, 1170, 1134, 648, 1170, 1168, 512, 512, 1067, 512, 1795, 1168, 1127, 1170, 1170, 757, 960, 722, 1168, 1090, 1507, 1090,
  1090, 967, 1172, 621, 1172, 1544,
];
const BOLD = [
  641, 840, 960, 1544, 1282, 1846, 1607, 564, 842, 842, 963, 1544, 700, 765, 700, 673, 1282, 1282, 1282, 1282, 1282, 1282, 1282,
  1282, 1282, 1282, 737, 737, 1544, 1544, 1544, 1069, 1843, 1426, 1404, 1352, 1530, 1259, 1259, 1512, 1542, 685, 685, 1428, 1174,
  1834, 1542, 1566, 1350, 1566, 1419, 1327, 1257, 1496, 1426, 2033, 1421, 1334, 1336, 842, 673, 842, 1544, 921, 921, 1243, 1319,
  1092, 1319, 1250, 801, 1319, 1312, 631, 631, 1225, 631, 1920, 1312, 1266, 1319, 1319, 909, 1097, 881, 1312, 1201, 1702, 1188,
  1201, 1072, 1312, 673, 1312, 1544,
];
/** Signs that our sheets use beyond ASCII: [regular, bold]. */
const SIGNS: ReadonlyMap<string, readonly [number, number]> = new Map([
  ['×', [1544, 1544]],
  ['°', [921, 921]],
  ['′', [418, 486]],
  ['″', [688, 823]],
  ['·', [585, 700]],
  ['–', [921, 921]],
  ['²', [738, 807]],
  ['³', [738, 807]],
]);
const EM = 2048;
/** A letter outside the tables counts as an em, wider than any of Latin-1, so that what is measured is never too narrow. */
const OTHER = 2048;

/** Height of the capitals as a share of the em size. */
export const CAP_HEIGHT = 0.729;

/**
 * Width of a text in the shipped family.
 *
 * @param size em size [any length]
 * @returns width [the unit of `size`]; accented letters as their base letter, unknown ones as an em
 */
export function textWidth(text: string, size: number, bold = false): number {
  let units = 0;
  for (const letter of text) units += letterUnits(letter, bold);
  return (units / EM) * size;
}

function letterUnits(letter: string, bold: boolean): number {
  const code = letter.codePointAt(0) ?? 32;
  const base = code < 127 ? code : (letter.normalize('NFD').codePointAt(0) ?? 0);
  return SIGNS.get(letter)?.[bold ? 1 : 0] ?? (bold ? BOLD : REGULAR)[base - 32] ?? OTHER;
}

const ELLIPSIS = '...';

/** The text, or as much of it as fits with an ellipsis. */
export function fitText(text: string, size: number, width: number, bold = false): string {
  const room = ((width - textWidth(ELLIPSIS, size, bold)) / size) * EM;
  let units = 0;
  let kept = '';
  for (const letter of text) {
    units += letterUnits(letter, bold);
    if (units <= room) kept += letter;
    else if ((units / EM) * size > width) return `${kept.trimEnd()}${ELLIPSIS}`;
  }
  return text;
}

/** Lines of at most `width`; a word longer than a line is broken. */
export function wrapText(text: string, size: number, width: number, bold = false): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer, size, bold) <= width) line = longer;
    else {
      if (line !== '') lines.push(line);
      line = breakWord(word, size, width, bold, lines);
    }
  }
  return line === '' ? lines : [...lines, line];
}

function breakWord(word: string, size: number, width: number, bold: boolean, lines: string[]): string {
  let rest = '';
  for (const letter of word) {
    if (rest !== '' && textWidth(rest + letter, size, bold) > width) {
      lines.push(rest);
      rest = '';
    }
    rest += letter;
  }
  return rest;
}
