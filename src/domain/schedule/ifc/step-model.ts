import { Unread } from './unread.js';

/** A value of a STEP instance: `$` and `*` are null, `#12` a reference, `.T.` a boolean, `.ENUM.` a word, `IFCLABEL('a')` a typed value. */
export type StepValue =
  | null
  | number
  | string
  | boolean
  | { readonly ref: number }
  | { readonly word: string }
  | { readonly type: string; readonly value: StepValue }
  | readonly StepValue[];

/** Id, type (`IfcWall`) and attributes in the order of the schema; without attributes where nothing below it is read. */
export type StepLine = readonly [number, string, (readonly StepValue[])?];

/** What is taken out of a model file: the instances that walls hang together with. */
export interface StepLines {
  readonly schema: string;
  readonly lines: readonly StepLine[];
  /** Ids of everything that is built: walls, openings, slabs, doors and all the rest. */
  readonly elements: readonly number[];
}

const isObject = (value: StepValue): value is Exclude<StepValue, null | number | string | boolean | readonly StepValue[]> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** One instance; attributes are asked for by their place in the schema, counted from 0. */
export class Entity {
  constructor(
    private readonly model: StepModel,
    readonly id: number,
    readonly type: string,
    private readonly attributes: readonly StepValue[],
  ) {}

  get size(): number {
    return this.attributes.length;
  }

  value(place: number): StepValue {
    return this.attributes[place] ?? null;
  }

  optional(place: number): Entity | null {
    return this.model.resolve(this.value(place));
  }

  entity(place: number): Entity {
    return this.optional(place) ?? this.missing(place);
  }

  /** Every instance of a list or set; those that are not there are left out. */
  entities(place: number): readonly Entity[] {
    const value = this.value(place);
    if (!Array.isArray(value)) return [];
    return (value as readonly StepValue[]).flatMap((each) => this.model.resolve(each) ?? []);
  }

  /** A number, also inside a typed value such as `IFCLENGTHMEASURE(3.)`; null where there is none. */
  optionalNumber(place: number): number | null {
    return numberOf(this.value(place));
  }

  number(place: number): number {
    return this.optionalNumber(place) ?? this.missing(place);
  }

  numbers(place: number): readonly number[] {
    const value = this.value(place);
    if (!Array.isArray(value)) return this.missing(place);
    return (value as readonly StepValue[]).map((each) => numberOf(each) ?? this.missing(place));
  }

  text(place: number): string | null {
    const value = this.value(place);
    return typeof value === 'string' && value.trim() !== '' ? value.trim() : null;
  }

  word(place: number): string | null {
    const value = this.value(place);
    return isObject(value) && 'word' in value ? value.word : null;
  }

  private missing(place: number): never {
    throw new Unread(`attribute ${place + 1} of #${this.id} ${this.type} is missing`);
  }
}

/** A finite number, plain or typed. */
export function numberOf(value: StepValue): number | null {
  if (typeof value === 'number') return Number.isFinite(value) ? value : null;
  if (!isObject(value) || !('type' in value)) return null;
  if (typeof value.value === 'string') {
    const number = Number(value.value);
    return value.value.trim() !== '' && Number.isFinite(number) ? number : null;
  }
  return numberOf(value.value);
}

export const typeOf = (value: StepValue): string | null => (isObject(value) && 'type' in value ? value.type : null);

/** The instances of a file by id and by type. */
export class StepModel {
  readonly schema: string;
  readonly elements: readonly Entity[];
  private readonly byId = new Map<number, Entity>();
  private readonly byType = new Map<string, Entity[]>();

  constructor({ schema, lines, elements }: StepLines) {
    this.schema = schema;
    for (const [id, type, attributes = []] of lines) {
      const entity = new Entity(this, id, type, attributes);
      this.byId.set(id, entity);
      const alike = this.byType.get(type);
      if (alike) alike.push(entity);
      else this.byType.set(type, [entity]);
    }
    this.elements = elements.flatMap((id) => this.byId.get(id) ?? []);
  }

  all(...types: readonly string[]): readonly Entity[] {
    return types.flatMap((type) => this.byType.get(type) ?? []);
  }

  resolve(value: StepValue): Entity | null {
    return isObject(value) && 'ref' in value ? (this.byId.get(value.ref) ?? null) : null;
  }
}
