/** What a table of an upload holds. */
export type TableKind = 'walls' | 'openings' | 'features' | 'storeys' | 'job';
export type RowKind = Exclude<TableKind, 'job'>;

export interface ColumnRule {
  /** Path of the field in the document's row: `from/0`, `start/with/wall`. */
  readonly field: string;
  /** As the template writes it. */
  readonly name: string;
  /** Everyday synonyms, plain: lower-case letters and digits only. */
  readonly also: readonly string[];
  /** Unit a header may carry: a unit of length, degrees, inches only (a core's code), or none. */
  readonly unit: 'length' | 'degrees' | 'core' | null;
}

const column = (field: string, name: string, unit: ColumnRule['unit'], ...also: string[]): ColumnRule => ({
  field,
  name,
  also,
  unit,
});
const length = (field: string, name: string, ...also: string[]): ColumnRule => column(field, name, 'length', ...also);
const word = (field: string, name: string, ...also: string[]): ColumnRule => column(field, name, null, ...also);

const joint = (end: 'start' | 'end'): ColumnRule[] => [
  word(`${end}/joint`, `${end}_joint`),
  column(`${end}/turn`, `${end}_turn`, 'degrees'),
  word(`${end}/with/wall`, `${end}_with_wall`, `${end}with`),
  word(`${end}/with/end`, `${end}_with_end`),
  word(`${end}/on`, `${end}_on`),
  length(`${end}/at`, `${end}_at`),
  word(`${end}/side`, `${end}_side`),
];

/** The columns of each table, by the document's names and everyday synonyms. */
export const COLUMNS: Readonly<Record<RowKind, readonly ColumnRule[]>> = {
  walls: [
    word('mark', 'mark', 'wall', 'id', 'wallmark', 'wallid', 'wallno', 'wallnumber', 'tag', 'ref'),
    word('storey', 'storey', 'story', 'level', 'floor'),
    column('core', 'core', 'core', 'thk', 'thickness', 'corewidth', 'coresize', 'corethk', 'corethickness'),
    length('from/0', 'from_x', 'x1', 'startx', 'xfrom', 'xstart'),
    length('from/1', 'from_y', 'y1', 'starty', 'yfrom', 'ystart'),
    length('to/0', 'to_x', 'x2', 'endx', 'xto', 'xend'),
    length('to/1', 'to_y', 'y2', 'endy', 'yto', 'yend'),
    length('length', 'length', 'l', 'len', 'walllength'),
    length('height', 'height', 'ht', 'h', 'wallheight', 'wallht'),
    length('base', 'base', 'baseheight', 'bottom'),
    word('dimensionsTo', 'dimensionsTo', 'dimsto', 'dimensionline'),
    ...joint('start'),
    ...joint('end'),
    length('arc/radius', 'arc_radius', 'radius'),
    word('arc/turns', 'arc_turns'),
  ],
  openings: [
    word('mark', 'mark', 'opening', 'id', 'openingmark', 'openingid', 'tag', 'ref'),
    word('wall', 'wall', 'wallmark', 'wallid', 'inwall', 'onwall'),
    length('at', 'at', 'station', 'offset', 'distance', 'position', 'fromstart'),
    length('sill', 'sill', 'sillheight', 'sillht'),
    length('width', 'width', 'w', 'wd', 'openingwidth'),
    length('height', 'height', 'ht', 'h', 'openingheight'),
    word('lining', 'lining'),
    word('measured', 'measured', 'measuredto', 'measuredas'),
  ],
  features: [
    word('kind', 'kind', 'feature', 'type'),
    word('wall', 'wall', 'wallmark', 'wallid', 'onwall'),
    length('at', 'at', 'atheight', 'level'),
    length('from', 'from', 'start'),
    length('to', 'to', 'end'),
    word('face', 'face'),
    word('faces', 'faces'),
    length('rise', 'rise'),
    length('peakAt', 'peakAt', 'peak'),
    column('core', 'core', 'core', 'thk', 'thickness'),
    word('flush', 'flush'),
  ],
  storeys: [
    word('id', 'id', 'storey', 'story', 'level', 'floor', 'mark', 'name'),
    length('height', 'height', 'ht', 'h', 'storeyheight', 'storyheight'),
    word('grade', 'grade'),
    word('storeyAbove', 'storeyAbove', 'storyabove', 'levelabove'),
    word('closed', 'closed'),
    word('on', 'on', 'standson', 'storeybelow', 'storybelow'),
  ],
};

/** Columns a table cannot do without; walls need all four coordinates or a length besides. */
export const NEEDED: Readonly<Record<RowKind, readonly string[]>> = {
  walls: ['mark', 'core'],
  openings: ['wall', 'at', 'sill', 'width', 'height'],
  features: ['kind', 'wall'],
  storeys: ['id', 'height'],
};

/** Header of a key and value table. */
export const JOB_HEADERS = { key: ['key', 'setting', 'field', 'property'], value: ['value'] } as const;

export interface JobRule {
  /** Path in the document; `measured` is not of the document but the default of its openings. */
  readonly field: string;
  readonly also: readonly string[];
  readonly unit: 'length' | 'quantity' | null;
}

const setting = (field: string, unit: JobRule['unit'] = null, ...also: string[]): JobRule => ({
  field,
  also: [field.toLowerCase().replace('/', ''), ...also],
  unit,
});

export const JOB_KEYS: readonly JobRule[] = [
  setting('format'),
  setting('name', null, 'jobname', 'project', 'projectname'),
  setting('units', null, 'unit'),
  setting('dimensionsTo', null, 'dimsto', 'dimensionline'),
  setting('range', null, 'formrange'),
  setting('measured', null, 'openingsmeasured'),
  setting('site/wind', 'quantity'),
  setting('site/exposure'),
  setting('site/soil', 'quantity'),
  setting('site/backfill', 'length'),
  setting('site/seismic'),
  setting('site/snow', 'quantity'),
  setting('pour/rise', 'quantity'),
  setting('pour/concrete', 'quantity'),
  setting('pour/unitWeight', 'quantity'),
  setting('pour/cement'),
  setting('pour/retarder'),
  setting('pour/slump', 'length'),
  setting('pour/air', 'quantity'),
  setting('pour/humidity', 'quantity'),
  setting('pour/wind', 'quantity'),
  setting('pour/pump', 'quantity'),
  setting('pour/truck', 'quantity'),
];
