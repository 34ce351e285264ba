export { cutStock, type CutBin, type CutItem, type CutOrder, type CutPlan } from './cut-stock.js';
