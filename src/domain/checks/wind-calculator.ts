import { failure, success } from '../evidence/result.js';
import { coherentUnits } from './both-units.js';
import { CalculatorInput } from './calculator-input.js';
import { outsideAnswer } from './outside-answer.js';
import { readWind, WIND_FIELDS, WIND_SPANS } from './wind-input.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { windOnWall } from './wind-on-wall.js';
import { windPlace } from './wind-places.js';
import { windTopLoad } from './top-load.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';

/**
 * Wind on a wall of forms that stands by itself, from the ground up, before its structure holds it.
 *
 * Reads `speed`, `exposure`, `height`; `duration` of the unfinished state, `wallLength`, `edition`, `topography` (Kzt) and, with
 * asce-7-05, `importance`. Answers `velocityPressure`, `pressure` (not under 15 psf), `topLoad` (not under 100 lb/ft), with a length the
 * `force` on the whole wall and, from twice the height on, the `endPressure` beside a free end.
 */
export const windCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['height', ...WIND_FIELDS]);
  const height = input.length('height', '9 ft', WIND_SPANS.height);
  const wind = readWind(input, fields);
  if (height === undefined || wind === undefined || input.errors.length > 0) return failure(input.errors);
  const units = coherentUnits(input, { speed: 'speed', height: 'length', wallLength: 'length' });
  const source = windPlace(wind.edition, 'chapter');
  const blown = windOnWall(wind, height, units);
  if (blown.kind === 'outside-method') return success(outsideAnswer('ASCE 37', blown.limits, source, input.defaults));
  const h = units.ofLength(height);
  const top = windTopLoad(units, blown, h);
  const B = wind.wallLength === null ? null : units.ofLength(wind.wallLength);
  const force =
    B === null
      ? null
      : workedStep('force on the wall', 'F = p · h · B', `${n(blown.pressure)} · ${n(h)} · ${n(B)}`, blown.pressure * h * B, units.unit('force'), source);
  return success({
    result: {
      velocityPressure: units.show('pressure', blown.velocityPressure),
      pressure: units.show('pressure', blown.pressure),
      ...(force && { force: units.show('force', force.value) }),
      ...(blown.endPressure !== null && { endPressure: units.show('pressure', blown.endPressure) }),
      topLoad: units.show('force per length', top.load),
      speed: units.show('speed', blown.speed),
    },
    governs: blown.pressure > blown.ofWind ? 'minimum-pressure' : 'wind',
    trace: [...blown.trace, ...(force ? [force] : []), ...top.trace],
    source,
    defaults: input.defaults,
    notes: blown.notes,
    findings: [],
  });
};
