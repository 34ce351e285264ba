export { checklistOf } from './checklist.js';
export type { ChecklistCount, ChecklistItem, ChecklistPhase } from './checklist-item.js';
export { grouped } from './grouped.js';
export { checklistSections, countsText, type ChecklistBlock, type ChecklistSection, type ListedItem } from './checklist-sections.js';
export type { SeenInStorey } from './storey-items.js';
