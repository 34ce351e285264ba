import type { Actor, Role } from '../database/actor.js';
import type { Database } from '../database/database.js';
import { Refusal } from '../refusals/refusal.js';
import { bearerToken, hashToken } from './token.js';

/** Who is speaking. Asked anew with every request, so that a revoked token stops at once. */
export class Authenticator {
  constructor(private readonly database: Database) {}

  async actorOf(authorization: string | undefined): Promise<Actor> {
    const token = bearerToken(authorization);
    const actor = token === null ? null : await this.database.actorForToken(hashToken(token));
    if (actor === null) throw new Refusal('unauthenticated', 'Send "Authorization: Bearer <token>" with a token that is in force.');
    return actor;
  }
}

/** Refuses actors of other roles. */
export function requireRole(actor: Actor, ...roles: readonly Role[]): void {
  if (!roles.includes(actor.role)) throw new Refusal('forbidden', `This is for ${roles.join(', ')}; you are ${actor.role}.`);
}
