/** A wind row of a table: wind [mph] in exposure B, C and D, null where the row has none. */
export type WindRow = readonly [mphB: number, mphC: number | null, mphD: number | null];

/** A cell: bars where the floor bears on top of the wall, and on its side; null: not read. */
export type BearingCells = readonly [top: string | null, side: string | null];

export interface AboveGradeTable {
  readonly number: string;
  readonly status: 'found' | 'from memory';
  readonly winds: readonly WindRow[];
  /** By nominal thickness [in], one line a wind row: 8, 9 and 10 ft of height. */
  readonly cells: Readonly<Record<number, readonly (readonly BearingCells[])[]>>;
}

const at = (bar: string, spacing: number): string => `${bar} @ ${spacing}`;
const LIGHT = at('#4', 48);
const fours = (...spacings: readonly (readonly [number, number])[]): readonly BearingCells[] => spacings.map(([top, side]) => [at('#4', top), at('#4', side)]);
const ALL_LIGHT: readonly BearingCells[] = [[LIGHT, LIGHT], [LIGHT, LIGHT], [LIGHT, LIGHT]];
const NOT_READ: readonly BearingCells[] = [[null, null], [null, null], [null, null]];

/** Vertical bars of flat walls above grade, at the middle of the core. irc-2018 Table R608.6(1), read in a web copy that breaks off at the last wind row. */
export const FLAT_ABOVE_GRADE: AboveGradeTable = {
  number: 'R608.6(1)',
  status: 'found',
  winds: [[115, null, null], [120, null, null], [130, 110, null], [140, 119, 110], [150, 127, 117], [160, 136, 125]],
  cells: {
    4: [
      fours([48, 48], [48, 39], [41, 34]), fours([48, 43], [48, 36], [37, 34]), fours([48, 38], [39, 34], [34, 34]),
      fours([43, 34], [34, 34], [34, 31]), fours([37, 34], [34, 33], [31, 27]), [[at('#4', 34), at('#4', 34)], [null, null], [null, null]],
    ],
    6: [ALL_LIGHT, ALL_LIGHT, ALL_LIGHT, ALL_LIGHT, ALL_LIGHT, [[LIGHT, LIGHT], [null, null], [null, null]]],
    8: [ALL_LIGHT, ALL_LIGHT, ALL_LIGHT, ALL_LIGHT, ALL_LIGHT, NOT_READ],
    10: [ALL_LIGHT, ALL_LIGHT, ALL_LIGHT, ALL_LIGHT, ALL_LIGHT, NOT_READ],
  },
};

const cell = (top: string, side: string): BearingCells => [top.replace('@', ' @ '), side.replace('@', ' @ ')];

/** The same of waffle walls. irc-2018 Table R608.6(2), FROM MEMORY and checked against nothing. */
export const WAFFLE_ABOVE_GRADE: AboveGradeTable = {
  number: 'R608.6(2)',
  status: 'from memory',
  winds: [[115, null, null], [120, null, null], [130, 110, null], [140, 119, 110], [150, 127, 117]],
  cells: {
    6: [
      [cell('#4@48', '#4@48'), cell('#4@48', '#5@43'), cell('#5@47', '#5@37')],
      [cell('#4@48', '#5@48'), cell('#4@48', '#5@40'), cell('#5@43', '#5@37')],
      [cell('#4@48', '#5@42'), cell('#5@45', '#5@37'), cell('#5@37', '#5@37')],
      [cell('#4@48', '#5@38'), cell('#5@39', '#5@37'), cell('#5@37', '#5@35')],
      [cell('#5@43', '#5@37'), cell('#5@37', '#5@37'), cell('#5@36', '#6@44')],
    ],
    8: [ALL_LIGHT, ALL_LIGHT, ALL_LIGHT, ALL_LIGHT, ALL_LIGHT],
  },
};
