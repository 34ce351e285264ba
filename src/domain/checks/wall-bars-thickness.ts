import { GROUND_TABLES } from '../engineering/obc-2024/ground-tables.js';
import { inches, millimetres, NM_PER_INCH, toInches, toMm, type Nm } from '../quantity/length.js';
import type { Core } from '../range/range.js';

/** Thicknesses that flat walls are tabled by [in]. irc-2018 Tables R404.1.2(2) to (8), R608.6(1). */
const NOMINALS_IN = [4, 6, 8, 10, 12];
/** A flat wall may be built this much thinner or thicker than its nominal thickness. irc-2018 Table R608.3, its notes, from memory. */
const [THINNER_IN, THICKER_IN] = [0.5, 0.25];
/** A wall may be this much thicker than the thickness it is read by: the least step between two of the tables. */
const METRIC_STEP_MM = 50;

/** Nominal thickness by which the tables are read for a core; null where it is none of theirs. Grids are by name. */
export function nominalOf({ family, width }: Core): Nm | null {
  if (family !== 'flat') return width % NM_PER_INCH === 0 ? width : null;
  const nominal = NOMINALS_IN.find((each) => toInches(width) >= each - THINNER_IN && toInches(width) <= each + THICKER_IN);
  return nominal === undefined ? null : inches(nominal);
}

/** Thickness of the metric foundation tables that a flat core reaches; null where it is thinner or much thicker than theirs. */
export function tabledThickness({ width }: Core): Nm | null {
  const reached = Object.keys(GROUND_TABLES).map(Number).filter((mm) => mm <= toMm(width));
  const row = Math.max(...reached);
  return reached.length > 0 && toMm(width) - row < METRIC_STEP_MM ? millimetres(row) : null;
}
