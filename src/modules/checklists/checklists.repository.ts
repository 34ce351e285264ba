import { Injectable } from '@nestjs/common';
import { v7 as uuidv7 } from 'uuid';
import type { ChecklistCount, ChecklistItem } from '../../domain/checklist/index.js';
import type { Transaction } from '../../platform/database/transaction.js';

/** An item with the tick that counts for it, whose columns are null where there is none. */
export interface ItemRow extends Pick<ChecklistItem, 'phase' | 'rule' | 'storey' | 'wall' | 'course' | 'text' | 'basis' | 'key' | 'digest'> {
  readonly n: number;
  readonly item: string;
  readonly counts: readonly ChecklistCount[];
  readonly tick_id: string | null;
  readonly person_name: string | null;
  readonly ticked_at: Date | null;
  readonly note: string | null;
  readonly photo_sha256: string | null;
  readonly photo_media_type: string | null;
}

const ITEM = `select i.n, i.item, i.key, i.digest, i.phase, i.rule, i.storey, i.wall, i.course, i.text, i.counts, i.basis,
    t.id as tick_id, t.person_name, t.ticked_at, t.note, t.photo_sha256, t.photo_media_type
  from checklist_items i
  left join checklist_ticks t on t.supplier_id = i.supplier_id and t.job_id = $2 and t.item = i.item and t.digest = i.digest and t.standing
  where i.supplier_id = $1 and i.measurement_id = $3`;

@Injectable()
export class ChecklistsRepository {
  /** @param storey of which storey, or null for all */
  page(tx: Transaction, jobId: string, measurementId: string, storey: string | null, after: number, take: number): Promise<ItemRow[]> {
    return tx.query(`${ITEM} and ($6::text is null or i.storey = $6) and i.n > $4 order by i.n limit $5`, [
      tx.actor.supplierId,
      jobId,
      measurementId,
      after,
      take,
      storey,
    ]);
  }

  item(tx: Transaction, jobId: string, measurementId: string, item: string): Promise<ItemRow | null> {
    return tx.one(`${ITEM} and i.item = $4`, [tx.actor.supplierId, jobId, measurementId, item]);
  }

  /** A tick of this item as it is now that was taken back. */
  fallen(tx: Transaction, jobId: string, { item, digest }: ItemRow): Promise<{ readonly id: string } | null> {
    return tx.one('select id from checklist_ticks where supplier_id = $1 and job_id = $2 and item = $3 and digest = $4', [
      tx.actor.supplierId,
      jobId,
      item,
      digest,
    ]);
  }

  async keepBlob(tx: Transaction, organisationId: string, sha256: string, bytes: number, mediaType: string): Promise<void> {
    await tx.query(
      `insert into blobs (supplier_id, id, organisation_id, sha256, bytes, media_type, created_at)
       values ($1, $2, $3, $4, $5, $6, $7) on conflict do nothing`,
      [tx.actor.supplierId, uuidv7(), organisationId, sha256, bytes, mediaType, tx.now()],
    );
  }

  async personName(tx: Transaction): Promise<string> {
    const row = await tx.one<{ name: string }>('select name from people where supplier_id = $1 and id = $2', [
      tx.actor.supplierId,
      tx.actor.personId,
    ]);
    return row?.name ?? 'Wallcourse';
  }
}
