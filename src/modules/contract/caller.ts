import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { Actor } from '../../platform/database/actor.js';

/** Who asks: set on the request by the platform's authentication before any handler runs. */
export const Caller = createParamDecorator((_: unknown, context: ExecutionContext): Actor => {
  const request = context.switchToHttp().getRequest<{ actor?: Actor }>();
  if (!request.actor) throw new Error('a handler that needs a caller stands on a route without authentication');
  return request.actor;
});
