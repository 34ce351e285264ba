import { Injectable } from '@nestjs/common';
import { BlobStore } from '../../platform/blobs/blob-store.js';
import type { Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import type { Transaction } from '../../platform/database/transaction.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import { isId, knownId, numberAfter, pageOf } from '../contract/page.js';
import { permit } from '../people/permissions.js';
import { TakeoffsService, type ShownJob } from '../takeoffs/takeoffs.service.js';
import { itemAnswer, standingAnswer } from './checklist-answer.js';
import { ChecklistsRepository, type ItemRow } from './checklists.repository.js';
import type { ChecklistAnswer, ChecklistQuery, TickBody, TickedAnswer } from './checklists.schemas.js';
import { Readiness } from './readiness.js';
import type { TickInput } from './tick-upload.js';

/** A photo as it was sent. */
export interface StoredPhoto {
  readonly bytes: Buffer;
  readonly mediaType: string;
}

/** An item that is being ticked or unticked, of a job that is locked. */
interface Touched {
  readonly shown: ShownJob;
  readonly row: ItemRow;
}

@Injectable()
export class ChecklistsService {
  constructor(
    private readonly database: Database,
    private readonly blobs: BlobStore,
    private readonly takeoffs: TakeoffsService,
    private readonly readiness: Readiness,
    private readonly repository: ChecklistsRepository,
  ) {}

  async list(actor: Actor, jobId: string, query: ChecklistQuery): Promise<ChecklistAnswer> {
    permit(actor, 'checklist.read');
    const after = numberAfter(query);
    return this.database.transaction(actor, async (tx) => {
      const { job, measurementId } = await this.takeoffs.shown(tx, jobId);
      const rows = await this.repository.page(tx, job.id, measurementId, query.storey ?? null, after, query.first + 1);
      const page = pageOf(rows, query.first, ({ n }) => n, (row) => itemAnswer(job.id, row));
      return { items: [...page.items], next: page.next, ...standingAnswer(await this.readiness.standing(tx, job, measurementId)) };
    });
  }

  /** Ticks an item for whoever asks, with what they say and show. */
  async tick(actor: Actor, jobId: string, item: string, expected: number | null, { note, photo }: TickInput): Promise<TickedAnswer> {
    permit(actor, 'checklist.tick');
    await this.database.transaction(actor, async (tx) => untouched(await this.found(tx, await this.takeoffs.shown(tx, jobId), item)));
    const blob = photo ? await this.blobs.put(actor.supplierId, photo.bytes) : null;
    return this.touched(actor, jobId, item, expected, async (tx, { shown, row }) => {
      untouched(row);
      if (blob && photo) await this.repository.keepBlob(tx, shown.job.organisation_id, blob.sha256, blob.bytes, photo.mediaType);
      const said = {
        standing: true,
        person_id: actor.personId,
        person_name: await this.repository.personName(tx),
        ticked_at: tx.now(),
        note: note ?? null,
        photo_sha256: blob?.sha256 ?? null,
        photo_media_type: photo?.mediaType ?? null,
      };
      const event = { kind: 'checklist.ticked', data: { ...placeOf(row), note: said.note, photo: said.photo_sha256 } };
      const fallen = await this.repository.fallen(tx, shown.job.id, row);
      if (fallen) {
        await tx.update('checklist_ticks', fallen.id, null, said, event);
        return;
      }
      const { key, digest } = row;
      const about = { organisation_id: shown.job.organisation_id, job_id: shown.job.id, item: row.item, key, digest };
      await tx.insert('checklist_ticks', { ...about, ...said }, event);
    });
  }

  /** Takes a tick back; the history keeps who had made it. */
  async untick(actor: Actor, jobId: string, item: string, expected: number | null, { note }: TickBody): Promise<TickedAnswer> {
    permit(actor, 'checklist.tick');
    return this.touched(actor, jobId, item, expected, async (tx, { row }) => {
      if (row.tick_id === null) throw new Refusal('illegal-move', 'The item is not ticked.');
      const data = { ...placeOf(row), note: note ?? null, tickedBy: row.person_name };
      await tx.update('checklist_ticks', row.tick_id, null, { standing: false }, { kind: 'checklist.unticked', data });
    });
  }

  /** The photo of the tick that counts. */
  async photo(actor: Actor, jobId: string, item: string): Promise<StoredPhoto> {
    permit(actor, 'checklist.read');
    const { photo_sha256: sha256, photo_media_type: mediaType } = await this.database.transaction(actor, async (tx) =>
      this.found(tx, await this.takeoffs.shown(tx, jobId), item),
    );
    if (sha256 === null || mediaType === null) throw new Refusal('not-found', 'There is no photo of this item.');
    return { bytes: await this.blobs.read(actor.supplierId, sha256), mediaType };
  }

  /** Changes one item in a commit of its own that also settles whether the job is ready to pour. */
  private async touched(
    actor: Actor,
    jobId: string,
    item: string,
    expected: number | null,
    change: (tx: Transaction, touched: Touched) => Promise<void>,
  ): Promise<TickedAnswer> {
    return this.database.transaction(actor, async (tx) => {
      const locked = await this.readiness.lock(tx, knownId(jobId, 'job'));
      if (locked && expected !== null && locked.version !== expected) {
        throw new Refusal('stale', `The job is at version ${locked.version}, not ${expected}.`);
      }
      const shown = await this.takeoffs.shown(tx, jobId);
      await change(tx, { shown, row: await this.found(tx, shown, item) });
      await this.readiness.settle(tx, shown.job.id);
      const { job, measurementId } = await this.takeoffs.shown(tx, jobId);
      const row = await this.found(tx, { job, measurementId }, item);
      return { ...itemAnswer(job.id, row), ...standingAnswer(await this.readiness.standing(tx, job, measurementId)) };
    });
  }

  private async found(tx: Transaction, { job, measurementId }: ShownJob, item: string): Promise<ItemRow> {
    const row = isId(item) ? await this.repository.item(tx, job.id, measurementId, item) : null;
    if (!row) throw new Refusal('not-found', 'There is no such item on the checklist.');
    return row;
  }
}

function untouched({ tick_id: tick, person_name: by, ticked_at: at }: ItemRow): void {
  if (tick !== null && at !== null) throw new Refusal('illegal-move', `${by} ticked the item on ${new Date(at).toISOString()}; untick it first.`);
}

const placeOf = ({ item, rule, storey, wall, course }: ItemRow): object => ({ item, rule, storey, wall, course });
