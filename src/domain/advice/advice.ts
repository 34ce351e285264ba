import type { FindingCode } from '../evidence/finding.js';

/** A person's answer to a question: it lifts the findings of that question at the places it names (all places where it names none). */
export interface Advice {
  readonly question: string;
  readonly lifts: readonly { readonly code: FindingCode; readonly storey: string | null; readonly wall: string | null }[];
  readonly text: string;
}
