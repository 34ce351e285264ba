import type { Rule } from './rule.js';
import { buckBracing } from './rules/buck-bracing.rule.js';
import { coreChangeCleat } from './rules/core-change-cleat.rule.js';
import { cornerBrace } from './rules/corner-brace.rule.js';
import { endClosure } from './rules/end-closure.rule.js';
import { footingCorner } from './rules/footing-corner.rule.js';
import { footingFix } from './rules/footing-fix.rule.js';
import { gableEdge } from './rules/gable-edge.rule.js';
import { hingedCorner } from './rules/hinged-corner.rule.js';
import { lintelShore } from './rules/lintel-shore.rule.js';
import { mitredLedge } from './rules/mitred-ledge.rule.js';
import { pairedUnit } from './rules/paired-unit.rule.js';
import { radiusBand } from './rules/radius-band.rule.js';
import { rippedEdge } from './rules/ripped-edge.rule.js';
import { shortPiece } from './rules/short-piece.rule.js';
import { sillPour } from './rules/sill-pour.rule.js';
import { stripCourse } from './rules/strip-course.rule.js';
import { taperTopEdge } from './rules/taper-top-edge.rule.js';
import { teeCutOut } from './rules/tee-cut-out.rule.js';
import { topCourseHoldDown } from './rules/top-course-hold-down.rule.js';
import { topProtect } from './rules/top-protect.rule.js';

/** Every rule, in the order of the alphabet: written by `npm run new:rule`, held to the folder by the catalogue test. */
export const RULES: readonly Rule[] = [
  buckBracing,
  coreChangeCleat,
  cornerBrace,
  endClosure,
  footingCorner,
  footingFix,
  gableEdge,
  hingedCorner,
  lintelShore,
  mitredLedge,
  pairedUnit,
  radiusBand,
  rippedEdge,
  shortPiece,
  sillPour,
  stripCourse,
  taperTopEdge,
  teeCutOut,
  topCourseHoldDown,
  topProtect,
];
