import { bothForces, bothLineForces, factors, restraintReports, type RestraintPlace } from './restraint-report.js';
import { corePressureAt, openingPlaces, type OpeningPlace } from '../reinforcement/opening-places.js';
import { toFeet, type Nm } from '../quantity/length.js';
import { topOfWall } from '../takeoff/course-core.js';
import type { CheckContext, JobCheck } from './job-check.js';

const EQUATION = 'F = p · t · length';
const NOTES = ['With the greatest pressure and core of the courses that the opening stands in. Lumber is by others; no capacity of it is known here.'];

/** Push on both jambs of every buck, and on a spreader (decision 28). Source: statics. */
export const jambOfJob: JobCheck = (job) =>
  restraintReports(
    { check: 'jamb', name: 'push on a jamb', equation: EQUATION, notes: NOTES },
    openingPlaces(job.takeoff.laid)
      .filter(({ opening }) => opening.lining === 'buck' && opening.head > opening.sill)
      .flatMap((place) => [place.opening.from, place.opening.to].map((at) => jamb(place, at, job))),
  );

/** Load on the head of every opening that concrete is poured over, and on a post. Source: statics. */
export const headOfJob: JobCheck = (job) =>
  restraintReports(
    { check: 'head', name: 'load on the head', equation: EQUATION, notes: NOTES },
    openingPlaces(job.takeoff.laid).filter(({ wall, opening }) => opening.head < topOfWall(wall) && opening.to > opening.from).map((place) => head(place, job)),
  );

/** Lift under the closed sill of every opening that concrete is poured under. Source: statics. */
export const sillOfJob: JobCheck = (job) =>
  restraintReports(
    { check: 'sill', name: 'lift of the sill', equation: EQUATION, notes: NOTES },
    openingPlaces(job.takeoff.laid).filter(({ opening }) => opening.sill > 0 && opening.to > opening.from).map((place) => along(place, place.opening.from, place.opening.to - place.opening.from, 'a lid closed and held down after the pour under it', job)),
  );

function jamb(place: OpeningPlace, at: Nm, job: CheckContext): RestraintPlace {
  const height = place.opening.head - place.opening.sill;
  return withEach(along(place, at, height, 'spreaders between the jambs', job), 'spreader', Math.min(job.range.parameters.buckSpreader, height), place, job);
}

function head(place: OpeningPlace, job: CheckContext): RestraintPlace {
  const width = place.opening.to - place.opening.from;
  return withEach(along(place, place.opening.from, width, 'posts under the head', job), 'post', Math.min(job.range.parameters.lintelPost, width), place, job);
}

function along(place: OpeningPlace, at: Nm, length: Nm, resistedBy: string, { pressureOf }: CheckContext): RestraintPlace {
  const { storey, wall, opening } = place;
  const { lbPerFt } = corePressureAt(place, pressureOf);
  return {
    storey: storey.id, core: wall.core.code, wall: wall.mark, course: null, at, forceLb: lbPerFt * toFeet(length), substituted: factors(lbPerFt, toFeet(length)),
    resistedBy, capacityLb: null, more: { opening: opening.mark, ...bothLineForces('perLength', lbPerFt) },
  };
}

function withEach(held: RestraintPlace, name: string, apart: Nm, place: OpeningPlace, { pressureOf }: CheckContext): RestraintPlace {
  return { ...held, more: { ...held.more, ...bothForces(name, corePressureAt(place, pressureOf).lbPerFt * toFeet(apart)) } };
}
