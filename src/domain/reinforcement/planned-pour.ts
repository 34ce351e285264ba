import { ASSUMED_MIX, ASSUMED_WORDS } from '../engineering/aci-347-04/assumed-mix.js';
import { celsiusToFahrenheit, kgPerM3ToPcf, metresPerHourToFeetPerHour, millimetresToInches } from '../quantity/us-customary.js';
import { cementGroup } from '../engineering/aci-347-04/cement-group.js';
import type { FreshConcreteWall } from '../engineering/aci-347-04/fresh-concrete-wall.js';
import type { Pour } from '../schedule/schedule.js';

/** A pour as the wall equations want it, without the height, which is the wall's. */
export type PlannedPour =
  | { readonly kind: 'planned'; readonly pour: Omit<FreshConcreteWall, 'heightFt'>; readonly defaults: readonly string[] }
  | { readonly kind: 'not-stated'; readonly missing: readonly ('rise' | 'concrete')[] }
  | { readonly kind: 'unknown-cement'; readonly cement: string };

/**
 * Reads a schedule's pour for the wall equations; what it leaves out is assumed and listed.
 *
 * Rate of rise and concrete temperature are never assumed: without them there is no pressure from the pour.
 */
export function plannedPour(pour: Pour | null): PlannedPour {
  if (pour?.riseMPerH === undefined || pour.concreteC === undefined) {
    const missing = [pour?.riseMPerH === undefined && ('rise' as const), pour?.concreteC === undefined && ('concrete' as const)];
    return { kind: 'not-stated', missing: missing.filter((name) => name !== false) };
  }
  const cement = pour.cement === undefined ? ASSUMED_MIX.cement : cementGroup(pour.cement);
  if (cement === null) return { kind: 'unknown-cement', cement: pour.cement ?? '' };
  return {
    kind: 'planned',
    pour: {
      riseFtPerH: metresPerHourToFeetPerHour(pour.riseMPerH),
      concreteF: celsiusToFahrenheit(pour.concreteC),
      unitWeightPcf: pour.unitWeightKgPerM3 === undefined ? ASSUMED_MIX.unitWeightPcf : kgPerM3ToPcf(pour.unitWeightKgPerM3),
      cement,
      retarder: pour.retarder ?? ASSUMED_MIX.retarder,
      slumpIn: pour.slumpMm === undefined ? ASSUMED_MIX.slumpIn : millimetresToInches(pour.slumpMm),
    },
    defaults: [
      pour.unitWeightKgPerM3 === undefined && ASSUMED_WORDS.unitWeight,
      pour.cement === undefined && ASSUMED_WORDS.cement,
      pour.retarder === undefined && ASSUMED_WORDS.retarder,
      pour.slumpMm === undefined && ASSUMED_WORDS.slump,
    ].filter((words) => words !== false),
  };
}
