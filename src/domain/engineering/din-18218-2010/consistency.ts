/** Classes of consistency, stiff to flowing, and self-compacting concrete. */
export const CONSISTENCIES = ['F1', 'F2', 'F3', 'F4', 'F5', 'F6', 'SCC'] as const;
export type Consistency = (typeof CONSISTENCIES)[number];

/** Limits of the method: the rate for F1 to F4 as printed in din-18218-1980-summary, the others from memory. */
export const LIMITS = {
  fastestStiff: 7,
  earliestSetting: 5,
  latestSetting: 20,
  heaviest: 25,
  coldest: 5,
  reference: 15,
  warmest: 30,
} as const;

/** The classes whose rate has a limit. */
export const STIFF: readonly Consistency[] = ['F1', 'F2', 'F3', 'F4'];
