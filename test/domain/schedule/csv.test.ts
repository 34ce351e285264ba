import { describe, expect, it } from '@jest/globals';
import { readSchedule, readScheduleDocument } from '../../../src/domain/schedule/index.js';
import { HERON, rectangle } from '../../support/schedule-documents.js';

type Files = Readonly<Record<string, string | Uint8Array>>;

const bytesOf = (content: string | Uint8Array): Uint8Array => (typeof content === 'string' ? new TextEncoder().encode(content) : content);
const readFiles = (files: Files) => readSchedule(Object.entries(files).map(([name, content]) => ({ name, bytes: bytesOf(content) })), HERON);
const read = async (files: Files) => {
  const result = await readFiles(files);
  if (!result.ok) throw new Error(JSON.stringify(result.error, null, 1));
  return result.value;
};
const refused = async (files: Files) => {
  const result = await readFiles(files);
  if (result.ok) throw new Error('the schedule was taken');
  return result.error;
};
const withoutPlaces = (schedule: unknown): unknown => JSON.parse(JSON.stringify(schedule, (key, value) => (key === 'place' ? undefined : value)));
const expected = (): unknown => {
  const result = readScheduleDocument(rectangle(), HERON);
  if (!result.ok) throw new Error('the rectangle is a schedule');
  return withoutPlaces(result.value);
};

const JOB = 'key,value\nname,Rectangle\nunits,in\ndimensionsTo,foam-face\nrange,HERON-16\n';
const STOREYS = 'id,height,grade,storeyAbove,closed\nS1,"9\'-0""",above,false,true\n';
const WALLS = 'mark,storey,core,from_x,from_y,to_x,to_y\nA,S1,6,0,0,480,0\nB,S1,6,480,0,480,336\nC,S1,6,480,336,0,336\nD,S1,6,0,336,0,0\n';
const OPENINGS = 'mark,wall,at,sill,width,height,lining,measured\nD1,A,60,0,36,84,buck,concrete\n';
const FILES: Files = { 'a.csv': JOB, 'b.csv': STOREYS, 'c.csv': WALLS, 'd.csv': OPENINGS };

