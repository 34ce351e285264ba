import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { DrawingFonts } from '../../domain/drawing/index.js';
import { PACKAGE_ROOT } from '../../platform/config/package-root.js';

const FOLDER = join(PACKAGE_ROOT, 'shared', 'fonts');

let read: DrawingFonts | null = null;

/** The fonts that come with the program, read once a thread. System fonts are never used: a drawing looks the same everywhere. */
export function shippedFonts(): DrawingFonts {
  read ??= {
    regular: readFileSync(join(FOLDER, 'DejaVuSansCondensed.ttf')),
    bold: readFileSync(join(FOLDER, 'DejaVuSansCondensed-Bold.ttf')),
  };
  return read;
}
