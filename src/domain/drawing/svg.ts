import { toMm } from '../quantity/length.js';
import { arcOf } from './arc-shape.js';
import { dimensionStrokes } from './dimension-strokes.js';
import { hatchStrokes } from './hatch-lines.js';
import type { Drawing, DrawingPoint, Layer, LineShape, OutlinePoint, PlainShape, PolygonShape, Shape, TextShape } from './shapes.js';
import { CAP_HEIGHT, textWidth } from './text-width.js';

const FAMILY = "'DejaVu Sans Condensed','DejaVu Sans','Verdana',sans-serif";
/** Space kept free round a text on its backdrop, as a share of its size. */
const BACKDROP_MARGIN = 0.22;

/** How a writer puts letters on the sheet: SVG text, or outlines where no font is at hand. */
export type TextWriter = (text: TextShape, paper: Paper) => string;

/** From model nanometres (y up) to millimetres of paper (y down). */
export interface Paper {
  readonly x: (value: number) => string;
  readonly y: (value: number) => string;
  readonly size: (value: number) => string;
}

/** The drawing as one SVG document, in millimetres of paper at its own scale. */
export const renderSvg = (drawing: Drawing): string => writeSvg(drawing, svgText);

export function writeSvg(drawing: Drawing, writeText: TextWriter): string {
  const paper = paperOf(drawing);
  const width = toMm(drawing.width / drawing.scale);
  const height = toMm(drawing.height / drawing.scale);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${short(width)}mm" height="${short(height)}mm" ` +
      `viewBox="0 0 ${short(width)} ${short(height)}" role="img" font-family="${FAMILY}">`,
    `<title>${escapeXml(drawing.title)}</title>`,
    `<desc>${escapeXml(`Scale ${drawing.scaleText}`)}</desc>`,
    `<rect width="${short(width)}" height="${short(height)}" fill="#ffffff"/>`,
    ...layerGroups(drawing, paper, writeText),
    '</svg>',
    '',
  ].join('\n');
}

function paperOf(drawing: Drawing): Paper {
  const size = (value: number): string => short(toMm(value / drawing.scale));
  return { x: size, y: (value) => size(drawing.height - value), size };
}

/** Neighbouring shapes of one layer share a group; the order of painting stays. */
function layerGroups(drawing: Drawing, paper: Paper, writeText: TextWriter): string[] {
  const layers = new Map(drawing.layers.map((layer) => [layer.name, layer]));
  const lines: string[] = [];
  let open: string | null = null;
  for (const shape of drawing.shapes.flatMap(plain)) {
    if (shape.layer !== open) {
      if (open !== null) lines.push('</g>');
      lines.push(groupOf(layers.get(shape.layer), shape.layer));
      open = shape.layer;
    }
    lines.push(element(shape, paper, layers.get(shape.layer)?.colour ?? '#000000', writeText));
  }
  return open === null ? lines : [...lines, '</g>'];
}

const plain = (shape: Shape): readonly PlainShape[] => (shape.kind === 'dimension' ? dimensionStrokes(shape) : [shape]);

function groupOf(layer: Layer | undefined, name: string): string {
  if (layer === undefined) throw new Error(`a shape lies on layer ${name}, which the drawing does not have`);
  const dash = layer.dash === null ? '' : ` stroke-dasharray="${layer.dash.map((part) => short(toMm(part))).join(' ')}"`;
  const weight = short(toMm(layer.weight));
  return `<g data-layer="${escapeXml(name)}" fill="none" stroke="${layer.colour}" stroke-width="${weight}"${dash}>`;
}

function element(shape: PlainShape, paper: Paper, ink: string, writeText: TextWriter): string {
  switch (shape.kind) {
    case 'line':
      return lineElement(shape, paper);
    case 'arc':
      return `<path d="M${pair(shape.from, paper)}${arcTo(shape.from, shape.to, shape.bulge, paper)}"/>`;
    case 'polyline':
      return `<polyline points="${points(shape.points, paper)}"/>`;
    case 'polygon':
      return polygonElement(shape, paper);
    case 'circle':
      return `<circle cx="${paper.x(shape.centre.x)}" cy="${paper.y(shape.centre.y)}" r="${paper.size(shape.radius)}"${fillOf(shape.fill)}/>`;
    case 'hatch':
      return `<path d="${hatchStrokes(shape)
        .map(({ from, to }) => `M${pair(from, paper)}L${pair(to, paper)}`)
        .join('')}"/>`;
    case 'text':
      return `${backdrop(shape, paper)}<g fill="${ink}" stroke="none">${writeText(shape, paper)}</g>`;
  }
}

