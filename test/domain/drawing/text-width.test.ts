import { describe, expect, it } from '@jest/globals';
import { create, type Font } from 'fontkit';
import { CAP_HEIGHT, fitText, textWidth, wrapText } from '../../../src/domain/drawing/text-width.js';
import { SHIPPED_FONTS } from '../../support/shipped-fonts.js';

const FACES = { regular: create(SHIPPED_FONTS.regular as Buffer) as Font, bold: create(SHIPPED_FONTS.bold as Buffer) as Font };
const ASCII = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i));

describe('textWidth', () => {
  it.each(['regular', 'bold'] as const)('has the advance widths of the shipped %s face for every letter of ASCII', (name) => {
    const font = FACES[name];
    for (const letter of ASCII) {
      const width = font.glyphForCodePoint(letter.codePointAt(0) as number).advanceWidth;
      expect([letter, textWidth(letter, font.unitsPerEm, name === 'bold')]).toEqual([letter, width]);
    }
  });

  it.each(['regular', 'bold'] as const)(
    'has the widths of the signs of the trade and is never narrower than the %s face for the rest of Latin-1',
    (name) => {
      const font = FACES[name];
      const advance = (letter: string): number => font.glyphForCodePoint(letter.codePointAt(0) as number).advanceWidth;
      const width = (letter: string): number => textWidth(letter, font.unitsPerEm, name === 'bold');
      for (const letter of '×°′″·–²³') expect([letter, width(letter)]).toEqual([letter, advance(letter)]);
      for (let code = 160; code < 256; code += 1) {
        const letter = String.fromCharCode(code);
        expect([letter, width(letter) >= advance(letter)]).toEqual([letter, true]);
      }
    },
  );

  it('knows the height of the capitals', () => {
    const { bbox } = FACES.regular.glyphForCodePoint('H'.codePointAt(0) as number);
    expect(Math.abs(bbox.maxY / FACES.regular.unitsPerEm - CAP_HEIGHT)).toBeLessThanOrEqual(0.0005);
  });
});

describe('the shipped family', () => {
  it.each(['regular', 'bold'] as const)('has every sign a quote or a drawing needs in its %s face', (name) => {
    for (const sign of '′″×²³°½¼¾≥≤±–—…·éÉäßñçøÅ§£€¥')
      expect([sign, FACES[name].hasGlyphForCodePoint(sign.codePointAt(0) as number)]).toEqual([sign, true]);
  });
});

describe('fitText and wrapText', () => {
  it('keeps a text that fits and shortens one that does not', () => {
    expect(fitText('Wall A', 10, 1000)).toBe('Wall A');
    const short = fitText('A very long name of a job', 10, 60);
    expect(short.endsWith('...')).toBe(true);
    expect(textWidth(short, 10)).toBeLessThanOrEqual(60);
  });

  it('wraps between words and breaks a word longer than a line, losing no letter', () => {
    const text = `one two three ${'x'.repeat(200)} four`;
    const lines = wrapText(text, 10, 80);
    expect(lines.every((line) => textWidth(line, 10) <= 80)).toBe(true);
    expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
  });
});
