import { Injectable } from '@nestjs/common';
import { v7 as uuidv7 } from 'uuid';
import type { Advice } from '../../domain/advice/advice.js';
import type { Finding } from '../../domain/evidence/finding.js';
import type { Schedule } from '../../domain/schedule/schedule.js';
import type { Transaction } from '../../platform/database/transaction.js';
import type { JobState } from '../jobs/jobs.schemas.js';
import type { ChecklistRow, MeasureOutput } from './measure.worker.js';

export interface RunningJob {
  readonly id: string;
  readonly organisation_id: string;
  readonly state: JobState;
  readonly revision: number;
}

export interface MeasuredWith {
  readonly rangeId: string;
  readonly rangeCode: string;
  readonly rangeVersion: number;
  readonly adviceKey: string;
}

const CHECKLIST_COLUMNS = ['item', 'key', 'digest', 'phase', 'rule', 'storey', 'wall', 'course', 'text', 'counts', 'basis'] as const;

@Injectable()
export class RunsRepository {
  job(tx: Transaction, id: string): Promise<RunningJob | null> {
    return tx.one('select id, organisation_id, state, revision from jobs where supplier_id = $1 and id = $2 for update', [
      tx.actor.supplierId,
      id,
    ]);
  }

  async schedule(tx: Transaction, jobId: string, revision: number): Promise<Schedule> {
    const row = await tx.one<{ schedule: Schedule }>(
      'select schedule from schedule_revisions where supplier_id = $1 and job_id = $2 and revision = $3',
      [tx.actor.supplierId, jobId, revision],
    );
    if (!row) throw new Error(`revision ${revision} of job ${jobId} has no schedule`);
    return row.schedule;
  }

  advice(tx: Transaction, jobId: string): Promise<Advice[]> {
    return tx.query(
      'select question_key as question, lifts, text from advice where supplier_id = $1 and job_id = $2 order by id',
      [tx.actor.supplierId, jobId],
    );
  }

  async progress(tx: Transaction, job: RunningJob, stage: string, done: number, total: number): Promise<void> {
    await tx.query(
      `insert into job_progress (supplier_id, job_id, organisation_id, revision, stage, done, total, updated_at)
       values ($1, $2, $3, $4, $5, $6, $7, $8)
       on conflict (supplier_id, job_id) do update set revision = excluded.revision, stage = excluded.stage, done = excluded.done,
         total = excluded.total, updated_at = excluded.updated_at`,
      [tx.actor.supplierId, job.id, job.organisation_id, job.revision, stage, done, total, tx.now()],
    );
    await tx.signal('job', job.id);
  }

  /** The same work may have been stored by a run that died before it could say so. */
  async stored(tx: Transaction, job: RunningJob, engine: string, { rangeId, adviceKey }: MeasuredWith): Promise<string | null> {
    const row = await tx.one<{ id: string }>(
      `select id from measurements where supplier_id = $1 and job_id = $2 and revision = $3
         and engine = $4 and range_id = $5 and advice_key = $6`,
      [tx.actor.supplierId, job.id, job.revision, engine, rangeId, adviceKey],
    );
    return row?.id ?? null;
  }

  async store(tx: Transaction, job: RunningJob, output: MeasureOutput, inputs: MeasuredWith): Promise<string> {
    const id = uuidv7();
    await tx.query(
      `insert into measurements (supplier_id, id, organisation_id, job_id, revision, engine, range_id, range_code,
         range_version, advice_key, forms,
         concrete_nm3, face_nm2, opening_nm2, summary, created_at)
       values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15::jsonb, $16)`,
      [
        tx.actor.supplierId,
        id,
        job.organisation_id,
        job.id,
        job.revision,
        output.engine,
        inputs.rangeId,
        inputs.rangeCode,
        inputs.rangeVersion,
        inputs.adviceKey,
        output.forms,
        output.concreteNm3,
        output.faceNm2,
        output.openingNm2,
        output.summary,
        tx.now(),
      ],
    );
    await tx.record({
      kind: 'measurement.stored',
      subject: { type: 'measurement', id },
      organisationId: job.organisation_id,
      jobId: job.id,
      data: { revision: job.revision, engine: output.engine, forms: output.forms },
    });
    return id;
  }

  /** Walls as text, so that no thread but the one that measured ever parses them. */
  async storeWalls(tx: Transaction, job: RunningJob, measurementId: string, walls: MeasureOutput['walls']): Promise<void> {
    await tx.query(
      `insert into measurement_walls (supplier_id, id, organisation_id, measurement_id, n, storey, mark, wall, created_at)
       select $1, w.id, $2, $3, w.n, w.storey, w.mark, w.wall::jsonb, $4
       from unnest($5::uuid[], $6::integer[], $7::text[], $8::text[], $9::text[]) as w (id, n, storey, mark, wall)`,
      [
        tx.actor.supplierId,
        job.organisation_id,
        measurementId,
        tx.now(),
        walls.map(() => uuidv7()),
        walls.map(({ n }) => n),
        walls.map(({ storey }) => storey),
        walls.map(({ mark }) => mark),
        walls.map(({ wall }) => wall),
      ],
    );
  }

  /** @param before how many items of the checklist are stored already */
  async storeChecklist(tx: Transaction, job: RunningJob, measurementId: string, before: number, items: readonly ChecklistRow[]): Promise<void> {
    await tx.query(
      `insert into checklist_items (supplier_id, organisation_id, measurement_id, n, item, key, digest, phase, rule, storey, wall, course, text, counts, basis, created_at)
       select $1, $2, $3, $4 + c.n, c.item, c.key, c.digest, c.phase, c.rule, c.storey, c.wall, c.course, c.text, c.counts::jsonb, c.basis, $5
       from unnest($6::uuid[], $7::text[], $8::text[], $9::text[], $10::text[], $11::text[], $12::text[], $13::integer[], $14::text[], $15::text[], $16::text[])
         with ordinality as c (item, key, digest, phase, rule, storey, wall, course, text, counts, basis, n)`,
      [
        tx.actor.supplierId,
        job.organisation_id,
        measurementId,
        before,
        tx.now(),
        ...CHECKLIST_COLUMNS.map((column) => items.map((item) => item[column])),
      ],
    );
  }

  async storeFindings(tx: Transaction, job: RunningJob, measurementId: string, output: MeasureOutput): Promise<void> {
    const questionOf = new Map(
      output.questions.flatMap(({ key, findings }) => findings.map((found) => [JSON.stringify(found), key] as const)),
    );
    const row = (found: Finding, index: number, lifted: boolean) => ({
      organisation_id: job.organisation_id,
      job_id: job.id,
      measurement_id: measurementId,
      n: index + 1,
      code: found.code,
      severity: found.severity,
      question_key: questionOf.get(JSON.stringify(found)) ?? null,
      lifted,
      storey: found.storey,
      wall: found.wall,
      walls: found.walls,
      course: found.course,
      at_mm: found.atMm,
      numbers: found.numbers,
      source: found.source,
    });
    await tx.insertParts('findings', [
      ...output.findings.map((found, index) => row(found, index, false)),
      ...output.lifted.map((found, index) => row(found, output.findings.length + index, true)),
    ]);
  }
}
