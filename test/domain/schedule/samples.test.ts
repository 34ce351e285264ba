import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from '@jest/globals';
import { measure } from '../../../src/domain/pipeline.js';
import { readRange } from '../../../src/domain/range/read-range.js';
import { readSchedule, type Schedule, type UploadedFile } from '../../../src/domain/schedule/index.js';
import { HERON } from '../../support/schedule-documents.js';
import { csvOf, tablesOf, workbookOf } from '../../support/tabular-samples.js';

const SAMPLES = 'shared/samples';
const file = (path: string): UploadedFile => ({ name: path.slice(path.lastIndexOf('/') + 1), bytes: new Uint8Array(readFileSync(`${SAMPLES}/${path}`)) });
const read = async (...files: UploadedFile[]): Promise<Schedule> => {
  const result = await readSchedule(files, HERON);
  if (!result.ok) throw new Error(JSON.stringify(result.error, null, 1));
  return result.value;
};
const withoutPlaces = (schedule: Schedule): unknown => JSON.parse(JSON.stringify(schedule, (key, value) => (key === 'place' ? undefined : value)));
const csvFolder = () => readdirSync(`${SAMPLES}/mill-lane-house-csv`).map((name) => file(`mill-lane-house-csv/${name}`));
const house = (): any => JSON.parse(readFileSync(`${SAMPLES}/mill-lane-house.schedule.json`, 'utf8'));

/** REGEN=1 writes the workbook and the CSV files again from the JSON sample; never where samples are being checked. */
beforeAll(async () => {
  if (!process.env['REGEN']) return;
  if (process.env['CI']) throw new Error('samples are not written where they are checked');
  mkdirSync(`${SAMPLES}/mill-lane-house-csv`, { recursive: true });
  for (const [name, rows] of Object.entries(tablesOf(house(), 'csv'))) writeFileSync(`${SAMPLES}/mill-lane-house-csv/${name}.csv`, csvOf(rows));
  writeFileSync(`${SAMPLES}/mill-lane-house.xlsx`, await workbookOf(tablesOf(house(), 'book')));
});

const turnsOf = (schedule: Schedule, storey: string): number[] => {
  const walls = schedule.walls.filter((wall) => wall.storey === storey && wall.dimensionsTo === 'foam-face');
  const heading = ({ from, to }: Schedule['walls'][number]): number => (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  return walls.map((wall, index) => {
    const next = walls[(index + 1) % walls.length] as Schedule['walls'][number];
    expect(wall.to).toEqual(next.from);
    return Math.round((((heading(next) - heading(wall) + 540) % 360) - 180) * 10) / 10;
  });
};

const questionsOf = (schedule: Schedule): string[] => {
  const range = readRange(JSON.parse(readFileSync(`${SAMPLES}/heron-16.range.json`, 'utf8')));
  if (!range.ok) throw new Error(JSON.stringify(range.error));
  return measure(schedule, range.value).findings.filter(({ severity }) => severity !== 'note').map(({ code, severity, wall }) => `${severity} ${code} ${wall}`);
};

describe('the shop', () => {
  it('is an ordinary plan: no advice is needed and nothing is held', async () => {
    expect(questionsOf(await read(file('harbour-store.schedule.json')))).toEqual([]);
  });

  it('is a closed rectangle with openings clear of its corners and of each other', async () => {
    const shop = await read(file('harbour-store.schedule.json'));
    expect(shop.walls.map(({ length }) => length / 304_800_000)).toEqual([40, 28, 40, 28]);
    expect(turnsOf(shop, 'S1')).toEqual([90, 90, 90, 90]);
    expect(shop.openings).toHaveLength(5);
    const clear = 24 * 25_400_000;
    for (const wall of shop.walls) {
      const edges = shop.openings.filter((opening) => opening.wall === wall.mark).sort((a, b) => a.at - b.at);
      const gaps = [...edges.map((each, index) => each.at - (edges[index - 1] ? (edges[index - 1] as typeof each).at + (edges[index - 1] as typeof each).width : 0)), wall.length - Math.max(0, ...edges.map(({ at, width }) => at + width))];
      for (const gap of gaps) expect(gap).toBeGreaterThan(clear);
    }
  });
});

describe('the house', () => {
  it('is the same canonical schedule as JSON, as a workbook and as CSV files, but for places', async () => {
    const json = withoutPlaces(await read(file('mill-lane-house.schedule.json')));
    expect(withoutPlaces(await read(file('mill-lane-house.xlsx')))).toEqual(json);
    expect(withoutPlaces(await read(...csvFolder()))).toEqual(json);
  });

  it('asks for advice on the window near the corners of the bay, and nothing is held', async () => {
    expect(new Set(questionsOf(await read(file('mill-lane-house.schedule.json'))))).toEqual(new Set(['advise opening-near-corner A3']));
  });

  it('has its CSV files as they are written from the JSON sample', () => {
    const tables = tablesOf(house(), 'csv');
    expect(Object.fromEntries(csvFolder().map(({ name, bytes }) => [name, new TextDecoder().decode(bytes)]))).toEqual(Object.fromEntries(Object.entries(tables).map(([name, rows]) => [`${name}.csv`, csvOf(rows)])));
  });

  it('has a bay of 45 degree turns in both storeys, one corner of 67.5 and the 22.5 that closes it', async () => {
    const schedule = await read(file('mill-lane-house.schedule.json'));
    expect(turnsOf(schedule, 'S1')).toEqual([-45, 45, 45, -45, 90, -90, 90, 67.5, 22.5, -90, 90, 90, 90]);
    expect(turnsOf(schedule, 'S2')).toEqual([-45, 45, 45, -45, 90, 90, 90, 90]);
  });

  it('has a lower garage, a partition with a tee at each end, and an upper storey over the ground floor', async () => {
    const { walls, storeys, pour, site } = await read(file('mill-lane-house.schedule.json'));
    expect(walls.filter(({ height }) => height === 96 * 25_400_000).map(({ mark }) => mark)).toEqual(['G1', 'G2', 'G3', 'G4', 'E1', 'E2', 'E3', 'E4', 'E5', 'F1', 'H1', 'K1']);
    expect(walls.find(({ mark }) => mark === 'Q1')).toMatchObject({ dimensionsTo: 'axis', length: 442 * 25_400_000 });
    expect(storeys.map(({ id, on, storeyAbove, closed }) => [id, on, storeyAbove, closed])).toEqual([['S1', null, true, true], ['S2', 'S1', false, true]]);
    expect(pour).not.toBeNull();
    expect(site).not.toBeNull();
  });
});
