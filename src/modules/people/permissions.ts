import type { Actor, Role } from '../../platform/database/actor.js';
import { Refusal } from '../../platform/refusals/refusal.js';

const EVERYBODY = ['contractor', 'support', 'sales', 'admin'] as const;

/** Which role may do what. Whose rows a contractor sees is the database's business: another's row is not there. */
export const PERMISSIONS = {
  'job.submit': EVERYBODY,
  'job.read': EVERYBODY,
  'job.revise': EVERYBODY,
  'takeoff.read': EVERYBODY,
  'checklist.read': EVERYBODY,
  'checklist.tick': EVERYBODY,
  'history.read': EVERYBODY,
  'drawing.read': EVERYBODY,
  'ticket.read': EVERYBODY,
  'ticket.reply': EVERYBODY,
  'ticket.claim': ['support', 'admin'],
  'ticket.close': ['support', 'admin'],
  'ticket.reopen': EVERYBODY,
  'quote.make': ['contractor', 'sales', 'admin'],
  'quote.read': EVERYBODY,
  'quote.issue': ['sales', 'admin'],
  'quote.accept': ['contractor', 'sales', 'admin'],
  'quote.decline': ['contractor', 'sales', 'admin'],
  'quote.withdraw': ['sales', 'admin'],
  'range.read': EVERYBODY,
  'range.write': ['admin'],
  'price-list.read': ['sales', 'admin'],
  'price-list.write': ['admin'],
  'person.read': ['admin'],
  'person.write': ['admin'],
  'token.read': ['admin'],
  'token.write': ['admin'],
  'me.read': EVERYBODY,
  'check.run': EVERYBODY,
} as const satisfies Record<string, readonly Role[]>;

export type Permission = keyof typeof PERMISSIONS;

export const rolesOf = (permission: Permission): readonly Role[] => PERMISSIONS[permission];

/** Refuses what the role may not do. Called by services, so that every door is the same door. */
export function permit(actor: Actor, permission: Permission): void {
  if (actor.role === 'system' || rolesOf(permission).includes(actor.role)) return;
  throw new Refusal('forbidden', `The role ${actor.role} may not do this; it takes ${rolesOf(permission).join(', ')}.`);
}
