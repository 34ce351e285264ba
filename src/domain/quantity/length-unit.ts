/** Units a document may be written in. */
export const LENGTH_UNITS = ['in', 'ft', 'mm', 'm'] as const;
export type LengthUnit = (typeof LENGTH_UNITS)[number];

/** Units a single text or a column header may carry: centimetres are read where they are written. */
export type WrittenLengthUnit = LengthUnit | 'cm';

/** Exact by definition: the inch is 25.4 mm (international yard and pound agreement, 1959). */
export const NM_PER_UNIT: Readonly<Record<WrittenLengthUnit, bigint>> = {
  in: 25_400_000n,
  ft: 304_800_000n,
  mm: 1_000_000n,
  cm: 10_000_000n,
  m: 1_000_000_000n,
};

const NAMES: ReadonlyMap<string, WrittenLengthUnit> = new Map([
  ["'", 'ft'],
  ['ft', 'ft'],
  ['ft.', 'ft'],
  ['foot', 'ft'],
  ['feet', 'ft'],
  ['"', 'in'],
  ['in', 'in'],
  ['in.', 'in'],
  ['inch', 'in'],
  ['inches', 'in'],
  ['mm', 'mm'],
  ['millimetre', 'mm'],
  ['millimetres', 'mm'],
  ['millimeter', 'mm'],
  ['millimeters', 'mm'],
  ['cm', 'cm'],
  ['centimetre', 'cm'],
  ['centimetres', 'cm'],
  ['centimeter', 'cm'],
  ['centimeters', 'cm'],
  ['m', 'm'],
  ['metre', 'm'],
  ['metres', 'm'],
  ['meter', 'm'],
  ['meters', 'm'],
]);

/** The unit of length a word or sign stands for, in plain lower-case text; undefined where it is none. */
export const lengthUnitNamed = (name: string): WrittenLengthUnit | undefined => NAMES.get(name);
