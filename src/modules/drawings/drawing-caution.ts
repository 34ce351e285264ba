import { CAUTIONS } from '../../domain/evidence/cautions.js';

/** What stands in the title block of every drawing: the cautions that every paper carries. */
export const drawingCaution = (): string => CAUTIONS.join(' ');
