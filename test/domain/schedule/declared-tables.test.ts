import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { readSchedule, readScheduleDocument } from '../../../src/domain/schedule/index.js';
import { COLUMNS, type RowKind } from '../../../src/domain/schedule/tabular/columns.js';
import { meantCell } from '../../../src/domain/schedule/tabular/meant-cell.js';
import { HERON } from '../../support/schedule-documents.js';
import { csvOf, workbookOf, type TableCell, type Tables } from '../../support/tabular-samples.js';

const withoutPlaces = (schedule: unknown): unknown => JSON.parse(JSON.stringify(schedule, (key, value) => (key === 'place' ? undefined : value)));
const ofDocument = (document: unknown) => readScheduleDocument(document, HERON);
const ofTables = (tables: Tables) =>
  readSchedule(Object.entries(tables).map(([name, rows]) => ({ name: `${name}.csv`, bytes: new TextEncoder().encode(csvOf(rows)) })), HERON);
const taken = <T>(result: { ok: true; value: T } | { ok: false; error: unknown }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.error, null, 1));
  return result.value;
};
const at = (row: any, path: string): any => path.split('/').reduce((value, key) => value?.[key], row);

/** A document as tables: every column by its design name or by one of its synonyms, as `pick` says, empty columns left out. */
function tablesOf(document: any, pick: (names: readonly string[]) => string, cell: (field: string, value: TableCell) => TableCell = (_field, value) => value): Tables {
  const job = ['name', 'units', 'dimensionsTo', 'range'].map((key) => [key, document[key]]);
  const kinds = (Object.keys(COLUMNS) as RowKind[]).filter((kind) => document[kind]?.length > 0);
  return {
    job: [['key', 'value'], ...job],
    ...Object.fromEntries(kinds.map((kind) => {
      const columns = COLUMNS[kind].filter(({ field }) => document[kind].some((row: any) => at(row, field) !== undefined));
      const header = columns.map(({ name, also }) => pick([name, ...also]));
      return [kind, [header, ...document[kind].map((row: any) => columns.map(({ field }) => (at(row, field) === undefined ? null : cell(field, at(row, field)))))]];
    })),
  };
}

/** Words a contractor may type for the document's own, by field. */
const TYPED: Readonly<Record<string, Readonly<Record<string, readonly string[]>>>> = {
  joint: { corner: ['Corner', 'CORNER', 'c', 'L'], tee: ['T', 'Tee', ' t '], free: ['Free', 'FREE END', 'f'] },
  side: { left: ['L', 'left', 'LH', 'l.h.'], right: ['R', 'Right', 'rh'] },
  end: { start: ['Start', 'S', 'from'], end: ['END', 'e', 'to'] },
  face: { outside: ['Out', 'EXT', 'outside face'], inside: ['in', 'Int.'] },
  faces: { one: ['1', 'One'], both: ['2', 'BOTH'] },
  flush: { outside: ['out'], inside: ['IN'], centre: ['Center', 'ctr'] },
  kind: { ledge: ['Ledge'], 'taper-top': ['Taper', 'taper top'], gable: ['GABLE'], 'core-change': ['Core change'] },
};

const corner = (turn: number, wall: string, end: string) => ({ joint: 'corner', turn, with: { wall, end } });
const turns = fc.constantFrom(90, -90, 45, -45, 22.5, 67.5);
const chainPart = fc.record({
  turn: turns, core: fc.constantFrom('4', '6', '8', '10'), length: fc.integer({ min: 120, max: 900 }), height: fc.constantFrom(undefined, 96, `8'-4"`), base: fc.constantFrom(undefined, 0, 16),
  forward: fc.boolean(), declaredBy: fc.constantFrom('first', 'second', 'both'), dimensionsTo: fc.constantFrom(undefined, 'axis', 'concrete-face'),
});
const branch = fc.record({ on: fc.nat(20), share: fc.nat(100), side: fc.constantFrom('left', 'right'), end: fc.constantFrom('start', 'end'), core: fc.constantFrom('6', '8'), turn: fc.option(turns, { nil: undefined }) });
const feature = fc.record({ on: fc.nat(20), kind: fc.constantFrom('ledge', 'taper-top', 'gable', 'core-change'), face: fc.constantFrom('outside', 'inside'), faces: fc.constantFrom('one', 'both'), flush: fc.constantFrom('outside', 'inside', 'centre') });
const opening = fc.record({ on: fc.nat(20), share: fc.nat(60), head: fc.constantFrom(80, 100, 130), measured: fc.constantFrom('concrete', 'rough') });

