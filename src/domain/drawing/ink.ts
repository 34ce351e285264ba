import { millimetres } from '../quantity/length.js';
import type { Layer } from './shapes.js';

const layer = (name: string, colour: string, weightMm: number, dashMm: readonly number[] | null = null): Layer => ({
  name,
  colour,
  weight: millimetres(weightMm),
  dash: dashMm === null ? null : dashMm.map(millimetres),
});

/** Every layer of our sheets: ink, weight and dash on paper. Weights and dashes alone must tell them apart in black and white. */
export const LAYERS: readonly Layer[] = [
  layer('frame', '#22303c', 0.35),
  layer('rule', '#8a949c', 0.13),
  layer('piece', '#33404a', 0.2),
  layer('hatch', '#5e6a72', 0.1),
  layer('closure', '#4a1f2c', 0.25),
  layer('hidden', '#33404a', 0.18, [1.2, 0.8]),
  layer('rip', '#7a3b00', 0.4, [2.4, 0.8]),
  layer('notch', '#33404a', 0.13, [0.8, 0.6]),
  layer('cut-out', '#22303c', 0.5),
  layer('opening', '#22303c', 0.35),
  layer('diagonal', '#9aa5ad', 0.1),
  layer('slope', '#22303c', 0.5),
  layer('ledge', '#2f5d3a', 0.5),
  layer('change', '#6a2f7a', 0.5, [3, 0.8, 0.8, 0.8]),
  layer('chord', '#2a6f97', 0.25, [1.6, 0.6]),
  layer('seam', '#b01818', 0.7),
  layer('node', '#33404a', 0.13, [3, 0.8, 0.6, 0.8]),
  layer('ground', '#22303c', 0.6),
  layer('dimension', '#1d3a5f', 0.13),
  layer('thrust', '#b01818', 0.5),
  layer('brace', '#00656f', 0.3, [4, 0.7]),
  layer('text', '#16202a', 0.13),
  layer('muted', '#66727c', 0.13),
];

export type LayerName =
  | 'frame'
  | 'rule'
  | 'piece'
  | 'hatch'
  | 'closure'
  | 'hidden'
  | 'rip'
  | 'notch'
  | 'cut-out'
  | 'opening'
  | 'diagonal'
  | 'slope'
  | 'ledge'
  | 'change'
  | 'chord'
  | 'seam'
  | 'node'
  | 'ground'
  | 'dimension'
  | 'thrust'
  | 'brace'
  | 'text'
  | 'muted';

/** Fills; each kind of piece also has its own hatch, so that a grey print says the same. */
export const TINT = {
  paper: '#ffffff',
  full: '#f3f1ea',
  cut: '#f7dca6',
  cornerLeft: '#bfe0dc',
  cornerRight: '#d6cbe8',
  cornerEither: '#cfdde9',
  closure: '#c98a9b',
  ledge: '#c9dcb2',
  ledgeSection: '#7d9b66',
  taper: '#f2c9b8',
  strip: '#9fb0bb',
  notch: '#dfe3e6',
  return: '#e4e7ea',
  section: '#d9dde0',
  concrete: '#cfd3d6',
  foam: '#fbf3dc',
  ground: '#e7e2d6',
  brace: '#00656f',
} as const;
