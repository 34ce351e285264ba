import { inSi } from '../quantity/quantity.js';
import { NM_PER_FOOT } from '../quantity/length.js';
import type { Span } from '../quantity/span.js';

const upTo = (ft: number): Span => ({ above: 0, to: ft * NM_PER_FOOT, says: `more than 0 and at most ${ft} ft` });

/**
 * What the fields of the statics calculators may be: wide on purpose, common practice, no source.
 *
 * A value past an end is a wrong unit or a slip of the pen.
 */
export const STATICS_SPANS = {
  pressure: { above: 0, to: inSi('pressure', 'psf', 50_000), says: 'more than 0 and at most 50000 psf' },
  core: upTo(10),
  courseHeight: upTo(10),
  lift: upTo(100),
  radius: upTo(10_000),
  lean: upTo(10),
  length: upTo(10_000),
  webSpacing: upTo(10),
  height: upTo(100),
} as const satisfies Readonly<Record<string, Span>>;
