import type { Nm } from '../../quantity/length.js';
import { printFeetInches } from '../../quantity/print-length.js';

/** What the template needs of a form range. */
export interface TemplateRange {
  readonly code: string;
  /** Codes of its cores, thinnest first. */
  readonly cores: readonly string[];
  readonly courseHeight: Nm;
  readonly buckThickness: Nm;
}

type Fields = Readonly<Record<string, unknown>>;

/**
 * An invented small house as a document `wallcourse/schedule@1`: a ring of four walls with a gable and a ledge, a partition that makes
 * two tees where it is drawn, one that stands on its tee, two yard walls by length and joint, and a free wall whose core changes four courses up.
 */
export function exampleDocument({ code, cores, courseHeight }: TemplateRange): Fields {
  const main = cores.includes('6') ? '6' : (cores[0] ?? '');
  const thicker = cores[cores.indexOf(main) + 1];
  const wall = (mark: string, from: readonly string[], to: readonly string[]): Fields => ({ mark, storey: 'S1', core: main, from, to });
  return {
    format: 'wallcourse/schedule@1',
    name: 'Lime Kiln cottage',
    units: 'in',
    dimensionsTo: 'foam-face',
    range: code,
    storeys: [{ id: 'S1', height: `9'-0"`, grade: 'above', storeyAbove: false, closed: true }],
    walls: [
      wall('A', [`0'-0"`, `0'-0"`], [`32'-0"`, `0'-0"`]),
      wall('B', [`32'-0"`, `0'-0"`], [`32'-0"`, `24'-0"`]),
      wall('C', [`32'-0"`, `24'-0"`], [`0'-0"`, `24'-0"`]),
      wall('D', [`0'-0"`, `24'-0"`], [`0'-0"`, `0'-0"`]),
      { ...wall('P', [`14'-0"`, `0'-4"`], [`14'-0"`, `23'-8"`]), dimensionsTo: 'axis' },
      { mark: 'Q', storey: 'S1', core: main, length: `8'-0"`, start: { joint: 'tee', on: 'A', at: `27'-0"`, side: 'left' }, end: { joint: 'free' } },
      yardWall('R', main, courseHeight, { length: `12'-0"`, start: { joint: 'free' }, end: { joint: 'corner', turn: 90, with: { wall: 'S', end: 'start' } } }),
      yardWall('S', main, courseHeight, { length: `8'-6"`, start: { joint: 'corner', turn: 90, with: { wall: 'R', end: 'end' } }, end: { joint: 'free' } }),
      { mark: 'T', storey: 'S1', core: thicker ?? main, length: `16'-0"`, start: { joint: 'free' }, end: { joint: 'free' } },
    ],
    openings: [
      { mark: 'D1', wall: 'A', at: `5'-0"`, sill: `0'-0"`, width: `3'-0"`, height: `7'-0"`, lining: 'buck', measured: 'concrete' },
      { mark: 'W1', wall: 'A', at: `20'-0"`, sill: `3'-0"`, width: `4'-0"`, height: `4'-0"`, lining: 'buck', measured: 'concrete' },
      { mark: 'W2', wall: 'C', at: `6'-0"`, sill: `3'-0"`, width: `3'-6 1/2"`, height: `4'-0"`, lining: 'buck', measured: 'rough' },
    ],
    features: [
      { kind: 'ledge', wall: 'C', at: `8'-0"`, from: `0'-0"`, to: `32'-0"`, face: 'outside' },
      { kind: 'gable', wall: 'B', rise: `5'-0"`, peakAt: `12'-0"` },
      ...(thicker === undefined ? [] : [{ kind: 'core-change', wall: 'T', at: printFeetInches(4 * courseHeight), core: main, flush: 'outside' }]),
    ],
    site: { wind: '110 mph', exposure: 'B', soil: '45 psf/ft', backfill: `2'-0"`, seismic: 'B', snow: '25 psf' },
    pour: {
      rise: '3 ft/h', concrete: '70 F', unitWeight: '150 pcf', cement: 'I', retarder: false, slump: '6 in',
      air: '68 F', humidity: 0.5, wind: '6 mph', pump: '40 yd3/h', truck: '10 yd3',
    },
  };
}

/** Three courses high. */
const yardWall = (mark: string, core: string, courseHeight: Nm, line: Fields): Fields => ({
  mark, storey: 'S1', core, height: printFeetInches(3 * courseHeight), ...line,
});