/** Declared plans: a chain of walls written either way, branches and chains on them, openings and features; some of them refused. */
const plans = fc.record({ parts: fc.array(chainPart, { minLength: 1, maxLength: 6 }), branches: fc.array(branch, { maxLength: 4 }), features: fc.array(feature, { maxLength: 3 }), openings: fc.array(opening, { maxLength: 3 }) }).map(({ parts, branches, features, openings }) => {
  const walls: any[] = parts.map(({ core, length, height, base, dimensionsTo }, index) => ({ mark: `W${index + 1}`, storey: 'Ground floor', core, length, height, base, dimensionsTo }));
  for (let index = 0; index + 1 < walls.length; index += 1) {
    const [first, second] = [walls[index], walls[index + 1]];
    const [leaves, enters] = [parts[index]!.forward ? 'end' : 'start', parts[index + 1]!.forward ? 'start' : 'end'];
    const { turn, declaredBy } = parts[index]!;
    if (declaredBy !== 'second') first[leaves] = corner(leaves === 'end' ? turn : -turn, second.mark, enters);
    if (declaredBy !== 'first') second[enters] = corner(enters === 'start' ? turn : -turn, first.mark, leaves);
  }
  branches.forEach(({ on, share, side, end, core, turn }, index) => {
    const through = walls[on % walls.length];
    const mark = `T${index + 1}`;
    const other = end === 'start' ? 'end' : 'start';
    walls.push({ mark, storey: 'Ground floor', core, length: 60, [end]: { joint: 'tee', on: through.mark, at: `${(through.length * share) / 100} in`, side }, ...(turn === undefined ? { [other]: { joint: 'free' } } : { [other]: corner(turn, `M${index + 1}`, 'start') }) });
    if (turn !== undefined) walls.push({ mark: `M${index + 1}`, storey: 'Ground floor', core, length: 48 });
  });
  const one = (on: number) => walls[on % walls.length];
  const fields = ({ on, kind, face, faces, flush }: { on: number; kind: string; face: string; faces: string; flush: string }) => ({
    ledge: { kind, wall: one(on).mark, at: `4'-0"`, from: 0, to: one(on).length, face },
    'taper-top': { kind, wall: one(on).mark, faces },
    gable: { kind, wall: one(on).mark, rise: 60, peakAt: one(on).length / 2 },
    'core-change': { kind, wall: one(on).mark, at: 64, core: '4', flush },
  })[kind];
  return {
    format: 'wallcourse/schedule@1', name: 'Declared', units: 'in', dimensionsTo: 'foam-face', range: 'HERON-16',
    storeys: [{ id: 'Ground floor', height: `9'-0"`, grade: 'below' }],
    walls, features: features.map(fields),
    openings: openings.map(({ on, share, head, measured }, index) => ({ mark: `O${index}`, wall: one(on).mark, at: (one(on).length * share) / 100, sill: 0, width: 30, height: head, measured })),
  };
});

