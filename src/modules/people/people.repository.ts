import { Injectable } from '@nestjs/common';
import type { Transaction } from '../../platform/database/transaction.js';

export interface PersonRow {
  readonly id: string;
  readonly name: string;
  readonly email: string;
  readonly role: 'contractor' | 'support' | 'sales' | 'admin';
  readonly organisation_id: string | null;
  readonly organisation_name: string | null;
  readonly organisation_place: string | null;
}

export interface TokenRow {
  readonly id: string;
  readonly name: string;
  readonly person_id: string;
  readonly created_at: Date;
  readonly revoked_at: Date | null;
}

export interface OrganisationRow {
  readonly id: string;
  readonly name: string;
  readonly place: string | null;
}

export interface SupplierRow {
  readonly code: string;
  readonly name: string;
  readonly time_zone: string;
  readonly currency: string;
  /** What the supplier prints on papers: `lines` are address and ways to reach it. */
  readonly settings: { readonly lines?: readonly string[] };
}

const PERSON = `select p.id, p.name, p.email, p.role, p.organisation_id, o.name as organisation_name, o.place as organisation_place
  from people p left join organisations o on o.supplier_id = p.supplier_id and o.id = p.organisation_id`;

@Injectable()
export class PeopleRepository {
  people(tx: Transaction, after: string | null, take: number): Promise<PersonRow[]> {
    return tx.query(`${PERSON} where p.supplier_id = $1 and ($2::uuid is null or p.id > $2) order by p.id limit $3`, [
      tx.actor.supplierId,
      after,
      take,
    ]);
  }

  person(tx: Transaction, id: string): Promise<PersonRow | null> {
    return tx.one(`${PERSON} where p.supplier_id = $1 and p.id = $2`, [tx.actor.supplierId, id]);
  }

  organisation(tx: Transaction, id: string): Promise<OrganisationRow | null> {
    return tx.one('select id, name, place from organisations where supplier_id = $1 and id = $2', [tx.actor.supplierId, id]);
  }

  organisationNamed(tx: Transaction, name: string): Promise<OrganisationRow | null> {
    return tx.one('select id, name, place from organisations where supplier_id = $1 and name = $2', [tx.actor.supplierId, name]);
  }

  tokens(tx: Transaction, after: string | null, take: number): Promise<TokenRow[]> {
    return tx.query(
      `select id, name, person_id, created_at, revoked_at from tokens
       where supplier_id = $1 and ($2::uuid is null or id > $2) order by id limit $3`,
      [tx.actor.supplierId, after, take],
    );
  }

  async supplier(tx: Transaction): Promise<SupplierRow> {
    const row = await tx.one<SupplierRow>(
      'select code, name, time_zone, currency, settings from suppliers where supplier_id = $1',
      [tx.actor.supplierId],
    );
    if (!row) throw new Error('the supplier of the request does not exist');
    return row;
  }
}
