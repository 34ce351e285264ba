import { describe, expect, it } from '@jest/globals';
import { freeWall, type FileUnit } from '../../../support/ifc-files.js';
import { scheduleOf } from '../../../support/opened-model.js';

/** Definitions: 1 ft = 304.8 mm exactly (international yard and pound agreement, 1959). */
const LENGTH_MM = 20 * 304.8;
const HEIGHT_MM = 8 * 304.8;

describe('the free wall of decisions 13 as a model', () => {
  it.each<FileUnit>(['mm', 'm', 'ft', 'in'])('is 20\'-0" by 8\'-0" in a file in %s', async (unit) => {
    const schedule = await scheduleOf(freeWall(unit));
    expect(schedule).toMatchObject({ name: 'Pier house', units: unit, dimensionsTo: 'axis', range: 'HERON-16', skipped: [], noted: [] });
    expect(schedule.storeys).toMatchObject([{ id: 'S1', height: HEIGHT_MM * 1e6, grade: 'above', on: null }]);
    expect(schedule.walls).toMatchObject([{ mark: 'A', storey: 'S1', core: '6', length: LENGTH_MM * 1e6, height: HEIGHT_MM * 1e6, base: 0, arc: null }]);
  });

  it.each<FileUnit>(['mm', 'm', 'ft', 'in'])('is as long where site, building and wall are turned, in a file in %s', async (unit) => {
    for (const turned of [
      freeWall(unit, { turn: 37 }),
      freeWall(unit, {}, { turn: 37 }),
      freeWall(unit, { turn: 37, origin: [10, -3, 2] }, { turn: -12.5, origin: [1, 2, 0] }, { turn: 37, origin: [5, 7, 0] }),
    ]) {
      const { walls } = await scheduleOf(turned);
      expect(walls[0]?.length).toBe(LENGTH_MM * 1e6);
      expect(walls[0]?.height).toBe(HEIGHT_MM * 1e6);
      const { from, to } = walls[0]!;
      expect(Math.abs(Math.hypot(to.x - from.x, to.y - from.y) - LENGTH_MM * 1e6)).toBeLessThan(2_001);
    }
  });
});
