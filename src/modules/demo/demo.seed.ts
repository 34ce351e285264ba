import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Injectable, Optional, type OnApplicationBootstrap } from '@nestjs/common';
import { HttpAdapterHost } from '@nestjs/core';
import { Configuration } from '../../platform/config/configuration.js';
import { PACKAGE_ROOT } from '../../platform/config/package-root.js';
import { systemActor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import type { Transaction } from '../../platform/database/transaction.js';
import { Log } from '../../platform/telemetry/log.js';
import { PeopleService } from '../people/people.service.js';
import type { PersonBody } from '../people/people.schemas.js';
import { PricesService } from '../prices/prices.service.js';
import { PriceListDocument } from '../prices/prices.schemas.js';
import { RangesService } from '../ranges/ranges.service.js';
import { RangeDocument } from '../ranges/ranges.schemas.js';

/** Fixed, so that any number of processes agree on whether the demo supplier is there. */
export const DEMO_SUPPLIER = '01980000-0000-7000-8000-00000000d001';
const SEED_LOCK = 72_707_370;
const SAMPLES = join(PACKAGE_ROOT, 'shared', 'samples');

const PEOPLE: Readonly<Record<string, PersonBody>> = {
  contractor: {
    name: 'Ines Calder',
    email: 'ines@quayside.example',
    role: 'contractor',
    organisation: { name: 'Quayside Builders', place: 'Alder County' },
  },
  neighbour: {
    name: 'Tomas Reed',
    email: 'tomas@fieldgate.example',
    role: 'contractor',
    organisation: { name: 'Fieldgate Construction', place: 'Fenmoor' },
  },
  support: { name: 'Oda Lindqvist', email: 'support@heron.example', role: 'support' },
  sales: { name: 'Peter Abara', email: 'sales@heron.example', role: 'sales' },
  admin: { name: 'Mara Voss', email: 'admin@heron.example', role: 'admin' },
};

/** The invented supplier that a first start finds: range, price list, people, and a file with their tokens. */
@Injectable()
export class DemoSeed implements OnApplicationBootstrap {
  constructor(
    private readonly configuration: Configuration,
    private readonly database: Database,
    private readonly ranges: RangesService,
    private readonly prices: PricesService,
    private readonly people: PeopleService,
    private readonly log: Log,
    @Optional() private readonly host?: HttpAdapterHost,
  ) {}

  /** Only the API seeds: the tokens belong where its address is written. */
  async onApplicationBootstrap(): Promise<void> {
    if (!this.configuration.seedDemo || !this.host?.httpAdapter) return;
    await this.database.transaction(systemActor(DEMO_SUPPLIER), async (tx) => {
      await tx.query('select pg_advisory_xact_lock($1)', [SEED_LOCK]);
      if (await tx.one('select 1 from suppliers where supplier_id = $1', [DEMO_SUPPLIER])) return;
      await this.seed(tx);
      this.log.info({ supplier: DEMO_SUPPLIER }, 'the demo supplier was put into the database');
    });
  }

  private async seed(tx: Transaction): Promise<void> {
    await tx.insert(
      'suppliers',
      {
        code: 'heron',
        name: 'Heron Forms (demo)',
        time_zone: 'America/Chicago',
        currency: 'USD',
        settings: { lines: ['12 Kiln Lane, Fenmoor', 'quotes@heron.example'] },
      },
      { kind: 'supplier.added', data: { code: 'heron' } },
    );
    await this.ranges.addIn(tx, RangeDocument.parse(await sample('heron-16.range.json')));
    await this.prices.addIn(tx, PriceListDocument.parse(await sample('prices.json')));
    const tokens: Record<string, string> = {};
    for (const [key, body] of Object.entries(PEOPLE)) {
      const person = await this.people.addPersonIn(tx, body);
      tokens[key] = (await this.people.addTokenIn(tx, { person: person.id, name: 'demo' })).token;
    }
    await this.keep(tokens);
  }

  /** Before the commit: should it fail, the next start writes them anew. */
  private async keep(tokens: Readonly<Record<string, string>>): Promise<void> {
    await mkdir(this.configuration.dataDir, { recursive: true });
    await writeFile(join(this.configuration.dataDir, 'demo-tokens.json'), `${JSON.stringify(tokens, null, 2)}\n`, {
      mode: 0o600,
    });
  }
}

const sample = async (name: string): Promise<unknown> => JSON.parse(await readFile(join(SAMPLES, name), 'utf8'));