describe('declared plans as tables', () => {
  it('read as the document does, under any of the headers and in a contractor’s words; refused at the same places', async () => {
    let read = 0;
    await fc.assert(
      fc.asyncProperty(plans, fc.infiniteStream(fc.nat()), async (document, stream) => {
        const next = (): number => stream.next().value as number;
        const bare = JSON.parse(JSON.stringify(document));
        const expected = ofDocument(bare);
        if (expected.ok) read += 1;
        const byName = tablesOf(bare, ([name]) => name ?? '');
        const typed = tablesOf(bare, (names) => names[next() % names.length]!, (field, value) => {
          const words = TYPED[field.split('/').at(-1) ?? '']?.[String(value)];
          if (words) return words[next() % words.length]!;
          if (field.endsWith('/turn') && next() % 2) return Number(value) < 0 ? `${-Number(value)} R` : `Left ${value}°`;
          if (field === 'core' && next() % 2) return `${value}"`;
          if (field === 'storey' || field === 'wall' || field.endsWith('/on') || field.endsWith('with/wall')) return next() % 2 ? ` ${String(value).toLowerCase()} ` : String(value).toUpperCase();
          return value;
        });
        for (const tables of [byName, typed]) {
          const result = await ofTables(tables);
          if (expected.ok) expect(withoutPlaces(taken(result))).toEqual(withoutPlaces(expected.value));
          else expect(result.ok ? [] : result.error.errors.map(({ pointer }) => pointer)).toEqual(expected.error.map(({ pointer }) => pointer));
        }
      }),
      { numRuns: 80 },
    );
    expect(read).toBeGreaterThan(20);
  }, 120_000);
});

