import { shownText } from '../../evidence/input-error.js';
import type { ElementNote, ModelNotes, SkippedElement } from '../model-notes.js';
import { globalIdOf } from './names.js';
import type { Entity } from './step-model.js';

/** Most elements of a model that are listed; the last line then says how many more there are. */
export const MAX_LISTED = 1_000;

/** What is left out of a model and what is done to the rest, in the order in which it is found. */
export class NoteList {
  private readonly left: SkippedElement[] = [];
  private readonly done: ElementNote[] = [];

  skip(entity: Entity, reason: string): void {
    this.left.push({ ...whoIs(entity), reason });
  }

  note(entity: Entity, note: string): void {
    this.done.push({ ...whoIs(entity), note });
  }

  get skipped(): readonly SkippedElement[] {
    return this.left;
  }

  listed(): ModelNotes {
    const nobody = { globalId: '', kind: '', name: '' };
    return {
      skipped: cut(this.left, (more) => ({ ...nobody, reason: `${more} more elements are left out and not listed` })),
      noted: cut(this.done, (more) => ({ ...nobody, note: `${more} more notes are not listed` })),
    };
  }
}

const whoIs = (entity: Entity) => ({ globalId: globalIdOf(entity), kind: entity.type, name: shownText(entity.text(2) ?? '') });

function cut<T>(list: readonly T[], last: (more: number) => T): readonly T[] {
  return list.length <= MAX_LISTED ? list : [...list.slice(0, MAX_LISTED - 1), last(list.length - MAX_LISTED + 1)];
}
