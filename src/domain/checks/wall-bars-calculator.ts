import { failure, success } from '../evidence/result.js';
import { aboveGradeWallBars } from './above-grade-wall-bars.js';
import { basementWallBars } from './basement-wall-bars.js';
import { CalculatorInput } from './calculator-input.js';
import { metricWallBars } from './metric-wall-bars.js';
import { readWallBars, WALL_BARS_FIELDS, type WallBarsQuestion } from './wall-bars-input.js';
import type { Calculator } from './calculator-answer.js';
import type { WallBarsAnswer } from './wall-bars-answer.js';

/**
 * Vertical bars of a wall by the prescriptive tables of a code.
 *
 * Reads `nominal`, `height` and either `backfill` with `soil` (a class or a lateral load), or `wind` with `exposure` and `bearing`; `edition`
 * (`irc-2018`, `irc-2021`, `obc-2024`), `family` and `position` of the bars are assumed where left out; `alternateBar` and `alternateGrade` ask for
 * another bar. Answers the printed `cell`, `bar` and `spacing`, the `status` of the cell (`found` or `from memory`), the `horizontal` bars, and
 * beside a basement cell the `strengthRule` that gives the tables. What no table covers is a hold for a licensed engineer.
 */
export const wallBarsCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, WALL_BARS_FIELDS);
  const question = readWallBars(input, fields);
  if (question === undefined || input.errors.length > 0) return failure(input.errors);
  return success({ ...answerOf(question), defaults: input.defaults });
};

function answerOf(question: WallBarsQuestion): WallBarsAnswer {
  const { edition, soilSide, windSide } = question;
  if (edition === 'obc-2024') return metricWallBars(question);
  if (soilSide !== null) return basementWallBars(question, soilSide);
  return windSide === null ? metricWallBars(question) : aboveGradeWallBars(question, windSide);
}
