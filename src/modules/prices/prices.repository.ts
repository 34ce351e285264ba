import { Injectable } from '@nestjs/common';
import type { ListPeriod } from '../../domain/quote/price-list.js';
import type { Transaction } from '../../platform/database/transaction.js';

export interface PriceListRow {
  readonly id: string;
  readonly code: string;
  readonly list_version: number;
  readonly currency: string;
  readonly in_force_from: string;
  readonly valid_days: number;
}

export interface PriceListWithDocument extends PriceListRow {
  readonly body: Readonly<Record<string, unknown>>;
}

const LIST = 'select id, code, list_version, currency, in_force_from, valid_days from price_lists';

@Injectable()
export class PricesRepository {
  list(tx: Transaction, after: string | null, take: number): Promise<PriceListRow[]> {
    return tx.query(`${LIST} where supplier_id = $1 and ($2::uuid is null or id > $2) order by id limit $3`, [
      tx.actor.supplierId,
      after,
      take,
    ]);
  }

  one(tx: Transaction, id: string): Promise<PriceListWithDocument | null> {
    return tx.one(
      'select id, code, list_version, currency, in_force_from, valid_days, body from price_lists where supplier_id = $1 and id = $2',
      [tx.actor.supplierId, id],
    );
  }

  /** When every list holds, its versions from the first to the last. Whoever else adds a list of the supplier waits for the commit, so that no two can pass each other by. */
  async periods(tx: Transaction): Promise<(ListPeriod & { readonly code: string })[]> {
    await tx.query(`select pg_advisory_xact_lock(hashtextextended('price-lists ' || $1::text, 0))`, [tx.actor.supplierId]);
    const rows = await tx.query<{ code: string; in_force_from: string; ends: string | null }>(
      `select code, in_force_from, body ->> 'inForceTo' as ends from price_lists where supplier_id = $1 order by code, list_version`,
      [tx.actor.supplierId],
    );
    return rows.map(({ code, in_force_from: inForceFrom, ends: inForceTo }) => ({ code, inForceFrom, inForceTo }));
  }

  /** The list that holds on the day: of those that have begun and not ended the latest, then the highest version. */
  inForce(tx: Transaction, day: string): Promise<PriceListWithDocument | null> {
    return tx.one(
      `select id, code, list_version, currency, in_force_from, valid_days, body from price_lists
       where supplier_id = $1 and in_force_from <= $2::date and coalesce(body ->> 'inForceTo', '9999-12-31') >= $2::text
       order by in_force_from desc, list_version desc, id desc limit 1`,
      [tx.actor.supplierId, day],
    );
  }

  async nextVersion(tx: Transaction, code: string): Promise<number> {
    const row = await tx.one<{ last: number }>(
      'select coalesce(max(list_version), 0) as last from price_lists where supplier_id = $1 and code = $2',
      [tx.actor.supplierId, code],
    );
    return (row?.last ?? 0) + 1;
  }
}
