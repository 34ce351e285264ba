import type { IfcAPI, RawLineData } from 'web-ifc';

/** Instances whose attributes are read, and from which it goes on to what they name. All others are told by their type alone. */
const READ = new Set([
  'IfcProject',
  'IfcUnitAssignment',
  'IfcSIUnit',
  'IfcConversionBasedUnit',
  'IfcConversionBasedUnitWithOffset',
  'IfcMeasureWithUnit',
  'IfcBuilding',
  'IfcBuildingStorey',
  'IfcWall',
  'IfcWallStandardCase',
  'IfcWallElementedCase',
  'IfcOpeningElement',
  'IfcOpeningStandardCase',
  'IfcRelAggregates',
  'IfcRelNests',
  'IfcRelContainedInSpatialStructure',
  'IfcRelVoidsElement',
  'IfcRelFillsElement',
  'IfcRelAssociatesMaterial',
  'IfcRelDefinesByType',
  'IfcRelDefinesByProperties',
  'IfcRelConnectsPathElements',
  'IfcWallType',
  'IfcElementQuantity',
  'IfcQuantityLength',
  'IfcPropertySet',
  'IfcPropertySingleValue',
  'IfcMaterial',
  'IfcMaterialLayer',
  'IfcMaterialLayerSet',
  'IfcMaterialLayerSetUsage',
  'IfcLocalPlacement',
  'IfcAxis2Placement3D',
  'IfcAxis2Placement2D',
  'IfcCartesianPoint',
  'IfcDirection',
  'IfcVector',
  'IfcProductDefinitionShape',
  'IfcShapeRepresentation',
  'IfcExtrudedAreaSolid',
  'IfcBooleanClippingResult',
  'IfcBooleanResult',
  'IfcHalfSpaceSolid',
  'IfcPolygonalBoundedHalfSpace',
  'IfcPlane',
  'IfcRectangleProfileDef',
  'IfcArbitraryClosedProfileDef',
  'IfcPolyline',
  'IfcIndexedPolyCurve',
  'IfcCartesianPointList2D',
  'IfcCartesianPointList3D',
  'IfcTrimmedCurve',
  'IfcCircle',
  'IfcLine',
  'IfcCompositeCurve',
  'IfcCompositeCurveSegment',
]);
/** Where it begins: the rest is reached from these. */
const ROOTS = [
  'IfcProject',
  'IfcBuilding',
  'IfcBuildingStorey',
  'IfcRelAggregates',
  'IfcRelNests',
  'IfcRelContainedInSpatialStructure',
  'IfcRelVoidsElement',
  'IfcRelFillsElement',
  'IfcRelAssociatesMaterial',
  'IfcRelDefinesByType',
  'IfcRelDefinesByProperties',
  'IfcRelConnectsPathElements',
];
/** Of an element that is not read: its GlobalId and its name. */
const NAMED = 3;

/** Kinds of values as the parser numbers them. */
const [STRING, TYPED, ENUM, REAL, REF, INTEGER] = [1, 2, 3, 4, 5, 10];
/** Lists in lists deeper than this are no attributes of any schema. */
const MAX_NESTING = 8;

type Value = unknown;

/** Everything that walls hang together with, in the order of its ids, as plain JSON values: `StepLines` of the schedule's reader. */
export function takeLines(api: IfcAPI, model: number): { schema: string; lines: unknown[]; elements: number[] } {
  const typeCode = (name: string): number => api.GetTypeCodeFromName(name.toUpperCase());
  const idsOf = (name: string, inherited: boolean): number[] => [...api.GetLineIDsWithType(model, typeCode(name), inherited)];
  const elements = idsOf('IfcElement', true);
  const built = new Set(elements);
  const lines: (readonly [number, ...Value[]])[] = [];
  const seen = new Set<number>();
  const waiting = [...ROOTS.flatMap((name) => idsOf(name, false)), ...elements];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    if (seen.has(id)) continue;
    seen.add(id);
    const line = api.GetRawLineData(model, id) as RawLineData | undefined;
    if (!line || !Array.isArray(line.arguments)) continue;
    const type = api.GetNameFromTypeCode(line.type) as string | undefined;
    if (type === undefined) continue;
    const read = READ.has(type);
    const values = (read ? line.arguments : built.has(id) ? line.arguments.slice(0, NAMED) : []).map((value: Value) =>
      plain(api, value, read ? waiting : null),
    );
    lines.push(values.length > 0 ? [id, type, values] : [id, type]);
  }
  lines.sort(([a], [b]) => a - b);
  return { schema: api.GetModelSchema(model), lines, elements: elements.sort((a, b) => a - b) };
}

interface RawValue {
  readonly type: number;
  readonly value?: unknown;
  readonly typecode?: number;
}

/** A value of the parser as a `StepValue`; what it refers to is put where the next instances are taken from. */
function plain(api: IfcAPI, raw: Value, waiting: number[] | null, depth = 0): Value {
  if (raw === null || raw === undefined || depth > MAX_NESTING) return null;
  if (Array.isArray(raw)) return raw.map((each) => plain(api, each, waiting, depth + 1));
  const { type, value, typecode } = raw as RawValue;
  if (type === REF) {
    if (waiting) waiting.push(Number(value));
    return { ref: Number(value) };
  }
  if (type === REAL || type === INTEGER) return finite(value);
  if (type === STRING) return typeof value === 'string' ? value : null;
  if (type === ENUM) return typeof value === 'boolean' ? value : typeof value === 'string' ? { word: value } : null;
  if (type === TYPED) return { type: api.GetNameFromTypeCode(typecode ?? 0) ?? '', value: inner(api, value, waiting, depth + 1) };
  return null;
}

/** The value inside a typed one: bare, or values of its own. */
const inner = (api: IfcAPI, value: unknown, waiting: number[] | null, depth: number): Value =>
  typeof value === 'object' && value !== null ? plain(api, value, waiting, depth) : (value ?? null);

function finite(value: unknown): number | null {
  const number = Number(value);
  return Number.isFinite(number) ? number : null;
}
