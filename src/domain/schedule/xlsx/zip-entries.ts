import type { Readable } from 'node:stream';
import { crc32 } from 'node:zlib';
import { fromBufferPromise, type Entry, type ZipFile } from 'yauzl';
import { FileRefusal } from '../file-refusal.js';

/** A part of a workbook is at most this large when inflated, and all parts together at most four times that. */
export const MAX_PART_BYTES = 64 * 1024 * 1024;
const MAX_ALL_BYTES = 4 * MAX_PART_BYTES;
/** Inflated over packed size; a part below the floor may pack as well as it likes. */
const MAX_RATIO = 200;
const RATIO_FLOOR_BYTES = 64 * 1024;
const MAX_PARTS = 2_000;
/** Bit of an entry's flags that says it is encrypted. */
const ENCRYPTED = 1;

/** The parts of a zip archive whose directory promises nothing excessive; nothing is inflated until a part is opened. */
export interface ZipParts {
  readonly has: (path: string) => boolean;
  /** The bytes of a part as they inflate, counted and checked: a part that turns out larger or other than promised is cut off. */
  readonly open: (path: string) => AsyncGenerator<Uint8Array>;
}

/** Names of parts that differ by case alone are one name (ECMA-376 part 2, 6.2.2.3). */
const nameOf = (path: string): string => path.toLowerCase();

/**
 * Opens an archive by its directory and refuses it there: too many parts, a part over 64 MB, a ratio over 200, an encrypted part, a
 * path that leads out of the archive, a directory that is damaged or says two things about one path.
 */
export async function zipParts(name: string, bytes: Uint8Array): Promise<ZipParts> {
  const zip = await openArchive(name, bytes);
  if (zip.entryCount > MAX_PARTS) throw tooLarge(name, `${zip.entryCount} parts`);
  const entries = new Map<string, Entry>();
  let total = 0;
  try {
    for await (const entry of zip.eachEntry()) {
      total += checkedSize(name, entry);
      if (total > MAX_ALL_BYTES) throw tooLarge(name, `${total} bytes inflated`);
      if ((entry.generalPurposeBitFlag & ENCRYPTED) !== 0 || entries.has(nameOf(entry.fileName))) throw damaged(name);
      entries.set(nameOf(entry.fileName), entry);
    }
  } catch (error) {
    throw error instanceof FileRefusal ? error : damaged(name);
  }
  return {
    has: (path) => entries.has(nameOf(path)),
    open: (path) => inflate(name, zip, entries.get(nameOf(path))),
  };
}

async function openArchive(name: string, bytes: Uint8Array): Promise<ZipFile> {
  try {
    return await fromBufferPromise(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength));
  } catch {
    throw damaged(name);
  }
}

function checkedSize(name: string, { uncompressedSize, compressedSize }: Entry): number {
  if (uncompressedSize > MAX_PART_BYTES) throw tooLarge(name, `a part of ${uncompressedSize} bytes`);
  if (uncompressedSize > RATIO_FLOOR_BYTES && uncompressedSize > MAX_RATIO * compressedSize)
    throw tooLarge(name, `a part packed ${Math.round(uncompressedSize / Math.max(1, compressedSize))} to 1`);
  return uncompressedSize;
}

async function* inflate(name: string, zip: ZipFile, entry: Entry | undefined): AsyncGenerator<Uint8Array> {
  if (!entry) throw damaged(name);
  let stream: Readable | undefined;
  let [size, sum] = [0, 0];
  try {
    stream = await zip.openReadStreamPromise(entry);
    for await (const chunk of stream) {
      size += (chunk as Uint8Array).length;
      if (size > MAX_PART_BYTES || size > entry.uncompressedSize) throw tooLarge(name, 'a part larger than its directory says');
      sum = crc32(chunk as Uint8Array, sum);
      yield chunk as Uint8Array;
    }
  } catch (error) {
    throw error instanceof FileRefusal ? error : damaged(name);
  } finally {
    stream?.destroy();
  }
  if (sum !== entry.crc32) throw damaged(name);
}

const tooLarge = (name: string, read: string): FileRefusal =>
  new FileRefusal('too-large', name, read, 'a workbook that holds the schedule and no more: save the tables alone and send that');
const damaged = (name: string): FileRefusal =>
  new FileRefusal('unreadable', name, '', 'a workbook that opens: this file is damaged or encrypted; save it again as .xlsx');
