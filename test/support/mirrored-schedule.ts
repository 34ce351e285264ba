import type { Feature, Opening, Schedule, Wall } from '../../src/domain/schedule/schedule.js';

/** A canonical schedule held against a mirror: every wall is walked the other way, so that the building stays on the same side. */
export function mirroredSchedule(schedule: Schedule): Schedule {
  const lengthOf = new Map(schedule.walls.map(({ mark, length }) => [mark, length]));
  const back = (wall: string, at: number): number => (lengthOf.get(wall) ?? 0) - at;
  return {
    ...schedule,
    walls: schedule.walls.map(mirroredWall),
    openings: schedule.openings.map((opening): Opening => ({ ...opening, at: back(opening.wall, opening.at + opening.width) })),
    features: schedule.features.map((feature): Feature => {
      if (feature.kind === 'ledge') return { ...feature, from: back(feature.wall, feature.to), to: back(feature.wall, feature.from) };
      return feature.kind === 'gable' ? { ...feature, peakAt: back(feature.wall, feature.peakAt) } : feature;
    }),
  };
}

/** The mirror turns a curve to the other hand and walking it backwards turns it back. */
const mirroredWall = (wall: Wall): Wall => ({ ...wall, from: { x: -wall.to.x, y: wall.to.y }, to: { x: -wall.from.x, y: wall.from.y }, start: wall.end, end: wall.start });
