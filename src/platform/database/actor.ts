export type Role = 'contractor' | 'support' | 'sales' | 'admin' | 'system';

/** On whose behalf the database is spoken to. `system` is the program itself, within one supplier. */
export interface Actor {
  readonly supplierId: string;
  readonly organisationId: string | null;
  readonly personId: string | null;
  readonly role: Role;
}

export const systemActor = (supplierId: string): Actor => ({ supplierId, organisationId: null, personId: null, role: 'system' });

export const isStaff = (actor: Actor): boolean => actor.role !== 'contractor';
