import { dressedSize } from '../engineering/nds-2018/dressed-size.js';
import { inches, type Nm } from '../quantity/length.js';
import { readLength } from '../quantity/length-text.js';

/** Sides of a rectangular section, and whether they were written in SI. */
export interface TimberSection {
  readonly sides: readonly [Nm, Nm];
  readonly si: boolean;
}

const LARGEST_IN = 48;

/**
 * A section as it is written: nominal (`4x6`), or two dressed sides with their unit (`3.5 in x 5.5 in`, `89 x 140 mm`); null for none.
 */
export function timberSection(written: unknown): TimberSection | null {
  if (typeof written !== 'string' || written.length > 40) return null;
  const parts = written.trim().toLowerCase().split(/\s*[x×]\s*/);
  if (parts.length !== 2) return null;
  const [first = '', second = ''] = parts;
  if (/^\d{1,2}$/.test(first) && /^\d{1,2}$/.test(second)) return nominal(Number(first), Number(second));
  const unit = /(mm|cm|m|in|")$/.exec(second)?.[1] ?? '';
  const sides = [/\d$/.test(first) ? `${first} ${unit}` : first, second].map((side) => readLength(side, { unit: null }));
  const lengths = sides.flatMap((side) => (side.ok ? [side.value] : []));
  const [b, d] = lengths;
  if (b === undefined || d === undefined || Math.min(b, d) <= 0 || Math.max(b, d) > inches(LARGEST_IN)) return null;
  return { sides: [b, d], si: unit.endsWith('m') };
}

function nominal(first: number, second: number): TimberSection | null {
  const least = Math.min(first, second);
  const [b, d] = [dressedSize(first, least), dressedSize(second, least)];
  return b === null || d === null ? null : { sides: [inches(b), inches(d)], si: false };
}
