/**
 * The least that a wall form is braced for: wind of 15 psf on what is exposed, 100 lb for every foot of wall at its top.
 *
 * hanna-formwork §7.2.2 and nunnally p. 338; 1.5 kN/m of the SI printing from memory.
 */
export const MINIMUM_LOADS = {
  'us-customary': { pressure: 15, topLoad: 100 },
  si: { pressure: 0.72, topLoad: 1.5 },
} as const;
