/**
 * Rate of evaporation from which on fresh concrete is protected, in each printing: 0.2 lb/ft2/h, or 1 kg/m2/h; half of it for mixes
 * that bleed little. silica-fume-slide, quoting aci-305r and ACI 308-92.
 */
export const EVAPORATION_THRESHOLD = {
  'us-customary': { plain: 0.2, lowBleed: 0.1 },
  si: { plain: 1, lowBleed: 0.5 },
} as const;

/**
 * Where the axes of the chart end, both printings taken together: from memory. Temperatures of air and concrete [°C], wind [m/s].
 */
export const EVAPORATION_CHART = {
  coldestC: 40 / 9,
  warmestC: 40,
  strongestWindMps: 25 * 0.44704,
} as const;
