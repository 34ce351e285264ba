import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/transaction.js';
import type { JobState } from '../jobs/jobs.schemas.js';
import type { StoredSummary, StoredWall } from './stored-measurement.js';

export interface MeasuredJobRow {
  readonly id: string;
  readonly organisation_id: string;
  readonly name: string;
  readonly number: string;
  readonly state: JobState;
  readonly revision: number;
  readonly version: number;
  readonly measurement_id: string | null;
  readonly failure: string | null;
}

export interface MeasurementRow {
  readonly id: string;
  readonly revision: number;
  readonly summary: StoredSummary;
}

export interface WallRow {
  readonly n: number;
  readonly wall: StoredWall;
}

@Injectable()
export class TakeoffsRepository {
  job(tx: Transaction, id: string): Promise<MeasuredJobRow | null> {
    return tx.one(
      'select id, organisation_id, name, number, state, revision, version, measurement_id, failure from jobs where supplier_id = $1 and id = $2',
      [tx.actor.supplierId, id],
    );
  }

  /** Everything but the walls; the cut list, which is long, only when asked for. */
  async measurement(tx: Transaction, id: string, cuts: boolean): Promise<MeasurementRow> {
    const summary = cuts ? 'summary' : `jsonb_set(summary, '{takeoff,cuts}', '[]') as summary`;
    const row = await tx.one<MeasurementRow>(
      `select id, revision, ${summary} from measurements where supplier_id = $1 and id = $2`,
      [tx.actor.supplierId, id],
    );
    if (!row) throw new Error(`the measurement ${id} that a job shows does not exist`);
    return row;
  }

  /** Walls in the order of the schedule, with or without what was laid in them. */
  walls(tx: Transaction, measurementId: string, laid: boolean, after: number, take: number): Promise<WallRow[]> {
    const wall = laid ? 'wall' : `wall || '{"courses": [], "strips": []}' as wall`;
    return tx.query(
      `select n, ${wall} from measurement_walls where supplier_id = $1 and measurement_id = $2 and n > $3 order by n limit $4`,
      [tx.actor.supplierId, measurementId, after, take],
    );
  }

  async wallsOfStorey(tx: Transaction, measurementId: string, storey: string): Promise<StoredWall[]> {
    const rows = await tx.query<WallRow>(
      'select n, wall from measurement_walls where supplier_id = $1 and measurement_id = $2 and storey = $3 order by n',
      [tx.actor.supplierId, measurementId, storey],
    );
    return rows.map(({ wall }) => wall);
  }

  async storeyOfWall(tx: Transaction, measurementId: string, mark: string): Promise<string | null> {
    const row = await tx.one<{ storey: string }>(
      'select storey from measurement_walls where supplier_id = $1 and measurement_id = $2 and mark = $3',
      [tx.actor.supplierId, measurementId, mark],
    );
    return row?.storey ?? null;
  }
}