describe('schedules in CSV files', () => {
  it('are the schedule of the JSON document but for places', async () => {
    const schedule = await read(FILES);
    expect(withoutPlaces(schedule)).toEqual(expected());
    expect(schedule.walls[1]?.place).toEqual({ sheet: 'c.csv', row: 3, pointer: '/walls/1' });
  });

  it('are told apart by their header rows, never by their names', async () => {
    expect(withoutPlaces(await read({ 'walls.csv': OPENINGS, 'openings.csv': WALLS, 'job.json': STOREYS, 'x.xlsx': JOB }))).toEqual(expected());
  });

  it.each<[string, (text: string) => string | Uint8Array]>([
    ['semicolons', (text) => text.replaceAll(',', ';')],
    ['tabs', (text) => text.replaceAll(',', '\t')],
    ['Windows line ends', (text) => text.replaceAll('\n', '\r\n')],
    ['old line ends', (text) => text.replaceAll('\n', '\r')],
    ['no last line end', (text) => text.trimEnd()],
    ['a UTF-8 mark', (text) => `\ufeff${text}`],
    ['UTF-16 little-endian', (text) => new Uint8Array(Buffer.from(`\ufeff${text}`, 'utf16le'))],
    ['UTF-16 big-endian', (text) => new Uint8Array(Buffer.from(`\ufeff${text}`, 'utf16le').swap16())],
    ['empty lines before the header', (text) => `\n,,\n${text}`],
    ['every field quoted', (text) => text.split('\n').map((line) => (line === '' || line.includes('"') ? line : line.split(',').map((field) => `"${field}"`).join(','))).join('\n')],
  ])('may be written with %s', async (_name, change) => {
    const files = Object.fromEntries(Object.entries(FILES).map(([name, text]) => [name, change(String(text))]));
    expect(withoutPlaces(await read(files))).toEqual(expected());
  });

  it('take everyday headers, whatever their case and punctuation, with a unit in them', async () => {
    const walls = 'Wall ID;Level;Core (in);X1 (ft);Y1 (ft);X2 [ft];Y2 ft\nA;S1;6;0;0;40;0\nB;S1;6;40;0;40;28\nC;S1;6;40;28;0;28\nD;S1;6;0;28;0;0\n';
    const openings = 'Tag;In Wall;Station (mm);Sill Ht;W (mm);H_mm;LINING;Measured\nD1;A;1524;0;914.4;2133.6;Buck;Concrete\n';
    const storeys = 'Story;Ht (");Grade;Story above;Closed\nS1;108;ABOVE;no;yes\n';
    expect(withoutPlaces(await read({ ...FILES, 'b.csv': storeys, 'c.csv': walls, 'd.csv': openings }))).toEqual(expected());
  });

  it('take titles above the header, whatever the delimiter, and keep the true rows', async () => {
    const title = 'Walls of the house, ground floor\n\nprepared by, nobody\n';
    expect(withoutPlaces(await read({ ...FILES, 'c.csv': `${title}${WALLS}` }))).toEqual(expected());
    const schedule = await read({ ...FILES, 'c.csv': `${title}${WALLS.replaceAll(',', ';')}` });
    expect(withoutPlaces(schedule)).toEqual(expected());
    expect(schedule.walls.map(({ place }) => place.row)).toEqual([5, 6, 7, 8]);
    const { errors } = await refused({ ...FILES, 'c.csv': `${title}${WALLS.replace('B,S1,6', 'B,S1,7')}` });
    expect(errors).toEqual([expect.objectContaining({ sheet: 'c.csv', row: 6, column: 'C (core)', read: '7' })]);
  });

  it('take an inch mark inside a field without quoting', async () => {
    expect(withoutPlaces(await read({ ...FILES, 'b.csv': `id,height,closed\nS1,9'-0",true\n` }))).toEqual(expected());
  });

  it('take declared corners, arcs, site and pour by the names of the design', async () => {
    const walls =
      'mark,core,length,start_joint,start_turn,start_with_wall,start_with_end,end_joint,from_x,from_y,to_x,to_y,arc_radius,arc_turns\n' +
      'A,6,40\'-0",,,,,,,,,,,\nB,6,28\'-0",corner,90,A,end,free,,,,,,\nR,8,,,,,,,600,0,840,240,240,left\n';
    const job = `${JOB}site.wind,115 mph\nSite Exposure,B\npour.rise (ft/h),3\npour.slump (in),6.5\npour.humidity,50 %\npour.retarder,no\n`;
    const schedule = await read({ 'a.csv': job, 'b.csv': STOREYS, 'c.csv': walls });
    expect(schedule.walls.map(({ to }) => [to.x / 25.4e6, to.y / 25.4e6]).slice(2)).toEqual([[840, 240]]);
    expect(schedule.walls[1]).toMatchObject({ start: { joint: 'corner', turn: 90, with: { wall: 'A', end: 'end' } }, end: { joint: 'free' } });
    expect(schedule.walls[2]?.arc).toEqual({ radius: 6_096_000_000, turns: 'left' });
    expect(schedule.site).toMatchObject({ exposure: 'B' });
    expect(schedule.pour).toMatchObject({ slumpMm: 165.1, humidity: 0.5, retarder: false });
    expect(schedule.pour?.riseMPerH).toBeCloseTo(0.9144, 12);
  });

  it('list columns, cells and keys nobody knows', async () => {
    const walls = WALLS.replace('to_y', 'to_y,colour').replace('480,0\nB', '480,0,blue,stray\nB');
    const schedule = await read({ ...FILES, 'a.csv': `${JOB}architect,Nobody\n`, 'c.csv': walls });
    expect(schedule.unknown).toEqual([
      { sheet: 'c.csv', name: 'colour' },
      { sheet: 'a.csv', name: 'architect' },
      { sheet: 'c.csv', name: 'column I' },
    ]);
  });

  it('take tables of one kind one after the other', async () => {
    const [header, ...rows] = WALLS.trim().split('\n') as [string, ...string[]];
    const files = { ...FILES, 'c.csv': [header, ...rows.slice(0, 2)].join('\n'), 'e.csv': [header, ...rows.slice(2)].join('\n') };
    const schedule = await read(files);
    expect(schedule.walls.map(({ mark, place }) => [mark, place.sheet, place.row])).toEqual([['A', 'c.csv', 2], ['B', 'c.csv', 3], ['C', 'e.csv', 2], ['D', 'e.csv', 3]]);
  });

  it('take measured once for the job', async () => {
    const openings = 'mark,wall,at,sill,width,height\nD1,A,60,0,36,84\n';
    expect((await read({ ...FILES, 'a.csv': `${JOB}measured,rough\n`, 'd.csv': openings })).openings[0]).toMatchObject({ measured: 'rough', width: 39 * 25_400_000 });
  });
});