const lineElement = ({ from, to }: LineShape, paper: Paper): string =>
  `<line x1="${paper.x(from.x)}" y1="${paper.y(from.y)}" x2="${paper.x(to.x)}" y2="${paper.y(to.y)}"/>`;

function polygonElement(shape: PolygonShape, paper: Paper): string {
  const subject = shape.subject === null ? '' : ` data-subject="${escapeXml(shape.subject)}"`;
  const stroke = shape.outline ? '' : ' stroke="none"';
  const curved = shape.points.some(({ bulge = 0 }) => bulge !== 0);
  const [name, outline] = curved ? ['path', `d="${outlinePath(shape.points, paper)}"`] : ['polygon', `points="${points(shape.points, paper)}"`];
  const attributes = `${outline}${fillOf(shape.fill)}${stroke}${subject}`;
  return shape.hint === null
    ? `<${name} ${attributes}/>`
    : `<${name} ${attributes}><title>${escapeXml(shape.hint)}</title></${name}>`;
}

function outlinePath(list: readonly OutlinePoint[], paper: Paper): string {
  const edges = list.map((point, i) => {
    const next = list[(i + 1) % list.length] as OutlinePoint;
    const { bulge = 0 } = point;
    return bulge === 0 ? `L${pair(next, paper)}` : arcTo(point, next, bulge, paper);
  });
  return `M${pair(list[0] as OutlinePoint, paper)}${edges.join('')}Z`;
}

/** The paper's y runs down: what turns counter-clockwise in the model turns against the format's positive sense. */
function arcTo(from: DrawingPoint, to: DrawingPoint, bulge: number, paper: Paper): string {
  const radius = paper.size(arcOf(from, to, bulge).radius);
  return `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${pair(to, paper)}`;
}

const fillOf = (fill: string | null): string => (fill === null ? '' : ` fill="${fill}"`);
const pair = (point: DrawingPoint, paper: Paper): string => `${paper.x(point.x)} ${paper.y(point.y)}`;
const points = (list: readonly DrawingPoint[], paper: Paper): string =>
  list.map((point) => `${paper.x(point.x)},${paper.y(point.y)}`).join(' ');

/** `textLength` holds the measured width even where the viewer has another font. */
function svgText(text: TextShape, paper: Paper): string {
  const weight = text.bold ? ' font-weight="bold"' : '';
  const anchor = text.anchor === 'start' ? '' : ` text-anchor="${text.anchor}"`;
  return (
    `<text x="${paper.x(text.at.x)}" y="${paper.y(text.at.y - (text.size * CAP_HEIGHT) / 2)}" font-size="${paper.size(text.size)}"` +
    `${weight}${anchor} textLength="${paper.size(textWidth(text.text, text.size, text.bold))}" lengthAdjust="spacingAndGlyphs"` +
    `${turned(text, paper)}>${escapeXml(text.text)}</text>`
  );
}

export const turned = (text: TextShape, paper: Paper): string =>
  text.angle === 0 ? '' : ` transform="rotate(${short(-text.angle)} ${paper.x(text.at.x)} ${paper.y(text.at.y)})"`;

function backdrop(text: TextShape, paper: Paper): string {
  if (text.backdrop === null) return '';
  const width = textWidth(text.text, text.size, text.bold);
  const left = text.at.x - (text.anchor === 'middle' ? width / 2 : text.anchor === 'end' ? width : 0);
  const margin = text.size * BACKDROP_MARGIN;
  const height = text.size * CAP_HEIGHT + 2 * margin;
  return (
    `<rect x="${paper.x(left - margin)}" y="${paper.y(text.at.y + height / 2)}" width="${paper.size(width + 2 * margin)}" ` +
    `height="${paper.size(height)}" fill="${text.backdrop}" stroke="none"${turned(text, paper)}/>`
  );
}

/** Millimetres to a thousandth; no negative zero, no exponent. */
export const short = (value: number): string => String(Math.round(value * 1000) / 1000 + 0);

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
// oxlint-disable-next-line no-control-regex
const NOT_XML = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;
const HALF_PAIR = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

/** Text as XML character data; what XML cannot carry becomes the replacement character. */
export const escapeXml = (text: string): string =>
  text
    .replace(NOT_XML, '\ufffd')
    .replace(HALF_PAIR, '\ufffd')
    .replace(/[&<>"']/g, (letter) => ESCAPES[letter] as string);
