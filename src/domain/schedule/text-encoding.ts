import { FileRefusal } from './file-refusal.js';

/** What is looked at to tell what a file is. */
export const TEXT_START_BYTES = 65_536;
/** The control characters a text may have: tab, line feed, vertical tab, form feed, carriage return. */
const WHITE_SPACE = /[\t\n\v\f\r]/g;
const STARTS = [
  { bytes: [0xef, 0xbb, 0xbf], encoding: 'utf-8' },
  { bytes: [0xff, 0xfe], encoding: 'utf-16le' },
  { bytes: [0xfe, 0xff], encoding: 'utf-16be' },
] as const;

/** UTF-8, or UTF-16 where the byte order mark says so. */
export function encodingOf(bytes: Uint8Array): 'utf-8' | 'utf-16le' | 'utf-16be' {
  return STARTS.find((start) => start.bytes.every((byte, index) => bytes[index] === byte))?.encoding ?? 'utf-8';
}

/** The text of a file in slices, its byte order mark left out. Bytes that are no text in its encoding are refused. */
export function* textSlices(name: string, bytes: Uint8Array): Generator<string> {
  const decoder = new TextDecoder(encodingOf(bytes), { fatal: true });
  try {
    for (let start = 0; start < bytes.length; start += TEXT_START_BYTES)
      yield decoder.decode(bytes.subarray(start, start + TEXT_START_BYTES), { stream: true });
    yield decoder.decode();
  } catch {
    throw new FileRefusal('unreadable', name, '', 'text in UTF-8 (or UTF-16 with its mark): save the file as "CSV UTF-8"');
  }
}

/** The first characters of a text file; undefined where the bytes are no text. */
export function textStart(bytes: Uint8Array): string | undefined {
  const start = new TextDecoder(encodingOf(bytes)).decode(bytes.subarray(0, TEXT_START_BYTES), { stream: true });
  return start.replace(WHITE_SPACE, '').match(/\p{Cc}/u) ? undefined : start;
}
