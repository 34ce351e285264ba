export { checklistOf } from './checklist.js';
export type { ChecklistCount, ChecklistItem, ChecklistPhase } from './checklist-item.js';
