/** One part of an upload: a file of a form, or the JSON body itself. */
export interface UploadedPart {
  readonly name: string;
  readonly mediaType: string;
  readonly bytes: Buffer;
  /** Calls back when whoever sent it has gone; answers how to stop listening. */
  readonly whenGone?: (told: () => void) => () => void;
}
