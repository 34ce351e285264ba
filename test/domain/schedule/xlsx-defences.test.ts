import { describe, expect, it } from '@jest/globals';
import { readSchedule } from '../../../src/domain/schedule/index.js';
import { HERON } from '../../support/schedule-documents.js';
import { sheetXml, workbookParts, zipArchive, type ZipPart } from '../../support/zip-archive.js';

const JOB = [['key', 'value'], ['name', 'Shed'], ['units', 'in'], ['dimensionsTo', 'axis'], ['range', 'HERON-16']];
const BOOK = {
  Job: sheetXml(JOB),
  Storeys: sheetXml([['id', 'height'], ['S1', 96]]),
  Walls: sheetXml([['mark', 'core', 'from_x', 'from_y', 'to_x', 'to_y'], ['A', 6, 0, 0, 480, 0]]),
};
const HEADER = '<row r="1">' + ['mark', 'core', 'from_x', 'from_y', 'to_x', 'to_y', 'height'].map((name) => `<c t="inlineStr"><is><t>${name}</t></is></c>`).join('') + '</row>';
const CELLS = '<c t="inlineStr"><is><t>A</t></is></c><c><v>6</v></c><c><v>0</v></c><c><v>0</v></c><c><v>480</v></c><c><v>0</v></c>';
const MARK = '<t>A</t>';

const read = (bytes: Uint8Array) => readSchedule([{ name: 'walls.xlsx', bytes }], HERON);
const walls = (rows: string, after = '', more: ZipPart[] = []): Uint8Array =>
  zipArchive(workbookParts({ ...BOOK, Walls: HEADER + rows }, more).map((part) => (part.path.endsWith('sheet3.xml') ? { ...part, content: String(part.content).replace('</sheetData>', `</sheetData>${after}`) } : part)));
const refused = async (bytes: Uint8Array) => {
  const result = await read(bytes);
  if (result.ok) throw new Error('the schedule was taken');
  return result.error;
};
const lengths = async (bytes: Uint8Array): Promise<readonly number[]> => {
  const result = await read(bytes);
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return result.value.walls.map(({ length }) => length / 25_400_000);
};
const changed = (path: string, change: Partial<ZipPart>): Uint8Array => zipArchive(workbookParts(BOOK).map((part) => (part.path === path ? { ...part, ...change } : part)));
const SHEET = 'xl/worksheets/sheet3.xml';

/** Letters that do not pack well: high bits of a linear congruential generator. */
function letters(count: number, seed: number): string {
  let state = seed * 7_919 + 1;
  const codes = new Uint8Array(count);
  for (let at = 0; at < count; at++) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    codes[at] = 97 + (state >>> 24) % 26;
  }
  return Buffer.from(codes).toString('latin1');
}

/** Zip64 extended information (APPNOTE 4.5.3): the inflated size in eight bytes. */
function zip64Size(size: bigint): Uint8Array {
  const extra = Buffer.alloc(12);
  extra.writeUInt16LE(1, 0);
  extra.writeUInt16LE(8, 2);
  extra.writeBigUInt64LE(size, 4);
  return extra;
}

