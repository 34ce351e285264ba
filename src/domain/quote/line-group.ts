import type { MaterialKind, UnitKind } from '../range/range.js';

/** Lines that are no goods are groups of their own, which no discount reaches. */
export const RESERVED_GROUPS: readonly string[] = ['freight', 'minimum'];

const UNIT_GROUPS: Readonly<Record<UnitKind, string>> = {
  straight: 'forms',
  ledge: 'forms',
  'taper-top': 'forms',
  corner: 'corners',
  'corner-pair': 'corners',
  'corner-hinged': 'corners',
  strip: 'strips',
  'end-closure': 'closures',
};

/** The group a unit's lines are in where its item names none. */
export const unitGroup = (kind: UnitKind): string => UNIT_GROUPS[kind];

/** The group a material's line is in where its item names none. */
export const materialGroup = (kind: MaterialKind): string => (kind === 'bar' ? 'bars' : 'materials');
