/** What a photo is, read from its own bytes. */
export interface Photo {
  readonly mediaType: 'image/jpeg' | 'image/png';
  readonly width: number;
  readonly height: number;
}

const PNG_SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
const PNG_LEAST = 45;
const JPEG_END = Buffer.from([0xff, 0xd9]);
/** Frame headers of a JPEG, which hold its size: C0 to CF but for tables (C4, C8, CC). */
const isFrame = (marker: number): boolean => marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
/** Markers without a length: restarts, start, and the one that stands for itself. */
const isBare = (marker: number): boolean => (marker >= 0xd0 && marker <= 0xd8) || marker === 0x01;

/** The kind and size of a JPEG or PNG by its bytes, whatever it is called; null where they are neither or break off. */
export function readPhoto(bytes: Buffer): Photo | null {
  const found = pngSize(bytes) ?? jpegSize(bytes);
  return found !== null && found.width > 0 && found.height > 0 ? found : null;
}

function pngSize(bytes: Buffer): Photo | null {
  const whole = bytes.length >= PNG_LEAST && bytes.subarray(0, 8).equals(PNG_SIGNATURE) && bytes.toString('latin1', 12, 16) === 'IHDR';
  if (!whole || !bytes.subarray(33).includes('IEND', 0, 'latin1')) return null;
  return { mediaType: 'image/png', width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) };
}

function jpegSize(bytes: Buffer): Photo | null {
  if (bytes.length < 4 || bytes.readUInt16BE(0) !== 0xffd8) return null;
  let at = 2;
  while (at + 9 <= bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1]!;
    if (marker === 0xff || isBare(marker)) {
      at += marker === 0xff ? 1 : 2;
      continue;
    }
    if (isFrame(marker)) {
      if (!bytes.subarray(at).includes(JPEG_END)) return null;
      return { mediaType: 'image/jpeg', height: bytes.readUInt16BE(at + 5), width: bytes.readUInt16BE(at + 7) };
    }
    at += 2 + bytes.readUInt16BE(at + 2);
  }
  return null;
}
