import { groundCell } from '../engineering/obc-2024/wall-cell.js';
import { NM_PER_METRE, toMm } from '../quantity/length.js';
import { barsResult, beyondTables, readCell, type WallBarsAnswer } from './wall-bars-answer.js';
import { workedStep } from './worked-step.js';
import type { SoilSide, WallBarsQuestion } from './wall-bars-input.js';

const FOUNDATION = 'obc-2024 Tables 9.15.4.5.-A to -C';
const ABOVE_GRADE = 'obc-2024 9.20.17';
/** Least concrete and greatest height of a flat wall above grade, and its bars. obc-2024 9.20.17, read. */
const THINNEST_MM = 140;
const TALLEST_M = 3;
const ABOVE_GRADE_CELL = '10M @ 400';

const FOUNDATION_NOTES = [
  'Stable soil of at least 75 kPa, no surcharge, at most two storeys, Sa(0.2) at most 0.4; the wall is held at top and foot.',
  'Bars in the inside half, at least 30 mm from the inside face; laps 450 mm for 10M and 650 mm for 15M.',
];

/** Bars of a flat wall by the Ontario code: a foundation where soil stands against it, otherwise above grade. */
export function metricWallBars(question: WallBarsQuestion): WallBarsAnswer {
  if (question.family !== 'flat') return beyondTables('wall-beyond-tables', { family: question.family, limit: 'flat walls' }, FOUNDATION);
  return question.soilSide === null ? aboveGrade(question) : foundation(question, question.soilSide);
}

function foundation({ nominal, height, edition }: WallBarsQuestion, { backfill, soil }: SoilSide): WallBarsAnswer {
  const [thicknessMm, heightM, groundM] = [toMm(nominal), height / NM_PER_METRE, backfill / NM_PER_METRE];
  const found = groundCell(thicknessMm, heightM, groundM);
  const numbers = { thicknessMm, heightM, groundM, limit: '150, 190 or 240 mm, to 3.00 m of wall, ground to the last row of the table' };
  if (soil === 'not-listed') return beyondTables('soil-not-listed', { limit: 'stable soil' }, FOUNDATION);
  if (found.cell === null) return beyondTables(found.beyond === 'ground' ? 'backfill-beyond-tables' : 'wall-beyond-tables', numbers, FOUNDATION);
  const cell = readCell(found.cell);
  return {
    result: { cell: found.cell, table: FOUNDATION.slice('obc-2024 '.length), edition, status: 'found', ...barsResult(cell), horizontal: '10M: within 300 mm of the top, every 600 mm' },
    governs: 'table',
    trace: [workedStep('cell of the table', 'row and column → cell', `${thicknessMm} mm, ${found.heightRowM} m wall, ${found.groundRowM} m of ground: ${found.cell}`, cell.spacing ?? 0, cell.spacing === null ? '-' : 'mm', FOUNDATION)],
    source: FOUNDATION,
    notes: [
      ...(heightM !== found.heightRowM || groundM !== found.groundRowM ? [`Nothing lies between rows: the row of ${found.groundRowM} m of ground and a ${found.heightRowM} m wall is taken.`] : []),
      ...(soil === null ? [] : ['These tables do not ask for the soil; it only has to be stable.']),
      ...FOUNDATION_NOTES,
    ],
    findings: [],
  };
}

function aboveGrade({ nominal, height, edition, notAsked }: WallBarsQuestion): WallBarsAnswer {
  const [thicknessMm, heightM] = [toMm(nominal), height / NM_PER_METRE];
  if (thicknessMm < THINNEST_MM) return beyondTables('wall-beyond-tables', { thicknessMm, limitMm: THINNEST_MM, side: 'below' }, ABOVE_GRADE);
  if (heightM > TALLEST_M) return beyondTables('wall-beyond-tables', { heightM, limitM: TALLEST_M, side: 'above' }, ABOVE_GRADE);
  return {
    result: { cell: ABOVE_GRADE_CELL, table: '9.20.17', edition, status: 'found', ...barsResult(readCell(ABOVE_GRADE_CELL)), horizontal: '10M: within 300 mm of the top, every 600 mm' },
    governs: 'rule',
    trace: [workedStep('vertical bars', 'at least 10M every 400 mm', `${thicknessMm} mm, ${heightM} m`, 400, 'mm', ABOVE_GRADE)],
    source: ABOVE_GRADE,
    notes: [
      ...(notAsked.length > 0 ? [`Not asked for by this code, and not entered: ${notAsked.join(', ')}.`] : []),
      'Vertical bars in the middle third of the wall, at least 140 mm of concrete throughout. The horizontal bars are from memory.',
      'At most two storeys, Sa(0.2) at most 0.4.',
    ],
    findings: [],
  };
}
