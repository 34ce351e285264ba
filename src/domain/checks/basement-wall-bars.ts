import { meant } from '../quantity/rounding.js';
import { basementCell, basementTable, type BasementCell, type BasementTable } from '../engineering/irc-2018/basement-cell.js';
import { inUnit } from '../quantity/quantity.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { strengthRule, type StrengthRule } from '../engineering/irc-2018/strength-rule.js';
import { toFeet, toInches } from '../quantity/length.js';
import { alternateResult, barsResult, beyondTables, readCell, type ReadCell, type WallBarsAnswer } from './wall-bars-answer.js';
import { horizontalBars } from './wall-bars-horizontal.js';
import { lengthFromInches } from './strength-units.js';
import { workedStep } from './worked-step.js';
import type { FindingCode } from '../evidence/finding.js';
import type { SoilSide, WallBarsQuestion } from './wall-bars-input.js';
import type { TraceStep } from '../evidence/trace.js';

const BEYOND: Readonly<Record<NonNullable<BasementCell['beyond']>, FindingCode>> = {
  nominal: 'wall-beyond-tables', height: 'wall-beyond-tables', backfill: 'backfill-beyond-tables', soil: 'soil-not-listed',
};
const LIMIT = 'to 10 ft of wall, backfill no higher than the last row of that wall, 60 psf/ft';
/** Bars of a 6 in wall with stay-in-place forms that the table leaves plain. Note d of Table R404.1.2(8), read. */
const THIN_WALL = { bar: '#4', spacing: 48 } as const;
const LEAST_FILL_FOR_OTHER_BARS_FT = 4;

const NOTES: Readonly<Record<string, string>> = {
  l: 'Note l of the table: with concrete of 4000 psi the wall may be 2 in thinner.',
  m: 'Note m of the table: with concrete of 3500 psi a 12 in wall may stay plain.',
};

/** Bars of a basement wall by the residential code. */
export function basementWallBars(question: WallBarsQuestion, side: SoilSide): WallBarsAnswer {
  const [nominalIn, heightFt, backfillFt] = [toInches(question.nominal), toFeet(question.height), toFeet(side.backfill)];
  const table = basementTable(question.family, nominalIn, side.position);
  const source = `${table === 8 ? question.edition : 'irc-2018'} Table R404.1.2${table === null ? '' : `(${table})`}${table === 8 || table === null ? '' : ', from memory'}`;
  if (table === null) return beyondTables('wall-beyond-tables', { family: question.family, nominalIn, limit: 'flat 6, 8, 10 and 12 in (12 in only by the inside face), waffle 6 and 8 in, screen 6 in' }, source);
  if (side.soil === 'not-listed' || side.soil === null) return beyondTables('soil-not-listed', { limit: 'GW to CL; no MH, CH, OL, OH or Pt' }, source);
  const psfPerFt = meant(inUnit('fluid weight', 'psf/ft', side.soil.kNPerM3));
  if (backfillFt > heightFt) return beyondTables('backfill-beyond-tables', { backfillFt, heightFt, limit: 'backfill no higher than the wall' }, source);
  const found = basementCell(table, nominalIn, heightFt, backfillFt, psfPerFt);
  if (found.cell === null) return beyondTables(BEYOND[found.beyond ?? 'nominal'], { table: `R404.1.2(${table})`, heightFt, backfillFt, soilPsfPerFt: psfPerFt, limit: LIMIT }, source);
  return cellAnswer({ question, table, nominalIn, backfillFt, psfPerFt, heightFt, source }, found, readCell(found.cell));
}

interface Asked {
  readonly question: WallBarsQuestion;
  readonly table: BasementTable;
  readonly nominalIn: number;
  readonly heightFt: number;
  readonly backfillFt: number;
  readonly psfPerFt: number;
  readonly source: string;
}

