import { Injectable } from '@nestjs/common';
import { MAX_INPUT_ERRORS } from '../../domain/evidence/input-error.js';
import type { PriceList } from '../../domain/quote/price-list.js';
import { overlapping } from '../../domain/quote/price-list-periods.js';
import { readPriceList } from '../../domain/quote/read-price-list.js';
import type { Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import { breaches } from '../../platform/database/database-trouble.js';
import type { Transaction } from '../../platform/database/transaction.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import { fieldError } from '../contract/field-error.js';
import type { Page, PageQuery } from '../contract/contract.schemas.js';
import { idAfter, knownId, pageOf } from '../contract/page.js';
import { permit } from '../people/permissions.js';
import { PricesRepository, type PriceListRow, type PriceListWithDocument } from './prices.repository.js';
import type { PriceListAnswer, PriceListDocument } from './prices.schemas.js';

@Injectable()
export class PricesService {
  constructor(
    private readonly database: Database,
    private readonly repository: PricesRepository,
  ) {}

  async list(actor: Actor, query: PageQuery): Promise<Page<PriceListAnswer>> {
    permit(actor, 'price-list.read');
    const after = idAfter(query);
    return this.database.transaction(actor, async (tx) =>
      pageOf(await this.repository.list(tx, after, query.first + 1), query.first, ({ id }) => id, priceListAnswer),
    );
  }

  async document(actor: Actor, id: string): Promise<PriceListDocument> {
    permit(actor, 'price-list.read');
    return this.database.transaction(actor, async (tx) => {
      const row = await this.repository.one(tx, knownId(id, 'price list'));
      if (!row) throw new Refusal('not-found', 'There is no such price list.');
      return row.body as PriceListDocument;
    });
  }

  async add(actor: Actor, document: PriceListDocument): Promise<PriceListAnswer> {
    permit(actor, 'price-list.write');
    try {
      return await this.database.transaction(actor, (tx) => this.addIn(tx, document));
    } catch (error) {
      if (breaches(error, 'price_lists_code_key'))
        throw new Refusal('busy', 'Two versions of the list came at once; send this one again.');
      throw error;
    }
  }

  async addIn(tx: Transaction, document: PriceListDocument): Promise<PriceListAnswer> {
    const read = readPriceList(document);
    if (!read.ok) throw new Refusal('invalid', 'The price list does not hold together.', read.error);
    const { code, currency, inForceFrom, validDays } = read.value;
    await this.refuseOverlap(tx, read.value);
    const version = await this.repository.nextVersion(tx, code);
    const row = await tx.insert<PriceListRow>(
      'price_lists',
      {
        code,
        list_version: version,
        currency,
        in_force_from: inForceFrom,
        valid_days: validDays,
        body: document,
        created_by: tx.actor.personId,
      },
      { kind: 'price-list.added', data: { code, version } },
    );
    return priceListAnswer(row);
  }

  /** A day on which lists of two codes hold, one of them with an end, would have two prices. */
  private async refuseOverlap(tx: Transaction, { code, inForceFrom, inForceTo }: PriceList): Promise<void> {
    const added = { code, inForceFrom, inForceTo };
    const found = overlapping([...(await this.repository.periods(tx)), added]).filter(({ list, other }) => list === added || other === added);
    if (found.length === 0) return;
    const errors = found.slice(0, MAX_INPUT_ERRORS).map(({ list, other, from, to, fix }) => {
      const held = list === added ? other : list;
      return fieldError('/inForceFrom', `${inForceFrom}: ${held.code} holds too from ${from} ${to ? `to ${to}` : 'on'}`, fix);
    });
    throw new Refusal('invalid', 'The price list would hold on days on which another one does.', errors);
  }

  async inForce(tx: Transaction, day: string): Promise<PriceListWithDocument> {
    const row = await this.repository.inForce(tx, day);
    if (!row) throw new Refusal('illegal-move', `No price list is in force on ${day}.`);
    return row;
  }
}

const priceListAnswer = (row: PriceListRow): PriceListAnswer => ({
  id: row.id,
  code: row.code,
  version: row.list_version,
  currency: row.currency,
  inForceFrom: row.in_force_from,
  validDays: row.valid_days,
});
