import { toFeet, type Nm } from '../quantity/length.js';

/**
 * Force on a flat piece of form that has lost what held it.
 *
 * @equation F = p · w · h
 * @param psf    concrete pressure             [lb/ft²]
 * @param width  clear width of the opening    [nm]
 * @param height height of the course          [nm]
 * @returns      F, outward                    [lb]
 * @valid        w ≥ 0, h ≥ 0
 * @source       statics
 * @example      p = 600, w = 6 in, h = 16 in → 400
 */
export function panelForceLb(psf: number, width: Nm, height: Nm): number {
  return psf * toFeet(width) * toFeet(height);
}

/**
 * Outward thrust on a corner form, per unit height of wall: the pressure on its two legs does not cancel at a turn.
 *
 * @equation T = 2 · p · t · sin(|θ| / 2)
 * @param psf     concrete pressure                     [lb/ft²]
 * @param core    clear width of the core t             [nm]
 * @param turnDeg change of direction θ, either hand    [deg]
 * @returns       T, towards the convex side            [lb/ft]
 * @valid         0 ≤ |θ| ≤ 180
 * @source        statics, as on a pipe bend
 * @example       p = 600, t = 6 in, θ = 60 → 300
 */
export function bendThrustLbPerFt(psf: number, core: Nm, turnDeg: number): number {
  return 2 * psf * toFeet(core) * Math.sin((Math.abs(turnDeg) * Math.PI) / 360);
}
