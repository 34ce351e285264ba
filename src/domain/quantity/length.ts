/**
 * Lengths are integer nanometres held in a number: 1/64 in = 396,875 nm and 1 mm = 1,000,000 nm are both exact,
 * and 2^53 nm is about 9,007 km, so sums of lengths never round.
 */
export type Nm = number;

export const NM_PER_MM = 1_000_000;
export const NM_PER_INCH = 25_400_000;
export const NM_PER_FOOT = 304_800_000;
export const NM_PER_METRE = 1_000_000_000;
/** One sixty-fourth of an inch. */
export const NM_PER_SIXTY_FOURTH = 396_875;

/** Inches to whole nanometres; rounded once to the nearest nanometre. */
export const inches = (value: number): Nm => Math.round(value * NM_PER_INCH);
export const feet = (value: number): Nm => Math.round(value * NM_PER_FOOT);
export const millimetres = (value: number): Nm => Math.round(value * NM_PER_MM);
export const toInches = (value: Nm): number => value / NM_PER_INCH;
export const toFeet = (value: Nm): number => value / NM_PER_FOOT;
export const toMetres = (value: Nm): number => value / NM_PER_METRE;
/** nm/1e6, at most six decimals: what the API calls `…Mm`. */
export const toMm = (value: Nm): number => value / NM_PER_MM;

const SNAP_TOLERANCE: Nm = 2_000;
const NM_PER_TENTH_MM = 100_000;

/**
 * The length that was meant by a length computed from coordinates.
 *
 * Within 2 µm of a multiple of 1/64 in or of 0.1 mm it is that multiple (the nearer of the two); otherwise the nearest nanometre.
 *
 * @param value a length that may carry the rounding of a square root or a sine [nm]
 */
export function meantLength(value: number): Nm {
  const whole = Math.round(value);
  const candidates = [NM_PER_SIXTY_FOURTH, NM_PER_TENTH_MM]
    .map((step) => Math.round(value / step) * step)
    .filter((candidate) => Math.abs(candidate - value) <= SNAP_TOLERANCE)
    .sort((a, b) => Math.abs(a - value) - Math.abs(b - value));
  return candidates[0] ?? whole;
}
