import { inflateSync } from 'node:zlib';
import { describe, expect, it } from '@jest/globals';
import { renderPng, wallElevation } from '../../../src/domain/drawing/index.js';
import type { Drawing } from '../../../src/domain/drawing/index.js';
import { SHEET_HEADER, drawnWall } from '../../support/drawn-wall.js';
import { ruleRange } from '../../support/rule-range.js';
import { SHIPPED_FONTS } from '../../support/shipped-fonts.js';

function elevation(jobName: string): Drawing {
  const { wall, storey } = drawnWall({ mark: 'A', length: 240, courses: 6 });
  return wallElevation(wall, storey, ruleRange(), 'in', { ...SHEET_HEADER, jobName });
}

const header = (png: Uint8Array): { width: number; height: number } => {
  const view = new DataView(png.buffer, png.byteOffset);
  return { width: view.getUint32(16), height: view.getUint32(20) };
};

/** Bytes of the image data, inflated (PNG specification, third edition, 10: the IDAT chunks are one zlib stream). */
function imageData(png: Uint8Array): Buffer {
  const bytes = Buffer.from(png);
  const parts: Buffer[] = [];
  for (let at = 8; at < bytes.length; at += bytes.readUInt32BE(at) + 12) {
    if (bytes.toString('latin1', at + 4, at + 8) === 'IDAT') parts.push(bytes.subarray(at + 8, at + 8 + bytes.readUInt32BE(at)));
  }
  return inflateSync(Buffer.concat(parts));
}

describe('renderPng', () => {
  it('is a PNG of the width asked for, in the proportion of the sheet', () => {
    const drawing = elevation('Job');
    const png = renderPng(drawing, SHIPPED_FONTS, 600);
    expect([...png.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
    const { width, height } = header(png);
    expect(width).toBe(600);
    expect(Math.abs(height / width - drawing.height / drawing.width)).toBeLessThan(1 / 600);
  });

  it('is the same bytes twice, and other bytes where a name changes: letters come from the given fonts', () => {
    expect(
      Buffer.compare(
        Buffer.from(renderPng(elevation('Job'), SHIPPED_FONTS, 600)),
        Buffer.from(renderPng(elevation('Job'), SHIPPED_FONTS, 600)),
      ),
    ).toBe(0);
    expect(
      imageData(renderPng(elevation('Job'), SHIPPED_FONTS, 600)).equals(
        imageData(renderPng(elevation('Jot'), SHIPPED_FONTS, 600)),
      ),
    ).toBe(false);
  });

  it.each([0, -1, 8001, 1.5, Number.NaN])('refuses a width of %s', (width) => {
    expect(() => renderPng(elevation('Job'), SHIPPED_FONTS, width)).toThrow(RangeError);
  });
});
