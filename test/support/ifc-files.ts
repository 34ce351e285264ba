/**
 * Small STEP files (ISO 10303-21) of the IFC4 schema, written by hand line by line: attributes stand in the order of the published
 * schema (ISO 16739-1), one helper per entity and nothing computed but ids.
 */
export type Ref = string;
type Attribute = string | number | null | readonly Attribute[];

/** A word (`.AXIS2.`), a typed value or a reference is written as it is; text goes through `text`. */
export const text = (value: string): string => `'${value.replaceAll("'", "''")}'`;

function written(value: Attribute): string {
  if (value === null) return '$';
  if (typeof value === 'string') return value;
  if (typeof value === 'number') return Number.isInteger(value) ? `${value}.` : String(value).replace('e', 'E');
  return `(${value.map(written).join(',')})`;
}

export type FileUnit = 'mm' | 'm' | 'ft' | 'in';
const METRES: Readonly<Record<FileUnit, number>> = { mm: 0.001, m: 1, ft: 0.3048, in: 0.0254 };

export interface Placed {
  readonly origin?: readonly number[];
  /** Degrees counter-clockwise. */
  readonly turn?: number;
  readonly axis?: readonly number[];
  readonly ahead?: readonly number[];
}

export interface WallOptions {
  readonly name?: string;
  readonly id?: string;
  readonly at?: Placed;
  readonly storey?: Ref;
  readonly body?: Ref | null;
  readonly axis?: Ref | null;
  readonly material?: Ref | null;
  readonly kind?: string;
}

/** Builds one file; every method adds an instance and gives its reference. */
export class IfcFile {
  private readonly lines: string[] = [];
  private readonly contained = new Map<Ref, Ref[]>();
  private ids = 0;
  readonly context: Ref;
  readonly project: Ref;
  readonly building: Ref;
  readonly sitePlacement: Ref;
  readonly buildingPlacement: Ref;

  constructor(
    readonly unit: FileUnit = 'mm',
    site: Placed = {},
    building: Placed = {},
    readonly schema = 'IFC4',
  ) {
    this.context = this.add('IFCGEOMETRICREPRESENTATIONCONTEXT', null, text('Model'), '3', 1e-5, this.axes({}), null);
    this.project = this.add('IFCPROJECT', text(this.globalId('project')), null, text('Pier house'), null, null, null, null, [this.context], this.units());
    this.sitePlacement = this.local(null, site);
    const place = this.add('IFCSITE', text(this.globalId('site')), null, null, null, null, this.sitePlacement, null, null, '.ELEMENT.', null, null, null, null, null);
    this.buildingPlacement = this.local(this.sitePlacement, building);
    this.building = this.add('IFCBUILDING', text(this.globalId('building')), null, text('House'), null, null, this.buildingPlacement, null, null, '.ELEMENT.', null, null, null);
    this.relate('IFCRELAGGREGATES', this.project, [place]);
    this.relate('IFCRELAGGREGATES', place, [this.building]);
  }

  add(type: string, ...attributes: readonly Attribute[]): Ref {
    this.lines.push(`#${this.lines.length + 1}=${type}(${attributes.map(written).join(',')});`);
    return `#${this.lines.length}`;
  }

  /** 22 characters, as a GlobalId has. */
  globalId(word: string): string {
    this.ids += 1;
    return `${word.replace(/[^0-9A-Za-z]/g, '')}${'0'.repeat(22)}`.slice(0, 18) + String(this.ids).padStart(4, '0');
  }

  relate(type: string, one: Ref, many: readonly Ref[]): Ref {
    return this.add(type, text(this.globalId('relation')), null, null, null, one, many);
  }

  private units(): Ref {
    const milli = this.add('IFCSIUNIT', '*', '.LENGTHUNIT.', '.MILLI.', '.METRE.');
    const metre = this.add('IFCSIUNIT', '*', '.LENGTHUNIT.', null, '.METRE.');
    const radian = this.add('IFCSIUNIT', '*', '.PLANEANGLEUNIT.', null, '.RADIAN.');
    const degree = this.converted('PLANEANGLEUNIT', 'DEGREE', 0.017453292519943295, radian);
    const length = this.unit === 'mm' ? milli : this.unit === 'm' ? metre : this.converted('LENGTHUNIT', this.unit === 'ft' ? 'FOOT' : 'INCH', METRES[this.unit], metre);
    return this.add('IFCUNITASSIGNMENT', [length, degree]);
  }

