import type { Result } from '../../domain/evidence/result.js';
import { priceListTables } from '../../domain/quote/price-list-tables/list-tables.js';
import { priceWorkbook } from '../../domain/quote/price-list-tables/price-workbook.js';
import { readPriceFiles, type PriceFile, type PriceFilesRefusal } from '../../domain/quote/price-list-tables/read-price-files.js';

export type PriceListBody = Readonly<Record<string, unknown>>;
export type ReadPricesOutput = Result<PriceListBody, PriceFilesRefusal>;

export interface WorkbookInput {
  readonly document: PriceListBody;
  /** RFC 3339. */
  readonly writtenAt: string;
}

export const read = (files: readonly PriceFile[]): Promise<ReadPricesOutput> => readPriceFiles(files);

export const workbook = ({ document, writtenAt }: WorkbookInput): Promise<Uint8Array> =>
  priceWorkbook(priceListTables(document), new Date(writtenAt));
