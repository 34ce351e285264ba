import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { measure } from '../../../../src/domain/pipeline.js';
import { readRange } from '../../../../src/domain/range/read-range.js';
import { freeWall, type FileUnit } from '../../../support/ifc-files.js';
import { scheduleOf } from '../../../support/opened-model.js';

const range = readRange(JSON.parse(readFileSync('shared/samples/heron-16.range.json', 'utf8')));
if (!range.ok) throw new Error('the sample range is none');

describe('decisions 13: the free wall 20\'-0" by 8\'-0" is 30 forms and 12 closures', () => {
  it.each<[FileUnit, number]>([['mm', 0], ['m', 37], ['ft', 37], ['in', 90]])('as a model in %s turned by %d°', async (unit, turn) => {
    const { takeoff } = measure(await scheduleOf(freeWall(unit, { turn })), range.value, []);
    const bought = takeoff.units.filter((each) => each.bought > 0).map((each) => [each.kind, each.bought]);
    expect(bought.sort()).toEqual([['end-closure', 12], ['straight', 30]]);
  });
});