  private converted(kind: string, name: string, factor: number, of: Ref): Ref {
    const powers = this.add('IFCDIMENSIONALEXPONENTS', kind === 'LENGTHUNIT' ? '1' : '0', '0', '0', '0', '0', '0', '0');
    const measure = this.add('IFCMEASUREWITHUNIT', `IFCRATIOMEASURE(${written(factor)})`, of);
    return this.add('IFCCONVERSIONBASEDUNIT', powers, `.${kind}.`, text(name), measure);
  }

  /** A length in inches in the unit of the file. */
  inches(value: number): number {
    return { mm: value * 25.4, m: (value * 254) / 10_000, ft: value / 12, in: value }[this.unit];
  }

  point(...coordinates: readonly number[]): Ref {
    return this.add('IFCCARTESIANPOINT', coordinates);
  }

  direction(...ratios: readonly number[]): Ref {
    return this.add('IFCDIRECTION', ratios);
  }

  axes({ origin = [0, 0, 0], turn, axis, ahead }: Placed): Ref {
    const radians = ((turn ?? 0) * Math.PI) / 180;
    const reference = ahead ?? (turn === undefined ? null : [Math.cos(radians), Math.sin(radians), 0]);
    return this.add(
      'IFCAXIS2PLACEMENT3D',
      this.point(...origin),
      axis ? this.direction(...axis) : reference ? this.direction(0, 0, 1) : null,
      reference ? this.direction(...reference) : null,
    );
  }

  local(relativeTo: Ref | null, placed: Placed): Ref {
    return this.add('IFCLOCALPLACEMENT', relativeTo, this.axes(placed));
  }

  private readonly placements = new Map<Ref, Ref>();

  storey(name: string, elevation: number, placed: Placed = { origin: [0, 0, elevation] }): Ref {
    const placement = this.local(this.buildingPlacement, placed);
    const storey = this.add('IFCBUILDINGSTOREY', text(this.globalId(`storey${name}`)), null, text(name), null, null, placement, null, null, '.ELEMENT.', elevation);
    this.placements.set(storey, placement);
    this.relate('IFCRELAGGREGATES', this.building, [storey]);
    return storey;
  }

  rectangle(length: number, thickness: number, centre: readonly [number, number] = [length / 2, 0]): Ref {
    return this.add('IFCRECTANGLEPROFILEDEF', '.AREA.', null, this.add('IFCAXIS2PLACEMENT2D', this.point(...centre), null), length, thickness);
  }

  polyline(points: readonly (readonly number[])[]): Ref {
    return this.add('IFCPOLYLINE', points.map((point) => this.point(...point)));
  }

  /** A closed outline through these corners. */
  outline(corners: readonly (readonly number[])[]): Ref {
    return this.add('IFCARBITRARYCLOSEDPROFILEDEF', '.AREA.', null, this.polyline([...corners, corners[0]!]));
  }

  extruded(profile: Ref, depth: number, placed: Placed = {}, direction: readonly number[] = [0, 0, 1]): Ref {
    return this.add('IFCEXTRUDEDAREASOLID', profile, this.axes(placed), this.direction(...direction), depth);
  }

  /** What lies beyond a plane through a point, on the side its normal points to, is taken away. */
  clipped(solid: Ref, point: readonly number[], normal: readonly number[], bounds: readonly (readonly number[])[] | null = null): Ref {
    const plane = this.add('IFCPLANE', this.add('IFCAXIS2PLACEMENT3D', this.point(...point), this.direction(...normal), this.direction(0, 1, 0)));
    const half = bounds
      ? this.add('IFCPOLYGONALBOUNDEDHALFSPACE', plane, '.F.', this.axes({}), this.polyline([...bounds, bounds[0]!]))
      : this.add('IFCHALFSPACESOLID', plane, '.F.');
    return this.add('IFCBOOLEANCLIPPINGRESULT', '.DIFFERENCE.', solid, half);
  }

  shape(identifier: string, type: string, ...items: readonly Ref[]): Ref {
    return this.add('IFCSHAPEREPRESENTATION', this.context, text(identifier), text(type), items);
  }

