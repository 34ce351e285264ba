/**
 * Where the wall equations of ACI 347-04 hold, in the units in which they are printed.
 *
 * Past the slump limit and past the highest rate the standard says what to do (full liquid head), so those are notes. Of the
 * concrete's temperature it says nothing: outside the span there is no answer.
 */

/** Eq. A up to this placement height, Eq. B above it [ft]. hurd-2006, citing aci-347-04 §2.2.2. */
export const EQUATION_A_HEIGHT_FT = 14;

/** Eq. A below this rate of rise, Eq. B from it on [ft/h]. hurd-2006, citing aci-347-04 §2.2.2. */
export const EQUATION_A_RISE_FT_PER_H = 7;

/** Eq. B up to and including this rate, full liquid head above it [ft/h]. hurd-2006; what follows above it: from memory. */
export const EQUATION_B_RISE_FT_PER_H = 15;

/** Highest slump of the equations, full liquid head above it [in]. hurd-2006, citing aci-347-04. */
export const SLUMP_LIMIT_IN = 7;

/** Least coefficient of lightweight concrete [1]. salman-lecture-3 Table 3-1. */
export const LEAST_UNIT_WEIGHT_COEFFICIENT = 0.8;

/** Coldest column of the standard's table of pressures by rate and temperature [°F]. From memory. */
export const COLDEST_CONCRETE_F = 40;

/** Warmest fresh concrete that needs no record of its own to be placed [°F]. aci-305-1-14 §3.3. */
export const WARMEST_CONCRETE_F = 95;
