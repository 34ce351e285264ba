/** Lateral load of each soil class by the columns of the wall tables [psf/ft]; null: the tables prohibit it. irc-2018 Table R404.1.2(8), read. */
const LATERAL: Readonly<Record<string, 30 | 45 | 60 | null>> = {
  GW: 30, GP: 30, SW: 30, SP: 30,
  GM: 45, GC: 45, SM: 45, 'SM-SC': 45, ML: 45,
  SC: 60, 'ML-CL': 60, CL: 60,
  MH: null, CH: null, OL: null, OH: null, PT: null,
};

/** Classes that have a name, those the tables prohibit among them. */
export const SOIL_CLASSES: readonly string[] = Object.keys(LATERAL);

/**
 * Lateral load for which the wall tables design a soil.
 *
 * @equation  class → column of the table
 * @param name class of the unified classification, in capitals [-]
 * @returns   w; null where the tables prohibit the soil or do not know it [psf/ft]
 * @valid     classes of the table; other soils go to an engineer
 * @source    irc-2018 Table R404.1.2(8), heads of its columns and note o, as printed in irc-web-copies
 * @example   name = 'SM' → 45
 */
export function lateralOfSoil(name: string): 30 | 45 | 60 | null {
  return LATERAL[name] ?? null;
}
