import { z } from 'zod';
import { inches, NM_PER_FOOT } from '../quantity/length.js';
import type { Parameters } from './range.js';
import {
  choiceParameter,
  countParameter,
  degreesParameter,
  lengthParameter,
  shareParameter,
  wordParameter,
  yardsParameter,
} from './range-fields.js';

/** Bar that pins a tee where a range does not say which: common practice, no source. */
const TEE_PIN_BAR = '#4';
/** What keeps edges, curves, tops, gables, corners and jambs where a range does not say: common practice, no source. */
const TAPER_EDGE_BY = 'strap';
const RADIUS_BAND_BY = 'strap';
const TOP_PROTECT_BY = 'cover';
const TOP_PROTECT_FACES = 2;
const GABLE_BOARD_WIDTH = inches(3.5);
const CORNER_BRACE_VERTICALS = 2;
const BUCK_DIAGONALS = 2;
/** Where a raking brace meets the wall and how far from it its foot stands: common practice, no source. */
const BRACE_TOP = 8 * NM_PER_FOOT;
const BRACE_FOOT = 6 * NM_PER_FOOT;

/** The parameters of a range file under their written names, each with value, unit and basis; all of them, and no others. */
const parametersShape = z.strictObject({
  stackTolerance: lengthParameter(true),
  minRip: lengthParameter(),
  stackPrefers: choiceParameter(['rip', 'strips']),
  turnTolerance: degreesParameter(),
  turnAcuteFrom: degreesParameter(),
  spareForms: shareParameter(),
  concreteOverage: shareParameter(),
  pumpLoss: yardsParameter(true),
  orderStep: yardsParameter(false),
  buckThickness: lengthParameter(true),
  formKerf: lengthParameter(true),
  tapeStripLength: lengthParameter(),
  closureTapeLength: lengthParameter(),
  closureBoardPerCourse: lengthParameter(),
  holdDownEveryWebs: countParameter(),
  holdDownTieBy: choiceParameter(['cable-tie', 'wire-tie']),
  stripTapeSpacing: lengthParameter(),
  hingedCornerStrips: countParameter(),
  teeTieWeb: countParameter(),
  teePinEmbedment: lengthParameter(),
  teePinBar: wordParameter().default(TEE_PIN_BAR),
  footingCornerBy: choiceParameter(['wire-tie', 'strap']),
  footingFixBy: choiceParameter(['adhesive', 'track', 'plates', 'dowel-ties']),
  footingBeadFaces: countParameter(),
  shortPieceBy: choiceParameter(['tape', 'strap']),
  rippedEdgeBy: choiceParameter(['strap', 'board']),
  taperEdgeBy: choiceParameter(['strap', 'board']).default(TAPER_EDGE_BY),
  radiusBandBy: choiceParameter(['strap', 'tape', 'board']).default(RADIUS_BAND_BY),
  topProtectBy: choiceParameter(['cover', 'tape']).default(TOP_PROTECT_BY),
  topProtectFaces: countParameter().default(TOP_PROTECT_FACES),
  gableBoardWidth: lengthParameter().default(GABLE_BOARD_WIDTH),
  cornerBraceVerticals: countParameter().default(CORNER_BRACE_VERTICALS),
  buckDiagonals: countParameter().default(BUCK_DIAGONALS),
  radiusGap: lengthParameter(true),
  gableSteepFrom: degreesParameter(),
  pierNarrow: lengthParameter(true),
  openingNearCorner: lengthParameter(true),
  braceSpacing: lengthParameter(),
  braceFromCorner: lengthParameter(),
  braceTop: lengthParameter().default(BRACE_TOP),
  braceFoot: lengthParameter().default(BRACE_FOOT),
  buckSpreader: lengthParameter(),
  lintelPost: lengthParameter(),
  liftHeight: lengthParameter(),
  singleLiftHeight: lengthParameter(),
});

/** Written names carry no unit; the canonical ones do where the value is not a length. */
export const rangeParameters = parametersShape.transform(
  ({ turnTolerance, turnAcuteFrom, pumpLoss, orderStep, gableSteepFrom, ...same }): Parameters => ({
    ...same,
    turnToleranceDeg: turnTolerance,
    turnAcuteFromDeg: turnAcuteFrom,
    pumpLossYd3: pumpLoss,
    orderStepYd3: orderStep,
    gableSteepFromDeg: gableSteepFrom,
  }),
);
