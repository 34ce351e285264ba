import { toMm } from '../quantity/length.js';
import { decimal, lengthMm } from './dxf-groups.js';
import type { Group, Handles } from './dxf-groups.js';
import { APPLICATION, STYLES } from './dxf-entities.js';
import { dashName, dxfLayer, dxfWeight } from './dxf-layers.js';
import type { Drawing, Layer } from './shapes.js';

/** Numbers by which the parts of a file refer to each other. */
export interface FileHandles {
  readonly model: string;
  readonly paper: string;
  readonly sheet: string;
}

export const BLOCKS = { model: '*Model_Space', paper: '*Paper_Space', sheet: 'sheet' } as const;
/** Layers are listed for every name that a shape may lie on. */
export const BLANK_LAYER = '0';

const FONTS = { [STYLES.regular]: 'arial.ttf', [STYLES.bold]: 'arialbd.ttf' } as const;
const BY_LAYER_WEIGHT = 370;

/** The tables in the order of the format, each record with its handle. */
export function tables(drawing: Drawing, handles: Handles, blocks: FileHandles): Group[] {
  const table = (name: string, records: readonly Group[][], extra: readonly Group[] = []): Group[] => {
    const owner = handles.next();
    return [
      [0, 'TABLE'],
      [2, name],
      [5, owner],
      [330, '0'],
      [100, 'AcDbSymbolTable'],
      [70, String(records.length)],
      ...extra,
      ...records.flat().map((group): Group => (group[0] === 330 && group[1] === '' ? [330, owner] : group)),
      [0, 'ENDTAB'],
    ];
  };
  const record: MakeRecord = (kind, type, name, groups = [], handle = handles.next()) => [
    [0, kind],
    [5, handle],
    [330, ''],
    [100, 'AcDbSymbolTableRecord'],
    [100, type],
    [2, name],
    ...groups,
  ];
  return [
    [0, 'SECTION'],
    [2, 'TABLES'],
    ...table('VPORT', [viewRecord(drawing, record)]),
    ...table('LTYPE', lineTypes(drawing.layers, record)),
    ...table('LAYER', layers(drawing.layers, record)),
    ...table('STYLE', styles(record)),
    ...table('VIEW', []),
    ...table('UCS', []),
    ...table('APPID', ['ACAD', APPLICATION].map((name) => record('APPID', 'AcDbRegAppTableRecord', name, [[70, '0']]))),
    ...table('DIMSTYLE', [], [[100, 'AcDbDimStyleTable']]),
    ...table('BLOCK_RECORD', blockRecords(record, blocks)),
    [0, 'ENDSEC'],
  ];
}

type MakeRecord = (kind: string, type: string, name: string, groups?: readonly Group[], handle?: string) => Group[];

/** The window opens on the whole drawing. */
const viewRecord = ({ width, height }: Drawing, record: MakeRecord): Group[] =>
  record('VPORT', 'AcDbViewportTableRecord', '*Active', [
    [70, '0'],
    [10, '0'],
    [20, '0'],
    [11, '1'],
    [21, '1'],
    [12, lengthMm(width / 2)],
    [22, lengthMm(height / 2)],
    [40, lengthMm(Math.max(height, width / 2))],
    [41, '2'],
  ]);

function lineTypes(all: readonly Layer[], record: MakeRecord): Group[][] {
  const plain = ['ByBlock', 'ByLayer', 'CONTINUOUS'].map((name) => record('LTYPE', 'AcDbLinetypeTableRecord', name, pattern([])));
  const dashed = all.flatMap((layer) =>
    layer.dash === null ? [] : [record('LTYPE', 'AcDbLinetypeTableRecord', dashName(layer), pattern(layer.dash.map(toMm)))],
  );
  return [...plain, ...dashed];
}

/** Dashes and gaps by turns in millimetres of paper; the scale of the sheet is the file's scale of line types. */
const pattern = (parts: readonly number[]): Group[] => [
  [70, '0'],
  [3, ''],
  [72, '65'],
  [73, String(parts.length)],
  [40, decimal(parts.reduce((sum, part) => sum + part, 0))],
  ...parts.flatMap((part, i): Group[] => [
    [49, decimal(i % 2 === 0 ? part : -part)],
    [74, '0'],
  ]),
];

const layers = (all: readonly Layer[], record: MakeRecord): Group[][] => [
  record('LAYER', 'AcDbLayerTableRecord', BLANK_LAYER, [
    [70, '0'],
    [62, '7'],
    [6, 'CONTINUOUS'],
  ]),
  ...all.map((layer) => {
    const { name, colour } = dxfLayer(layer.name);
    return record('LAYER', 'AcDbLayerTableRecord', name, [
      [70, '0'],
      [62, String(colour)],
      [6, dashName(layer)],
      [BY_LAYER_WEIGHT, String(dxfWeight(layer))],
    ]);
  }),
];

const styles = (record: MakeRecord): Group[][] =>
  Object.entries({ STANDARD: FONTS.sheet, ...FONTS }).map(([name, font]) =>
    record('STYLE', 'AcDbTextStyleTableRecord', name, [
      [70, '0'],
      [40, '0'],
      [41, '1'],
      [50, '0'],
      [71, '0'],
      [42, '1'],
      [3, font],
      [4, ''],
    ]),
  );

const blockRecords = (record: MakeRecord, blocks: FileHandles): Group[][] =>
  (['model', 'paper', 'sheet'] as const).map((key) =>
    record('BLOCK_RECORD', 'AcDbBlockTableRecord', BLOCKS[key], [], blocks[key]),
  );
