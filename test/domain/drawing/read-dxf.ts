import { createRequire } from 'node:module';
import type { IDxf, IEntity, ILineEntity, IPoint } from 'dxf-parser';

/** The package's declared default export is not the one it has; this is. */
const DxfParser = createRequire(import.meta.url)('dxf-parser') as new () => { parseSync(text: string): IDxf | null };

/** A DXF as dxf-parser reads it, a general-purpose reader that shares no code with the writer. */
export function readDxf(text: string): IDxf {
  const dxf = new DxfParser().parseSync(text);
  if (dxf === null) throw new Error('the file is not read');
  return dxf;
}

export const entitiesOn = (dxf: IDxf, layer: string): IEntity[] => dxf.entities.filter((entity) => entity.layer === layer);

export const distance = (a: IPoint | undefined, b: IPoint | undefined): number =>
  a === undefined || b === undefined ? NaN : Math.hypot(b.x - a.x, b.y - a.y);

/** Lengths of the lines of a layer [the file's unit]. */
export const lineLengths = (dxf: IDxf, layer: string): number[] =>
  entitiesOn(dxf, layer)
    .filter((entity): entity is ILineEntity => entity.type === 'LINE')
    .map(({ vertices: [from, to] }) => distance(from, to));
