import { meantLength, type Nm } from '../../quantity/length.js';
import { readPlacement, seenFrom, type Frame } from './frames.js';
import type { ModelUnits } from './model-units.js';
import { statedFlag, type Relations } from './relations.js';
import type { Entity, StepModel } from './step-model.js';
import { readOr } from './unread.js';

/** A level of the building: its height in it [nm]. */
export interface Level {
  readonly entity: Entity;
  readonly elevation: number;
  readonly belowGround: boolean | null;
}

export interface StoreyRow {
  readonly id: string;
  readonly level: Level;
  readonly height: Nm;
  readonly on: string | null;
}

/** Heights that agree [nm]. */
const AGREES = 1_000_000;

/**
 * The storeys of a model, the lowest first. A storey's height in the building is that of its placement, against which its walls are
 * drawn; where all placements lie at one height while the elevations differ, it is the elevation.
 */
export function levelsOf(model: StepModel, building: Frame, units: ModelUnits, relations: Relations): readonly Level[] {
  const drawn = model.all('IfcBuildingStorey').map((entity) => {
    const stated = entity.optionalNumber(9);
    const placement = entity.optional(5);
    const placed = placement
      ? readOr<number | null>(
          () => seenFrom(building, readPlacement(placement, units)).origin.z,
          () => null,
        )
      : null;
    const above = statedFlag(entity, 'AboveGround', relations);
    return { entity, stated: stated === null ? null : stated * units.nm, placed, belowGround: above === null ? null : !above };
  });
  const spread = (values: readonly (number | null)[]): boolean => {
    const known = values.filter((value) => value !== null);
    return known.length > 0 && Math.max(...known) - Math.min(...known) > AGREES;
  };
  const byElevation = !spread(drawn.map(({ placed }) => placed)) && spread(drawn.map(({ stated }) => stated));
  return drawn
    .map(({ entity, stated, placed, belowGround }) => ({
      entity,
      belowGround,
      elevation: (byElevation ? (stated ?? placed) : (placed ?? stated)) ?? 0,
    }))
    .sort((a, b) => a.elevation - b.elevation || a.entity.id - b.entity.id);
}

/**
 * The storeys that hold walls: each as high as the next level of the building is above it, the last as its tallest wall, and standing
 * on the one with walls right below it.
 *
 * @param tallest highest top of a storey's walls above its level, by the storey's instance [nm]
 */
export function storeyRows(
  levels: readonly Level[],
  tallest: ReadonlyMap<number, number>,
  nameOf: (entity: Entity) => string,
): readonly StoreyRow[] {
  const rows: StoreyRow[] = [];
  levels.forEach((level, index) => {
    const top = tallest.get(level.entity.id);
    if (top === undefined) return;
    const next = levels.slice(index + 1).find(({ elevation }) => elevation - level.elevation > AGREES);
    const height = meantLength(next ? next.elevation - level.elevation : top);
    const below = rows.at(-1);
    rows.push({
      id: nameOf(level.entity),
      level,
      height,
      on: below && below.level.elevation < level.elevation - AGREES ? below.id : null,
    });
  });
  return rows;
}
