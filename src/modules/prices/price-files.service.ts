import { Injectable } from '@nestjs/common';
import { priceListTables } from '../../domain/quote/price-list-tables/list-tables.js';
import { priceCsv } from '../../domain/quote/price-list-tables/price-csv.js';
import type { PriceFilesRefusal } from '../../domain/quote/price-list-tables/read-price-files.js';
import type { PriceSheet } from '../../domain/quote/price-list-tables/sheet-columns.js';
import { Clock } from '../../platform/clock/clock.js';
import type { Actor } from '../../platform/database/actor.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import { WorkerPool } from '../../platform/workers/worker-pool.js';
import { permit } from '../people/permissions.js';
import type { UploadedPart } from '../schedules/uploaded-part.js';
import type { PriceListBody, ReadPricesOutput, WorkbookInput } from './price-files.worker.js';
import type { PriceListAnswer, PriceListDocument } from './prices.schemas.js';
import { PricesService } from './prices.service.js';

const WORKER = 'modules/prices/price-files.worker.js';
const DETAILS: Readonly<Record<PriceFilesRefusal['code'], string>> = {
  unreadable: 'The upload is damaged, empty or broken JSON.',
  'wrong-type': 'There is no price list in the upload.',
  'too-large': 'The files hold more than one price list may.',
  invalid: 'The price list does not hold together.',
};

/** Price lists as files: read and written in a thread where they are workbooks. */
@Injectable()
export class PriceFiles {
  constructor(
    private readonly prices: PricesService,
    private readonly pool: WorkerPool,
    private readonly clock: Clock,
  ) {}

  async add(actor: Actor, parts: readonly UploadedPart[]): Promise<PriceListAnswer> {
    permit(actor, 'price-list.write');
    const files = parts.map(({ name, bytes }) => ({ name, bytes: new Uint8Array(bytes) }));
    const read = await this.pool.run<typeof files, ReadPricesOutput>(WORKER, 'read', files);
    if (!read.ok) throw new Refusal(read.error.code, DETAILS[read.error.code], read.error.errors);
    return this.prices.add(actor, read.value as PriceListDocument);
  }

  /** One sheet of a list. */
  async csv(actor: Actor, id: string, sheet: PriceSheet): Promise<Uint8Array> {
    return Buffer.from(priceCsv(priceListTables(await this.prices.document(actor, id)), sheet));
  }

  async workbook(actor: Actor, id: string): Promise<Uint8Array> {
    const document: PriceListBody = await this.prices.document(actor, id);
    const input = { document, writtenAt: this.clock.now().toISOString() };
    return this.pool.run<WorkbookInput, Uint8Array>(WORKER, 'workbook', input);
  }
}
