import { Injectable } from '@nestjs/common';
import { shownText } from '../../domain/evidence/input-error.js';
import { contentKind } from '../../domain/schedule/content-kind.js';
import type { RefusalCode, Schedule } from '../../domain/schedule/index.js';
import { BlobStore } from '../../platform/blobs/blob-store.js';
import type { Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import { IfcReader } from '../../platform/ifc-reader/ifc-reader.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import { WorkerPool } from '../../platform/workers/worker-pool.js';
import { RangesService } from '../ranges/ranges.service.js';
import type { ReadInput, ReadOutput } from './read.worker.js';
import type { StoredFile } from './schedules.repository.js';
import type { UploadedPart } from './uploaded-part.js';

const DETAILS: Readonly<Record<RefusalCode, string>> = {
  unreadable: 'The upload is damaged, empty or broken JSON.',
  'wrong-type': 'There is no wall schedule in the upload.',
  'too-large': 'The schedule holds more than one job may.',
  invalid: 'The schedule does not hold together.',
};

/** Of a model that has been opened the thread needs only what it is known by. */
const MODEL_START = 1_024;

@Injectable()
export class SchedulesService {
  constructor(
    private readonly database: Database,
    private readonly ranges: RangesService,
    private readonly pool: WorkerPool,
    private readonly blobs: BlobStore,
    private readonly ifc: IfcReader,
  ) {}

  /** The canonical schedule that the parts hold, read in a thread; refused with everything that is wrong with it. */
  async read(actor: Actor, parts: readonly UploadedPart[]): Promise<Schedule> {
    const ranges = await this.database.transaction(actor, (tx) => this.ranges.inForce(tx));
    const opened = [];
    for (const part of parts) opened.push(await this.opened(part));
    const input = { parts: opened, ranges: ranges.map(({ body }) => body) };
    const output = await this.pool.run<ReadInput, ReadOutput>('modules/schedules/read.worker.js', 'read', input);
    if (!output.ok) throw new Refusal(output.code, DETAILS[output.code], output.errors);
    return output.schedule;
  }

  /** A building model is opened in a process of its own before it is read with the rest. */
  private async opened({ name, mediaType, bytes, whenGone }: UploadedPart): Promise<ReadInput['parts'][number]> {
    if (contentKind(bytes) !== 'model') return { name, mediaType, bytes };
    return { name, mediaType, bytes: bytes.subarray(0, MODEL_START), model: await this.ifc.read(shownText(name), bytes, whenGone) };
  }

  /** Keeps the parts as they came. Content without a row that names it is harmless: it is found again by its sha256. */
  async keep(actor: Actor, parts: readonly UploadedPart[]): Promise<StoredFile[]> {
    const files: StoredFile[] = [];
    for (const { name, mediaType, bytes } of parts)
      files.push({ name, mediaType, ...(await this.blobs.put(actor.supplierId, bytes)) });
    return files;
  }
}
