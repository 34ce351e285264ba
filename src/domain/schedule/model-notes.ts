/** An element of a building model that is not in the schedule, and why. */
export interface SkippedElement {
  readonly globalId: string;
  readonly kind: string;
  readonly name: string;
  readonly reason: string;
}

/** What was done with an element of a building model that is not plain from the schedule. */
export interface ElementNote {
  readonly globalId: string;
  readonly kind: string;
  readonly name: string;
  readonly note: string;
}

/** What a schedule that was read from a building model tells of it. */
export interface ModelNotes {
  readonly skipped: readonly SkippedElement[];
  readonly noted: readonly ElementNote[];
}
