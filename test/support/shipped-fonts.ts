import { readFileSync } from 'node:fs';
import type { DrawingFonts } from '../../src/domain/drawing/index.js';

const font = (name: string): Uint8Array => readFileSync(new URL(`../../shared/fonts/${name}`, import.meta.url));

export const SHIPPED_FONTS: DrawingFonts = {
  regular: font('DejaVuSansCondensed.ttf'),
  bold: font('DejaVuSansCondensed-Bold.ttf'),
};
