/** A point or direction of the plane; the unit is the caller's (nanometres here), y grows upward. */
export interface Vector {
  readonly x: number;
  readonly y: number;
}

export const subtract = (a: Vector, b: Vector): Vector => ({ x: a.x - b.x, y: a.y - b.y });
export const add = (a: Vector, b: Vector): Vector => ({ x: a.x + b.x, y: a.y + b.y });
export const scale = (a: Vector, factor: number): Vector => ({ x: a.x * factor, y: a.y * factor });
export const dot = (a: Vector, b: Vector): number => a.x * b.x + a.y * b.y;
/** Positive where b lies to the left of a. */
export const cross = (a: Vector, b: Vector): number => a.x * b.y - a.y * b.x;
export const magnitude = (a: Vector): number => Math.hypot(a.x, a.y);
export const distance = (a: Vector, b: Vector): number => Math.hypot(a.x - b.x, a.y - b.y);
/** Unit vector along a; the zero vector has no direction and gives zero. */
export function direction(a: Vector): Vector {
  const length = magnitude(a);
  return length === 0 ? { x: 0, y: 0 } : { x: a.x / length, y: a.y / length };
}
/** The vector turned a quarter to the left. */
export const leftNormal = (a: Vector): Vector => ({ x: -a.y, y: a.x });
/** Signed change of direction from a to b in degrees, −180 < turn ≤ 180, positive to the left. */
export const turnDegrees = (a: Vector, b: Vector): number => (Math.atan2(cross(a, b), dot(a, b)) * 180) / Math.PI;
export const radians = (degrees: number): number => (degrees * Math.PI) / 180;
