import { meant } from '../quantity/rounding.js';
import { alternateSpacing } from '../engineering/irc-2018/alternate-spacing.js';
import { basementTable } from '../engineering/irc-2018/basement-cell.js';
import { basementWallBars } from './basement-wall-bars.js';
import { beyondTables, readCell, type WallBarsAnswer } from './wall-bars-answer.js';
import { inUnit } from '../quantity/quantity.js';
import { NM_PER_FOOT, toFeet, toInches, toMm, type Nm } from '../quantity/length.js';
import { nominalOf } from './wall-bars-thickness.js';
import { notRead, wallBarsOf, type WallBars, type WallToRead } from './wall-bars-read.js';
import type { BarsSite } from './wall-bars-site.js';
import type { InBothUnits } from './calculator-answer.js';
import type { Soil } from './soil-field.js';

const SOURCE = 'irc-2018 R404.1.2';
const SOIL_NOTE = 'The soil is stated by its weight as a fluid; what class it is, and that it is one of the table, GW to CL, is for the soil report.';
const POSITIONS_NOTE = 'Both places of the bars are answered; the bars at the center govern, where stay-in-place forms usually hold them. Bars 1 1/4 in from the inside face take the other cell.';
/** Cell and rule agree within this [in]. */
const AGREE_IN = 1;
const LEAST_FILL_FOR_OTHER_BARS = 4 * NM_PER_FOOT;

/** Bars of a wall with soil against it by the residential code: for bars at the center, and beside it near the inside face. */
export function barsBelow(wall: WallToRead, { backfill, soil }: BarsSite): WallBars {
  const missing = [...(backfill === null ? ['backfill'] : []), ...(soil === null ? ['soil'] : [])];
  if (backfill === null || soil === null) return notRead({ missing: missing.join(', ') }, SOURCE);
  const nominal = nominalOf(wall.core);
  if (nominal === null) return wallBarsOf(beyondTables('wall-beyond-tables', { core: wall.core.code, thicknessMm: toMm(wall.core.width), limit: 'nominal 6, 8, 10 and 12 in' }, SOURCE));
  const ask = (position: 'center' | 'inside-face'): WallBarsAnswer => asked(wall, nominal, backfill, soil, position);
  const center = ask('center');
  const inside = wall.core.family === 'flat' ? ask('inside-face') : null;
  const onlyInside = inside !== null && basementTable('flat', toInches(nominal), 'center') === null;
  const governing = onlyInside ? inside : center;
  const entered = { nominalIn: toInches(nominal), heightMm: toMm(wall.height), backfillMm: toMm(backfill), soilKnPerM3: soil.kNPerM3, soilPsfPerFt: meant(inUnit('fluid weight', 'psf/ft', soil.kNPerM3)) };
  const read = wallBarsOf(withInsideCell(governing, inside), { ...entered, position: onlyInside ? 'inside-face' : 'center', ...besides(center, inside), ...rule(governing, wall), ...others(governing, wall, backfill) });
  return { ...read, notes: [...read.notes, ...disagreement(governing, wall), ...(inside === null || onlyInside ? [] : [POSITIONS_NOTE]), SOIL_NOTE] };
}

function asked({ core, height }: WallToRead, nominal: Nm, backfill: Nm, soil: Soil, position: 'center' | 'inside-face'): WallBarsAnswer {
  const soilSide = { backfill, soil, position };
  return basementWallBars({ edition: 'irc-2018', family: core.family, nominal, height, soilSide, windSide: null, alternate: null, notAsked: [] }, soilSide);
}

/** A hold says what the other place of the bars would take. */
function withInsideCell(answer: WallBarsAnswer, inside: WallBarsAnswer | null): WallBarsAnswer {
  const cell = inside?.result['cell'];
  if (inside === answer || typeof cell !== 'string' || cell.startsWith('DR')) return answer;
  return { ...answer, findings: answer.findings.map((found) => ({ ...found, numbers: { ...found.numbers, insideFaceCell: cell } })) };
}

function besides(center: WallBarsAnswer, inside: WallBarsAnswer | null): Readonly<Record<string, string>> {
  const told = (name: string, answer: WallBarsAnswer | null): Readonly<Record<string, string>> =>
    typeof answer?.result['cell'] === 'string' ? { [`${name}Cell`]: answer.result['cell'], [`${name}Table`]: String(answer.result['table']), [`${name}Status`]: String(answer.result['status']) } : {};
  return { ...told('center', center), ...told('insideFace', inside) };
}

/** Whether the cell and the rule say the same; the rule does not tell where plain concrete of a grid is enough. */
function agreement(cell: string, words: string, family: string): 'yes' | 'no' | 'not told' {
  const [printed, ruled] = [readCell(cell), readCell(words)];
  if (printed.kind === 'none' && family !== 'flat') return 'not told';
  if (printed.kind !== ruled.kind) return 'no';
  return printed.kind !== 'bars' || Math.abs((printed.spacing ?? 0) - (ruled.spacing ?? 0)) <= AGREE_IN ? 'yes' : 'no';
}

function rule({ result }: WallBarsAnswer, { core }: WallToRead): Readonly<Record<string, string | number>> {
  const { cell, strengthRule: words, strengthSpacing } = result;
  if (typeof cell !== 'string' || typeof words !== 'string') return {};
  const spacing = strengthSpacing as InBothUnits | undefined;
  return { strengthRule: words, strengthAgrees: agreement(cell, words, core.family), ...(spacing === undefined ? {} : { strengthSpacingMm: spacing.si.value, strengthSpacingIn: spacing.us.value }) };
}

function disagreement({ result }: WallBarsAnswer, { core }: WallToRead): readonly string[] {
  const { cell, strengthRule: words } = result;
  if (typeof cell !== 'string' || typeof words !== 'string' || agreement(cell, words, core.family) !== 'no') return [];
  return [`The cell is ${cell} and the strength rule gives ${words}: more than ${AGREE_IN} in apart. The cell holds; have it looked at.`];
}

const ALTERNATES = [['#4', 60_000], ['#5', 60_000], ['#6', 60_000], ['#4', 40_000], ['#5', 40_000], ['#6', 40_000]] as const;

/** Other bars and grades in the cell's place, where the code lets them: flat walls with at least 4 ft of backfill. */
function others({ result, findings }: WallBarsAnswer, { core }: WallToRead, backfill: Nm): Readonly<Record<string, string>> {
  const { bar, spacing } = result;
  if (core.family !== 'flat' || toFeet(backfill) < toFeet(LEAST_FILL_FOR_OTHER_BARS) || findings.length > 0 || typeof bar !== 'string' || spacing === undefined) return {};
  const inPlace = ALTERNATES.flatMap(([other, fy]) => {
    const every = other === bar && fy === 60_000 ? null : alternateSpacing((spacing as InBothUnits).us.value, bar, other, fy);
    return every === null ? [] : [`${other} Grade ${fy / 1000} @ ${every}`];
  });
  return { alternates: inPlace.join(', ') };
}
