import { describe, expect, it } from '@jest/globals';
import { MAX_FILE_BYTES, readSchedule } from '../../../src/domain/schedule/index.js';
import { HERON, rectangle } from '../../support/schedule-documents.js';
import { sheetXml, workbookParts, zipArchive, type ZipPart } from '../../support/zip-archive.js';

const bytesOf = (content: string): Uint8Array => new TextEncoder().encode(content);
const refused = async (bytes: Uint8Array | string, name = 'upload') => {
  const result = await readSchedule([{ name, bytes: typeof bytes === 'string' ? bytesOf(bytes) : bytes }], HERON);
  if (result.ok) throw new Error('the schedule was taken');
  return result.error;
};
/** What was asked of time and memory is generous: two busy cores. */
async function bounded<T>(work: () => Promise<T>, seconds: number, megabytes: number): Promise<T> {
  const [started, before] = [performance.now(), process.memoryUsage().rss];
  const result = await work();
  expect((performance.now() - started) / 1000).toBeLessThan(seconds);
  expect((process.memoryUsage().rss - before) / 1024 / 1024).toBeLessThan(megabytes);
  return result;
}

const WALL_SHEET = [['mark', 'storey', 'core', 'from_x', 'from_y', 'to_x', 'to_y'], ['A', 'S1', 6, 0, 0, 480, 0]];
const BOOK = { Walls: sheetXml(WALL_SHEET) };
const withPart = (path: string, content: string): ZipPart[] => [...workbookParts(BOOK).filter((part) => part.path !== path), { path, content }];
const WALLS_PART = 'xl/worksheets/sheet1.xml';

describe('what a file is, its bytes say', () => {
  it('a JSON document may be called anything and may carry a byte order mark', async () => {
    for (const name of ['job.json', 'job.xlsx', 'job']) {
      expect(await readSchedule([{ name, bytes: bytesOf(`\ufeff ${JSON.stringify(rectangle())}`) }], HERON)).toMatchObject({ ok: true, value: { name: 'Rectangle' } });
    }
    expect(await readSchedule([{ name: 'x', bytes: new Uint8Array(Buffer.from(`\ufeff${JSON.stringify(rectangle())}`, 'utf16le')) }], HERON)).toMatchObject({ ok: true });
  });

  it.each<[string, Uint8Array | string, string, string]>([
    ['an empty file', '', 'unreadable', 'this one is empty'],
    ['a file of spaces', ' \n \n', 'unreadable', 'this one is empty'],
    ['broken JSON', '{"format":"wallcourse/schedule@1",', 'unreadable', 'JSON that parses'],
    ['a text called .xlsx', 'Dear supplier, please send forms.', 'wrong-type', 'a table of walls'],
    ['HTML', '<html><body>mark, core</body></html>', 'wrong-type', 'a table of walls'],
    ['a list', '[1, 2, 3]', 'wrong-type', 'an object with "format"'],
    ['an object of another kind', '{"orders": []}', 'wrong-type', 'an object with "format"'],
    ['a price list', '{"format": "wallcourse/prices@1", "name": "x"}', 'wrong-type', 'an object with "format"'],
    ['an image', new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]), 'wrong-type', 'JSON, an .xlsx workbook or CSV files'],
    ['NUL bytes', new Uint8Array(100), 'wrong-type', 'JSON, an .xlsx workbook or CSV files'],
    ['an old workbook', new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0]), 'wrong-type', 'saved as .xlsx'],
    ['a table in an old encoding', new Uint8Array([...bytesOf('mark,core,length\nA,6,6'), 0xbd]), 'unreadable', 'CSV UTF-8'],
    ['a quotation mark that is never closed', 'mark,core,length\nA,6,"12\nB,6,12\n', 'unreadable', 'every quotation mark'],
    ['an archive that is no workbook', zipArchive([{ path: 'readme.txt', content: 'hello' }]), 'wrong-type', 'this archive holds no workbook'],
    ['an empty archive', zipArchive([]), 'wrong-type', 'this archive holds no workbook'],
    ['a workbook without a table', zipArchive(workbookParts({ Notes: sheetXml([['hello', 'world']]) })), 'wrong-type', 'a table of walls'],
    ['a workbook cut short', zipArchive(workbookParts(BOOK)).slice(0, 300), 'unreadable', 'damaged or encrypted'],
    ['a workbook with a damaged part', damaged(), 'unreadable', 'save it again as .xlsx'],
    ['a workbook whose XML is not well formed', zipArchive(withPart(WALLS_PART, '<worksheet><row></worksheet>')), 'unreadable', 'its XML is damaged'],
  ])('%s', async (_name, bytes, code, fix) => {
    const refusal = await refused(bytes, 'plan.xlsx');
    expect(refusal.code).toBe(code);
    expect(refusal.errors).toEqual([expect.objectContaining({ fix: expect.stringContaining(fix) })]);
  });

  it('a JSON document and tables do not go together, and neither do two documents', async () => {
    const json = { name: 'a.json', bytes: bytesOf(JSON.stringify(rectangle())) };
    for (const other of [json, { name: 'b.csv', bytes: bytesOf('mark,core,length\nA,6,100\n') }]) {
      expect(await readSchedule([json, other], HERON)).toMatchObject({ ok: false, error: { code: 'invalid', errors: [{ fix: 'one JSON document by itself, or tables' }] } });
    }
  });

  it('no file at all', async () => expect(await readSchedule([], HERON)).toMatchObject({ ok: false, error: { code: 'wrong-type' } }));
});

