/** Thrown where an element of a model holds what is not read here; caught where elements are gone through, and the element is then listed. */
export class Unread extends Error {
  constructor(readonly reason: string) {
    super(reason);
  }
}

/** What a piece of reading gives, or why it gives nothing. */
export function readOr<T>(read: () => T, otherwise: (reason: string) => T): T {
  try {
    return read();
  } catch (error) {
    if (error instanceof Unread) return otherwise(error.reason);
    throw error;
  }
}
