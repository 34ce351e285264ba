import { inches } from '../quantity/length.js';

/** What is assumed of a form range that is not stated: the figures of the demo range HERON-16, all common practice, no source. */
export const HEIGHT_STACK_DEFAULTS = {
  courseHeight: { value: inches(16), words: 'courseHeight: 16 in (form range HERON-16)' },
  stripHeight: { value: inches(3), words: 'stripHeight: 3 in (form range HERON-16)' },
  tolerance: { value: inches(0.25), words: 'tolerance: 1/4 in (common practice)' },
  minRip: { value: inches(8), words: 'minRip: 8 in (common practice)' },
  prefers: { value: 'rip', words: 'prefers: rip (common practice)' },
} as const;
