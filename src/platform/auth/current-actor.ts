import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import type { Actor } from '../database/actor.js';
import { Refusal } from '../refusals/refusal.js';

declare module 'fastify' {
  interface FastifyRequest {
    /** Set before the body is read, on every path that is not public. */
    actor: Actor | null;
  }
}

function actorIn(context: ExecutionContext): Actor | null {
  if (context.getType<string>() === 'graphql') return context.getArgByIndex<{ actor?: Actor } | undefined>(2)?.actor ?? null;
  return context.switchToHttp().getRequest<FastifyRequest>().actor;
}

/** The actor of the request, REST and GraphQL alike. */
export const CurrentActor = createParamDecorator((_: unknown, context: ExecutionContext): Actor => {
  const actor = actorIn(context);
  if (actor === null) throw new Refusal('unauthenticated', 'Send "Authorization: Bearer <token>" with a token that is in force.');
  return actor;
});
