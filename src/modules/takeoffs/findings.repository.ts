import { Injectable } from '@nestjs/common';
import type { Finding, FindingCode, Severity } from '../../domain/evidence/finding.js';
import type { Transaction } from '../../platform/database/transaction.js';

export interface FindingRow {
  readonly n: number;
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly storey: string | null;
  readonly wall: string | null;
  readonly walls: readonly string[];
  readonly course: number | null;
  readonly at_mm: number | null;
  readonly numbers: Readonly<Record<string, number | string>>;
  readonly source: string;
}

@Injectable()
export class FindingsRepository {
  page(tx: Transaction, measurementId: string, after: number, take: number): Promise<FindingRow[]> {
    return tx.query(
      `select n, code, severity, storey, wall, walls, course, at_mm, numbers, source from findings
       where supplier_id = $1 and measurement_id = $2 and not lifted and n > $3 order by n limit $4`,
      [tx.actor.supplierId, measurementId, after, take],
    );
  }
}

export const findingOf = ({
  code,
  severity,
  storey,
  wall,
  walls,
  course,
  at_mm: atMm,
  numbers,
  source,
}: FindingRow): Finding => ({ code, severity, storey, wall, walls, course, atMm, numbers, source });
