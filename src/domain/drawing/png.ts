import { Resvg } from '@resvg/resvg-js';
import { outlineWriter } from './glyph-outlines.js';
import type { Drawing, DrawingFonts } from './shapes.js';
import { writeSvg } from './svg.js';

const MAX_WIDTH = 8_000;

/**
 * The drawing as a PNG picture.
 *
 * @param widthPx width of the picture, 1 to 8,000 [pixels]; the height follows
 * @throws RangeError for a width outside that span
 */
export function renderPng(drawing: Drawing, fonts: DrawingFonts, widthPx: number): Uint8Array {
  if (!Number.isInteger(widthPx) || widthPx < 1 || widthPx > MAX_WIDTH)
    throw new RangeError(`a picture is 1 to ${MAX_WIDTH} pixels wide`);
  const svg = writeSvg(drawing, outlineWriter(fonts));
  return new Resvg(svg, { font: { loadSystemFonts: false }, fitTo: { mode: 'width', value: widthPx } }).render().asPng();
}
