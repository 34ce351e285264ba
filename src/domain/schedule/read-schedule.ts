import { InputErrorList, shownText, type InputError } from '../evidence/input-error.js';
import { failure, success, type Result } from '../evidence/result.js';
import { contentKind } from './content-kind.js';
import { csvRows } from './csv/read-csv.js';
import type { DocumentSource } from './document-source.js';
import { FileRefusal, type RefusalCode } from './file-refusal.js';
import { modelDocument } from './ifc/model-document.js';
import type { StepLines } from './ifc/step-model.js';
import { DOCUMENT_PLACES } from './places.js';
import { DOCUMENT_KEYS, readDocumentSource, SCHEDULE_FORMAT } from './read-schedule-document.js';
import type { Schedule } from './schedule.js';
import type { ScheduleContext } from './schedule-context.js';
import { MAX_FEATURES, MAX_FILE_BYTES, MAX_FILES, MAX_OPENINGS, MAX_STOREYS, MAX_WALLS } from './schedule-limits.js';
import { documentOfTables } from './tabular/document-of-tables.js';
import { readTable, type RowCount } from './tabular/read-table.js';
import { HEADER_EXAMPLES } from './tabular/sheet-names.js';
import { sheetsRead } from './tabular/sheets-read.js';
import { sortStrangeSheets } from './tabular/strange-sheets.js';
import { isTable, type StrangeSheet, type Table } from './tabular/table.js';
import { textSlices } from './text-encoding.js';
import { workbookSheets } from './xlsx/workbook.js';

export interface UploadedFile {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** What was taken out of a building model, where the bytes are one. */
  readonly model?: StepLines;
}

export interface ScheduleRefusal {
  readonly code: RefusalCode;
  readonly errors: readonly InputError[];
}

/** What one file gave: a JSON document, a building model, or its sheets. */
type FileContent = { readonly document: unknown } | { readonly model: StepLines } | { readonly sheets: readonly (Table | StrangeSheet)[] };

/**
 * The schedule of an upload: one JSON document or building model, or tables in CSV files and XLSX workbooks together.
 *
 * What a file is, its bytes say; what a table holds, its header row says; names of files and sheets only serve to tell where an
 * error is. Refused as `unreadable` (damaged, empty, broken JSON), `wrong-type` (no schedule at all), `too-large` (past a limit of
 * `schedule-limits`; reading stops there), else `invalid` with every error of every table.
 */
export async function readSchedule(
  files: readonly UploadedFile[],
  contexts: ScheduleContext | readonly ScheduleContext[],
): Promise<Result<Schedule, ScheduleRefusal>> {
  try {
    checkFiles(files);
    const count: RowCount = new Map();
    const contents: { name: string; content: FileContent }[] = [];
    for (const file of files) contents.push({ name: file.name, content: await readFile(file, files.length > 1, count) });
    const source = sourceOf(contents, [contexts].flat());
    if (!source.ok) return failure({ code: 'invalid', errors: source.error });
    const schedule = readDocumentSource(source.value, contexts);
    return schedule.ok ? schedule : failure({ code: 'invalid', errors: schedule.error });
  } catch (error) {
    if (error instanceof FileRefusal) return failure({ code: error.code, errors: [errorOf(error)] });
    throw error;
  }
}

function checkFiles(files: readonly UploadedFile[]): void {
  if (files.length === 0) throw new FileRefusal('wrong-type', '', 'no file', 'a schedule: JSON, an .xlsx workbook or CSV files');
  if (files.length > MAX_FILES) throw new FileRefusal('too-large', '', `${files.length} files`, `at most ${MAX_FILES} files`);
  const total = files.reduce((bytes, file) => bytes + file.bytes.length, 0);
  if (total > MAX_FILE_BYTES)
    throw new FileRefusal(
      'too-large',
      files[0]?.name ?? '',
      `${total} bytes`,
      `at most ${MAX_FILE_BYTES / 1024 / 1024} MB in all`,
    );
}

async function readFile(file: UploadedFile, several: boolean, count: RowCount): Promise<FileContent> {
  const name = shownText(file.name);
  const kind = contentKind(file.bytes);
  if (kind === 'empty') throw new FileRefusal('unreadable', name, '', 'a file that holds something: this one is empty');
  if (kind === 'old-workbook')
    throw new FileRefusal('wrong-type', name, 'an old or encrypted workbook', 'the workbook saved as .xlsx without a password');
  if (kind === 'binary')
    throw new FileRefusal('wrong-type', name, 'neither text nor a workbook', 'a schedule: JSON, an .xlsx workbook or CSV files');
  if (kind === 'model') {
    if (file.model) return { model: file.model };
    throw new FileRefusal('unreadable', name, '', 'a building model that can be opened');
  }
  if (kind === 'json') return { document: readJson(name, file.bytes) };
  if (kind === 'text') return { sheets: [await readTable({ sheet: name, name: null }, csvRows(name, file.bytes), count)] };
  const sheets: (Table | StrangeSheet)[] = [];
  for (const { name: own, rows } of await workbookSheets(name, file.bytes))
    sheets.push(await readTable({ sheet: shownText(several ? `${name}/${own}` : own), name: own }, rows(), count));
  return { sheets };
}

