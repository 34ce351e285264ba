import { inches, type Nm } from '../../quantity/length.js';

/** Greatest weight of the wall at 150 pcf, by nominal thickness in inches [psf]. irc-2018 Table R608.3, read in a public summary. */
const WEIGHT_PSF: Readonly<Record<'waffle-grid' | 'screen-grid', readonly (readonly [nominalIn: number, psf: number])[]>> = {
  'waffle-grid': [[6, 56], [8, 76]],
  'screen-grid': [[6, 53]],
};
/** Unit weight of the concrete for which the weights stand [pcf]. */
const UNIT_WEIGHT_PCF = 150;

/**
 * Thickness of a flat wall of as much concrete as a grid core holds, its voids evened out: an upper bound.
 *
 * @equation  t = weight / 150 pcf
 * @param family  kind of grid                                  [-]
 * @param widthNm nominal thickness of the core                 [nm]
 * @returns   t, whole nanometres; null where the table has no row [nm]
 * @valid     waffle of 6 and 8 in, screen of 6 in, nominal
 * @source    irc-2018 Table R608.3, greatest weights, as printed in a public summary
 * @example   family = 'waffle-grid', widthNm = 152400000 → 113792000
 */
export function gridCoreThickness(family: 'waffle-grid' | 'screen-grid', widthNm: Nm): Nm | null {
  const row = WEIGHT_PSF[family].find(([nominalIn]) => inches(nominalIn) === widthNm);
  return row === undefined ? null : inches((row[1] * 12) / UNIT_WEIGHT_PCF);
}
