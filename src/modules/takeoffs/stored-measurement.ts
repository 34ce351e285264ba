import type { Measurement } from '../../domain/pipeline.js';
import type { LaidStorey, LaidWall } from '../../domain/takeoff/laid.js';
import { grouped } from '../contract/grouped.js';
import type { StoreyConcrete, Takeoff } from '../../domain/takeoff/takeoff.js';

/** A measurement without its checklist, whose items are rows of their own. */
export type CountedMeasurement = Omit<Measurement, 'checklist'>;

/**
 * A measurement as it lies in the database: one summary, one JSON document a wall, big integers as decimal strings.
 * `unstored(stored(m))` is `m` again without its checklist, digit for digit.
 */
export interface StoredMeasurement {
  readonly summary: StoredSummary;
  readonly walls: readonly StoredWall[];
}

type Written<T> = { readonly [K in keyof T]: T[K] extends bigint ? string : T[K] };
export type StoredWall = Written<LaidWall>;

export interface StoredSummary extends Omit<CountedMeasurement, 'takeoff'> {
  readonly takeoff: Omit<Takeoff, 'laid' | 'concrete'> & {
    readonly storeys: readonly Omit<LaidStorey, 'walls'>[];
    readonly concrete: readonly Written<StoreyConcrete>[];
  };
}

export function stored({ checklist: _, ...measurement }: Measurement): StoredMeasurement {
  const { laid, concrete, ...counted } = measurement.takeoff;
  return {
    summary: {
      ...measurement,
      takeoff: {
        ...counted,
        storeys: laid.storeys.map(({ walls: __, ...storey }) => storey),
        concrete: concrete.map((pour) => ({ ...pour, nm3: String(pour.nm3) })),
      },
    },
    walls: laid.storeys.flatMap((storey) => storey.walls.map(storedWall)),
  };
}

export function unstored({ summary, walls }: StoredMeasurement): CountedMeasurement {
  const { storeys, concrete, ...counted } = summary.takeoff;
  const laid = grouped(walls.map(unstoredWall), ({ storey }) => storey);
  return {
    ...summary,
    takeoff: {
      ...counted,
      laid: { storeys: storeys.map((storey) => ({ ...storey, walls: laid.get(storey.id) ?? [] })) },
      concrete: concrete.map((pour) => ({ ...pour, nm3: BigInt(pour.nm3) })),
    },
  };
}

const storedWall = (wall: LaidWall): StoredWall => ({
  ...wall,
  concreteNm3: String(wall.concreteNm3),
  faceNm2: String(wall.faceNm2),
  openingNm2: String(wall.openingNm2),
});

export const unstoredWall = (wall: StoredWall): LaidWall => ({
  ...wall,
  concreteNm3: BigInt(wall.concreteNm3),
  faceNm2: BigInt(wall.faceNm2),
  openingNm2: BigInt(wall.openingNm2),
});
