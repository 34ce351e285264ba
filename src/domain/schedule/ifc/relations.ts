import type { Entity, StepModel } from './step-model.js';

/** One end of one wall that a model declares to be joined to another's. */
export interface Connection {
  readonly a: Entity;
  readonly aEnd: string | null;
  readonly b: Entity;
  readonly bEnd: string | null;
}

/** Who belongs to whom in a model, by the id of the instance that is asked about. */
export interface Relations {
  /** The instance in which an element stands, or of which it is a part. */
  readonly above: ReadonlyMap<number, Entity>;
  readonly openings: ReadonlyMap<number, readonly Entity[]>;
  /** Openings that void something, and what fills them. */
  readonly voiding: ReadonlySet<number>;
  readonly filling: ReadonlyMap<number, Entity>;
  readonly material: ReadonlyMap<number, Entity>;
  readonly type: ReadonlyMap<number, Entity>;
  readonly properties: ReadonlyMap<number, readonly Entity[]>;
  readonly connections: readonly Connection[];
}

const MAX_DEPTH = 32;

export function relationsOf(model: StepModel): Relations {
  const above = new Map<number, Entity>();
  const put = (part: Entity, whole: Entity | null): unknown => whole && above.set(part.id, whole);
  for (const relation of model.all('IfcRelAggregates', 'IfcRelNests'))
    for (const part of relation.entities(5)) put(part, relation.optional(4));
  for (const relation of model.all('IfcRelContainedInSpatialStructure'))
    for (const element of relation.entities(4)) put(element, relation.optional(5));
  const one = (type: string, of: number, is: number): Map<number, Entity> => {
    const map = new Map<number, Entity>();
    for (const relation of model.all(type)) {
      const value = relation.optional(is);
      const single = relation.optional(of);
      for (const each of single ? [single] : relation.entities(of)) if (value) map.set(each.id, value);
    }
    return map;
  };
  const many = (type: string, of: number, is: number): Map<number, Entity[]> => {
    const map = new Map<number, Entity[]>();
    for (const relation of model.all(type)) {
      const value = relation.optional(is);
      const single = relation.optional(of);
      for (const each of single ? [single] : relation.entities(of))
        if (value) map.set(each.id, [...(map.get(each.id) ?? []), value]);
    }
    return map;
  };
  const openings = many('IfcRelVoidsElement', 4, 5);
  return {
    above,
    openings,
    voiding: new Set([...openings.values()].flat().map(({ id }) => id)),
    filling: one('IfcRelFillsElement', 4, 5),
    material: one('IfcRelAssociatesMaterial', 4, 5),
    type: one('IfcRelDefinesByType', 4, 5),
    properties: many('IfcRelDefinesByProperties', 4, 5),
    connections: model.all('IfcRelConnectsPathElements').flatMap((relation): Connection[] => {
      const [a, b] = [relation.optional(5), relation.optional(6)];
      return a && b ? [{ a, aEnd: relation.word(10), b, bEnd: relation.word(9) }] : [];
    }),
  };
}

/** The storey an element stands in, also through what it is a part of; null where it stands in none. */
export function storeyOf(element: Entity, { above }: Relations): Entity | null {
  let place = above.get(element.id);
  for (let depth = 0; place && depth < MAX_DEPTH; depth += 1) {
    if (place.type === 'IfcBuildingStorey') return place;
    place = above.get(place.id);
  }
  return null;
}

/** A number of the element or its type by the name of a quantity or a property that is a length; null where none is stated. */
export function statedLength(element: Entity, names: readonly string[], { properties, type }: Relations): number | null {
  const sets = [...(properties.get(element.id) ?? []), ...(type.get(element.id)?.entities(5) ?? [])];
  const items = sets.flatMap((set) =>
    set.type === 'IfcElementQuantity' ? set.entities(5) : set.type === 'IfcPropertySet' ? set.entities(4) : [],
  );
  for (const item of items) {
    if (!names.includes((item.text(0) ?? '').toLowerCase())) continue;
    const value =
      item.type === 'IfcQuantityLength'
        ? item.optionalNumber(3)
        : item.type === 'IfcPropertySingleValue' && isLength(item)
          ? item.optionalNumber(2)
          : null;
    if (value !== null && value > 0) return value;
  }
  return null;
}

const isLength = (item: Entity): boolean => {
  const value = item.value(2);
  return typeof value === 'object' && value !== null && 'type' in value && /LENGTHMEASURE$/i.test(value.type);
};

/** A logical property of an instance by its name, null where it is unknown or not stated. */
export function statedFlag(element: Entity, name: string, { properties }: Relations): boolean | null {
  for (const set of properties.get(element.id) ?? []) {
    if (set.type !== 'IfcPropertySet') continue;
    for (const item of set.entities(4)) {
      const value = item.value(2);
      if (
        item.text(0) === name &&
        typeof value === 'object' &&
        value !== null &&
        'type' in value &&
        typeof value.value === 'boolean'
      )
        return value.value;
    }
  }
  return null;
}
