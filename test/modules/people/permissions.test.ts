import { describe, expect, it } from '@jest/globals';
import { permit, PERMISSIONS, type Permission } from '../../../src/modules/people/permissions.js';
import type { Role } from '../../../src/platform/database/actor.js';

const actor = (role: Role) => ({ supplierId: 's', organisationId: null, personId: 'p', role });
const may = (role: Role, permission: Permission): boolean => {
  try {
    permit(actor(role), permission);
    return true;
  } catch {
    return false;
  }
};

/** What only the supplier's own people do, and who of them. Everything else is for everybody. */
const KEPT: Readonly<Partial<Record<Permission, readonly Role[]>>> = {
  'ticket.claim': ['support', 'admin'],
  'ticket.close': ['support', 'admin'],
  'quote.make': ['contractor', 'sales', 'admin'],
  'quote.issue': ['sales', 'admin'],
  'quote.accept': ['contractor', 'sales', 'admin'],
  'quote.decline': ['contractor', 'sales', 'admin'],
  'quote.withdraw': ['sales', 'admin'],
  'range.write': ['admin'],
  'price-list.read': ['sales', 'admin'],
  'price-list.write': ['admin'],
  'person.read': ['admin'],
  'person.write': ['admin'],
  'token.read': ['admin'],
  'token.write': ['admin'],
};

describe('permissions', () => {
  it.each(Object.keys(PERMISSIONS) as Permission[])('%s', (permission) => {
    const roles: readonly Role[] = ['contractor', 'support', 'sales', 'admin'];
    expect(roles.filter((role) => may(role, permission))).toEqual(
      roles.filter((role) => (KEPT[permission] ?? roles).includes(role)),
    );
  });

  it('the program itself may do everything', () => {
    expect((Object.keys(PERMISSIONS) as Permission[]).filter((permission) => !may('system', permission))).toEqual([]);
  });

  it('a refusal says who may', () => {
    expect(() => permit(actor('contractor'), 'quote.issue')).toThrow(
      'forbidden: The role contractor may not do this; it takes sales, admin.',
    );
  });
});
