/**
 * Lap of bars of a flat wall with stay-in-place forms.
 *
 * @equation  10M: 450; 15M: 650
 * @param bar metric bar                                        [-]
 * @returns   lap; null where the code gives none               [mm]
 * @valid     10M and 15M of at least 400 MPa
 * @source    obc-2024 9.3.1.1.(4)
 * @example   bar = '15M' → 650
 */
export function metricLap(bar: string): number | null {
  if (bar === '10M') return 450;
  return bar === '15M' ? 650 : null;
}
