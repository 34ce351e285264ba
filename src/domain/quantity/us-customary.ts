/** Exact: 1 lb = 0.45359237 kg, 1 ft = 0.3048 m, standard gravity 9.80665 m/s² (so 1 lbf = 4.4482216152605 N). */
const KG_PER_LB = 0.45359237;
const M_PER_FT = 0.3048;
const STANDARD_GRAVITY = 9.80665;
const KPA_PER_PSF = (KG_PER_LB * STANDARD_GRAVITY) / (M_PER_FT * M_PER_FT) / 1000;
const KG_PER_M3_PER_PCF = KG_PER_LB / M_PER_FT ** 3;
const MM_PER_IN = 25.4;

/**
 * The number that was meant by a converted one: twelve significant digits.
 *
 * 150 pcf stored as kg/m³ and turned back is 150.00000000000003, and a printed limit must still count it as 150.
 */
const meant = (value: number): number => Number(value.toPrecision(12));

export const psfToKpa = (psf: number): number => meant(psf * KPA_PER_PSF);
export const kpaToPsf = (kpa: number): number => meant(kpa / KPA_PER_PSF);
export const pcfToKgPerM3 = (pcf: number): number => meant(pcf * KG_PER_M3_PER_PCF);
export const kgPerM3ToPcf = (kgPerM3: number): number => meant(kgPerM3 / KG_PER_M3_PER_PCF);
export const feetToMetres = (ft: number): number => meant(ft * M_PER_FT);
export const metresToFeet = (m: number): number => meant(m / M_PER_FT);
export const millimetresToInches = (mm: number): number => meant(mm / MM_PER_IN);
export const celsiusToFahrenheit = (c: number): number => meant(c * 1.8 + 32);
export const fahrenheitToCelsius = (f: number): number => meant((f - 32) / 1.8);
