import { Injectable } from '@nestjs/common';
import { readRange } from '../../domain/range/read-range.js';
import { Clock } from '../../platform/clock/clock.js';
import type { Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import { breaches } from '../../platform/database/database-trouble.js';
import type { Transaction } from '../../platform/database/transaction.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import type { Page, PageQuery } from '../contract/contract.schemas.js';
import { wrongField } from '../contract/field-error.js';
import { idAfter, knownId, pageOf } from '../contract/page.js';
import { permit } from '../people/permissions.js';
import { RangesRepository, type RangeRow, type RangeWithDocument } from './ranges.repository.js';
import type { RangeAnswer, RangeDocument } from './ranges.schemas.js';

@Injectable()
export class RangesService {
  constructor(
    private readonly database: Database,
    private readonly repository: RangesRepository,
    private readonly clock: Clock,
  ) {}

  async list(actor: Actor, query: PageQuery): Promise<Page<RangeAnswer>> {
    permit(actor, 'range.read');
    const after = idAfter(query);
    return this.database.transaction(actor, async (tx) =>
      pageOf(await this.repository.list(tx, after, query.first + 1), query.first, ({ id }) => id, rangeAnswer),
    );
  }

  async document(actor: Actor, id: string): Promise<RangeDocument> {
    permit(actor, 'range.read');
    return this.database.transaction(actor, async (tx) => {
      const row = await this.repository.one(tx, knownId(id, 'range'));
      if (!row) throw new Refusal('not-found', 'There is no such range.');
      return row.body as RangeDocument;
    });
  }

  async add(actor: Actor, document: RangeDocument): Promise<RangeAnswer> {
    permit(actor, 'range.write');
    try {
      return await this.database.transaction(actor, (tx) => this.addIn(tx, document));
    } catch (error) {
      if (!breaches(error, 'form_ranges_code_key')) throw error;
      throw wrongField(
        'This version of the range is known already; a changed range is a new version.',
        '/version',
        String(document['version']),
        'the next version',
      );
    }
  }

  async addIn(tx: Transaction, document: RangeDocument): Promise<RangeAnswer> {
    const read = readRange(document);
    if (!read.ok) throw new Refusal('invalid', 'The form range does not hold together.', read.error);
    const { code, version, name, inForceFrom } = read.value;
    const row = await tx.insert<RangeRow>(
      'form_ranges',
      { code, range_version: version, name, in_force_from: inForceFrom, body: document, created_by: tx.actor.personId },
      { kind: 'range.added', data: { code, version } },
    );
    return rangeAnswer(row);
  }

  /** The document of a version that something was measured with. */
  async version(tx: Transaction, code: string, version: number): Promise<unknown> {
    const row = await this.repository.version(tx, code, version);
    if (!row) throw new Error(`version ${version} of the range ${code}, which a measurement names, does not exist`);
    return row.body;
  }

  /** Of every code the version in force today where the supplier is. */
  async inForce(tx: Transaction): Promise<RangeWithDocument[]> {
    return this.repository.inForce(tx, this.clock.today(await this.repository.timeZone(tx)));
  }
}

const rangeAnswer = ({ id, code, range_version: version, name, in_force_from: inForceFrom }: RangeRow): RangeAnswer => ({
  id,
  code,
  version,
  name,
  inForceFrom,
});
