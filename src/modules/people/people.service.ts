import { Injectable } from '@nestjs/common';
import { hashToken, newToken } from '../../platform/auth/token.js';
import type { Actor } from '../../platform/database/actor.js';
import { Database } from '../../platform/database/database.js';
import { breaches } from '../../platform/database/database-trouble.js';
import type { Transaction } from '../../platform/database/transaction.js';
import { Refusal } from '../../platform/refusals/refusal.js';
import type { Page, PageQuery } from '../contract/contract.schemas.js';
import { wrongField } from '../contract/field-error.js';
import { idAfter, isId, pageOf } from '../contract/page.js';
import { permit } from './permissions.js';
import { PeopleRepository, type OrganisationRow, type PersonRow, type TokenRow } from './people.repository.js';
import type { MeAnswer, NewTokenAnswer, PersonAnswer, PersonBody, TokenAnswer, TokenBody } from './people.schemas.js';

@Injectable()
export class PeopleService {
  constructor(
    private readonly database: Database,
    private readonly repository: PeopleRepository,
  ) {}

  async me(actor: Actor): Promise<MeAnswer> {
    permit(actor, 'me.read');
    return this.database.transaction(actor, async (tx) => {
      const person = actor.personId === null ? null : await this.repository.person(tx, actor.personId);
      if (!person) throw new Refusal('not-found', 'There is no such person.');
      const { code, name, time_zone: timeZone, currency } = await this.repository.supplier(tx);
      return { ...personAnswer(person), supplier: { code, name, timeZone, currency } };
    });
  }

  async people(actor: Actor, query: PageQuery): Promise<Page<PersonAnswer>> {
    permit(actor, 'person.read');
    return this.database.transaction(actor, async (tx) =>
      pageOf(await this.repository.people(tx, idAfter(query), query.first + 1), query.first, ({ id }) => id, personAnswer),
    );
  }

  async addPerson(actor: Actor, body: PersonBody): Promise<PersonAnswer> {
    permit(actor, 'person.write');
    try {
      return await this.database.transaction(actor, (tx) => this.addPersonIn(tx, body));
    } catch (error) {
      if (!breaches(error, 'people_email_key')) throw error;
      throw wrongField('Somebody has this address already.', '/email', body.email, 'an address that nobody here has');
    }
  }

  async addPersonIn(tx: Transaction, body: PersonBody): Promise<PersonAnswer> {
    const organisation = body.organisation ? await this.organisationIn(tx, body.organisation) : null;
    const { id } = await tx.insert<{ id: string }>(
      'people',
      { name: body.name, email: body.email, role: body.role, organisation_id: organisation?.id ?? null },
      { kind: 'person.added', data: { role: body.role } },
    );
    return { id, name: body.name, email: body.email, role: body.role, organisation };
  }

  async tokens(actor: Actor, query: PageQuery): Promise<Page<TokenAnswer>> {
    permit(actor, 'token.read');
    return this.database.transaction(actor, async (tx) =>
      pageOf(await this.repository.tokens(tx, idAfter(query), query.first + 1), query.first, ({ id }) => id, tokenAnswer),
    );
  }

  async addToken(actor: Actor, body: TokenBody): Promise<NewTokenAnswer> {
    permit(actor, 'token.write');
    return this.database.transaction(actor, (tx) => this.addTokenIn(tx, body));
  }

  async addTokenIn(tx: Transaction, body: TokenBody): Promise<NewTokenAnswer> {
    const person = isId(body.person) ? await this.repository.person(tx, body.person) : null;
    if (!person) throw wrongField('There is no such person.', '/person', body.person, 'the id of a person, from GET /v1/people');
    const token = newToken();
    const row = await tx.insert<TokenRow>(
      'tokens',
      { name: body.name, person_id: person.id, organisation_id: person.organisation_id, token_hash: hashToken(token) },
      { kind: 'token.made', data: { person: person.id, name: body.name } },
    );
    return { ...tokenAnswer(row), token };
  }

  private async organisationIn(
    tx: Transaction,
    wanted: { readonly name: string; readonly place?: string },
  ): Promise<OrganisationRow> {
    const found = await this.repository.organisationNamed(tx, wanted.name);
    if (found) return found;
    const { id, name, place } = await tx.insert<OrganisationRow>(
      'organisations',
      { name: wanted.name, place: wanted.place ?? null },
      { kind: 'organisation.added', data: { name: wanted.name } },
    );
    return { id, name, place };
  }
}

const personAnswer = (row: PersonRow): PersonAnswer => ({
  id: row.id,
  name: row.name,
  email: row.email,
  role: row.role,
  organisation:
    row.organisation_id === null
      ? null
      : { id: row.organisation_id, name: row.organisation_name ?? '', place: row.organisation_place },
});

const tokenAnswer = (row: TokenRow): TokenAnswer => ({
  id: row.id,
  name: row.name,
  person: row.person_id,
  createdAt: new Date(row.created_at).toISOString(),
  revokedAt: row.revoked_at === null ? null : new Date(row.revoked_at).toISOString(),
});
