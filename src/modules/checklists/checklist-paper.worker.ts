import { checklistPdf, type ChecklistPdfInput } from '../../domain/drawing/index.js';
import { shippedFonts } from '../drawings/shipped-fonts.js';

export interface ChecklistPaperInput extends Omit<ChecklistPdfInput, 'createdAt'> {
  /** RFC 3339. */
  readonly createdAt: string;
}

/** The checklist as a PDF. */
export const checklistPaper = ({ createdAt, ...input }: ChecklistPaperInput): Promise<Uint8Array> =>
  checklistPdf({ ...input, createdAt: new Date(createdAt) }, shippedFonts());
