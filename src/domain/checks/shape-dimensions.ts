import { NM_PER_FOOT, toMm } from '../quantity/length.js';
import { ALSO_DRAWN } from '../engineering/bs-8666-2005/shape-lengths.js';
import { LEAST_ENDS } from '../engineering/bs-8666-2005/least-ends.js';
import { shownText } from '../evidence/input-error.js';
import { CalculatorInput } from './calculator-input.js';
import { readNumberField } from './number-field.js';

const SPAN = { above: 0, to: 1000 * NM_PER_FOOT, says: 'more than 0 and at most 1000 ft' };

/**
 * Dimensions of a bent bar by letter [mm]; C of code 77 is a number of turns. C of a link may be left out: the least ends are listed as assumed.
 * What the standard draws beside the dimensions of the length may be sent with them.
 *
 * @param written what was sent as `dimensions`
 * @param names   letters that the shape measures
 * @returns undefined where any is wrong or missing, which the input lists with its pointer (`/dimensions/B`)
 */
export function readShapeDimensions(input: CalculatorInput, written: unknown, code: string, names: readonly string[]): Readonly<Record<string, number>> | undefined {
  const example = `the dimensions of code ${code}: {${names.map((name) => `"${name}": ${code === '77' && name === 'C' ? '12' : '"600 mm"'}`).join(', ')}}`;
  if (typeof written !== 'object' || written === null || Array.isArray(written)) return input.refuse('dimensions', example);
  const fields = written as Readonly<Record<string, unknown>>;
  const drawn = ALSO_DRAWN[code] ?? [];
  const inner = new CalculatorInput(fields, [...names, ...drawn]);
  const read: Record<string, number> = {};
  const endsLeftOut = LEAST_ENDS[code] !== undefined && !inner.has('C') && !inner.has('D');
  if (endsLeftOut) input.defaults.push('C and D: the least ends of the standard');
  const asked = names.filter((name) => !(name === 'C' && endsLeftOut));
  for (const name of [...asked, ...drawn.filter((each) => inner.has(each))]) {
    const turns = code === '77' && name === 'C';
    const value = turns ? readNumberField(inner, fields, name, { from: 0.25, to: 10_000 }) : inner.length(name, '600 mm', SPAN);
    if (value !== undefined) read[name] = turns ? value : toMm(value);
  }
  if ((code === '51' || code === '63') && read['D'] !== undefined && read['C'] !== undefined && read['D'] !== read['C']) inner.refuse('D', 'the same as C: the two ends of this link are alike');
  for (const error of inner.errors) input.errors.push({ ...error, pointer: `/dimensions${error.pointer}`, read: shownText(error.read), fix: `dimensions, ${error.fix}` });
  return inner.errors.length > 0 ? undefined : read;
}
