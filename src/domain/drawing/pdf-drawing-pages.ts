import { paintDrawing, paperSize } from './pdf-drawing.js';
import { INK, PAPER } from './pdf-pages.js';
import type { PaperName, PdfPages } from './pdf-pages.js';
import type { Drawing } from './shapes.js';

const SIDE = 28;
const TOP = 36;
const BOTTOM = 35;
const GAP = 8;
const MOST_ON_A_PAGE = 2;

interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly drawings: readonly Drawing[];
}

/** Drawings at their own scales, one or two to a page, each page turned and sized as its drawings need. */
export function writeDrawings(pages: PdfPages, drawings: readonly Drawing[], heading: string): void {
  let rest = drawings;
  while (rest.length > 0) {
    const sheet = nextSheet(rest, pages.paper);
    pages.addPage(sheet.width, sheet.height);
    pages.write(heading, SIDE, 18, { size: 9, bold: true, colour: INK.accent });
    pages.write('True to scale when printed at 100 %', sheet.width - SIDE, 18, { size: 8, colour: INK.muted, anchor: 'end' });
    let top = TOP;
    for (const drawing of sheet.drawings) {
      const size = paperSize(drawing);
      paintDrawing(pages.doc, drawing, (sheet.width - size.width) / 2, top);
      top += size.height + GAP;
    }
    rest = rest.slice(sheet.drawings.length);
  }
}

/** The page that takes most of the next drawings: small before large, landscape before portrait; else one cut to fit. */
export function nextSheet(drawings: readonly Drawing[], paper: PaperName): Sheet {
  const { small, large } = PAPER[paper];
  for (const [short, long] of [small, large]) {
    const sheets = [
      [long, short],
      [short, long],
    ].map(([width, height]) => fill(drawings, width as number, height as number));
    const best = sheets.reduce((a, b) => (b.drawings.length > a.drawings.length ? b : a));
    if (best.drawings.length > 0) return best;
  }
  const [first] = drawings as readonly [Drawing, ...Drawing[]];
  const size = paperSize(first);
  return { width: size.width + 2 * SIDE, height: size.height + TOP + BOTTOM, drawings: [first] };
}

function fill(drawings: readonly Drawing[], width: number, height: number): Sheet {
  const taken: Drawing[] = [];
  let top = TOP;
  for (const drawing of drawings.slice(0, MOST_ON_A_PAGE)) {
    const size = paperSize(drawing);
    if (size.width > width - 2 * SIDE || top + size.height > height - BOTTOM) break;
    taken.push(drawing);
    top += size.height + GAP;
  }
  return { width, height, drawings: taken };
}
