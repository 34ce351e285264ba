import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/transaction.js';

export interface RangeRow {
  readonly id: string;
  readonly code: string;
  readonly range_version: number;
  readonly name: string;
  readonly in_force_from: string;
}

export interface RangeWithDocument extends RangeRow {
  readonly body: Readonly<Record<string, unknown>>;
}

const RANGE = 'select id, code, range_version, name, in_force_from from form_ranges';

@Injectable()
export class RangesRepository {
  list(tx: Transaction, after: string | null, take: number): Promise<RangeRow[]> {
    return tx.query(`${RANGE} where supplier_id = $1 and ($2::uuid is null or id > $2) order by id limit $3`, [
      tx.actor.supplierId,
      after,
      take,
    ]);
  }

  one(tx: Transaction, id: string): Promise<RangeWithDocument | null> {
    return tx.one(
      'select id, code, range_version, name, in_force_from, body from form_ranges where supplier_id = $1 and id = $2',
      [tx.actor.supplierId, id],
    );
  }

  /** Of every code the version that holds on the day: the highest of those in force. */
  inForce(tx: Transaction, day: string): Promise<RangeWithDocument[]> {
    return tx.query(
      `select distinct on (code) id, code, range_version, name, in_force_from, body from form_ranges
       where supplier_id = $1 and in_force_from <= $2::date order by code, range_version desc`,
      [tx.actor.supplierId, day],
    );
  }

  version(tx: Transaction, code: string, version: number): Promise<RangeWithDocument | null> {
    return tx.one(
      'select id, code, range_version, name, in_force_from, body from form_ranges where supplier_id = $1 and code = $2 and range_version = $3',
      [tx.actor.supplierId, code, version],
    );
  }

  async timeZone(tx: Transaction): Promise<string> {
    const row = await tx.one<{ time_zone: string }>('select time_zone from suppliers where supplier_id = $1', [
      tx.actor.supplierId,
    ]);
    return row?.time_zone ?? 'UTC';
  }
}
