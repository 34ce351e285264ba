import {
  DIMENSION_LINES,
  FACE_COUNTS,
  FACES,
  FEATURE_KINDS,
  FLUSH,
  GRADES,
  HANDS,
  JOINTS,
  LININGS,
  MEASURES,
  WALL_ENDS,
  type CellWords,
} from './cell-words.js';

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
  /** What its cells may say in place of the document's own words. */
  readonly words?: CellWords;
}

const column = (field: string, name: string, unit: ColumnRule['unit'], ...also: string[]): ColumnRule => ({
  field,
  name,
  also,
  unit,
});
const length = (field: string, name: string, ...also: string[]): ColumnRule => column(field, name, 'length', ...also);
const word = (field: string, name: string, ...also: string[]): ColumnRule => column(field, name, null, ...also);
const choice = (words: CellWords, field: string, name: string, ...also: string[]): ColumnRule => ({
  ...word(field, name, ...also),
  words,
});

/** An end is also known by the point it stands at: `from joint` is `start_joint`. */
const joint = (end: 'start' | 'end', point: 'from' | 'to'): ColumnRule[] => {
  const both = (...names: string[]): string[] => names.flatMap((name) => [`${end}${name}`, `${point}${name}`]);
  const others = (...names: string[]): string[] => both(...names).filter((name) => name !== `${end}${names[0]}`);
  return [
    choice(JOINTS, `${end}/joint`, `${end}_joint`, ...others('joint', 'junction', 'connection', 'jointtype'), `jointat${end}`),
    column(`${end}/turn`, `${end}_turn`, 'degrees', ...others('turn', 'angle'), `turnat${end}`),
    word(`${end}/with/wall`, `${end}_with_wall`, ...others('withwall', 'with', 'meets', 'meetswall', 'cornerwith')),
    choice(WALL_ENDS, `${end}/with/end`, `${end}_with_end`, ...others('withend', 'meetsend')),
    word(`${end}/on`, `${end}_on`, ...others('on', 'onwall', 'teeon', 'teewall')),
    length(`${end}/at`, `${end}_at`, ...others('at', 'teeat', 'station', 'teestation')),
    choice(HANDS, `${end}/side`, `${end}_side`, ...others('side', 'teeside', 'hand')),
  ];
};

/** The columns of each table, by the document's names and everyday synonyms. */
export const COLUMNS: Readonly<Record<RowKind, readonly ColumnRule[]>> = {
  walls: [
    word('mark', 'mark', 'wall', 'id', 'wallmark', 'wallid', 'wallno', 'wallnumber', 'no', 'number', 'tag', 'ref'),
    word('storey', 'storey', 'story', 'level', 'floor', 'lvl'),
    column('core', 'core', 'core', 'thk', 'thickness', 'corewidth', 'coresize', 'corethk', 'corethickness'),
    length('from/0', 'from_x', 'x1', 'startx', 'xfrom', 'xstart'),
    length('from/1', 'from_y', 'y1', 'starty', 'yfrom', 'ystart'),
    length('to/0', 'to_x', 'x2', 'endx', 'xto', 'xend'),
    length('to/1', 'to_y', 'y2', 'endy', 'yto', 'yend'),
    length('length', 'length', 'l', 'len', 'walllength'),
    length('height', 'height', 'ht', 'h', 'hgt', 'wallheight', 'wallht'),
    length('base', 'base', 'baseheight', 'baseoffset', 'bottom'),
    choice(DIMENSION_LINES, 'dimensionsTo', 'dimensionsTo', 'dimsto', 'dimensionline'),
    ...joint('start', 'from'),
    ...joint('end', 'to'),
    length('arc/radius', 'arc_radius', 'radius', 'rad', 'arcrad'),
    choice(HANDS, 'arc/turns', 'arc_turns', 'arcturn', 'arcside', 'archand', 'arcdirection', 'curves'),
  ],
  openings: [
    word('mark', 'mark', 'opening', 'id', 'openingmark', 'openingid', 'openingno', 'no', 'number', 'tag', 'ref'),
    word('wall', 'wall', 'wallmark', 'wallid', 'inwall', 'onwall'),
    length('at', 'at', 'station', 'offset', 'distance', 'position', 'fromstart', 'distancefromstart', 'nearjamb'),
    length('sill', 'sill', 'sillheight', 'sillht'),
    length('width', 'width', 'w', 'wd', 'openingwidth'),
    length('height', 'height', 'ht', 'h', 'hgt', 'openingheight'),
    choice(LININGS, 'lining', 'lining', 'jambs'),
    choice(MEASURES, 'measured', 'measured', 'measuredto', 'measuredas'),
  ],
  features: [
    choice(FEATURE_KINDS, 'kind', 'kind', 'feature', 'type', 'featurekind', 'featuretype'),
    word('wall', 'wall', 'wallmark', 'wallid', 'onwall'),
    length('at', 'at', 'atheight', 'level', 'height', 'ht', 'elevation'),
    length('from', 'from', 'start', 'fromstation'),
    length('to', 'to', 'end', 'tostation'),
    choice(FACES, 'face', 'face', 'side', 'ledgeface', 'ledgeside'),
    choice(FACE_COUNTS, 'faces', 'faces', 'taperfaces', 'taperedfaces'),
    length('rise', 'rise', 'gablerise'),
    length('peakAt', 'peakAt', 'peak', 'peakstation', 'ridge', 'ridgeat', 'apex', 'apexat'),
    column('core', 'core', 'core', 'thk', 'thickness', 'newcore', 'coreabove'),
    choice(FLUSH, 'flush', 'flush', 'flushwith', 'flushface', 'flushside'),
  ],
  storeys: [
    word('id', 'id', 'storey', 'story', 'level', 'floor', 'lvl', 'mark', 'name'),
    length('height', 'height', 'ht', 'h', 'hgt', 'storeyheight', 'storyheight'),
    choice(GRADES, 'grade', 'grade'),
    word('storeyAbove', 'storeyAbove', 'storyabove', 'levelabove'),
    word('closed', 'closed'),
    word('on', 'on', 'standson', 'storeybelow', 'storybelow'),
    word('dead', 'dead', 'deadload'),
    word('live', 'live', 'liveload'),
    word('snow', 'snow', 'snowload'),
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
  readonly words?: CellWords;
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
  { ...setting('dimensionsTo', null, 'dimsto', 'dimensionline'), words: DIMENSION_LINES },
  setting('range', null, 'formrange'),
  setting('offcuts', null, 'offcutsserve'),
  { ...setting('measured', null, 'openingsmeasured'), words: MEASURES },
  setting('site/wind', 'quantity'),
  setting('site/exposure'),
  setting('site/soil', 'quantity'),
  setting('site/backfill', 'length'),
  setting('site/seismic'),
  setting('site/snow', 'quantity'),
  setting('site/duration', 'quantity'),
  setting('site/code'),
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
  setting('pour/stone', 'length'),
  setting('pour/discharge', 'quantity'),
];
