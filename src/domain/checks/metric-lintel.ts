import { meant } from '../quantity/rounding.js';
import { failure, success, type Result } from '../evidence/result.js';
import { finding } from '../evidence/finding.js';
import { lintelSpan } from '../engineering/obc-2024/lintel-span.js';
import { lintelTableRow, LINTEL_TABLE_SOURCE as SOURCE, tableStirrups } from './lintel-table-row.js';
import { NM_PER_METRE, toMm, type Nm } from '../quantity/length.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { lengthInBoth, type CalculatorAnswer } from './calculator-answer.js';
import { workedStep } from './worked-step.js';
import type { CalculatorInput } from './calculator-input.js';
import type { InputError } from '../evidence/input-error.js';

export const METRIC_LINTEL_FIELDS = ['supports', 'snow'] as const;

const SUPPORTS = ['roof', 'storey-and-roof'] as const;
const SNOW = { from: 0, to: 50, says: '0 or more and at most 50 kPa' };
const HEAVIEST_SNOW_KPA = 3.33;
/** Openings over this take a lintel. obc-2024 9.20.17, read [mm]. */
const LINTEL_OVER_MM = 900;
const NOT_ASKED = ['loads', 'fc', 'fy', 'cover'] as const;

/** A lintel of flat walls by the table of the Ontario code: the lightest bars whose longest opening is not under the span. */
export function metricLintel(input: CalculatorInput, span: Nm | undefined, core: Nm | undefined, depth: Nm | undefined): Result<CalculatorAnswer, readonly InputError[]> {
  const supports = input.name('supports', (written) => SUPPORTS.find((each) => each === written.trim().toLowerCase()) ?? null, SUPPORTS);
  const snow = input.quantity('snow', 'pressure', '1.5 kPa', SNOW);
  if (span === undefined || core === undefined || depth === undefined || supports === undefined || snow === undefined) return failure(input.errors);
  if (input.errors.length > 0) return failure(input.errors);
  const snowKpa = meant(snow);
  const spanM = span / NM_PER_METRE;
  const { table, longestM, spansM } = lintelTableRow(spanM, (at) => lintelSpan(at, toMm(core), toMm(depth), supports, snowKpa));
  if (table === null) {
    const known = spansM.filter((each) => each !== null);
    const limits: Readonly<Record<string, number | string>> = known.length > 0 ? { limitM: Number(Math.max(...known).toPrecision(6)) } : { limit: `140, 150, 160, 190, 200 or 240 mm of concrete, 200 to 600 mm deep, snow to ${HEAVIEST_SNOW_KPA} kPa` };
    const numbers = { spanM, coreMm: toMm(core), depthMm: toMm(depth), snowKpa, ...limits };
    return success({ result: {}, governs: 'opening-too-wide', trace: [], source: SOURCE, defaults: input.defaults, notes: [], findings: [finding('opening-too-wide', { numbers, source: SOURCE })] });
  }
  const notAsked = NOT_ASKED.filter((name) => input.has(name));
  return success({
    result: { bars: table.bars, stirrups: tableStirrups(toMm(span)), status: table.barsFrom, longestSpan: lengthInBoth(longestM * NM_PER_METRE) },
    governs: 'table',
    trace: [workedStep('longest opening', 'thickness, depth, snow → span', `${n(toMm(core))} mm, ${n(toMm(depth))} mm, ${supports}, ${n(snowKpa)} kPa`, longestM, 'm', SOURCE)],
    source: SOURCE,
    defaults: input.defaults,
    notes: [
      ...(table.barsFrom === 'from memory' ? ['The bars of this table are from memory: check them against the code.'] : []),
      ...(toMm(span) <= LINTEL_OVER_MM ? [`Openings up to ${LINTEL_OVER_MM} mm ask for no lintel.`] : []),
      'd is measured from the top of the lintel to the bottom bar; the table answers no moment and no shear.',
      ...(notAsked.length > 0 ? [`Not asked for by this table, and not entered: ${notAsked.join(', ')}.`] : []),
    ],
    findings: [],
  });
}