describe('CSV files that are refused', () => {
  it('names sheet, row, column, what was read and what would do', async () => {
    const { code, errors } = await refused({ ...FILES, 'c.csv': WALLS.replace('B,S1,6,480,0,480', `B,S1,6,480,0,"12'-14"""`) });
    expect(code).toBe('invalid');
    expect(errors).toEqual([{ sheet: 'c.csv', row: 3, column: 'F (to_x)', pointer: '/walls/1/to/0', read: `12'-14"`, fix: expect.stringContaining(`13'-2"`) }]);
  });

  it('tells the errors of all files at once', async () => {
    const { errors } = await refused({ 'a.csv': JOB.replace('foam-face', 'roof'), 'b.csv': STOREYS.replace('above', 'beside'), 'c.csv': WALLS.replace('C,S1,6', 'C,S9,7'), 'd.csv': OPENINGS.replace('84', '8 psi') });
    expect(errors.map(({ sheet, row, column }) => [sheet, row, column])).toEqual([
      ['a.csv', 4, 'B (value)'],
      ['b.csv', 2, 'C (grade)'],
      ['c.csv', 4, 'B (storey)'],
      ['c.csv', 4, 'C (core)'],
      ['d.csv', 2, 'F (height)'],
    ]);
  });

  it('a decimal comma is never guessed', async () => {
    const { errors } = await refused({ ...FILES, 'c.csv': WALLS.replaceAll(',', ';').replace('480;0\n', '480,5;0\n') });
    expect(errors).toEqual([expect.objectContaining({ column: 'F (to_x)', read: '480,5', fix: expect.stringContaining('4805 or 480.5') })]);
  });

  it('a missing column is told once, not on every row', async () => {
    const { errors } = await refused({ ...FILES, 'c.csv': WALLS.replace(',core', ',kern') });
    expect(errors).toEqual([{ sheet: 'c.csv', row: 1, column: null, pointer: null, read: expect.stringContaining('A (mark)'), fix: 'a column core or core or thk among the walls' }].map((error) => ({ ...error, fix: 'a column core or thk or thickness among the walls' })));
  });

  it('openings that do not say how they are measured', async () => {
    const plain = 'mark,wall,at,sill,width,height\nD1,A,60,0,36,84\nD2,A,160,0,36,84\n';
    expect((await refused({ ...FILES, 'd.csv': plain })).errors).toEqual([expect.objectContaining({ sheet: 'd.csv', row: 1, fix: expect.stringContaining('concrete (the hole in the concrete) or rough') })]);
    const partly = 'mark,wall,at,sill,width,height,measured\nD1,A,60,0,36,84,rough\nD2,A,160,0,36,84,\n';
    expect((await refused({ ...FILES, 'd.csv': partly })).errors).toEqual([expect.objectContaining({ sheet: 'd.csv', row: 3, column: 'G (measured)' })]);
  });

  it.each<[string, Files, string, string]>([
    ['two columns for one thing', { ...FILES, 'c.csv': WALLS.replace('storey', 'thk').replaceAll('S1', '6') }, 'C (core)', 'B (thk) is that already'],
    ['a header unit that is none', { ...FILES, 'b.csv': STOREYS.replace('height', 'height (cubits)') }, 'B (height (cubits))', 'a unit of length in the header'],
    ['a core in millimetres', { ...FILES, 'c.csv': WALLS.replace('core', 'core (mm)') }, 'C (core (mm))', 'the code of a core'],
  ])('%s', async (_name, files, column, fix) => {
    const { code, errors } = await refused(files);
    expect(code).toBe('invalid');
    expect(errors).toContainEqual(expect.objectContaining({ row: 1, column, fix: expect.stringContaining(fix) }));
  });

  it('two rows for one setting of the job', async () => {
    expect((await refused({ ...FILES, 'a.csv': `${JOB}units,mm\n` })).errors).toEqual([expect.objectContaining({ sheet: 'a.csv', row: 6, read: 'units', fix: expect.stringContaining('row 3 is that already') })]);
  });

  it('a file beside tables whose header nobody knows', async () => {
    const { code, errors } = await refused({ ...FILES, 'e.csv': 'who,when\nme,now\n' });
    expect(code).toBe('invalid');
    expect(errors).toEqual([{ sheet: 'e.csv', row: 1, column: null, pointer: null, read: 'who, when', fix: expect.stringContaining('a header row of walls') }]);
  });

  it('a file whose header is in another language, with a title above it: the row is named', async () => {
    const { code, errors } = await refused({ ...FILES, 'd.csv': 'Öffnungen\nMarke;Wand;Abstand\nD1;A;60\n' });
    expect(code).toBe('invalid');
    expect(errors).toContainEqual(expect.objectContaining({ sheet: 'd.csv', fix: expect.stringContaining('in the first 10 rows') }));
  });

  it('a schedule without walls says which files were read and what for', async () => {
    const { errors } = await refused({ 'a.csv': JOB, 'b.csv': STOREYS, 'c.csv': 'mark,storey,core,from_x,from_y,to_x,to_y\n' });
    expect(errors).toEqual([
      expect.objectContaining({
        pointer: '/walls',
        fix: 'a list of at least one: this schedule has no walls; read were a.csv (job by its header in row 1), b.csv (storeys by its header in row 1), c.csv (walls, no rows)',
      }),
    ]);
  });
});
