export { checklistPdf } from './checklist-pdf.js';
export type { ChecklistPdfInput, PrintedItem } from './checklist-pdf-input.js';
export { drawingsPdf } from './drawings-pdf.js';
export type { DrawingsPdfInput } from './drawings-pdf.js';
export { renderDxf } from './dxf.js';
export { wallElevation } from './elevation.js';
export { junctionDetail } from './junction-detail.js';
export { lengthLabel } from './length-label.js';
export { storeyPlan } from './plan.js';
export { renderPng } from './png.js';
export { quotePdf } from './quote-pdf.js';
export type { QuotePdfInput } from './quote-pdf-input.js';
export { renderSvg } from './svg.js';
export type { DrawnBracing } from './drawn-bracing.js';
export type {
  Drawing,
  DrawingFonts,
  DrawingPoint,
  HatchPattern,
  HatchShape,
  Layer,
  PolygonShape,
  Shape,
  SheetHeader,
  TextShape,
} from './shapes.js';
