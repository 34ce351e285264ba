import { TEXT_START_BYTES, textStart } from './text-encoding.js';

/** What a file is by its bytes, whatever it is called. */
export type ContentKind = 'empty' | 'zip' | 'old-workbook' | 'binary' | 'json' | 'model' | 'text';

const startsWith = (bytes: Uint8Array, ...start: number[]): boolean => start.every((byte, index) => bytes[index] === byte);

/** Zip by its signature (also an empty archive), the compound file of old and of encrypted workbooks, a building model by the keyword of ISO 10303-21, JSON by its first bracket, other text, or neither. */
export function contentKind(bytes: Uint8Array): ContentKind {
  if (startsWith(bytes, 0x50, 0x4b, 0x03, 0x04) || startsWith(bytes, 0x50, 0x4b, 0x05, 0x06)) return 'zip';
  if (startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1)) return 'old-workbook';
  const start = textStart(bytes);
  if (start === undefined) return 'binary';
  const first = start.trimStart()[0];
  if (first === undefined) return bytes.length > TEXT_START_BYTES ? 'text' : 'empty';
  if (start.trimStart().startsWith('ISO-10303-21')) return 'model';
  return first === '{' || first === '[' ? 'json' : 'text';
}
