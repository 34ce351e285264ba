import { describe, expect, it } from '@jest/globals';
import { headerRowOf, isNumeric, looksLikeData } from '../../../src/domain/schedule/tabular/header-row.js';
import { tableOfName } from '../../../src/domain/schedule/tabular/sheet-names.js';

const WALLS = ['mark', 'core', 'length'];
const OPENINGS = ['mark', 'wall', 'at', 'sill', 'width', 'height'];

describe('the header among the first rows', () => {
  it.each<[string, string[][], [number, string] | undefined]>([
    ['the first row', [WALLS, ['A', '6', '480']], [0, 'walls']],
    ['below a title', [['Walls of the house'], WALLS], [1, 'walls']],
    ['the one that names most columns', [['level', 'height'], OPENINGS], [1, 'openings']],
    ['the first of equals', [WALLS, WALLS], [0, 'walls']],
    ['a job table by its two words', [['Harbour clinic'], ['Setting', 'Value'], ['name', 'Harbour']], [1, 'job']],
    ['not a row of data whose marks are column names', [['Marke', 'Wand', 'Abstand'], ['W', 'H', '60']], undefined],
    ['not past the tenth row', [...Array.from({ length: 10 }, () => ['title']), WALLS], undefined],
    ['no rows', [], undefined],
  ])('%s', (_name, rows, found) => {
    const header = headerRowOf(rows);
    expect(header && [header.index, header.kind]).toEqual(found);
  });

  it.each(['36', '-1', '.5', `3'-0"`, '½"', '\u221212'])('%s is a number', (cell) => expect(isNumeric(cell)).toBe(true));
  it.each(['X1', 'from_x', '', 'S1', '(ft)', '-', 'W"'])('%s is none', (cell) => expect(isNumeric(cell)).toBe(false));
  it('three numbers are data, two may stand in a title', () => {
    expect(looksLikeData(['A', '60', '36', '84'])).toBe(true);
    expect(looksLikeData(['Revision', '3', '2026-05-01'])).toBe(false);
  });
});

describe('the table a sheet is named for', () => {
  it.each([
    ['walls', 'walls'], ['Wall', 'walls'], ['WALL SCHEDULE', 'walls'], ['WallSchedule', 'walls'], ['wallschedule2', 'walls'], ['Exterior walls', 'walls'], ['walls_S1', 'walls'],
    ['Openings (2)', 'openings'], ['Doors & windows', 'openings'], ['features', 'features'], ['Storeys', 'storeys'], ['stories', 'storeys'], ['Levels', 'storeys'],
    ['Job', 'job'], ['job settings', 'job'], ['Project data', 'job'],
    ['Notes', undefined], ['Notes on walls', undefined], ['Wall details', undefined], ['Floor plan', undefined], ['Level 2 budget', undefined], ['Job cover', undefined],
    ['Sheet1', undefined], ['', undefined], ['Wallpaper', undefined], ['x'.repeat(100_000), undefined],
  ])('%s', (name, kind) => expect(tableOfName(name)).toBe(kind));
});
