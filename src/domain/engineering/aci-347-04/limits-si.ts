/**
 * Where the wall equations of ACI 347-04 hold in their SI printing.
 *
 * These are the limits of `limits.ts`, each rounded for itself by the standard: 2.1 m/h is 6.89 ft/h and 175 mm is 6.89 in. Of the
 * temperature there is one span, in `limits.ts`.
 */

/** Eq. A up to this placement height, Eq. B above it [m]. SI of hurd-2006's 14 ft, from memory. */
export const EQUATION_A_HEIGHT_M = 4.2;

/** Eq. A below this rate of rise, Eq. B from it on [m/h]. SI of hurd-2006's 7 ft/h, from memory. */
export const EQUATION_A_RISE_M_PER_H = 2.1;

/** Eq. B up to and including this rate, full liquid head above it [m/h]. SI of hurd-2006's 15 ft/h, from memory. */
export const EQUATION_B_RISE_M_PER_H = 4.5;

/** Highest slump of the equations, full liquid head above it [mm]. SI of hurd-2006's 7 in, from memory. */
export const SLUMP_LIMIT_MM = 175;
