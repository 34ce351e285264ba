import { lengthMm, spot, written, Handles, decimal } from './dxf-groups.js';
import type { Group } from './dxf-groups.js';
import { insertEntity, shapeEntities } from './dxf-entities.js';
import { BLANK_LAYER, BLOCKS, tables } from './dxf-tables.js';
import type { FileHandles } from './dxf-tables.js';
import type { Drawing, Shape } from './shapes.js';

const MILLIMETRES = '4';
const METRIC = '1';
const DECIMAL = '2';
/** Above every handle that a file of ours can have. */
const HANDLE_SEED = 'FFFFFFFF';

/**
 * The drawing as a DXF file (ASCII, AC1015): the model at 1:1 in millimetres, so that every length can be measured.
 *
 * Layers are named for what lies on them. What belongs to the paper (frame, title block, legend and notes, at the sheet's own scale) is one
 * block, `sheet`, inserted where it stands on the paper, so that it can be moved or deleted in one go. An outline that stands for a piece, an opening
 * or a mark says so in its extended data under `WALLCOURSE`. Fills are left out: this is the drawing's lines.
 *
 * @returns ASCII; coordinates with up to nine decimals of a millimetre, whole nanometres exactly
 */
export function renderDxf(drawing: Drawing): string {
  const handles = new Handles();
  const blocks: FileHandles = { model: handles.next(), paper: handles.next(), sheet: handles.next() };
  const model = drawing.shapes.slice(0, drawing.paperFrom);
  const paper = drawing.shapes.slice(drawing.paperFrom);
  return written([
    ...header(drawing),
    ...tables(drawing, handles, blocks),
    ...section('BLOCKS', [
      ...block(handles, blocks.model, BLOCKS.model, []),
      ...block(handles, blocks.paper, BLOCKS.paper, []),
      ...block(handles, blocks.sheet, BLOCKS.sheet, entities(handles, blocks.sheet, paper)),
    ]),
    ...section('ENTITIES', [
      ...entities(handles, blocks.model, model),
      ...(paper.length === 0 ? [] : insertEntity({ handles, owner: blocks.model }, BLANK_LAYER, BLOCKS.sheet)),
    ]),
    ...section('OBJECTS', dictionaries(handles)),
    [0, 'EOF'],
  ]);
}

const section = (name: string, groups: readonly Group[]): Group[] => [[0, 'SECTION'], [2, name], ...groups, [0, 'ENDSEC']];

const entities = (handles: Handles, owner: string, shapes: readonly Shape[]): Group[] =>
  shapes.flatMap((shape) => shapeEntities({ handles, owner }, shape));

function header({ width, height, scale }: Drawing): Group[] {
  const variable = (name: string, ...groups: Group[]): Group[] => [[9, name], ...groups];
  return section('HEADER', [
    ...variable('$ACADVER', [1, 'AC1015']),
    ...variable('$DWGCODEPAGE', [3, 'ANSI_1252']),
    ...variable('$HANDSEED', [5, HANDLE_SEED]),
    ...variable('$INSUNITS', [70, MILLIMETRES]),
    ...variable('$MEASUREMENT', [70, METRIC]),
    ...variable('$LUNITS', [70, DECIMAL]),
    ...variable('$LTSCALE', [40, decimal(scale)]),
    ...variable('$EXTMIN', ...spot({ x: 0, y: 0 })),
    ...variable('$EXTMAX', [10, lengthMm(width)], [20, lengthMm(height)], [30, '0']),
  ]);
}

function block(handles: Handles, owner: string, name: string, contents: readonly Group[]): Group[] {
  const part = (kind: string, type: string, groups: readonly Group[] = []): Group[] => [
    [0, kind],
    [5, handles.next()],
    [330, owner],
    [100, 'AcDbEntity'],
    [8, BLANK_LAYER],
    [100, type],
    ...groups,
  ];
  return [
    ...part('BLOCK', 'AcDbBlockBegin', [[2, name], [70, '0'], ...spot({ x: 0, y: 0 }), [3, name], [1, '']]),
    ...contents,
    ...part('ENDBLK', 'AcDbBlockEnd'),
  ];
}

/** The root of what a reader may add, and the one entry that the format asks for. */
function dictionaries(handles: Handles): Group[] {
  const [root, group] = [handles.next(), handles.next()];
  return [
    [0, 'DICTIONARY'],
    [5, root],
    [330, '0'],
    [100, 'AcDbDictionary'],
    [281, '1'],
    [3, 'ACAD_GROUP'],
    [350, group],
    [0, 'DICTIONARY'],
    [5, group],
    [330, root],
    [100, 'AcDbDictionary'],
    [281, '1'],
  ];
}
