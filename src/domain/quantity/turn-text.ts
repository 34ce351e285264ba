import { failure, success, type Result } from '../evidence/result.js';
import { readQuantity } from './quantity.js';
import type { QuantityFault } from './quantity-fault.js';

/**
 * The change of direction at a corner [deg]: `90`, `-45`, `67.5°`, `22.5 deg`. Positive to the left, negative to the right.
 *
 * @valid more than -180 and less than 180: at 180 a wall would run back over itself
 */
export function readTurn(raw: string | number): Result<number, QuantityFault> {
  const angle = readQuantity(raw, 'angle');
  if (angle.ok && Math.abs(angle.value) < 180) return success(angle.value === 0 ? 0 : angle.value);
  return failure({
    read: String(raw),
    fix: 'a turn in degrees between -180 and 180, + to the left and - to the right, such as 90, -45 or 67.5',
  });
}
