import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { readSchedule, readScheduleDocument } from '../../../src/domain/schedule/index.js';
import { declaredRectangle, HERON, rectangle } from '../../support/schedule-documents.js';
import { sheetXml, workbookParts, zipArchive } from '../../support/zip-archive.js';

const REFUSALS = ['unreadable', 'wrong-type', 'invalid', 'too-large'];

function expectWords(errors: readonly { readonly fix: string; readonly read: string }[]): void {
  expect(errors.length).toBeGreaterThan(0);
  expect(errors.length).toBeLessThanOrEqual(200);
  for (const { fix, read } of errors) {
    expect(fix).toMatch(/\S/);
    expect(read.length).toBeLessThanOrEqual(80);
  }
}

/** Every number of a schedule is finite and every text can be stored. */
function expectFinite(value: unknown): void {
  if (typeof value === 'number') expect(Number.isFinite(value)).toBe(true);
  else if (typeof value === 'string') expect(value).not.toMatch(/[\p{Cc}\p{Cs}]/u);
  else if (typeof value === 'object' && value !== null) Object.values(value).forEach(expectFinite);
}

/** Every place of a document where a value stands, as a path. */
function pathsOf(value: unknown, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  return [path, ...Object.entries(value).flatMap(([key, each]) => pathsOf(each, [...path, Array.isArray(value) ? Number(key) : key]))];
}

function replaced(document: any, path: readonly (string | number)[], value: unknown): unknown {
  if (path.length === 0) return value;
  const last = path.at(-1) as string | number;
  const parent = path.slice(0, -1).reduce((each, key) => each[key], document);
  parent[last] = value;
  return document;
}

/** The ring with a branch, a chain from wall to wall, a drawn branch, an arc, and every kind of feature. */
function hungWalls(): any {
  const wall = (mark: string, more: object) => ({ mark, storey: 'S1', core: '6', ...more });
  const tee = (on: string, at: number, side: string) => ({ joint: 'tee', on, at, side });
  return {
    ...declaredRectangle(),
    walls: [
      ...declaredRectangle().walls,
      wall('P', { length: 100, start: tee('A', 120, 'left'), end: { joint: 'corner', turn: -90, with: { wall: 'M', end: 'start' } } }),
      wall('M', { length: 343.5, end: tee('B', 116.5, 'left') }),
      wall('Q', { length: 60, end: tee('P', 50, 'left') }),
      wall('R', { from: [9000, 0], to: [9240, 240], arc: { radius: 240, turns: 'left' } }),
    ],
    features: [
      { kind: 'ledge', wall: 'A', at: 48, from: 0, to: 480, face: 'outside' },
      { kind: 'taper-top', wall: 'B', faces: 'one' },
      { kind: 'gable', wall: 'C', rise: 60, peakAt: 168 },
      { kind: 'core-change', wall: 'A', at: 64, core: '4', flush: 'outside' },
    ],
    openings: [{ mark: 'W', wall: 'C', at: 84, sill: 40, width: 84, height: 98, measured: 'concrete' }],
  };
}

describe('whatever is sent', () => {
  const odd = fc.oneof(fc.anything(), fc.constantFrom('', ' ', `12'-14"`, '1e309', 'NaN', 'A', 'S1', '\u0000', '\ud800', -1, 0, Number.NaN, 1e308, 9e15, [], [[]], {}, { __proto__: null }, null));

  it('the walls that are changed next are a schedule', () => {
    const result = readScheduleDocument(hungWalls(), HERON);
    expect(result.ok ? [] : result.error).toEqual([]);
  });

  it('one value of a document replaced by anything: a schedule or errors in words, never an exception', () => {
    fc.assert(
      fc.property(fc.constantFrom(rectangle, declaredRectangle, hungWalls), fc.nat(), odd, (make, pick, value) => {
        const paths = pathsOf(make());
        const result = readScheduleDocument(replaced(make(), paths[pick % paths.length] ?? [], value), HERON);
        if (result.ok) expectFinite(result.value);
        else expectWords(result.error);
      }),
      { numRuns: 3_000 },
    );
  });

  it('any bytes: a refusal in words', async () => {
    await fc.assert(
      fc.asyncProperty(fc.oneof(fc.uint8Array({ maxLength: 400 }), fc.string({ maxLength: 400 }).map((text) => new TextEncoder().encode(text))), async (bytes) => {
        const result = await readSchedule([{ name: 'x', bytes }], HERON);
        expect(result.ok).toBe(false);
        if (!result.ok) {
          expect(REFUSALS).toContain(result.error.code);
          expectWords(result.error.errors);
        }
      }),
      { numRuns: 500 },
    );
  });

  const walls = [['mark', 'storey', 'core', 'from_x', 'from_y', 'to_x', 'to_y'], ['A', 'S1', 6, 0, 0, 480, 0]];
  const workbook = zipArchive(workbookParts({ Walls: sheetXml(walls), Storeys: sheetXml([['id', 'height'], ['S1', 108]]), Job: sheetXml([['key', 'value'], ['units', 'in'], ['name', 'x'], ['dimensionsTo', 'axis'], ['range', 'HERON-16']]) }));

  it('the workbook that is damaged next is a schedule', async () => expect(await readSchedule([{ name: 'x', bytes: workbook }], HERON)).toMatchObject({ ok: true }));

  it('a workbook with bytes changed or its end cut off: a schedule or a refusal in words', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(fc.nat(workbook.length - 1), fc.nat(255)), { minLength: 1, maxLength: 4 }), fc.nat(workbook.length), async (changes, cut) => {
        const bytes = workbook.slice(0, cut % 3 === 0 ? cut : workbook.length);
        for (const [at, byte] of changes) if (at < bytes.length) bytes[at] = byte;
        const result = await readSchedule([{ name: 'x', bytes }], HERON);
        if (!result.ok) expectWords(result.error.errors);
      }),
      { numRuns: 500 },
    );
  });

  it('walls in any order are the same walls', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4 }), (order) => {
        const document = rectangle();
        const result = readScheduleDocument({ ...document, walls: order.map((index) => document.walls[index]) }, HERON);
        const plain = readScheduleDocument(rectangle(), HERON);
        if (!result.ok || !plain.ok) throw new Error('the rectangle is a schedule');
        const byMark = (walls: typeof plain.value.walls) => Object.fromEntries(walls.map(({ place: _, ...wall }) => [wall.mark, wall]));
        expect(byMark(result.value.walls)).toEqual(byMark(plain.value.walls));
      }),
    );
  });
});
