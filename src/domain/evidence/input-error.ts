/** One thing wrong with what was sent: where it stands, what was read, what would do. */
export interface InputError {
  readonly sheet: string | null;
  readonly row: number | null;
  readonly column: string | null;
  /** JSON pointer into the canonical document (`/walls/3/core`), null where there is none. */
  readonly pointer: string | null;
  /** What was read, cut to 80 characters. */
  readonly read: string;
  /** What would do. */
  readonly fix: string;
}
