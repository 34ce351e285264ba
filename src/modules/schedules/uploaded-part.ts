/** One part of an upload: a file of a form, or the JSON body itself. */
export interface UploadedPart {
  readonly name: string;
  readonly mediaType: string;
  readonly bytes: Buffer;
}
