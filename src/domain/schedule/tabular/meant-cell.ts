import type { ColumnRule } from './columns.js';
import { plainHeader } from './header.js';
import type { CellValue } from './sheet-row.js';

/** A turn with its hand beside it instead of its sign: `90 L`, `right 45°`. */
const HANDED_TURN = /^(?:(left|right|lh|rh|l|r)\s*)?(\d+(?:\.\d+)?)\s*(?:°|deg(?:rees?)?)?\s*(left|right|lh|rh|l|r)?$/i;
/** The code of a core with its inches beside it: `6"`, `8 in.`, `10 inch`. */
const CORE_IN_INCHES = /^(\d+(?:\.\d+)?)\s*(?:"|''|\u2033|in\.?|inch(?:es)?)$/i;
/** What people write into a cell that holds nothing. */
const NOTHING = /^(?:[-\u2013\u2014]+|n\/a)$/i;

/**
 * What a cell of a column means where tables have words of their own for it: `T` for a tee, `90 R` for −90, `6"` for the core 6; undefined
 * where it holds nothing (a dash, `n/a`). Every other cell is handed on as it is.
 */
export function meantCell({ words, unit }: Pick<ColumnRule, 'words' | 'unit'>, cell: CellValue): CellValue | undefined {
  if (typeof cell !== 'string' && typeof cell !== 'number') return cell;
  const text = String(cell).trim();
  if (NOTHING.test(text)) return undefined;
  if (unit === 'degrees') return signedTurn(text) ?? cell;
  if (unit === 'core') return CORE_IN_INCHES.exec(text)?.[1] ?? cell;
  return words?.get(plainHeader(text)) ?? cell;
}

/** Left is plus, right is minus; a hand on both sides, or with a sign, is not read. */
function signedTurn(text: string): string | undefined {
  const [, before, turn = '', after] = HANDED_TURN.exec(text) ?? [];
  const hand = before ?? after;
  if (hand === undefined || (before !== undefined && after !== undefined)) return undefined;
  return hand.toLowerCase().startsWith('l') ? turn : `-${turn}`;
}