function cellAnswer(asked: Asked, found: BasementCell, cell: ReadCell): WallBarsAnswer {
  const { question, table, nominalIn, source } = asked;
  const thin = cell.kind === 'none' && nominalIn === 6 && question.family === 'flat';
  const bars = thin ? THIN_WALL : cell;
  const rule = strengthRule(table, nominalIn, Number((cell.bar ?? '#6').slice(1)), found.soilRowPsfPerFt, found.backfillRowFt, found.heightRowFt);
  const other = alternateResult(bars, question.alternate, question.family === 'flat' && asked.backfillFt >= LEAST_FILL_FOR_OTHER_BARS_FT);
  const hold = cell.kind === 'design' ? beyondTables('wall-beyond-tables', { table: `R404.1.2(${table})`, heightFt: asked.heightFt, backfillFt: asked.backfillFt, cell: 'DR, design required' }, source) : null;
  return {
    result: {
      cell: found.cell ?? '', table: `R404.1.2(${table})`, edition: question.edition, status: table === 8 ? 'found' : 'from memory',
      ...(cell.kind === 'design' ? {} : barsResult(bars)), ...other.result, horizontal: horizontalBars(asked.heightFt),
      strengthRule: ruleWords(rule, cell), ...(rule.spacingIn !== null && { strengthSpacing: lengthFromInches(rule.spacingIn) }),
    },
    governs: cell.kind === 'design' ? 'design-required' : thin ? 'stay-in-place-minimum' : 'table',
    trace: [rowStep(asked, found, cell), ...ruleSteps(asked, rule, cell)],
    source,
    notes: notesOf(asked, found, cell, thin, other.notes),
    findings: [...(hold?.findings ?? []), ...other.findings],
  };
}

function ruleWords(rule: StrengthRule, cell: ReadCell): string {
  if (rule.plain) return 'NR';
  return rule.design || rule.spacingIn === null ? 'DR' : `${cell.bar ?? '#6'} @ ${Math.round(rule.spacingIn)}`;
}

function rowStep({ table, nominalIn, source }: Asked, found: BasementCell, cell: ReadCell): TraceStep {
  const substituted = `table (${table}), ${n(nominalIn)} in, ${found.heightRowFt} ft wall, ${found.backfillRowFt} ft backfill, ${found.soilRowPsfPerFt} psf/ft: ${found.cell ?? ''}`;
  return workedStep('cell of the table', 'row and column → cell', substituted, cell.spacing ?? 0, cell.spacing === null ? '-' : 'in', source);
}

function ruleSteps({ table }: Asked, { momentFtLb, steelIn2, spacingIn }: StrengthRule, cell: ReadCell): readonly TraceStep[] {
  const source = 'aci-318-14 §22.2, fitted to the tables';
  const moment = workedStep('strength rule: factored moment', 'Mu = 1.6 · M of the row', 'simple span, triangle of soil', momentFtLb, 'ft·lb/ft', 'statics');
  if (steelIn2 === null || spacingIn === null) return [moment];
  return [
    moment,
    workedStep('strength rule: steel', "As' = min( max( As, 200 · b · d / fy ), 4 / 3 · As )", `table (${table}), f'c 2500, fy 60000`, steelIn2, 'in2/ft', source),
    workedStep('strength rule: spacing', "s = 12 · Ab / As', at most 48", `bar ${cell.bar ?? '#6'}`, spacingIn, 'in', source),
  ];
}

function notesOf(asked: Asked, found: BasementCell, cell: ReadCell, thin: boolean, more: readonly string[]): readonly string[] {
  const { table, nominalIn, heightFt, backfillFt, psfPerFt } = asked;
  const nextRow = heightFt !== found.heightRowFt || backfillFt !== found.backfillRowFt || psfPerFt !== found.soilRowPsfPerFt;
  const disputed = table === 8 && nominalIn === 8 && found.heightRowFt === 9 && found.backfillRowFt === 6 && found.soilRowPsfPerFt === 60;
  return [
    table === 8
      ? 'Bars 1 1/4 in from the inside face; Grade 60, 2500 psi. Read in a public transcription: check it against the adopted edition.'
      : 'This table is from memory and was not seen in print: check the cell against the adopted edition. Bars at the center; Grade 60, 2500 psi.',
    ...(nextRow ? [`Nothing lies between rows: the row of a ${found.heightRowFt} ft wall with ${found.backfillRowFt} ft of backfill and ${found.soilRowPsfPerFt} psf/ft is taken.`] : []),
    ...(thin ? ['A 6 in wall with stay-in-place forms takes #4 at 48 in where the table asks for none.'] : []),
    ...(cell.note !== null && NOTES[cell.note] !== undefined ? [NOTES[cell.note] ?? ''] : []),
    ...(disputed ? ['This cell is disputed: the twin table of the building code prints #5 @ 39, which the strength rule gives too.'] : []),
    ...more,
    'The wall is held at top and foot before it is backfilled, without water behind it; an above-grade concrete wall on it takes the greater of both tables.',
    'The strength rule is a cross-check, never instead of the cell.',
  ];
}
