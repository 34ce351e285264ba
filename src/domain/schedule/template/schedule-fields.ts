import { NM_PER_METRE, NM_PER_MM, meantLength, type Nm } from '../../quantity/length.js';
import { printLength } from '../../quantity/print-length.js';
import type { DeclaredJoint, Feature, Opening, Schedule, Storey, Wall } from '../schedule.js';
import { loadFields, pourFields, siteFields } from '../site-and-pour-fields.js';

type Fields = Readonly<Record<string, unknown>>;
type Shown = (length: Nm) => string | number;

/**
 * A canonical schedule as a document that reads back as the same one, sizes as they were stated.
 *
 * Feet and inches are texts, millimetres and metres numbers. Walls that came with coordinates have them, with the declared joints
 * beside them; those that came without are written by length and joints, and placed anew.
 *
 * @param buckThickness of the range: what a `rough` size was without its buck
 */
export function scheduleFields(schedule: Schedule, buckThickness: Nm): Fields {
  const shown: Shown = (length) => {
    if (schedule.units === 'mm') return length / NM_PER_MM;
    return schedule.units === 'm' ? length / NM_PER_METRE : printLength(length, schedule.units);
  };
  return {
    format: schedule.format,
    name: schedule.name,
    units: schedule.units,
    dimensionsTo: schedule.dimensionsTo,
    range: schedule.range,
    ...(schedule.offcuts ? { offcuts: schedule.offcuts } : {}),
    storeys: schedule.storeys.map((storey) => storeyFields(storey, shown)),
    walls: schedule.walls.map((wall) => wallFields(wall, !wall.placed, shown)),
    openings: schedule.openings.map((opening) => openingFields(opening, buckThickness, shown)),
    features: schedule.features.map((feature) => featureFields(feature, shown)),
    ...(schedule.site ? { site: siteFields(schedule.site, shown) } : {}),
    ...(schedule.pour ? { pour: pourFields(schedule.pour) } : {}),
  };
}

const storeyFields = (storey: Storey, shown: Shown): Fields => {
  const { id, height, grade, storeyAbove, closed, on } = storey;
  return { id, height: shown(height), grade, storeyAbove, closed, on, ...loadFields(storey) };
};

function wallFields(wall: Wall, drawn: boolean, shown: Shown): Fields {
  const { mark, storey, core, dimensionsTo, from, to, arc } = wall;
  const implied = drawn && !arc && wall.length === meantLength(Math.hypot(to.x - from.x, to.y - from.y));
  return {
    mark,
    storey,
    core,
    dimensionsTo,
    height: shown(wall.height),
    base: shown(wall.base),
    ...(drawn ? { from: [shown(from.x), shown(from.y)], to: [shown(to.x), shown(to.y)] } : {}),
    ...(implied ? {} : { length: shown(wall.length) }),
    ...(arc ? { arc: { radius: shown(arc.radius), turns: arc.turns } } : {}),
    start: jointFields(wall.start, shown),
    end: jointFields(wall.end, shown),
  };
}

const jointFields = (joint: DeclaredJoint | null, shown: Shown): Fields | null =>
  joint?.joint === 'tee' ? { ...joint, at: shown(joint.at) } : joint;

/** A rough size has had the buck added at both jambs and the head, and at the sill unless that was 0 (decisions 16). */
function openingFields({ mark, wall, lining, measured, ...hole }: Opening, buckThickness: Nm, shown: Shown): Fields {
  const buck = measured === 'rough' ? buckThickness : 0;
  const below = hole.sill === 0 ? 0 : buck;
  return {
    mark,
    wall,
    at: shown(hole.at + buck),
    sill: shown(hole.sill + below),
    width: shown(hole.width - 2 * buck),
    height: shown(hole.height - buck - below),
    lining,
    measured,
  };
}

function featureFields(feature: Feature, shown: Shown): Fields {
  const { place: _, ...fields } = feature;
  return Object.fromEntries(Object.entries(fields).map(([key, value]) => [key, typeof value === 'number' ? shown(value) : value]));
}
