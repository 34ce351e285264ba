import type { ListedItem } from '../checklist/index.js';
import type { PageSetting, PaperName } from './pdf-pages.js';

/** An item with the tick that counts for it. */
export interface PrintedItem extends ListedItem {
  readonly tick: PrintedTick | null;
}

export interface PrintedTick {
  readonly by: string;
  /** The day in the supplier's time zone, `2026-03-02`. */
  readonly on: string;
  readonly note: string | null;
  readonly photo: boolean;
}

/** Everything a printed checklist says. */
export interface ChecklistPdfInput {
  readonly job: { readonly number: string; readonly name: string };
  readonly revision: number;
  readonly supplier: string;
  readonly readyToPour: boolean;
  readonly ticked: number;
  readonly total: number;
  readonly openHolds: readonly { readonly number: string; readonly question: string }[];
  /** In walking order; of one storey or of all. */
  readonly items: readonly PrintedItem[];
  readonly cautions: readonly string[];
  /** The job is drawn in metres or millimetres: they stand beside the feet of what is sold by the foot. */
  readonly metric: boolean;
  readonly paper: PaperName;
  readonly createdAt: PageSetting['createdAt'];
}
