import type { RuleMeta } from '../reinforcement/rule.js';

/** When the crew comes to an item: before the first form of the storey, while laying, before the pour, during it. */
export type ChecklistPhase = 'before-work' | 'laying' | 'before-pour' | 'during-pour';

/** One line of the pre-pour checklist: one rule at one place, or one thing to see to in a storey. */
export interface ChecklistItem {
  /** The same in every revision for the same rule at the same place; unique in the job. */
  readonly key: string;
  /** What the item says and stands for, in one canonical string: two items alike in text, counts, stations and that have the same, any others do not. */
  readonly digest: string;
  readonly phase: ChecklistPhase;
  readonly rule: string;
  readonly storey: string;
  /** No wall where the item concerns the whole storey; no course where it concerns the whole wall. */
  readonly wall: string | null;
  readonly course: number | null;
  readonly text: string;
  /** In the order of the skus; empty where nothing of the range's materials is used. */
  readonly counts: readonly ChecklistCount[];
  readonly basis: RuleMeta['basis'];
}

/** What one rule takes of one material at the place of the item. */
export interface ChecklistCount {
  readonly sku: string;
  readonly quantity: number;
  readonly unit: 'ft' | 'each';
  /** Where along the wall, as its cause says it [mm]; absent where it does not. */
  readonly atMm?: readonly number[];
}

/**
 * An item with its key and digest made from what it says; counts are put in the order of their skus.
 *
 * @param of what the item stands for without saying it: one tick is for all bars of a storey, and no longer holds where they are others
 */
export function checklistItem(said: Omit<ChecklistItem, 'key' | 'digest'>, of?: string): ChecklistItem {
  const counts = [...said.counts].sort((a, b) => (a.sku < b.sku ? -1 : 1));
  const digest = JSON.stringify([said.text, counts.map(({ sku, quantity, unit, atMm = [] }) => [sku, quantity, unit, ...atMm]), ...(of === undefined ? [] : [of])]);
  return { key: checklistKey(said), digest, ...said, counts };
}

/** `storey/wall/course/rule`, empty where there is none; a slash within a name is written so that no two places share a key. */
export function checklistKey({ storey, wall, course, rule }: Pick<ChecklistItem, 'storey' | 'wall' | 'course' | 'rule'>): string {
  return [storey, wall ?? '', course === null ? '' : String(course), rule].map((part) => part.replaceAll('%', '%25').replaceAll('/', '%2F')).join('/');
}