  /** Layers by name and thickness, beside the line of the walls that use them. */
  layers(layers: readonly (readonly [string, number])[], usage: { offset: number; sense?: '.POSITIVE.' | '.NEGATIVE.' } | null = null): Ref {
    const set = this.add(
      'IFCMATERIALLAYERSET',
      layers.map(([name, thickness]) => this.add('IFCMATERIALLAYER', this.add('IFCMATERIAL', text(name)), thickness, null)),
      null,
    );
    return usage ? this.add('IFCMATERIALLAYERSETUSAGE', set, '.AXIS2.', usage.sense ?? '.POSITIVE.', usage.offset) : set;
  }

  private element(kind: string, name: string, id: string | undefined, placement: Ref | null, shapes: readonly Ref[], last: readonly Attribute[]): Ref {
    const shape = shapes.length > 0 ? this.add('IFCPRODUCTDEFINITIONSHAPE', null, null, shapes) : null;
    return this.add(kind, text(id ?? this.globalId(name)), null, text(name), null, null, placement, shape, null, ...last);
  }

  wall({ name = 'W1', id, at = {}, storey, body = null, axis = null, material = null, kind = 'IFCWALL' }: WallOptions): Ref {
    const placement = this.local(storey === undefined ? this.buildingPlacement : (this.placements.get(storey) ?? null), at);
    const wall = this.element(kind, name, id, placement, [axis, body].filter((shape) => shape !== null), kind === 'IFCWALLSTANDARDCASE' && this.schema === 'IFC2X3' ? [] : [null]);
    if (storey !== undefined) this.contain(storey, wall);
    if (material !== null) this.add('IFCRELASSOCIATESMATERIAL', text(this.globalId('material')), null, null, null, [wall], material);
    this.placements.set(wall, placement);
    return wall;
  }

  other(kind: string, name: string, storey: Ref, last: readonly Attribute[] = [null]): Ref {
    const element = this.element(kind, name, undefined, null, [], last);
    this.contain(storey, element);
    return element;
  }

  /** A hole in a wall, in the wall's own frame. */
  opening(wall: Ref, solid: Ref, name = 'O1'): Ref {
    const placement = this.local(this.placements.get(wall) ?? null, {});
    const opening = this.element('IFCOPENINGELEMENT', name, undefined, placement, [this.shape('Body', 'SweptSolid', solid)], [null]);
    this.add('IFCRELVOIDSELEMENT', text(this.globalId('void')), null, null, null, wall, opening);
    return opening;
  }

  fill(opening: Ref, element: Ref): void {
    this.add('IFCRELFILLSELEMENT', text(this.globalId('fill')), null, null, null, opening, element);
  }

  connect(a: Ref, aEnd: string, b: Ref, bEnd: string): void {
    this.add('IFCRELCONNECTSPATHELEMENTS', text(this.globalId('connect')), null, null, null, null, a, b, [], [], bEnd, aEnd);
  }

  contain(storey: Ref, element: Ref): void {
    this.contained.set(storey, [...(this.contained.get(storey) ?? []), element]);
  }

  toString(): string {
    const relations = [...this.contained].map(
      ([storey, elements], index) =>
        `#${this.lines.length + index + 1}=IFCRELCONTAINEDINSPATIALSTRUCTURE(${text(`contained${String(index).padStart(13, '0')}`)},$,$,$,(${elements.join(',')}),${storey});`,
    );
    return [
      'ISO-10303-21;',
      'HEADER;',
      "FILE_DESCRIPTION((''),'2;1');",
      "FILE_NAME('','2026-01-01T00:00:00',(''),(''),'','','');",
      `FILE_SCHEMA((${text(this.schema)}));`,
      'ENDSEC;',
      'DATA;',
      ...this.lines,
      ...relations,
      'ENDSEC;',
      'END-ISO-10303-21;',
      '',
    ].join('\n');
  }
}

/** The free wall of decisions 13, 20'-0" × 8'-0", 11 in thick, from the origin along x of the placement. */
export function freeWall(unit: FileUnit, site: Placed = {}, building: Placed = {}, at: Placed = {}, schema = 'IFC4'): IfcFile {
  const file = new IfcFile(unit, site, building, schema);
  const storey = file.storey('S1', 0);
  const solid = file.extruded(file.rectangle(file.inches(240), file.inches(11)), file.inches(96));
  file.wall({ name: 'A', at, storey, body: file.shape('Body', 'SweptSolid', solid) });
  return file;
}