describe('archives that are refused by their directory', () => {
  it('the plain one is read', async () => expect(await lengths(zipArchive(workbookParts(BOOK)))).toEqual([480]));

  it.each<[string, Uint8Array, string]>([
    ['an encrypted part', changed(SHEET, { flags: 0x0801 }), 'unreadable'],
    ['a part of 70 GB, said in zip64', changed(SHEET, { claimedSize: 0xffffffff, extra: zip64Size(70_000_000_000n) }), 'too-large'],
    ['a size that waits for a zip64 field which is not there', changed(SHEET, { claimedSize: 0xffffffff }), 'too-large'],
    ['a path that climbs out', zipArchive([...workbookParts(BOOK), { path: '../../etc/cron.d/x', content: 'x' }]), 'unreadable'],
    ['an absolute path', zipArchive([...workbookParts(BOOK), { path: '/etc/x', content: 'x' }]), 'unreadable'],
    ['a path from a drive', zipArchive([...workbookParts(BOOK), { path: 'C:/x', content: 'x' }]), 'unreadable'],
    ['two parts of one name', zipArchive([...workbookParts(BOOK), { path: SHEET, content: '<worksheet/>' }]), 'unreadable'],
    ['two parts whose names differ by case', zipArchive([...workbookParts(BOOK), { path: SHEET.toUpperCase(), content: '<worksheet/>' }]), 'unreadable'],
    ['two thousand and one parts', zipArchive([...workbookParts(BOOK), ...Array.from({ length: 2_001 }, (_, index) => ({ path: `x/${index}`, content: '' }))]), 'too-large'],
  ])('%s', async (_name, bytes, code) => expect((await refused(bytes)).code).toBe(code));

  it('parts of 60 MB that are too much together', async () => {
    const parts = Array.from({ length: 5 }, (_, index) => ({ path: `x/${index}`, content: Buffer.from(letters(500_000, index)), claimedSize: 60_000_000 }));
    expect(await refused(zipArchive([...workbookParts(BOOK), ...parts]))).toMatchObject({ code: 'too-large', errors: [{ read: expect.stringMatching(/^3000\d+ bytes inflated$/) }] });
  });

  it('a part whose bytes are not those that were packed: one flipped digit is not read as another length', async () => {
    expect((await refused(changed(SHEET, { claimedCrc: 0x12345678 }))).code).toBe('unreadable');
  });
});

describe('cells out of place are refused, never put somewhere', () => {
  it.each<[string, string]>([
    ['a column beyond XFD', `<row r="2">${CELLS}<c r="XFE2"><v>1</v></c></row>`],
    ['a column of four letters', `<row r="2">${CELLS}<c r="AAAA2"><v>1</v></c></row>`],
    ['a reference that is none', `<row r="2">${CELLS}<c r="7"><v>1</v></c></row>`],
    ['a cell of another row', `<row r="2">${CELLS}<c r="G3"><v>1</v></c></row>`],
    ['a cell that goes back', `<row r="2">${CELLS}<c r="A2"><v>1</v></c></row>`],
    ['a cell that stands twice', `<row r="2">${CELLS}<c r="F2"><v>1</v></c></row>`],
    ['a row beyond 1,048,576', `<row r="1048577">${CELLS}</row>`],
    ['a row that goes back', `<row r="5">${CELLS}</row><row r="4">${CELLS}</row>`],
    ['a row that stands twice', `<row r="5">${CELLS}</row><row r="5">${CELLS}</row>`],
    ['row nought', `<row r="0">${CELLS}</row>`],
    ['a row that is no number', `<row r="1e3">${CELLS}</row>`],
    ['a shared text that is not there', `<row r="2">${CELLS}<c t="s"><v>9</v></c></row>`],
  ])('%s', async (_name, rows) => {
    const { code, errors } = await refused(walls(rows));
    expect([code, errors[0]?.sheet]).toEqual(['unreadable', 'walls.xlsx']);
    expect(errors[0]?.fix).toContain('out of place');
  });

  it('merged cells that are no block of cells', async () => {
    expect((await refused(walls(`<row r="2">${CELLS}</row>`, '<mergeCells><mergeCell ref="B3:A1"/></mergeCells>'))).code).toBe('unreadable');
  });

  it('rows may jump forward, and the last cell of a worksheet is a place', async () => {
    const result = await read(walls(`<row r="1048576">${CELLS}<c r="XFD1048576" t="inlineStr"><is><t>x</t></is></c></row>`));
    expect(result).toMatchObject({ ok: true, value: { walls: [{ place: { row: 1_048_576 } }], unknown: [{ sheet: 'Walls', name: 'column XFD' }] } });
  });

  it('rows outside the data of a sheet are none: extensions have elements of the same names', async () => {
    expect(await lengths(walls(`<row r="2">${CELLS}</row>`, `<extLst><ext><row r="3">${CELLS.replace(MARK, '<t>B</t>')}</row></ext></extLst>`))).toEqual([480]);
  });

  it('a sheet that is listed and missing is not left out', async () => {
    const parts = workbookParts(BOOK).filter(({ path }) => path !== SHEET);
    expect(await refused(zipArchive(parts))).toMatchObject({ code: 'unreadable', errors: [{ read: 'sheet Walls' }] });
  });

  it.each(['/xl/worksheets/sheet3.xml', '../xl/worksheets/sheet3.xml', './worksheets/Sheet3.xml'])('a sheet is found at %s', async (target) => {
    const parts = workbookParts(BOOK).map((part) => (part.path.endsWith('.rels') ? { ...part, content: String(part.content).replace('worksheets/sheet3.xml', target) } : part));
    expect(await lengths(zipArchive(parts))).toEqual([480]);
  });
});

