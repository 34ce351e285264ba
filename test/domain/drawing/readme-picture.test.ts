import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { renderSvg, wallElevation } from '../../../src/domain/drawing/index.js';
import { CAUTIONS } from '../../../src/domain/evidence/cautions.js';
import { readScheduleDocument } from '../../../src/domain/schedule/index.js';
import { takeOff } from '../../../src/domain/takeoff/index.js';
import { demoRange } from '../../support/drawn-job.js';

const PICTURE = new URL('../../../shared/docs/wall-elevation.svg', import.meta.url);
const SAMPLE = new URL('../../../shared/samples/harbour-store.schedule.json', import.meta.url);

function picture(): string {
  const range = demoRange();
  const context = {
    cores: [...range.cores.keys()],
    courseHeight: range.courseHeight,
    buckThickness: range.parameters.buckThickness,
  };
  const schedule = readScheduleDocument(JSON.parse(readFileSync(SAMPLE, 'utf8')), context);
  if (!schedule.ok) throw new Error(JSON.stringify(schedule.error));
  const storey = takeOff(schedule.value, range).laid.storeys[0];
  const wall = storey?.walls.find(({ mark }) => mark === 'A');
  if (storey === undefined || wall === undefined) throw new Error('the sample has no wall A');
  const header = {
    job: 'J-000001',
    jobName: schedule.value.name,
    revision: 1,
    supplier: 'Heron Form Supply (demo)',
    caution: CAUTIONS.slice(0, 2).join(' '),
  };
  return renderSvg(wallElevation(wall, storey, range, schedule.value.units, header));
}

describe('the picture in the README', () => {
  it('is what the program draws of wall A of the demo store; REGEN=1 draws it anew', () => {
    if (process.env['REGEN'] === '1' && process.env['CI'] === undefined) writeFileSync(PICTURE, picture());
    expect(readFileSync(PICTURE, 'utf8')).toBe(picture());
  });
});
