import { Injectable } from '@nestjs/common';
import { v7 as uuidv7 } from 'uuid';
import type { Schedule } from '../../domain/schedule/schedule.js';
import type { Transaction } from '../../platform/database/transaction.js';

export interface ScheduleRow {
  readonly id: string;
  readonly revision: number;
  readonly schedule: Schedule;
}

/** An uploaded part as it lies in the blob store. */
export interface StoredFile {
  readonly name: string;
  readonly mediaType: string;
  readonly sha256: string;
  readonly bytes: number;
}

export interface RevisedJob {
  readonly id: string;
  readonly organisationId: string;
  readonly revision: number;
}

@Injectable()
export class SchedulesRepository {
  revision(tx: Transaction, jobId: string, revision: number): Promise<ScheduleRow | null> {
    return tx.one(
      'select id, revision, schedule from schedule_revisions where supplier_id = $1 and job_id = $2 and revision = $3',
      [tx.actor.supplierId, jobId, revision],
    );
  }

  async store(tx: Transaction, job: RevisedJob, schedule: Schedule, files: readonly StoredFile[]): Promise<void> {
    const { id } = await tx.insert<{ id: string }>(
      'schedule_revisions',
      { organisation_id: job.organisationId, job_id: job.id, revision: job.revision, schedule, created_by: tx.actor.personId },
      { kind: 'schedule.stored', data: { revision: job.revision, files: files.map(({ name, sha256 }) => ({ name, sha256 })) } },
    );
    await tx.insertParts(
      'schedule_files',
      files.map((file, index) => ({
        organisation_id: job.organisationId,
        schedule_revision_id: id,
        n: index + 1,
        file_name: file.name,
        media_type: file.mediaType,
        sha256: file.sha256,
        bytes: file.bytes,
      })),
    );
    for (const file of files) await this.keepBlob(tx, job.organisationId, file);
  }

  /** The same content may have been uploaded before: then its row is there. */
  private async keepBlob(tx: Transaction, organisationId: string, { sha256, bytes, mediaType }: StoredFile): Promise<void> {
    await tx.query(
      `insert into blobs (supplier_id, id, organisation_id, sha256, bytes, media_type, created_at)
       values ($1, $2, $3, $4, $5, $6, $7)
       on conflict do nothing`,
      [tx.actor.supplierId, uuidv7(), organisationId, sha256, bytes, mediaType, tx.now()],
    );
  }
}
