import PDFDocument from 'pdfkit';
import { BOLD, REGULAR } from './pdf-drawing.js';
import type { PdfDocument } from './pdf-drawing.js';
import type { DrawingFonts } from './shapes.js';
import { textWidth, wrapText } from './text-width.js';

/** Portrait sizes in points. */
export const PAPER = {
  letter: { small: [612, 792], large: [792, 1224] },
  a4: { small: [595.28, 841.89], large: [841.89, 1190.55] },
} as const;

export type PaperName = keyof typeof PAPER;

export const INK = {
  text: '#16202a',
  muted: '#55616b',
  accent: '#1d3a5f',
  rule: '#c3cbd2',
  shade: '#eef2f5',
  hold: '#8f1414',
} as const;

export interface WriteStyle {
  readonly size?: number;
  readonly bold?: boolean;
  readonly colour?: string;
  readonly anchor?: 'start' | 'end';
}

export interface PageSetting {
  readonly title: string;
  readonly author: string;
  readonly createdAt: NonNullable<PDFKit.DocumentInfo['CreationDate']>;
}

const SIDE = 45;
const TOP = 42;
const BOTTOM = 54;
const BODY = 8.5;
const LEADING = 1.36;
/** Letters' height above the baseline as a share of their size, for placing a line under a given top. */
const ASCENT = 0.93;

/**
 * Pages of one document written from top to bottom: knows where the next line stands and when a new page is due.
 *
 * Lengths are points. Fonts come as bytes; no standard font and no clock is used, so the same input is the same bytes.
 */
export class PdfPages {
  readonly doc: PdfDocument;
  y = TOP;
  private readonly chunks: Uint8Array[] = [];
  private readonly ended: Promise<void>;

  constructor(
    readonly paper: PaperName,
    fonts: DrawingFonts,
    setting: PageSetting,
  ) {
    const info = {
      Title: setting.title,
      Author: setting.author,
      Creator: 'Wallcourse',
      Producer: 'Wallcourse',
      CreationDate: setting.createdAt,
      ModDate: setting.createdAt,
    };
    this.doc = new PDFDocument({
      autoFirstPage: false,
      bufferPages: true,
      info,
      lang: 'en',
      font: null as unknown as string,
      displayTitle: true,
    });
    this.doc.registerFont(REGULAR, fonts.regular as Buffer);
    this.doc.registerFont(BOLD, fonts.bold as Buffer);
    this.doc.on('data', (chunk: Uint8Array) => this.chunks.push(chunk));
    this.ended = new Promise((resolve, reject) => {
      this.doc.on('end', resolve);
      this.doc.on('error', reject);
    });
  }

  get left(): number {
    return SIDE;
  }

  get right(): number {
    return this.doc.page.width - SIDE;
  }

  get width(): number {
    return this.right - this.left;
  }

  /** Room left on the page. */
  get room(): number {
    return this.doc.page.height - BOTTOM - this.y;
  }

  addPage(width: number, height: number): void {
    this.doc.addPage({ size: [width, height], margin: 0 });
    this.y = TOP;
  }

  /** A portrait page for text. */
  addTextPage(): void {
    this.addPage(PAPER[this.paper].small[0], PAPER[this.paper].small[1]);
  }

  /** Starts a text page where less than `height` is left. @returns whether one was started */
  ensure(height: number): boolean {
    if (this.room >= height) return false;
    this.addTextPage();
    return true;
  }

  /** One line of text with its top at `top`. */
  write(text: string, x: number, top: number, style: WriteStyle = {}): void {
    const { size = BODY, bold = false, colour = INK.text, anchor = 'start' } = style;
    const left = anchor === 'start' ? x : x - textWidth(text, size, bold);
    this.doc
      .font(bold ? BOLD : REGULAR)
      .fontSize(size)
      .fillColor(colour);
    this.doc.text(text, left, top + size * ASCENT, { lineBreak: false, baseline: 'alphabetic' });
  }

  /** Lines at the current height; goes on to a new page where one is full. */
  paragraph(text: string, x: number, width: number, style: WriteStyle = {}): void {
    const { size = BODY, bold = false } = style;
    for (const line of wrapText(text, size, width, bold)) {
      this.ensure(size * LEADING);
      this.write(line, x, this.y, style);
      this.y += size * LEADING;
    }
  }

  rule(y: number, colour: string = INK.rule, weight = 0.6): void {
    this.doc.moveTo(this.left, y).lineTo(this.right, y).lineWidth(weight).strokeColor(colour).stroke();
  }

  heading(text: string, keepWith: number): void {
    this.ensure(keepWith + 30);
    this.y += 12;
    this.write(text, this.left, this.y, { size: 11, bold: true, colour: INK.accent });
    this.y += 16;
    this.rule(this.y - 1, INK.accent, 0.8);
    this.y += 5;
  }

  /** Writes on every page what can only be known at the end, and closes the document. */
  async finish(onPage: (page: number, of: number) => void): Promise<Uint8Array> {
    const { count } = this.doc.bufferedPageRange();
    for (let page = 0; page < count; page += 1) {
      this.doc.switchToPage(page);
      onPage(page + 1, count);
    }
    this.doc.end();
    await this.ended;
    return concatenated(this.chunks);
  }
}

/** Height of a line of this size. */
export const lineHeight = (size: number = BODY): number => size * LEADING;

function concatenated(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}
