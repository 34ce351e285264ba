import { create } from 'fontkit';
import type { Font } from 'fontkit';
import type { DrawingFonts, TextShape } from './shapes.js';
import { turned } from './svg.js';
import type { Paper, TextWriter } from './svg.js';
import { CAP_HEIGHT } from './text-width.js';

/**
 * Writes texts as outlines of the given fonts' glyphs, so that a picture never depends on what is installed.
 *
 * @throws Error where the bytes are not a single font file
 */
export function outlineWriter(fonts: DrawingFonts): TextWriter {
  const regular = openFont(fonts.regular);
  const bold = openFont(fonts.bold);
  return (text, paper) => outline(text, text.bold ? bold : regular, paper);
}

function openFont(bytes: Uint8Array): Font {
  const font = create(bytes as Buffer);
  if (!('layout' in font)) throw new Error('a font collection is not a font');
  return font;
}

function outline(text: TextShape, font: Font, paper: Paper): string {
  const run = font.layout(text.text);
  const scale = text.size / font.unitsPerEm;
  const shift = text.anchor === 'start' ? 0 : text.anchor === 'middle' ? 0.5 : 1;
  let pen = text.at.x - run.advanceWidth * scale * shift;
  const base = text.at.y - (text.size * CAP_HEIGHT) / 2;
  const paths = run.glyphs.map((glyph, i) => {
    const position = run.positions[i] ?? { xAdvance: 0, xOffset: 0, yOffset: 0 };
    const [x, y] = [pen + position.xOffset * scale, base + position.yOffset * scale];
    pen += position.xAdvance * scale;
    return glyph.path.commands.map((command) => pathCommand(command, x, y, scale, paper)).join('');
  });
  return `<path d="${paths.join('')}"${turned(text, paper)}/>`;
}

const LETTERS: Readonly<Record<string, string>> = {
  moveTo: 'M',
  lineTo: 'L',
  quadraticCurveTo: 'Q',
  bezierCurveTo: 'C',
  closePath: 'Z',
};

function pathCommand(command: { command: string; args: number[] }, x: number, y: number, scale: number, paper: Paper): string {
  const numbers = command.args.map((value, i) => (i % 2 === 0 ? paper.x(x + value * scale) : paper.y(y + value * scale)));
  return `${LETTERS[command.command] ?? ''}${numbers.join(' ')}`;
}
