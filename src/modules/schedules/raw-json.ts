import type { FastifyInstance, FastifyRequest } from 'fastify';

/** Paths whose JSON is read in a thread from the bytes that came: 1e309 is seen as written, and the blob is what was sent. */
const RAW = new Set(['POST /v1/jobs', 'PUT /v1/jobs/:id/schedule']);

/** Hands JSON over unparsed on those paths, and as the server itself would on all others. */
export function keepScheduleBytes(server: FastifyInstance): void {
  const parse = server.getDefaultJsonParser('error', 'error') as unknown as (
    request: FastifyRequest,
    body: string,
    done: (error: Error | null, value?: unknown) => void,
  ) => void;
  server.removeContentTypeParser('application/json');
  server.addContentTypeParser('application/json', { parseAs: 'buffer' }, (request, body: Buffer, done) => {
    if (RAW.has(`${request.method} ${request.routeOptions.url ?? ''}`)) done(null, body);
    else parse(request, body.toString('utf8'), done);
  });
}
