import type { Rule } from './rule.js';
import { endClosure } from './rules/end-closure.rule.js';
import { footingCorner } from './rules/footing-corner.rule.js';
import { footingFix } from './rules/footing-fix.rule.js';
import { hingedCorner } from './rules/hinged-corner.rule.js';
import { pairedUnit } from './rules/paired-unit.rule.js';
import { rippedEdge } from './rules/ripped-edge.rule.js';
import { shortPiece } from './rules/short-piece.rule.js';
import { stripCourse } from './rules/strip-course.rule.js';
import { teeCutOut } from './rules/tee-cut-out.rule.js';
import { topCourseHoldDown } from './rules/top-course-hold-down.rule.js';

/** Every rule, in the order of the alphabet: written by `npm run new:rule`, held to the folder by the catalogue test. */
export const RULES: readonly Rule[] = [
  endClosure,
  footingCorner,
  footingFix,
  hingedCorner,
  pairedUnit,
  rippedEdge,
  shortPiece,
  stripCourse,
  teeCutOut,
  topCourseHoldDown,
];
