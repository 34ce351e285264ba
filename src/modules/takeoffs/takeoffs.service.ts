import { Injectable } from '@nestjs/common';
import type { Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import type { Transaction } from '../../platform/database/transaction.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import type { Page, PageQuery } from '../contract/contract.schemas.js';
import { knownId, numberAfter, pageOf } from '../contract/page.js';
import { isMeasured } from '../jobs/jobs.schemas.js';
import { permit } from '../people/permissions.js';
import { bracingAnswer } from './bracing-answer.js';
import type { BracingAnswer } from './bracing.schemas.js';
import { findingOf, FindingsRepository } from './findings.repository.js';
import type { FindingAnswer } from './findings.schemas.js';
import { unstored, unstoredWall, type CountedMeasurement, type StoredSummary, type StoredWall } from './stored-measurement.js';
import { checkAnswer, cutAnswer, findingAnswer, takeoffAnswer, wallAnswer } from './takeoff-answer.js';
import { TakeoffsRepository, type MeasuredJobRow } from './takeoffs.repository.js';
import type { CheckAnswer, TakeoffAnswer } from './takeoffs.schemas.js';

const WALLS_AT_ONCE = 200;
const ALL_WALLS = 1_000_000;
const MOST_WALLS_IN_ONE_PIECE = 500;

/** A job that has been measured, and the measurement it shows. */
export interface ShownJob {
  readonly job: MeasuredJobRow;
  readonly measurementId: string;
}

@Injectable()
export class TakeoffsService {
  constructor(
    private readonly database: Database,
    private readonly repository: TakeoffsRepository,
    private readonly findingsRepository: FindingsRepository,
  ) {}

  async takeoff(actor: Actor, id: string): Promise<TakeoffAnswer> {
    permit(actor, 'takeoff.read');
    return this.database.transaction(actor, async (tx) => (await this.head(tx, id)).answer);
  }

  /** With every course and the cut list, at once: for jobs small enough to be held. */
  async detailed(actor: Actor, id: string): Promise<TakeoffAnswer> {
    permit(actor, 'takeoff.read');
    return this.database.transaction(actor, async (tx) => {
      const { answer, measurementId, summary } = await this.head(tx, id, true);
      if (answer.walls.length > MOST_WALLS_IN_ONE_PIECE) {
        throw new Refusal(
          'too-large',
          `More than ${MOST_WALLS_IN_ONE_PIECE} walls are told course by course only as a stream: GET /v1/jobs/${id}/takeoff?detail=courses.`,
        );
      }
      const walls = await this.repository.walls(tx, measurementId, true, 0, ALL_WALLS);
      return {
        ...answer,
        walls: walls.map(({ wall }) => wallAnswer(unstoredWall(wall), true)),
        cuts: summary.takeoff.cuts.map(cutAnswer),
      };
    });
  }

  /** The same as text, a few walls at a time, so that the largest job takes no more memory than a small one. */
  async detailedText(actor: Actor, id: string): Promise<AsyncIterable<string>> {
    permit(actor, 'takeoff.read');
    const { answer, measurementId, summary } = await this.database.transaction(actor, (tx) => this.head(tx, id, true));
    const { walls: _, ...rest } = answer;
    const head = JSON.stringify({ ...rest, cuts: summary.takeoff.cuts.map(cutAnswer) });
    return this.text(actor, measurementId, head);
  }

  async findings(actor: Actor, id: string, query: PageQuery): Promise<Page<FindingAnswer>> {
    permit(actor, 'takeoff.read');
    const after = numberAfter(query);
    return this.database.transaction(actor, async (tx) => {
      const { measurementId } = await this.shown(tx, id);
      const rows = await this.findingsRepository.page(tx, measurementId, after, query.first + 1);
      return pageOf(
        rows,
        query.first,
        ({ n }) => n,
        (row) => findingAnswer(findingOf(row)),
      );
    });
  }

  async checks(actor: Actor, id: string, query: PageQuery): Promise<Page<CheckAnswer>> {
    return this.partOf(actor, id, query, ({ checks }) => checks, checkAnswer);
  }

  /** Storey by storey. */
  async bracing(actor: Actor, id: string, query: PageQuery): Promise<Page<BracingAnswer>> {
    return this.partOf(actor, id, query, ({ bracing }) => bracing ?? unbraced(id), bracingAnswer);
  }

  /** A page of a list that lies in the summary. */
  private async partOf<R, T>(actor: Actor, id: string, query: PageQuery, part: (summary: StoredSummary) => readonly R[], answer: (row: R) => T): Promise<Page<T>> {
    permit(actor, 'takeoff.read');
    const after = numberAfter(query);
    return this.database.transaction(actor, async (tx) => {
      const { measurementId } = await this.shown(tx, id);
      const { summary } = await this.repository.measurement(tx, measurementId, false);
      const numbered = part(summary).map((row, index) => ({ n: index + 1, row })).slice(after, after + query.first + 1);
      return pageOf(numbered, query.first, ({ n }) => n, ({ row }) => answer(row));
    });
  }

  /** The job and the measurement it shows; refused while there is none of the revision in force. */
  async shown(tx: Transaction, id: string): Promise<ShownJob> {
    const job = await this.repository.job(tx, knownId(id, 'job'));
    if (!job) throw new Refusal('not-found', 'There is no such job.');
    if (job.state === 'failed')
      throw new Refusal(
        'illegal-move',
        `Revision ${job.revision} could not be measured: ${job.failure ?? 'no reason was given'}`,
      );
    if (!isMeasured(job.state) || job.measurement_id === null) {
      throw new Refusal('already-running', `Revision ${job.revision} is still being measured; follow /v1/jobs/${job.id}/events.`);
    }
    return { job, measurementId: job.measurement_id };
  }

  /** The measurement as the domain made it; without the courses where only counts and prices are wanted. */
  async measurement(tx: Transaction, measurementId: string, laid: boolean): Promise<CountedMeasurement> {
    const { summary } = await this.repository.measurement(tx, measurementId, laid);
    return this.whole(tx, measurementId, summary, laid);
  }

  /** What pricing reads: the counts, without a wall. */
  async counted(tx: Transaction, measurementId: string): Promise<CountedMeasurement> {
    const { summary } = await this.repository.measurement(tx, measurementId, false);
    return unstored({ summary, walls: [] });
  }

  private async whole(tx: Transaction, measurementId: string, summary: StoredSummary, laid: boolean): Promise<CountedMeasurement> {
    const rows = await this.repository.walls(tx, measurementId, laid, 0, ALL_WALLS);
    return unstored({ summary, walls: rows.map(({ wall }): StoredWall => wall) });
  }

  private async head(
    tx: Transaction,
    id: string,
    cuts = false,
  ): Promise<{ answer: TakeoffAnswer; measurementId: string; summary: StoredSummary }> {
    const { measurementId } = await this.shown(tx, id);
    const { revision, summary } = await this.repository.measurement(tx, measurementId, cuts);
    return { answer: takeoffAnswer(revision, await this.whole(tx, measurementId, summary, false)), measurementId, summary };
  }

  private async *text(actor: Actor, measurementId: string, head: string): AsyncGenerator<string> {
    yield `${head.slice(0, -1)},"walls":[`;
    for (let after = 0, first = true; ; first = false) {
      const rows = await this.database.transaction(actor, (tx) =>
        this.repository.walls(tx, measurementId, true, after, WALLS_AT_ONCE),
      );
      if (rows.length > 0)
        yield `${first ? '' : ','}${rows.map(({ wall }) => JSON.stringify(wallAnswer(unstoredWall(wall), true))).join(',')}`;
      if (rows.length < WALLS_AT_ONCE) break;
      after = rows.at(-1)!.n;
    }
    yield ']}';
  }
}

/** A measurement of an engine that made no bracing plan yet. */
function unbraced(id: string): never {
  throw new Refusal('illegal-move', `The job was measured before braces were planned; send its schedule once more: PUT /v1/jobs/${id}/schedule.`);
}
