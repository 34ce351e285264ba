import { NM_PER_FOOT, toMm } from '../quantity/length.js';
import { shownText } from '../evidence/input-error.js';
import { CalculatorInput } from './calculator-input.js';
import { readNumberField } from './number-field.js';

const SPAN = { above: 0, to: 1000 * NM_PER_FOOT, says: 'more than 0 and at most 1000 ft' };

/**
 * Dimensions of a bent bar by letter [mm]; C of code 77 is a number of turns.
 *
 * @param written what was sent as `dimensions`
 * @param names   letters that the shape measures
 * @returns undefined where any is wrong or missing, which the input lists with its pointer (`/dimensions/B`)
 */
export function readShapeDimensions(input: CalculatorInput, written: unknown, code: string, names: readonly string[]): Readonly<Record<string, number>> | undefined {
  const example = `the dimensions of code ${code}: {${names.map((name) => `"${name}": ${code === '77' && name === 'C' ? '12' : '"600 mm"'}`).join(', ')}}`;
  if (typeof written !== 'object' || written === null || Array.isArray(written)) return input.refuse('dimensions', example);
  const fields = written as Readonly<Record<string, unknown>>;
  const inner = new CalculatorInput(fields, names);
  const read: Record<string, number> = {};
  for (const name of names) {
    const turns = code === '77' && name === 'C';
    const value = turns ? readNumberField(inner, fields, name, { from: 0.25, to: 10_000 }) : inner.length(name, '600 mm', SPAN);
    if (value !== undefined) read[name] = turns ? value : toMm(value);
  }
  for (const error of inner.errors) input.errors.push({ ...error, pointer: `/dimensions${error.pointer}`, read: shownText(error.read), fix: `dimensions, ${error.fix}` });
  return inner.errors.length > 0 ? undefined : read;
}
