import { aboveGradeCell, GREATEST_WIND_MPH } from '../engineering/irc-2018/above-grade-cell.js';
import { aboveGradeWallBars } from './above-grade-wall-bars.js';
import { beyondTables } from './wall-bars-answer.js';
import { nominalOf } from './wall-bars-thickness.js';
import { notRead, wallBarsOf, type WallBars, type WallToRead } from './wall-bars-read.js';
import { toFeet, toInches, toMm } from '../quantity/length.js';
import type { BarsSite } from './wall-bars-site.js';

const SOURCE = 'irc-2018 R608.6';
/** irc-2018 R608.2, as quoted in public pages. */
const TALLEST_FT = 10;
const BEARING = 'bearing: side, the floor hung on the side of the wall, which asks for at least as much';
/** What the section asks of the house besides; not looked at here. irc-2018 R608.2, in part from memory. */
const HOUSE_NOTE = 'The section is for houses of at most 60 ft in plan, floors to 32 ft and roofs to 40 ft clear; that and the lengths of solid wall (R608.7) are not looked at here.';

/**
 * Bars of a wall above grade by the residential code, the floor hung on its side.
 *
 * Where the code's table goes so far and its page is not at hand the wall is not read, and that is no hold; where the table stops, it is.
 */
export function barsAbove(wall: WallToRead, { windMps, windMph, exposure }: BarsSite): WallBars {
  const missing = [...(windMph === null ? ['wind'] : []), ...(exposure === null ? ['exposure'] : [])];
  if (windMps === null || windMph === null || exposure === null) return notRead({ missing: missing.join(', ') }, SOURCE);
  const { core, height } = wall;
  const [nominal, heightFt, greatest] = [nominalOf(core), toFeet(height), GREATEST_WIND_MPH[exposure] ?? 0];
  const beyond = (numbers: Readonly<Record<string, number | string>>): WallBars => wallBarsOf(beyondTables('wall-beyond-tables', numbers, SOURCE));
  if (nominal === null) return beyond({ core: core.code, thicknessMm: toMm(core.width), limit: 'nominal 4, 6, 8 and 10 in' });
  if (heightFt > TALLEST_FT) return beyond({ limitFt: TALLEST_FT });
  if (windMph > greatest) return wallBarsOf(beyondTables('site-beyond-method', { windMph, exposure, limitMph: greatest }, SOURCE));
  const nominalIn = toInches(nominal);
  if (core.family === 'screen-grid') return nominalIn === 6 ? notRead({ notAtHand: 'Table R608.6(3), screen grids' }, SOURCE) : beyond({ core: core.code, nominalIn, limit: 'screen grids of 6 in' });
  const side = aboveGradeCell(core.family, nominalIn, windMph, exposure, heightFt, 'side');
  if (side.beyond === 'not-read' || side.beyond === 'wind') return notRead({ notAtHand: `Table ${side.table}: a ${nominalIn} in wall of ${side.heightRowFt} ft at ${Math.ceil(windMph)} mph in exposure ${exposure}` }, SOURCE);
  const answer = aboveGradeWallBars({ edition: 'irc-2018', family: core.family, nominal, height, soilSide: null, windSide: null, alternate: null, notAsked: [] }, { windMph, exposure, bearing: 'side' });
  const top = aboveGradeCell(core.family, nominalIn, windMph, exposure, heightFt, 'top').cell;
  const entered = { nominalIn, heightMm: toMm(height), windMps, windMph, exposure, position: 'center', ...(top === null || top === side.cell ? {} : { topBearingCell: top }) };
  const read = wallBarsOf(answer, entered, [BEARING]);
  return { ...read, notes: [...read.notes, HOUSE_NOTE] };
}
