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

/** Most errors of one upload that are told; the last line then says how many more there are. */
export const MAX_INPUT_ERRORS = 200;

const MAX_READ = 80;

/** What was read, as an error shows it: control characters and broken halves of characters replaced, cut to 80 characters. */
export function shownText(value: unknown): string {
  const text = inWords(value);
  const short = text.length > MAX_READ ? `${text.slice(0, MAX_READ - 1)}…` : text;
  return short.replace(/[\p{Cc}\p{Cs}]/gu, '\ufffd');
}

function inWords(value: unknown): string {
  if (value === undefined || value === null) return '';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return typeof value === 'object' ? 'an object' : String(value);
}

/** Errors of one upload: all are counted, the first two hundred kept. */
export class InputErrorList {
  private readonly kept: InputError[] = [];
  private total = 0;

  add(error: InputError): void {
    this.total += 1;
    if (this.kept.length < MAX_INPUT_ERRORS) this.kept.push({ ...error, read: shownText(error.read) });
  }

  get count(): number {
    return this.total;
  }

  /** At most 200 lines; past that, 199 errors and a line that says how many more there are. */
  list(): readonly InputError[] {
    if (this.total <= MAX_INPUT_ERRORS) return [...this.kept];
    const told = this.kept.slice(0, MAX_INPUT_ERRORS - 1);
    const more = this.total - told.length;
    return [
      ...told,
      {
        sheet: null,
        row: null,
        column: null,
        pointer: null,
        read: '',
        fix: `${more} more errors are not listed: put these right and send it again`,
      },
    ];
  }
}
