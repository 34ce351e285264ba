import type { CementGroup } from './chemistry-coefficient.js';

/** Names of cements as a schedule or a person writes them, and the row of the chemistry table each belongs to. */
const GROUPS: Readonly<Record<string, CementGroup>> = {
  I: 'portland-i-ii-iii',
  'I/II': 'portland-i-ii-iii',
  II: 'portland-i-ii-iii',
  III: 'portland-i-ii-iii',
  IV: 'other-or-low-blend',
  V: 'other-or-low-blend',
  IL: 'other-or-low-blend',
  'BLEND-LOW': 'other-or-low-blend',
  'BLEND-HIGH': 'high-blend',
};

/** What may be written for a cement: types, and blends by their share of slag (70 %) or fly ash (40 %). */
export const CEMENT_NAMES: readonly string[] = Object.keys(GROUPS).map((name) =>
  name.startsWith('BLEND') ? name.toLowerCase() : name,
);

/**
 * Row of the chemistry table for a cement's name; case and a leading `Type` do not matter.
 *
 * Types other than I, II and III (IV, V, IL) fall under the table's `other types`.
 *
 * @equation  name → row of the table of Cc
 * @param name cement as written                                [-]
 * @returns   row of the table, null where the name is unknown  [-]
 * @valid     names in CEMENT_NAMES
 * @source    aci-347-04 Table 2.2, from memory
 * @example   name = 'Type II' → 'portland-i-ii-iii'
 */
export function cementGroup(name: string): CementGroup | null {
  const key = name
    .trim()
    .toUpperCase()
    .replace(/^TYPE[\s_-]+/, '')
    .replace(/[\s_]+/g, '-');
  return Object.hasOwn(GROUPS, key) ? (GROUPS[key] ?? null) : null;
}