function damaged(): Uint8Array {
  const bytes = zipArchive(workbookParts(BOOK));
  const at = Buffer.from(bytes).indexOf('xl/workbook.xml') + 'xl/workbook.xml'.length;
  bytes.fill(0xff, at, at + 40);
  return bytes;
}

describe('excessive files', () => {
  const zeros = (megabytes: number): Uint8Array => new Uint8Array(megabytes * 1024 * 1024);

  it.each<[string, () => ZipPart[]]>([
    ['a part that packs a thousand to one', () => [...workbookParts(BOOK), { path: 'xl/media/zero.bin', content: zeros(16) }]],
    ['a sheet that packs a thousand to one', () => withPart(WALLS_PART, `<worksheet>${' '.repeat(8 * 1024 * 1024)}</worksheet>`)],
    ['a part that claims more than 64 MB', () => [...workbookParts(BOOK), { path: 'xl/media/a.bin', content: 'x', claimedSize: 64 * 1024 * 1024 + 1 }]],
    ['two thousand parts', () => [...workbookParts(BOOK), ...Array.from({ length: 2000 }, (_, index) => ({ path: `xl/media/${index}`, content: '' }))]],
  ])('%s is refused by the directory', async (_name, parts) => {
    const archive = zipArchive(parts());
    const refusal = await bounded(() => refused(archive), 5, 128);
    expect(refusal).toMatchObject({ code: 'too-large', errors: [{ fix: expect.stringContaining('a workbook that holds the schedule and no more') }] });
  });

  it('a part that inflates to more than the directory says is cut off', async () => {
    const parts = withPart(WALLS_PART, `<worksheet>${' '.repeat(16 * 1024 * 1024)}</worksheet>`).map((part) => (part.path === WALLS_PART ? { ...part, claimedSize: 1000 } : part));
    const archive = zipArchive(parts);
    expect((await bounded(() => refused(archive), 5, 100)).code).toMatch(/too-large|unreadable/);
  });

  it.each([
    ['entities', '<!DOCTYPE w [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;">]><worksheet><sheetData><row><c t="inlineStr"><is><t>&b;</t></is></c></row></sheetData></worksheet>'],
    ['an external entity', '<!DOCTYPE w SYSTEM "file:///etc/hostname"><worksheet/>'],
  ])('%s: a document type declaration is refused unread', async (_name, xml) => {
    for (const path of [WALLS_PART, 'xl/sharedStrings.xml', 'xl/styles.xml', 'xl/workbook.xml']) {
      expect(await refused(zipArchive(withPart(path, xml)))).toMatchObject({ code: 'unreadable', errors: [{ fix: expect.stringContaining('without document type declarations') }] });
    }
  });

  it.each([
    ['nesting', `<worksheet>${'<a>'.repeat(500_000)}`],
    ['attributes', `<worksheet ${Array.from({ length: 100_000 }, (_, index) => `a${index}=""`).join(' ')}/>`],
  ])('a million of %s costs nothing', async (_name, xml) => {
    const archive = zipArchive(withPart('xl/styles.xml', xml.padEnd(xml.length + 5)));
    expect((await bounded(() => refused(archive), 5, 150)).code).toMatch(/unreadable|too-large/);
  });

  it('headers and settings of many brackets and spaces take no time', async () => {
    const long = `a${' '.repeat(200_000)}b`;
    expect((await bounded(() => refused(`mark,core,length,"${long}"\nA,7,100\n`), 5, 150)).code).toBe('invalid');
    expect((await bounded(() => refused(`key,value\n"${'('.repeat(200_000)}",1\n`), 5, 150)).code).toBe('invalid');
  });

  it('an undeclared entity is not well formed', async () => expect((await refused(zipArchive(withPart(WALLS_PART, '<worksheet>&b;</worksheet>')))).code).toBe('unreadable'));

  it('one hundred thousand walls are refused at a clear limit without reading all: CSV', async () => {
    const csv = `mark,storey,core,from_x,from_y,to_x,to_y\n${Array.from({ length: 100_000 }, (_, index) => `W${index},S1,6,0,${index * 20},480,${index * 20}`).join('\n')}`;
    const refusal = await bounded(() => refused(csv), 5, 200);
    expect(refusal).toEqual({ code: 'too-large', errors: [expect.objectContaining({ sheet: 'upload', row: 10_002, fix: 'at most 10,000 walls: split the schedule into several jobs' })] });
  });

  it('one hundred thousand walls are refused at a clear limit without reading all: XLSX', async () => {
    const rows = Array.from({ length: 100_000 }, (_, index) => [`W${index}`, 'S1', 6, 0, index * 20 + 0.125 * (index % 7), 480, index * 20]);
    const archive = zipArchive(workbookParts({ Walls: sheetXml([...WALL_SHEET.slice(0, 1), ...rows]) }));
    const refusal = await bounded(() => refused(archive), 10, 250);
    expect(refusal).toEqual({ code: 'too-large', errors: [expect.objectContaining({ sheet: 'Walls', row: 10_002 })] });
  });

  it('one hundred thousand walls are refused at a clear limit: JSON', async () => {
    const json = JSON.stringify({ ...rectangle(), walls: Array.from({ length: 100_000 }, (_, index) => ({ mark: `W${index}`, storey: 'S1', core: '6', from: [0, index * 20], to: [480, index * 20] })) });
    const refusal = await bounded(() => refused(json), 5, 300);
    expect(refusal).toEqual({ code: 'too-large', errors: [expect.objectContaining({ read: '100000 walls', fix: 'at most 10,000 walls: split the schedule into several jobs' })] });
  });

  it('ten thousand walls and fifty thousand openings are read', async () => {
    const walls = Array.from({ length: 10_000 }, (_, index) => ({ mark: `W${index}`, storey: 'S1', core: '6', from: [0, index * 20], to: [480, index * 20] }));
    const openings = Array.from({ length: 50_000 }, (_, index) => ({ wall: `W${index % 10_000}`, at: 10 + 90 * Math.floor(index / 10_000), sill: 0, width: 36, height: 84 }));
    const json = JSON.stringify({ ...rectangle(), walls, openings });
    const result = await bounded(() => readSchedule([{ name: 'large.json', bytes: bytesOf(json) }], HERON), 20, 600);
    expect(result).toMatchObject({ ok: true });
  });

  it('more bytes than an upload may have', async () => expect(await refused(new Uint8Array(MAX_FILE_BYTES + 1))).toMatchObject({ code: 'too-large', errors: [{ fix: 'at most 32 MB in all' }] }));

  it('a million-character name, in every form', async () => {
    const name = 'x'.repeat(1_000_000);
    const error = expect.objectContaining({ read: `${'x'.repeat(79)}…`, fix: expect.stringContaining('1 to 200 characters') });
    expect((await refused(JSON.stringify({ ...rectangle(), name }))).errors).toEqual([error]);
    expect((await refused(`key,value\nname,${name}\nunits,in\n`)).errors).toContainEqual(error);
    expect((await refused(zipArchive(workbookParts({ Job: sheetXml([['key', 'value'], ['name', `${name}y`]]) }).map((part) => part)))).errors[0]).toBeDefined();
  });

  it('a million columns and deep nesting end in words', async () => {
    expect((await bounded(() => refused(`mark,core,length${',x'.repeat(500_000)}\nA,6,100\n`), 10, 400)).code).toBe('invalid');
    expect((await bounded(() => refused('['.repeat(1_000_000)), 5, 200)).code).toBe('unreadable');
    expect((await refused(`{"walls":${'['.repeat(5000)}${']'.repeat(5000)}}`)).code).toBe('invalid');
  });

  it('NUL bytes in a cell and a mark are refused, not stored', async () => {
    const { errors } = await refused(JSON.stringify({ ...rectangle(), walls: [{ mark: 'A\u0000', storey: 'S1', core: '6', from: [0, 0], to: [480, 0] }] }));
    expect(errors[0]).toMatchObject({ pointer: '/walls/0/mark', read: 'A\ufffd' });
  });

  it('duplicated marks name the row that has the mark already', async () => {
    const { errors } = await refused('mark,core,length\nA,6,100\nB,6,100\nA,6,120\n');
    expect(errors).toContainEqual({ sheet: 'upload', row: 4, column: 'A (mark)', pointer: '/walls/2/mark', read: 'A', fix: 'a mark that no other wall has; row 2 has it already' });
  });

  it('three hundred errors are 199 and how many more', async () => {
    const csv = `mark,core,length\n${Array.from({ length: 300 }, (_, index) => `W${index},7,100`).join('\n')}`;
    const { errors } = await refused(csv);
    expect(errors).toHaveLength(200);
    expect(errors[199]?.fix).toMatch(/^10\d more errors/);
  });
});
