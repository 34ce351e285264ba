import type { LayerName } from './ink.js';
import type { Layer } from './shapes.js';

/** A layer as a drawing program lists it: named for what lies on it, so that it can be measured or switched off alone. */
export interface DxfLayer {
  readonly name: string;
  /** Index of the format's own palette; 7 is black on white and white on black. */
  readonly colour: number;
}

const BLACK = 7;
const GREY = 8;
const BLUE = 5;
const RED = 1;
const BROWN = 34;
const GREEN = 3;
const CYAN = 4;
const MAGENTA = 6;

const ROLES: Readonly<Record<LayerName, DxfLayer>> = {
  frame: { name: 'heavy-outlines', colour: BLACK },
  rule: { name: 'thin-lines', colour: GREY },
  piece: { name: 'pieces', colour: BLACK },
  hatch: { name: 'hatch', colour: GREY },
  closure: { name: 'end-closures', colour: BROWN },
  hidden: { name: 'hidden', colour: GREY },
  rip: { name: 'rips', colour: BROWN },
  notch: { name: 'notches', colour: GREY },
  'cut-out': { name: 'cut-outs', colour: BLACK },
  opening: { name: 'openings', colour: BLACK },
  diagonal: { name: 'opening-diagonals', colour: GREY },
  slope: { name: 'slopes', colour: BLACK },
  ledge: { name: 'ledges', colour: GREEN },
  change: { name: 'core-changes', colour: MAGENTA },
  chord: { name: 'chord-joints', colour: BLUE },
  seam: { name: 'seams', colour: RED },
  node: { name: 'axes', colour: GREY },
  ground: { name: 'ground', colour: BLACK },
  dimension: { name: 'dimensions', colour: BLUE },
  brace: { name: 'braces', colour: CYAN },
  thrust: { name: 'thrust', colour: RED },
  text: { name: 'text', colour: BLACK },
  muted: { name: 'text-muted', colour: GREY },
};

/** Text of dimensions lies on the text layer of the neutral drawing; here it goes with its lines. */
export const DIMENSION_LAYER = ROLES.dimension.name;

const isRole = (name: string): name is LayerName => Object.hasOwn(ROLES, name);

/** A layer that is none of our sheets' keeps its own name in black. */
export const dxfLayer = (name: string): DxfLayer => (isRole(name) ? ROLES[name] : { name, colour: BLACK });

/** Weights that the format knows [hundredths of a millimetre]. */
const WEIGHTS = [5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211];
const NM_PER_HUNDREDTH = 10_000;

/** The nearest weight that the format knows. */
export function dxfWeight({ weight }: Layer): number {
  const wanted = weight / NM_PER_HUNDREDTH;
  return WEIGHTS.reduce((a, b) => (Math.abs(b - wanted) < Math.abs(a - wanted) ? b : a));
}

/** Name of a layer's pattern of dashes. */
export const dashName = (layer: Layer): string => (layer.dash === null ? 'CONTINUOUS' : `dash-${dxfLayer(layer.name).name}`);
