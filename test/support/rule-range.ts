import { inches } from '../../src/domain/quantity/length.js';
import type { Core, FormRange, Material, Parameters } from '../../src/domain/range/range.js';

const core = (code: string, ratedPressurePsf: number): Core => ({ code, width: inches(Number(code)), family: 'flat', ratedPressurePsf });

export const CORES = { 4: core('4', 750), 6: core('6', 750), 8: core('8', 750), 10: core('10', 700) } as const;

const feetOf = (sku: string, kind: Material['kind'], size: string, quantity: number): Material => ({
  sku, kind, size, pack: { quantity, unit: 'ft' }, strengthLbPerIn: null,
});
const piecesOf = (sku: string, kind: Material['kind'], size: string, quantity: number): Material => ({
  sku, kind, size, pack: { quantity, unit: 'each' }, strengthLbPerIn: null,
});

export const MATERIALS: readonly Material[] = [
  feetOf('TAPE-4', 'tape', '4 in', 150),
  piecesOf('WIRE-16', 'wire-tie', '16 ga', 500),
  piecesOf('CTIE-14', 'cable-tie', '14 in', 100),
  feetOf('STRAP-1x3', 'strap', '1x3', 8),
  feetOf('BOARD-1x4', 'board', '1x4', 8),
  feetOf('FOAM-24', 'foam', '24 oz', 60),
  feetOf('MASK-12', 'cover', '12 in', 100),
  feetOf('BAR-4', 'bar', '#4', 20),
];

/** The demo range's common practice, written out so that a rule's figures can be worked by hand beside its test. */
export const PARAMETERS: Parameters = {
  stackTolerance: inches(0.25),
  minRip: inches(8),
  stackPrefers: 'rip',
  turnToleranceDeg: 0.5,
  turnAcuteFromDeg: 100,
  spareForms: 0.02,
  concreteOverage: 0.05,
  pumpLossYd3: 0.5,
  orderStepYd3: 0.25,
  buckThickness: inches(1.5),
  formKerf: 0,
  tapeStripLength: inches(24),
  closureTapeLength: inches(24),
  closureBoardPerCourse: inches(24),
  holdDownEveryWebs: 2,
  holdDownTieBy: 'cable-tie',
  stripTapeSpacing: inches(16),
  hingedCornerStrips: 4,
  teeTieWeb: 2,
  teePinEmbedment: inches(12),
  teePinBar: '#4',
  footingCornerBy: 'wire-tie',
  footingFixBy: 'adhesive',
  footingBeadFaces: 2,
  shortPieceBy: 'tape',
  rippedEdgeBy: 'strap',
  taperEdgeBy: 'strap',
  radiusBandBy: 'strap',
  topProtectBy: 'cover',
  topProtectFaces: 2,
  gableBoardWidth: inches(3.5),
  cornerBraceVerticals: 2,
  buckDiagonals: 2,
  radiusGap: inches(1),
  gableSteepFromDeg: 30,
  pierNarrow: inches(24),
  openingNearCorner: inches(24),
  braceSpacing: inches(72),
  braceFromCorner: inches(24),
  braceTop: inches(96),
  braceFoot: inches(72),
  buckSpreader: inches(24),
  lintelPost: inches(24),
  liftHeight: inches(48),
  singleLiftHeight: inches(144),
};

export interface RuleRangeChanges {
  readonly parameters?: Partial<Parameters>;
  readonly materials?: readonly Material[];
  readonly pairedHands?: 'pair' | 'either';
  /** What a ledge adds to the core's section [in²]; no ledge unit where nothing is said. */
  readonly ledgeIn2?: number;
}

/** A range for rule tests: the demo's grid, materials and parameters, changed where a case says so. */
export function ruleRange({ parameters = {}, materials = MATERIALS, pairedHands = 'pair', ledgeIn2 }: RuleRangeChanges = {}): FormRange {
  return {
    code: 'RULES',
    version: 1,
    inForceFrom: '2026-01-01',
    name: 'Range for rule tests (invented)',
    courseHeight: inches(16),
    formLength: inches(48),
    cutModule: inches(1),
    minPiece: inches(8),
    minStagger: inches(8),
    panel: inches(2.5),
    webSpacing: inches(8),
    firstWeb: inches(4),
    interlock: 'module',
    reversible: true,
    stripHeight: inches(3),
    cores: new Map(Object.values(CORES).map((each) => [each.code, each])),
    corners: [
      { kind: 'corner', prefix: 'SQ', minTurn: 90, maxTurn: 90, hands: 'two-skus', legs: new Map() },
      { kind: 'corner-pair', prefix: 'DP', minTurn: 45, maxTurn: 45, hands: pairedHands, legs: new Map() },
      { kind: 'corner-hinged', prefix: 'HG', minTurn: 10, maxTurn: 100, hands: 'either', legs: new Map() },
    ],
    straightPrefix: 'ST',
    stripPrefix: 'HS',
    closure: { prefix: 'EC', thickness: inches(2.5), height: inches(16) },
    ledge: ledgeIn2 === undefined ? null : { prefix: 'LG', cores: ['6'], projection: inches(6), extraSectionMm2: ledgeIn2 * 25.4 ** 2 },
    taperTop: null,
    materials,
    parameters: { ...PARAMETERS, ...parameters },
  };
}
