import { Injectable } from '@nestjs/common';
import { v7 as uuidv7 } from 'uuid';
import type { Schedule } from '../../domain/schedule/schedule.js';
import { Configuration } from '../../platform/config/configuration.js';
import { isStaff, type Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import type { EventNote, HistoryEvent, Transaction } from '../../platform/database/transaction.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import { Signals } from '../../platform/signals/signals.js';
import type { Page, PageQuery } from '../contract/contract.schemas.js';
import { notReady } from '../checklists/readiness.js';
import { wrongField } from '../contract/field-error.js';
import { idAfter, isId, knownId, pageOf } from '../contract/page.js';
import { permit } from '../people/permissions.js';
import { scheduleDocument } from '../schedules/schedule-document.js';
import type { ScheduleAnswer } from '../schedules/schedules.schemas.js';
import { SchedulesRepository, type StoredFile } from '../schedules/schedules.repository.js';
import { SchedulesService } from '../schedules/schedules.service.js';
import type { UploadedPart } from '../schedules/uploaded-part.js';
import { MEASURE } from '../takeoffs/measure.task.js';
import { JobsRepository, type JobRow } from './jobs.repository.js';
import { isMeasured, type JobAnswer, type JobProgress } from './jobs.schemas.js';

/** How the client wants to hear of the run. */
export interface Patience {
  readonly respondAsync: boolean;
}

@Injectable()
export class JobsService {
  constructor(
    private readonly database: Database,
    private readonly signals: Signals,
    private readonly configuration: Configuration,
    private readonly schedules: SchedulesService,
    private readonly schedulesRepository: SchedulesRepository,
    private readonly repository: JobsRepository,
  ) {}

  async list(actor: Actor, query: PageQuery): Promise<Page<JobAnswer>> {
    permit(actor, 'job.read');
    const after = idAfter(query);
    return this.database.transaction(actor, async (tx) =>
      pageOf(await this.repository.list(tx, after, query.first + 1), query.first, ({ id }) => id, jobAnswer),
    );
  }

  async one(actor: Actor, id: string): Promise<JobAnswer> {
    permit(actor, 'job.read');
    return jobAnswer(await this.database.transaction(actor, (tx) => this.row(tx, id)));
  }

  async schedule(actor: Actor, id: string): Promise<ScheduleAnswer> {
    permit(actor, 'job.read');
    return this.database.transaction(actor, async (tx) => {
      const job = await this.row(tx, id);
      const row = await this.schedulesRepository.revision(tx, job.id, job.revision);
      if (!row) throw new Error(`revision ${job.revision} of job ${job.id} has no schedule`);
      return scheduleDocument(row.schedule);
    });
  }

  /** Upload, revision, event, run and queued task in one commit; then the run is waited for. */
  async submit(
    actor: Actor,
    parts: readonly UploadedPart[],
    organisation: string | undefined,
    patience: Patience,
  ): Promise<JobAnswer> {
    permit(actor, 'job.submit');
    const organisationId = await this.database.transaction(actor, (tx) => this.submittedFor(tx, organisation));
    const schedule = await this.schedules.read(actor, parts);
    const files = await this.schedules.keep(actor, parts);
    const job = await this.database.transaction(actor, async (tx) => {
      const id = uuidv7();
      const number = await tx.nextNumber('job');
      const row = await tx.insert<JobRow>(
        'jobs',
        {
          id,
          organisation_id: organisationId,
          number,
          name: schedule.name,
          state: 'queued',
          revision: 1,
          created_by: actor.personId,
        },
        { kind: 'job.submitted', data: { number, name: schedule.name } },
      );
      await this.queued(tx, row, schedule, files);
      return row;
    });
    return this.settled(actor, job, patience);
  }

  /** A new revision of the schedule, for whoever knows the version that it replaces. */
  async revise(
    actor: Actor,
    id: string,
    version: number | null,
    parts: readonly UploadedPart[],
    patience: Patience,
  ): Promise<JobAnswer> {
    permit(actor, 'job.revise');
    await this.database.transaction(actor, async (tx) => this.atVersion(await this.row(tx, id), version));
    const schedule = await this.schedules.read(actor, parts);
    const files = await this.schedules.keep(actor, parts);
    const job = await this.database.transaction(actor, async (tx) => {
      const before = await this.locked(tx, id);
      const revision = before.revision + 1;
      const row = await tx.update<JobRow>(
        'jobs',
        before.id,
        version,
        { state: 'queued', revision, name: schedule.name, failure: null },
        { kind: 'job.revised', data: { revision } },
      );
      if (before.state === 'ready-to-pour') await tx.record(aboutJob(row, notReady(revision, 'revised')));
      await this.queued(tx, row, schedule, files);
      return row;
    });
    return this.settled(actor, job, patience);
  }

  /** How far the run of the revision in force has come; `state` where it has not begun or is over. */
  async progress(actor: Actor, id: string): Promise<{ readonly job: JobAnswer; readonly progress: JobProgress }> {
    permit(actor, 'job.read');
    return this.database.transaction(actor, async (tx) => {
      const job = await this.row(tx, id);
      const seen = await this.repository.progress(tx, job.id);
      const progress =
        seen?.revision === job.revision
          ? { stage: seen.stage, done: seen.done, total: seen.total }
          : { stage: 'queued', done: 0, total: 0 };
      return { job: jobAnswer(job), progress: isOver(job) ? { ...progress, stage: isMeasured(job.state) ? 'measured' : job.state } : progress };
    });
  }

  private async queued(tx: Transaction, job: JobRow, schedule: Schedule, files: readonly StoredFile[]): Promise<void> {
    const revised = { id: job.id, organisationId: job.organisation_id, revision: job.revision };
    await this.schedulesRepository.store(tx, revised, schedule, files);
    await tx.enqueue(MEASURE, { job: job.id, revision: job.revision }, { key: `measure ${job.id}` });
    await tx.signal('job', job.id);
  }

  private async settled(actor: Actor, job: JobRow, { respondAsync }: Patience): Promise<JobAnswer> {
    if (respondAsync) return jobAnswer(job);
    const look = () =>
      this.database.transaction(actor, async (tx) => {
        const row = await this.row(tx, job.id);
        return isOver(row) || row.revision > job.revision ? row : null;
      });
    return jobAnswer(
      (await this.signals.until(actor.supplierId, 'job', job.id, look, this.configuration.runWaitMs)) ??
        (await this.database.transaction(actor, (tx) => this.row(tx, job.id))),
    );
  }

  private async submittedFor(tx: Transaction, organisation: string | undefined): Promise<string> {
    if (
      !isStaff(tx.actor) &&
      tx.actor.organisationId !== null &&
      (organisation === undefined || organisation === tx.actor.organisationId)
    )
      return tx.actor.organisationId;
    const known =
      organisation !== undefined && isId(organisation) && (await this.repository.organisationExists(tx, organisation));
    if (!known)
      throw wrongField(
        'Whose job is it?',
        '/organisation',
        organisation ?? '',
        "the id of a contractor's organisation, as ?organisation=",
      );
    return organisation;
  }

  private atVersion(row: JobRow, version: number | null): void {
    if (version !== null && row.version !== version)
      throw new Refusal('stale', `The job is at version ${row.version}, not ${version}.`);
  }

  private async row(tx: Transaction, id: string): Promise<JobRow> {
    return found(await this.repository.one(tx, knownId(id, 'job')));
  }

  /** So that no item is ticked between what is read here and what is written. */
  private async locked(tx: Transaction, id: string): Promise<JobRow> {
    return found(await this.repository.locked(tx, knownId(id, 'job')));
  }
}

function found(row: JobRow | null): JobRow {
  if (!row) throw new Refusal('not-found', 'There is no such job.');
  return row;
}

const aboutJob = ({ id, organisation_id: organisationId }: JobRow, note: EventNote): HistoryEvent => ({
  ...note,
  subject: { type: 'job', id },
  organisationId,
  jobId: id,
});

export const isOver = ({ state }: Pick<JobAnswer, 'state'>): boolean => isMeasured(state) || state === 'failed';

const jobAnswer = ({ id, number, name, state, revision, version }: JobRow): JobAnswer => ({
  id,
  number,
  name,
  state,
  revision,
  version,
});
