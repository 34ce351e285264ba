import { InputErrorList, shownText, type InputError } from '../evidence/input-error.js';
import { failure, success, type Result } from '../evidence/result.js';
import { CalculatorInput } from './calculator-input.js';
import { printLength } from '../quantity/print-length.js';
import type { Nm } from '../quantity/length.js';
import type { Span } from '../quantity/span.js';

const MOST_ROWS = 2_000;
const MOST_PIECES = 100_000;

/** So many pieces of one length. */
export interface PieceRow {
  readonly length: Nm;
  readonly count: number;
}

/**
 * Rows `{ length, count }` of a cutting order.
 *
 * @param written what was sent as `pieces`
 * @param stock   no piece may be longer; null where it could not be read itself
 * @param span    of one piece's length
 * @returns the rows in the order sent, or an error for each thing wrong, with its pointer (`/pieces/3/length`)
 */
export function readPieces(written: unknown, stock: Nm | null, span: Span): Result<readonly PieceRow[], readonly InputError[]> {
  const errors = new InputErrorList();
  const refuse = (pointer: string, read: unknown, fix: string): void =>
    errors.add({ sheet: null, row: null, column: null, pointer, read: shownText(read), fix: `pieces: ${fix}` });
  if (!Array.isArray(written) || written.length === 0) refuse('/pieces', written ?? 'nothing', 'a list of rows such as {"length": "24 in", "count": 30}');
  else if (written.length > MOST_ROWS) refuse('/pieces', `${written.length} rows`, `at most ${MOST_ROWS} rows; put equal lengths together`);
  if (errors.count > 0) return failure(errors.list());
  const rows: PieceRow[] = [];
  (written as readonly unknown[]).forEach((row, at) => {
    if (typeof row !== 'object' || row === null || Array.isArray(row)) return refuse(`/pieces/${at}`, row, 'a row such as {"length": "24 in", "count": 30}');
    const fields = row as Readonly<Record<string, unknown>>;
    const input = new CalculatorInput(fields, ['length', 'count']);
    const length = input.length('length', '24 in', span);
    const count = fields['count'];
    if (!Number.isInteger(count) || (count as number) < 1) input.refuse('count', 'a whole number from 1, written as a number');
    else if ((count as number) > MOST_PIECES) input.refuse('count', `at most ${MOST_PIECES} pieces in all`);
    if (length !== undefined && stock !== null && length > stock) input.refuse('length', `not longer than the stock, which is ${inWords(stock)}`);
    for (const error of input.errors) errors.add({ ...error, pointer: `/pieces/${at}${error.pointer}`, fix: `pieces, row ${at + 1}, ${error.fix}` });
    if (length !== undefined) rows.push({ length, count: count as number });
    return undefined;
  });
  const pieces = rows.reduce((sum, { count }) => sum + count, 0);
  if (errors.count === 0 && pieces > MOST_PIECES) refuse('/pieces', `${pieces} pieces`, `at most ${MOST_PIECES} pieces in all`);
  return errors.count > 0 ? failure(errors.list()) : success(rows);
}

const inWords = (nm: Nm): string => `${printLength(nm, 'in')} (${printLength(nm, 'mm')})`;
