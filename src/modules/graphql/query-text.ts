import type { FastifyInstance, FastifyRequest } from 'fastify';
import { Refusal } from '../../platform/refusals/refusal.js';

/** Refuses an operation that is not text before the GraphQL server sees it, which would take anything else for a parsed document. */
export function requireQueryText(server: FastifyInstance, path: string): void {
  server.addHook('preValidation', (request, _reply, done) => {
    if (request.method !== 'POST' || request.routeOptions.url !== path || hasQueryText(request)) done();
    else done(new Refusal('unreadable', 'An operation is a JSON object with the text of its query.'));
  });
}

function hasQueryText({ body }: FastifyRequest): boolean {
  return typeof body === 'object' && body !== null && 'query' in body && typeof body.query === 'string';
}
