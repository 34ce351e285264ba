import { designPressure, type DesignPressure } from '../reinforcement/design-pressure.js';
import { feetPerHourToMetresPerHour, feetToMetres, psfToKpa } from '../quantity/us-customary.js';
import { finding, type Finding } from '../evidence/finding.js';
import { hydrostaticDepth } from '../engineering/aci-347-04/hydrostatic-depth.js';
import { jobRiseLimit, type JobRiseLimit } from './job-rise-limit.js';
import { plannedPour } from '../reinforcement/planned-pour.js';
import { pourHeight } from '../reinforcement/pour-height.js';
import { toFeet, toMm } from '../quantity/length.js';
import type { CheckReport } from './check-report.js';
import type { Core, FormRange } from '../range/range.js';
import type { FreshConcreteWall } from '../engineering/aci-347-04/fresh-concrete-wall.js';
import { coresOfWall } from '../takeoff/index.js';
import type { LaidStorey } from '../takeoff/laid.js';
import type { Pour } from '../schedule/schedule.js';

const SOURCE = 'aci-347-04 §2.2.2';
/** A pressure this close to the rating is the rating: what is left of a conversion. */
const SAME = 1 + 1e-9;

/**
 * Pressure of the planned pour against the forms' rating, for every storey and core, with the fastest rate that would do.
 *
 * Over the rating: `pressure-over-rating`, a hold. Without a pour, or outside the method, the report carries the rated pressure that
 * the rules are sized for and the finding that says so.
 *
 * @param storeys laid storeys
 * @param pour    the pour as planned, null where the schedule states none
 * @param range   the form range: ratings by core, lift height
 */
export function checkFormPressure(storeys: readonly LaidStorey[], pour: Pour | null, range: FormRange): readonly CheckReport[] {
  return storeys.flatMap((storey) => coresOf(storey).map((core) => report(storey, core, pour, range)));
}

function coresOf(storey: LaidStorey): readonly Core[] {
  return [...new Map(storey.walls.flatMap(coresOfWall).map((core) => [core.code, core])).values()];
}

function report(storey: LaidStorey, core: Core, pour: Pour | null, range: FormRange): CheckReport {
  const height = pourHeight(storey, core.code);
  const design = designPressure(pour, core, height, range.parameters);
  const planned = plannedPour(pour);
  const standing = {
    heightMm: toMm(height),
    pressurePsf: design.psf,
    pressureKpa: psfToKpa(design.psf),
    ratedPsf: core.ratedPressurePsf,
    ratedKpa: psfToKpa(core.ratedPressurePsf),
  };
  const written = {
    check: 'form-pressure',
    storey: storey.id,
    core: core.code,
    source: SOURCE,
    defaults: design.defaults,
    notes: design.notes,
    places: [],
  };
  const place = (found: Finding): Finding => ({ ...found, storey: found.code === 'pour-not-stated' ? null : storey.id });
  if (design.basis === 'rated' || planned.kind !== 'planned') {
    const results = { basis: design.basis, governs: design.governs, ...standing };
    return { ...written, results, trace: design.trace, findings: design.findings.map(place) };
  }
  const concrete: FreshConcreteWall = { ...planned.pour, heightFt: toFeet(height) };
  const limit = jobRiseLimit(core.ratedPressurePsf, concrete, range.parameters.liftHeight);
  const results = {
    basis: design.basis,
    governs: design.governs,
    ...standing,
    ...liquidZone(design, concrete),
    ...rates(concrete, limit),
  };
  const trace = [...design.trace, ...('trace' in limit ? limit.trace : [])];
  const over = design.psf > core.ratedPressurePsf * SAME ? [overRating(storey.id, core, design, concrete, limit)] : [];
  return { ...written, results, trace, findings: [...design.findings.map(place), ...over] };
}

function liquidZone(design: DesignPressure, concrete: FreshConcreteWall): { readonly hydrostaticDepthMm: number } {
  return { hydrostaticDepthMm: feetToMetres(hydrostaticDepth(design.psf, concrete.unitWeightPcf)) * 1000 };
}

/** The fastest rate: a number, or `any` or `none` where no rate decides; nothing where the method does not say. */
function fastest(limit: JobRiseLimit): Readonly<Record<string, number | string>> {
  if (limit.kind === 'outside-method') return {};
  if (limit.kind === 'limit') return { riseLimitFtPerH: limit.riseFtPerH, riseLimitBy: limit.governs };
  return { riseLimit: limit.kind === 'any-rate' ? 'any' : 'none', riseLimitBy: limit.governs };
}

function rates(concrete: FreshConcreteWall, limit: JobRiseLimit): Readonly<Record<string, number | string>> {
  const planned = { riseFtPerH: concrete.riseFtPerH, riseMPerH: feetPerHourToMetresPerHour(concrete.riseFtPerH) };
  if (limit.kind !== 'limit') return { ...planned, ...fastest(limit) };
  return { ...planned, ...fastest(limit), riseLimitMPerH: feetPerHourToMetresPerHour(limit.riseFtPerH) };
}

function overRating(
  storey: string,
  core: Core,
  design: DesignPressure,
  concrete: FreshConcreteWall,
  limit: JobRiseLimit,
): Finding {
  const pressures = { core: core.code, pressurePsf: design.psf, ratedPsf: core.ratedPressurePsf };
  const numbers = { ...pressures, riseFtPerH: concrete.riseFtPerH, ...fastest(limit) };
  return finding('pressure-over-rating', { storey, numbers, source: SOURCE });
}
