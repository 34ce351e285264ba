import { InputErrorList, shownText } from '../evidence/input-error.js';
import { lengthUnitNamed, type LengthUnit, type WrittenLengthUnit } from '../quantity/length-unit.js';
import { MAX_UNKNOWN } from './schedule-limits.js';
import type { Places } from './places.js';
import { UnusableCell } from './unusable-cell.js';

/** One pass over one schedule: its places, its unit, the errors found and the names nobody knew. */
export class Reading {
  readonly errors = new InputErrorList();
  private readonly unknownNames = new Set<string>();

  constructor(
    readonly places: Places,
    /** Unit of bare numbers; null where the schedule states none or a wrong one, which is an error of its own. */
    readonly unit: LengthUnit | null,
  ) {}

  /** Records what was read at a pointer and what would do. */
  fail(pointer: string, value: unknown, fix: string): undefined {
    const { sheet, row, column, told } = this.places.at(pointer);
    const absent = value === undefined || value === null;
    if (absent && told) return undefined;
    const read = value instanceof UnusableCell ? value.text : shownText(value);
    this.errors.add({ sheet, row, column, pointer, read, fix: value instanceof UnusableCell ? value.fix : fix });
    return undefined;
  }

  /** The unit of a bare number at a pointer: its column's, else the document's. */
  unitAt(pointer: string): WrittenLengthUnit | null {
    return this.columnUnitAt(pointer) ?? this.unit;
  }

  /** The unit of length that a column's header gives, null where it gives none. */
  columnUnitAt(pointer: string): WrittenLengthUnit | null {
    return lengthUnitNamed(this.places.at(pointer).unit ?? '') ?? null;
  }

  /** A key of the document nobody knows: told once for a whole list (`walls[].colour`). */
  unknownKey(pointer: string, key: string): void {
    if (this.unknownNames.size >= MAX_UNKNOWN) return;
    const path = pointer
      .replace(/\/\d+(?=\/|$)/g, '[]')
      .replace(/^\//, '')
      .replaceAll('/', '.');
    this.unknownNames.add(shownText(path === '' ? key : `${path}.${key}`));
  }

  get unknown(): readonly { sheet: string | null; name: string }[] {
    return [...this.unknownNames].map((name) => ({ sheet: null, name }));
  }
}
