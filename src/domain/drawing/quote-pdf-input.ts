import type { Quote } from '../quote/quote.js';
import type { QuoteState } from '../quote/quote-states.js';
import type { PageSetting, PaperName } from './pdf-pages.js';
import type { Drawing } from './shapes.js';

/** Everything a printed quote says beside the priced job itself. */
export interface QuotePdfInput {
  readonly quote: Quote;
  /** `Q-000045`. */
  readonly number: string;
  readonly revision: number;
  readonly state: QuoteState;
  readonly job: { readonly number: string; readonly name: string };
  /** Name, then address and ways to reach it, one a line. */
  readonly supplier: { readonly name: string; readonly lines: readonly string[] };
  /** Tickets that must be answered before the quote can be accepted. */
  readonly openHolds: readonly { readonly number: string; readonly question: string }[];
  readonly plans: readonly Drawing[];
  readonly elevations: readonly Drawing[];
  /** Said in place of the drawings where none follow. */
  readonly notDrawn?: string;
  readonly paper: PaperName;
  /** Moment printed into the document's properties; the only time in it, so that the same input gives the same bytes. */
  readonly createdAt: PageSetting['createdAt'];
}
