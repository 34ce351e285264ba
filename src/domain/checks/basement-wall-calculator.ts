import { meant } from '../quantity/rounding.js';
import { failure, success } from '../evidence/result.js';
import { inUnit } from '../quantity/quantity.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { soilWallFoot, soilWallMoment, soilWallMomentDepth, soilWallTop } from '../engineering/statics/soil-wall-moment.js';
import { toFeet } from '../quantity/length.js';
import { coherentUnits } from './both-units.js';
import { CalculatorInput } from './calculator-input.js';
import { momentPerLength } from './moment-per-length.js';
import { outsideAnswer } from './outside-answer.js';
import { readSoil } from './soil-field.js';
import { STATICS_SPANS as SPANS } from './statics-spans.js';
import { workedStep } from './worked-step.js';
import type { Calculator } from './calculator-answer.js';

const SOURCE = 'statics';
const FORM = 'floodproofing-manual fig. 11.6';

/**
 * Reactions and greatest moment of a wall that soil loads up to a height, held at its top and its foot.
 *
 * Reads `soil` (`45 psf/ft`, `7 kN/m3`, or a class such as `SM` of the residential tables), `backfill` (height of the soil above the foot) and
 * `height` (between the supports). Answers `top`, `bottom`, `moment` per length of wall, none of them factored, and `at`, the depth of the
 * moment below the top support. Soil above the top support has no answer.
 */
export const basementWallCalculator: Calculator = (fields) => {
  const input = new CalculatorInput(fields, ['soil', 'backfill', 'height']);
  const soil = readSoil(input, fields['soil']);
  const backfill = input.length('backfill', '7 ft', SPANS.height);
  const height = input.length('height', '8 ft', SPANS.height);
  if (soil === undefined || backfill === undefined || height === undefined || input.errors.length > 0) return failure(input.errors);
  if (soil === 'not-listed') return success(outsideAnswer('soil classes of the residential code', [{ numbers: { soil: String(fields['soil']) }, source: 'irc-2018 Table R404.1.2(8)' }], SOURCE, input.defaults));
  if (backfill > height) {
    const numbers = { backfillFt: toFeet(backfill), limitFt: toFeet(height), side: 'above' };
    return success(outsideAnswer('wall held at top and foot', [{ numbers, source: SOURCE }], SOURCE, input.defaults));
  }
  const units = coherentUnits(input, { ...(soil.className === null && { soil: 'fluid weight' }), backfill: 'length', height: 'length' });
  const perDepth = units.system === 'si' ? 'kN/m3' : 'psf/ft';
  const w = meant(inUnit('fluid weight', perDepth, soil.kNPerM3));
  const [H, L] = [units.ofLength(backfill), units.ofLength(height)];
  const line = units.unit('force per length');
  const top = workedStep('reaction at the top', 'Rt = w · H³ / ( 6 · L )', `${n(w)} · ${n(H)}³ / ( 6 · ${n(L)} )`, soilWallTop(w, H, L), line, SOURCE);
  const foot = workedStep('reaction at the foot', 'Rb = w · H² / 2 − Rt', `${n(w)} · ${n(H)}² / 2 − ${n(top.value)}`, soilWallFoot(w, H, L), line, SOURCE);
  const at = workedStep('depth of the greatest moment', 'x = L − H + H · √( H / ( 3 · L ) )', `${n(L)} − ${n(H)} + ${n(H)} · √( ${n(H)} / ( 3 · ${n(L)} ) )`, soilWallMomentDepth(H, L), units.length, SOURCE);
  const moment = workedStep(
    'greatest moment', 'M = w · H³ / 6 · ( ( L − H ) / L + 2 · H / ( 3 · L ) · √( H / ( 3 · L ) ) )', `w = ${n(w)}, H = ${n(H)}, L = ${n(L)}`,
    soilWallMoment(w, H, L), units.system === 'si' ? 'kN·m/m' : 'ft·lb/ft', FORM,
  );
  return success({
    result: {
      top: units.show('force per length', top.value),
      bottom: units.show('force per length', foot.value),
      moment: momentPerLength(moment.value, units.system),
      at: units.showLength(at.value),
    },
    governs: backfill === height ? 'full-height' : 'part-height',
    trace: [...(soil.className === null ? [] : [workedStep('lateral load of the soil', 'class → psf per ft', soil.className, w, perDepth, 'irc-2018 Table R404.1.2(8)')]), top, foot, at, moment],
    source: SOURCE,
    defaults: input.defaults,
    notes: [
      'Loads as they are, not factored: ACI 318 asks for 1.6 times the soil.',
      'No surcharge and no water stand behind the wall, and both ends are free to turn; the moment is measured from the top support down.',
    ],
    findings: [],
  });
};
