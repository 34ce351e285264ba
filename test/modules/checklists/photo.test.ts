import { describe, expect, it } from '@jest/globals';
import { readPhoto } from '../../../src/modules/checklists/photo.js';

// Layouts of the bytes: PNG specification (W3C, 2nd edition) clauses 5.2, 11.2.2; JPEG ITU-T T.81 annex B, from memory.
const png = (width: number, height: number): Buffer => {
  const bytes = Buffer.alloc(57);
  bytes.write('\x89PNG\r\n\x1a\n', 0, 'latin1');
  bytes.writeUInt32BE(13, 8);
  bytes.write('IHDR', 12, 'latin1');
  bytes.writeUInt32BE(width, 16);
  bytes.writeUInt32BE(height, 20);
  bytes.write('IEND', 49, 'latin1');
  return bytes;
};
const segment = (marker: number, ...body: number[]): number[] => [0xff, marker, (body.length + 2) >> 8, (body.length + 2) & 255, ...body];
const frame = (marker: number): number[] => segment(marker, 8, 0x0b, 0xb8, 0x0f, 0xa0, 1, 1, 0x11, 0);
const jpeg = (...parts: number[]): Buffer => Buffer.from([0xff, 0xd8, ...parts, ...segment(0xda, 1, 1, 0, 0, 63, 0), 0x12, 0x34, 0xff, 0xd9]);

describe('a photo', () => {
  it('is known by its bytes, with its size', () => {
    expect(readPhoto(png(640, 480))).toEqual({ mediaType: 'image/png', width: 640, height: 480 });
    expect(readPhoto(jpeg(...frame(0xc0)))).toEqual({ mediaType: 'image/jpeg', width: 4000, height: 3000 });
    expect(readPhoto(jpeg(...segment(0xe1, 0x45, 0xff, 0xc0, 1, 2, 3), ...segment(0xc4, 0, 1), 0xff, ...frame(0xc2)))).toEqual({ mediaType: 'image/jpeg', width: 4000, height: 3000 });
  });

  it.each<{ what: string; bytes: Buffer }>([
    { what: 'nothing', bytes: Buffer.alloc(0) },
    { what: 'a drawing in XML', bytes: Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>') },
    { what: 'a GIF', bytes: Buffer.from('GIF89a\x01\x00\x01\x00\x00\x00\x00;'.padEnd(60), 'latin1') },
    { what: 'a PNG that breaks off', bytes: png(640, 480).subarray(0, 48) },
    { what: 'a PNG without a pixel', bytes: png(0, 480) },
    { what: 'a JPEG without a frame', bytes: jpeg() },
    { what: 'a JPEG that breaks off', bytes: jpeg(...frame(0xc0)).subarray(0, 20) },
    { what: 'a JPEG whose segment leads past its end', bytes: Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0xff, 0xff, 0, 0]) },
    { what: 'a JPEG whose segments go nowhere', bytes: Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 0, 0, 0, 0, 0, 0, 0]) },
  ])('is not $what', ({ bytes }) => expect(readPhoto(bytes)).toBeNull());
});
