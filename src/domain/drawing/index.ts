export { wallElevation } from './elevation.js';
export { storeyPlan } from './plan.js';
export { lengthLabel } from './length-label.js';
export { renderPng } from './png.js';
export { renderSvg } from './svg.js';
export type {
  Drawing, DrawingFonts, DrawingPoint, HatchPattern, HatchShape, Layer, PolygonShape, Shape, SheetHeader, TextShape,
} from './shapes.js';