function readJson(name: string, bytes: Uint8Array): unknown {
  const text = [...textSlices(name, bytes)].join('');
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new FileRefusal(
      'unreadable',
      name,
      '',
      `JSON that parses: ${error instanceof Error ? shownText(error.message) : 'this does not'}`,
    );
  }
}

/** The document that the files make together; where no table was found at all, what keeps them from being tables. */
function sourceOf(
  contents: readonly { name: string; content: FileContent }[],
  contexts: readonly ScheduleContext[],
): Result<DocumentSource, readonly InputError[]> {
  const single = contents.find(({ content }) => !('sheets' in content));
  if (single && contents.length > 1)
    throw new FileRefusal('invalid', shownText(single.name), `${contents.length} files`, 'model' in single.content ? 'one building model by itself' : 'one JSON document by itself, or tables');
  if (single && 'model' in single.content) {
    const [context = { cores: null, courseHeight: null, buckThickness: null }] = contexts;
    return modelDocument(shownText(single.name), single.content.model, context, SCHEDULE_FORMAT);
  }
  const documents = contents.flatMap(({ name, content }) =>
    'document' in content ? [{ name, document: content.document }] : [],
  );
  const [first] = documents;
  if (first) return success(documentSource(first.name, first.document));
  return sourceOfTables(contents.flatMap(({ content }) => ('sheets' in content ? content.sheets : [])));
}

function sourceOfTables(sheets: readonly (Table | StrangeSheet)[]): Result<DocumentSource, readonly InputError[]> {
  const tables = sheets.filter(isTable);
  const strange = sheets.filter((sheet): sheet is StrangeSheet => !isTable(sheet));
  const { errors, others } = sortStrangeSheets(strange);
  if (tables.length === 0) {
    if (errors.some(({ sheet }) => strange.some((each) => each.sheet === sheet && each.name !== null))) return failure(errors);
    const [stranger] = strange;
    throw new FileRefusal(
      'wrong-type',
      stranger?.sheet ?? '',
      (stranger?.headers ?? []).join(', '),
      `a table of walls, openings, features, storeys or job settings by its header row, such as ${HEADER_EXAMPLES.walls}`,
    );
  }
  const source = documentOfTables(tables, SCHEDULE_FORMAT);
  return success({
    ...source,
    errors: [...errors, ...source.errors],
    unknown: [...source.unknown, ...others.map(({ sheet }) => ({ sheet, name: sheet }))],
    sheetsRead: sheetsRead(sheets),
  });
}

function documentSource(name: string, document: unknown): DocumentSource {
  const fields = typeof document === 'object' && document !== null ? (document as Readonly<Record<string, unknown>>) : {};
  const other =
    typeof fields['format'] === 'string' && fields['format'].startsWith('wallcourse/') && fields['format'] !== SCHEDULE_FORMAT;
  if (other || !DOCUMENT_KEYS.some((key) => Object.hasOwn(fields, key))) {
    throw new FileRefusal(
      'wrong-type',
      shownText(name),
      other ? shownText(fields['format']) : 'JSON of another kind',
      `a schedule: an object with "format": "${SCHEDULE_FORMAT}"`,
    );
  }
  for (const [key, most] of [
    ['walls', MAX_WALLS],
    ['openings', MAX_OPENINGS],
    ['features', MAX_FEATURES],
    ['storeys', MAX_STOREYS],
  ] as const) {
    const list = fields[key];
    if (Array.isArray(list) && list.length > most)
      throw new FileRefusal(
        'too-large',
        shownText(name),
        `${list.length} ${key}`,
        `at most ${most.toLocaleString('en-US')} ${key}: split the schedule into several jobs`,
      );
  }
  return { document, places: DOCUMENT_PLACES, errors: [], unknown: [] };
}

function errorOf({ sheet, row, read, fix }: FileRefusal): InputError {
  const list = new InputErrorList();
  list.add({ sheet: sheet === '' ? null : sheet, row, column: null, pointer: null, read, fix });
  return list.list()[0] as InputError;
}
