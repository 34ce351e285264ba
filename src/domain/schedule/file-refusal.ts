export type RefusalCode = 'unreadable' | 'wrong-type' | 'invalid' | 'too-large';

/**
 * Thrown while a file is read as a stream, to stop reading at once; caught where the files of an upload come together and nowhere else.
 */
export class FileRefusal extends Error {
  constructor(
    readonly code: RefusalCode,
    readonly sheet: string,
    readonly read: string,
    readonly fix: string,
    readonly row: number | null = null,
  ) {
    super(fix);
  }
}
