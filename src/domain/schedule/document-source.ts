import type { InputError } from '../evidence/input-error.js';
import type { ModelNotes } from './model-notes.js';
import type { Places } from './places.js';

/** A document together with where its values stood and what was wrong before it became one. */
export interface DocumentSource {
  readonly document: unknown;
  readonly places: Places;
  readonly errors: readonly InputError[];
  readonly unknown: readonly { sheet: string | null; name: string }[];
  /** Building models only: what is left out and what was done with the rest. */
  readonly notes?: ModelNotes;
  /** Tables only: every sheet and file that was read and what it was taken for, in words. */
  readonly sheetsRead?: string;
}