describe('texts and numbers of cells', () => {
  const strings = (...texts: string[]): ZipPart[] => [{ path: 'xl/sharedStrings.xml', content: `<sst>${texts.map((text) => `<si>${text}</si>`).join('')}</sst>` }];
  const marked = async (cell: string, more: ZipPart[] = []): Promise<string> => {
    const result = await read(walls(`<row r="2">${CELLS.replace(`<c t="inlineStr"><is>${MARK}</is></c>`, cell)}</row>`, '', more));
    return result.ok ? (result.value.walls[0]?.mark ?? '') : JSON.stringify(result.error.errors);
  };

  it.each<[string, string, ZipPart[], string]>([
    ['runs of a rich shared text are joined, its reading aids left out', '<c t="s"><v>0</v></c>', strings('<r><rPr><b/></rPr><t>W</t></r><r><t>-1</t></r><rPh sb="0" eb="1"><t>no</t></rPh>'), 'W-1'],
    ['so are those of an inline text', '<c t="inlineStr"><is><r><t>W</t></r><r><t xml:space="preserve"> 1 </t></r></is></c>', [], 'W 1'],
    ['an escaped character is that character', '<c t="inlineStr"><is><t>W_x0031_</t></is></c>', [], 'W1'],
    ['an escaped underscore is an underscore', '<c t="s"><v>0</v></c>', strings('<t>W_x005F_x0031_</t>'), 'W_x0031_'],
    ['the stored text of a formula', '<c t="str"><f>"W"&amp;1</f><v>W1</v></c>', [], 'W1'],
    ['a number', '<c><v>101</v></c>', [], '101'],
    ['a number with an exponent', '<c><v>1.01E+2</v></c>', [], '101'],
  ])('%s', async (_name, cell, more, mark) => expect(await marked(cell, more)).toBe(mark));

  it('an escaped control character is refused, not stored', async () => expect(await marked('<c t="inlineStr"><is><t>W_x0007_</t></is></c>')).toContain('without line breaks'));

  it('what only a program reads as a number is none', async () => {
    const { errors } = await refused(walls(`<row r="2">${CELLS.replace('<v>480</v>', '<v>0x1E0</v>')}</row>`));
    expect(errors).toEqual([expect.objectContaining({ sheet: 'Walls', row: 2, column: 'E (to_x)', read: '0x1E0' })]);
  });

  it('an error cell names sheet, row and column', async () => {
    const { errors } = await refused(walls(`<row r="2">${CELLS.replace('<c><v>480</v></c>', '<c t="e"><f>Plan!A1</f><v>#REF!</v></c>')}</row>`));
    expect(errors).toEqual([{ sheet: 'Walls', row: 2, column: 'E (to_x)', pointer: '/walls/0/to/0', read: '#REF!', fix: 'a value: this cell shows an error' }]);
  });

  it('shared texts are bounded all together: 900 of 40,000 characters', async () => {
    const varied = Array.from({ length: 900 }, (_, index) => `<t>${letters(200, index).repeat(200)}</t>`);
    expect(await refused(walls(`<row r="2">${CELLS}</row>`, '', strings(...varied)))).toMatchObject({ code: 'too-large', errors: [{ read: 'texts of more than 32 million characters' }] });
  });
});
