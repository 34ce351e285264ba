export { cutStock, stockPieces, stockPiecesWithin, type CutBin, type CutItem, type CutOrder, type CutPlan } from './cut-stock.js';
export { USUAL_EFFORT, type Effort } from './effort.js';
