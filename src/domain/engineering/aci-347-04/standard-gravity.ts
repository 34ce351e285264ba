/**
 * Standard gravity, exact: 3rd General Conference on Weights and Measures, 1901 [m/s²].
 *
 * The standard's p = ρ · g · h states no digits of g. This g turns a unit weight written in kN/m³ into ρ as well, so 23.5 kN/m³ of
 * 1 m press with 23.5 kPa, and one pound of mass weighs one pound of force: w · h and ρ · g · h are the same pressure.
 */
export const STANDARD_GRAVITY = 9.80665;
