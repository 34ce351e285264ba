import type { FindingCode } from '../evidence/finding.js';

/**
 * The numbers that decide the answer to each finding, by their keys in `finding.numbers`: what differs in one of them is another
 * question, what differs in anything else is the same question at another place. `every` takes all of the finding's numbers.
 */
export const QUESTION_NUMBERS = {
  'turn-not-made': ['turnDeg', 'ends', 'core'],
  'turn-acute': ['turnDeg', 'core'],
  'walls-cross': ['core', 'otherCore'],
  'wall-overlap': ['core'],
  'plan-open': ['gapMm', 'loops'],
  'radius-tight': ['radiusMm', 'core'],
  'run-too-short': ['lengthMm', 'core'],
  'opening-too-wide': ['widthMm', 'core'],
  'wall-beyond-tables': ['heightMm', 'core'],
  'backfill-beyond-tables': ['backfillMm', 'core'],
  'soil-not-listed': 'every',
  'site-beyond-method': 'every',
  'pressure-over-rating': ['pressurePsf', 'ratedPsf', 'core'],
  'outside-method': 'every',
  'tee-skewed': ['angleDeg', 'core', 'throughCore'],
  'radius-wall': ['radiusMm', 'core'],
  'mitre-odd': ['turnDeg', 'core'],
  'gable-steep': ['slopeDeg', 'core'],
  'core-change': ['turnDeg', 'flush', 'core', 'otherCore'],
  'opening-near-corner': [],
  'pier-narrow': [],
  'single-lift-height': ['heightMm'],
  'height-not-coursed': ['askedMm'],
  'height-ripped': [],
  seam: [],
  'piece-short': [],
  'site-not-stated': [],
  'pour-not-stated': [],
  'full-liquid-head': [],
  'slump-stiff': [],
  'stone-large': [],
  'concrete-hot': [],
  'evaporation-high': [],
  'discharge-late': [],
  'bars-not-checked': [],
  'lintel-load-not-stated': [],
} as const satisfies Readonly<Record<FindingCode, readonly string[] | 'every'>>;
