import { chartLimitsLeft, evaporationStep, needsProtection, type Weather } from './evaporation-step.js';
import { EVAPORATION_THRESHOLD } from '../engineering/aci-305r/evaporation-limits.js';
import { finding } from '../evidence/finding.js';
import { inBoth } from './both-units.js';
import { numberWords } from '../evidence/number-words.js';
import type { CheckReport } from './check-report.js';
import type { JobCheck } from './job-check.js';
import type { LeftLimit } from './outside-answer.js';
import type { Pour } from '../schedule/schedule.js';

const SOURCE = 'uno-1998';
const { plain, lowBleed } = EVAPORATION_THRESHOLD['us-customary'];
const NOTES = [
  'Worked in US customary units; metric results are converted exactly. An estimate: within 40 % either way.',
  'The wind is that half a metre (20 in) above the surface.',
  `From ${plain} lb/ft2/h (1 kg/m2/h) on the top is protected; from ${lowBleed} (0.5) on for mixes that bleed little, such as those with silica fume.`,
] as const;
const rateInBoth = (name: string, lbPerFt2H: number): Readonly<Record<string, number>> => {
  const { us, si } = inBoth('evaporation rate', lbPerFt2H, 'us-customary');
  return { [`${name}KgPerM2H`]: si.value, [`${name}LbPerFt2H`]: us.value };
};

/**
 * Rate at which water leaves the fresh top of a job's walls, where air, concrete, humidity and wind of the pour are all stated; said on the
 * first storey, since it is one for all.
 *
 * From the threshold on `evaporation-high`, a note. Outside the chart there is no rate: the results say so and the notes name the limit.
 */
export const evaporationOfJob: JobCheck = ({ schedule: { pour }, takeoff }) => {
  const storey = takeoff.laid.storeys.find(({ walls }) => walls.length > 0);
  const weather = weatherOf(pour);
  if (storey === undefined || weather === null) return [];
  const left = chartLimitsLeft(weather);
  return [left.length > 0 ? outside(storey.id, left) : reportOf(storey.id, weather)];
};

function weatherOf(pour: Pour | null): Weather | null {
  if (pour?.airC === undefined || pour.concreteC === undefined || pour.humidity === undefined || pour.windMps === undefined) return null;
  return { air: pour.airC, concrete: pour.concreteC, humidity: pour.humidity, wind: pour.windMps };
}

const written = (storey: string): Omit<CheckReport, 'results' | 'trace' | 'notes' | 'findings'> =>
  ({ check: 'evaporation', storey, core: null, places: [], source: SOURCE, defaults: [] });

function reportOf(storey: string, weather: Weather): CheckReport {
  const step = evaporationStep(weather, 'us-customary');
  const rate = Math.max(0, step.value);
  const high = needsProtection(rate, plain);
  const numbers = { rateLbPerFt2H: rate, thresholdLbPerFt2H: plain };
  const word = (threshold: number): string => (needsProtection(rate, threshold) ? 'needed' : 'not needed');
  return {
    ...written(storey), trace: [step],
    results: { ...rateInBoth('rate', rate), ...rateInBoth('threshold', plain), ...rateInBoth('lowBleedThreshold', lowBleed), precautions: word(plain), lowBleedPrecautions: word(lowBleed) },
    notes: [...NOTES, ...(step.value < 0 ? ['Water condenses on the concrete; nothing evaporates.'] : [])],
    findings: high ? [finding('evaporation-high', { storey, numbers, source: SOURCE })] : [],
  };
}

function outside(storey: string, left: readonly LeftLimit[]): CheckReport {
  const words = left.map(({ numbers }) => Object.entries(numbers).map(([key, value]) => numberWords(key, value, 'in')).join(', '));
  return {
    ...written(storey), trace: [], findings: [], results: { rate: 'outside the chart' },
    notes: [...NOTES, ...words.map((limit) => `The chart does not go so far, so no rate is told: ${limit} (ACI 305R, its axes from memory).`)],
  };
}