describe('a workbook as a contractor types it', () => {
  const job = [['KEY', 'VALUE'], ['Name', 'Pump house'], ['Units', 'IN'], ['Dims to', 'Face of foam'], ['Range', 'HERON-16'], ['Measured', 'R.O.']];
  const storeys = [['FLOOR', 'HT', 'GRADE'], ['1st floor', `9'-0"`, 'Above grade'], ['BASEMENT', `8'`, 'b.g.']];
  const walls: TableCell[][] = [
    ['PUMP HOUSE WALL LIST'], [],
    ['Wall No.', 'Level', 'Core', 'Length', 'Start joint', 'Start with', 'Start with end', 'Start turn', 'Tee on', 'End on', 'End at (ft)', 'End side', 'End joint'],
    ['A', '1ST FLOOR', `6"`, `40'-0"`, null, null, null, null],
    [],
    ['B', '1st  floor', '6 in', `28'`, 'C', 'a', 'End', '90 L', null],
    ['C', '1st floor', 6, `40'-0"`, 'Corner', ' B ', 'E', '90° left', null],
    ['D', '1st floor', 6, `28'-0"`, 'L', 'C', 'end', 90, null],
    ['P', '1st floor', `6"`, `12'-0"`, '-', '-', '-', 'n/a', null, 'A', 10, 'L', 'T'],
  ];
  const features: TableCell[][] = [['Feature', 'Wall', 'Height', 'From', 'To', 'Side', 'Rise', 'Ridge at'], ['LEDGE', 'a', `4'-0"`, 0, 240, 'Ext.', '-', '-'], ['Gable', 'C', null, null, null, null, `5'`, `20'`]];
  const openings: TableCell[][] = [['No', 'In wall', 'Distance', 'Sill ht', 'W', 'H'], ['D1', 'A', `5'-0"`, 0, 36, 84]];
  const expected = {
    format: 'wallcourse/schedule@1', name: 'Pump house', units: 'in', dimensionsTo: 'foam-face', range: 'HERON-16',
    storeys: [{ id: '1st floor', height: 108, grade: 'above' }, { id: 'BASEMENT', height: 96, grade: 'below' }],
    walls: [
      { mark: 'A', storey: '1st floor', core: '6', length: 480 },
      { mark: 'B', storey: '1st floor', core: '6', length: 336, start: corner(90, 'A', 'end') },
      { mark: 'C', storey: '1st floor', core: '6', length: 480, start: corner(90, 'B', 'end') },
      { mark: 'D', storey: '1st floor', core: '6', length: 336, start: corner(90, 'C', 'end') },
      { mark: 'P', storey: '1st floor', core: '6', length: 144, end: { joint: 'tee', on: 'A', at: 120, side: 'left' } },
    ],
    openings: [{ mark: 'D1', wall: 'A', at: 60, sill: 0, width: 36, height: 84, measured: 'rough' }],
    features: [{ kind: 'ledge', wall: 'A', at: 48, from: 0, to: 240, face: 'outside' }, { kind: 'gable', wall: 'C', rise: 60, peakAt: 240 }],
  };
  const tables: Tables = { job, storeys, walls, features, openings };

  it('is the schedule that he means: feet and inches, L and T, capitals, blank rows, dashes', async () => {
    const meant = withoutPlaces(taken(ofDocument(expected))) as { unknown: unknown };
    const csv = withoutPlaces(taken(await ofTables(tables))) as { unknown: unknown };
    expect({ ...csv, unknown: [] }).toEqual({ ...meant, unknown: [] });
    const book = taken(await readSchedule([{ name: 'book.xlsx', bytes: await workbookOf(tables) }], HERON));
    expect({ ...(withoutPlaces(book) as object), unknown: [] }).toEqual({ ...meant, unknown: [] });
    expect(book.walls.map(({ place }) => place.row)).toEqual([4, 6, 7, 8, 9]);
  });

  it('a column whose end is not said is listed and not read', async () => {
    expect(taken(await ofTables(tables)).unknown).toContainEqual({ sheet: 'walls.csv', name: 'Tee on' });
  });

  it.each<[string, number, number, TableCell, string, string]>([
    ['a wall that is nearly one', 8, 9, 'A1', 'J (End on)', 'A1 is none: A, B, C, D, P'],
    ['a side that is none', 8, 11, 'north', 'L (End side)', 'one of: left, right'],
    ['a hand without its turn', 5, 7, 'L', 'H (Start turn)', 'a turn in degrees'],
    ['a hand and a sign', 5, 7, '-90 R', 'H (Start turn)', 'a turn in degrees'],
    ['two hands', 5, 7, 'L 90 R', 'H (Start turn)', 'a turn in degrees'],
    ['a joint that is none', 5, 4, 'weld', 'E (Start joint)', 'one of: corner, tee, free'],
    ['a station past its wall', 8, 10, 40.1, 'K (End at (ft))', `40'-0" long`],
    ['a partner that is missing', 6, 5, 'Q', 'F (Start with)', 'Q is none'],
  ])('%s: row, column, what was read and what would do', async (_name, index, column, value, shown, fix) => {
    const changed = walls.map((row, at) => (at === index ? row.map((cell, each) => (each === column ? value : cell)) : row));
    const result = await ofTables({ ...tables, walls: changed });
    expect(result).toMatchObject({ ok: false, error: { errors: expect.arrayContaining([expect.objectContaining({ sheet: 'walls.csv', row: index + 1, column: shown, read: String(value), fix: expect.stringContaining(fix) })]) } });
  });

  it('names that differ by more than case and spaces, or by that alone from two marks, are not guessed', async () => {
    const two = (mark: string) => ({ job, storeys, walls: [['Mark', 'Level', 'Core', 'Length', 'End joint', 'End on', 'End at', 'End side'], ['Wa', '1st floor', 6, 480], ['wA', '1st floor', 6, 480], ['P', '1st floor', 6, 48, 'T', mark, 100, 'L']] as TableCell[][] });
    expect(taken(await ofTables(two('wA'))).walls).toHaveLength(3);
    expect(await ofTables(two('WA'))).toMatchObject({ ok: false, error: { errors: [{ read: 'WA', fix: expect.stringContaining('WA is none: Wa, wA') }] } });
    expect(await ofTables(two('W-a'))).toMatchObject({ ok: false, error: { errors: [{ read: 'W-a' }] } });
  });
});

describe('a cell that has words of its own', () => {
  const turn = { unit: 'degrees' } as const;
  const core = { unit: 'core' } as const;
  it.each<[string, Parameters<typeof meantCell>[0], TableCell, unknown]>([
    ['a left turn', turn, '90 L', '90'], ['a right turn', turn, '45° right', '-45'], ['a hand before it', turn, 'RH 22.5', '-22.5'], ['a signed turn', turn, '-90', '-90'],
    ['a number', turn, -90, -90], ['a core in inches', core, `8"`, '8'], ['the same in words', core, '10 inch', '10'], ['a core that is a number', core, 6, 6],
    ['a core in millimetres', core, '150 mm', '150 mm'], ['a dash', turn, ' – ', undefined], ['n/a', core, 'N/A', undefined], ['a mark with a dash', { unit: null }, 'A-1', 'A-1'],
  ])('%s', (_name, rule, cell, meant) => expect(meantCell(rule, cell as string | number)).toEqual(meant));
});
