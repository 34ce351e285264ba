import { celsiusToFahrenheit, fahrenheitToCelsius } from '../quantity/us-customary.js';
import { COLDEST_PLACED_F, THIN_SECTION_IN } from '../engineering/aci-306r/placing-temperature.js';
import { coresOfWall } from '../takeoff/index.js';
import { finding } from '../evidence/finding.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { toInches } from '../quantity/length.js';
import { WARMEST_CONCRETE_F } from '../engineering/aci-347-04/limits.js';
import type { JobCheck } from './job-check.js';

const SOURCE = 'aci-305-1-14 §3.3';
const OLDER_WARMEST_F = 90;
/** A temperature this close to a limit is the limit: what is left of a conversion. */
const SAME_F = 1e-6;
const both = (fahrenheit: number): string => `${n(fahrenheit)} F (${n(Math.round(fahrenheitToCelsius(fahrenheit)))} C)`;

const NOTES = [
  `Over ${both(WARMEST_CONCRETE_F)} placing has to be supported by test or field record (ACI 305.1-14 §3.3); older practice stops at ${both(OLDER_WARMEST_F)}.`,
] as const;
const COLD_NOTE = `Sections under ${THIN_SECTION_IN} in are placed at ${both(COLDEST_PLACED_F)} at least in cold weather (ACI 306R, from memory).`;

/**
 * Temperature of a job's concrete against the limit of hot weather and the least of cold weather, where it is stated; said on the first storey.
 *
 * Over the hot limit: `concrete-hot`, a note. Below the cold one the results and a sentence say so.
 */
export const concreteTemperatureOfJob: JobCheck = ({ schedule: { pour }, takeoff }) => {
  const storey = takeoff.laid.storeys.find(({ walls }) => walls.length > 0);
  if (storey === undefined || pour?.concreteC === undefined) return [];
  const concreteF = celsiusToFahrenheit(pour.concreteC);
  const thin = takeoff.laid.storeys.some(({ walls }) => walls.flatMap(coresOfWall).some(({ width }) => toInches(width) < THIN_SECTION_IN));
  const [hot, cold] = [concreteF > WARMEST_CONCRETE_F + SAME_F, thin && concreteF < COLDEST_PLACED_F - SAME_F];
  const numbers = { concreteF, warmestF: WARMEST_CONCRETE_F };
  return [{
    check: 'concrete-temperature', storey: storey.id, core: null, places: [], trace: [], source: SOURCE, defaults: [],
    results: {
      concreteC: pour.concreteC, concreteF, hotLimitC: fahrenheitToCelsius(WARMEST_CONCRETE_F), hotLimitF: WARMEST_CONCRETE_F, hot: hot ? 'over' : 'within',
      olderHotLimitF: OLDER_WARMEST_F, olderHot: concreteF > OLDER_WARMEST_F + SAME_F ? 'over' : 'within',
      ...(thin && { coldLimitC: fahrenheitToCelsius(COLDEST_PLACED_F), coldLimitF: COLDEST_PLACED_F, cold: cold ? 'below' : 'within' }),
    },
    notes: [...NOTES, ...(thin ? [COLD_NOTE] : []), ...(cold ? ['This concrete is colder than that as stated.'] : [])],
    findings: hot ? [finding('concrete-hot', { storey: storey.id, numbers, source: SOURCE })] : [],
  }];
};
