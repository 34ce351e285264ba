import { printLength } from '../../domain/quantity/print-length.js';
import type { Nm } from '../../domain/quantity/length.js';
import type { DeclaredJoint, Feature, Opening, Schedule, Storey, Wall } from '../../domain/schedule/schedule.js';
import { loadFields, pourFields, siteFields } from '../../domain/schedule/site-and-pour-fields.js';
import type { ScheduleAnswer } from './schedules.schemas.js';

type Shown = (length: Nm) => string;
type Fields = Record<string, unknown>;

/**
 * A schedule as it was understood, in the form in which it could be sent again: every default written out, every length with
 * its unit.
 * Holes are written as they are in the concrete, since a buck has been added already where there was one to add.
 */
export function scheduleDocument(schedule: Schedule): ScheduleAnswer {
  const shown: Shown = (length) => printLength(length, schedule.units);
  return {
    format: schedule.format,
    name: schedule.name,
    units: schedule.units,
    dimensionsTo: schedule.dimensionsTo,
    range: schedule.range,
    ...(schedule.offcuts ? { offcuts: schedule.offcuts } : {}),
    storeys: schedule.storeys.map((storey) => storeyRow(storey, shown)),
    walls: schedule.walls.map((wall) => wallRow(wall, shown)),
    openings: schedule.openings.map((opening) => openingRow(opening, shown)),
    features: schedule.features.map((feature) => featureRow(feature, shown)),
    ...(schedule.site ? { site: written(siteFields(schedule.site, shown)) } : {}),
    ...(schedule.pour ? { pour: written(pourFields(schedule.pour)) } : {}),
    ...(schedule.unknown.length > 0 ? { unknown: schedule.unknown.map(({ sheet, name }) => ({ sheet, name })) } : {}),
    ...(schedule.skipped ? { skipped: schedule.skipped.map((element) => ({ ...element })) } : {}),
    ...(schedule.noted ? { noted: schedule.noted.map((element) => ({ ...element })) } : {}),
  };
}

function storeyRow(storey: Storey, shown: Shown): Fields {
  const { id, height, grade, storeyAbove, closed, on } = storey;
  return { id, height: shown(height), grade, storeyAbove, closed, ...(on === null ? {} : { on }), ...written(loadFields(storey)) };
}

function wallRow(wall: Wall, shown: Shown): Fields {
  return {
    mark: wall.mark,
    storey: wall.storey,
    core: wall.core,
    dimensionsTo: wall.dimensionsTo,
    height: shown(wall.height),
    base: shown(wall.base),
    ...(wall.placed ? {} : { from: [shown(wall.from.x), shown(wall.from.y)], to: [shown(wall.to.x), shown(wall.to.y)] }),
    length: shown(wall.length),
    ...(wall.arc ? { arc: { radius: shown(wall.arc.radius), turns: wall.arc.turns } } : {}),
    ...(wall.start ? { start: jointFields(wall.start, shown) } : {}),
    ...(wall.end ? { end: jointFields(wall.end, shown) } : {}),
  };
}

const jointFields = (joint: DeclaredJoint, shown: Shown): Fields =>
  joint.joint === 'tee' ? { ...joint, at: shown(joint.at) } : { ...joint };

const openingRow = ({ mark, wall, at, sill, width, height, lining }: Opening, shown: Shown): Fields => ({
  mark,
  wall,
  at: shown(at),
  sill: shown(sill),
  width: shown(width),
  height: shown(height),
  lining,
  measured: 'concrete',
});

function featureRow(feature: Feature, shown: Shown): Fields {
  const { place: _, ...fields } = feature;
  return Object.fromEntries(
    Object.entries(fields).map(([key, value]) => [key, typeof value === 'number' ? shown(value) : value]),
  );
}

const written = (fields: Fields): Fields => Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
