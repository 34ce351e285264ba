import { randomUUID } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import type { Socket } from 'node:net';
import { FastifyAdapter } from '@nestjs/platform-fastify';
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest, RouteOptions } from 'fastify';
import type { Authenticator } from '../auth/authenticator.js';
import { RequestHash } from '../idempotency/request-hash.js';
import { problemOf, Refusal } from '../refusals/refusal.js';
import { withCorrelation } from '../telemetry/correlation.js';
import type { Log } from '../telemetry/log.js';
import type { Metrics } from '../telemetry/metrics.js';
import type { Drain } from './drain.js';
import { PROBLEM_JSON, type ProblemAnswer } from './problem-answer.js';

const SMALL_BODY = 1_048_576;
/** Only these take a whole schedule; everything else takes a MiB. */
const LARGE_BODIES = new Set(['POST /v1/jobs', 'PUT /v1/jobs/:id/schedule']);
/** Everything under these needs a token, whether the path exists or not ... */
const GUARDED = /^\/(?:v1|graphql)(?:[/?]|$)/;
/** ... but for what describes the interface itself. */
const PUBLIC = /^\/v1\/(?:openapi\.json|docs)(?:[/?]|$)/;
const REQUEST_ID = /^[A-Za-z0-9._-]{1,64}$/;

export interface ServerParts {
  readonly log: Log;
  readonly metrics: Metrics;
  readonly answer: ProblemAnswer;
  readonly drain: Drain;
  readonly authenticator: Authenticator;
  readonly uploadLimitBytes: number;
}

/** A sender's own id is taken over where it is harmless in a log. Also the earliest place at which a request is seen. */
function requestId(raw: IncomingMessage): string {
  RequestHash.tap(raw);
  const given = raw.headers['x-request-id'];
  return typeof given === 'string' && REQUEST_ID.test(given) ? given : randomUUID();
}

/** What is not even HTTP is answered by hand: there is no request yet. */
function answerBrokenHttp(error: Error & { code?: string }, socket: Socket): void {
  if (!socket.writable) {
    socket.destroy();
    return;
  }
  const tooLarge = error.code === 'HPE_HEADER_OVERFLOW';
  const problem = problemOf(new Refusal(tooLarge ? 'too-large' : 'unreadable', tooLarge ? 'The headers are too large.' : 'This is not HTTP as it should be.'));
  const body = JSON.stringify(problem);
  const status = tooLarge ? '413 Content Too Large' : '400 Bad Request';
  socket.end(`HTTP/1.1 ${status}\r\ncontent-type: ${PROBLEM_JSON}\r\ncontent-length: ${Buffer.byteLength(body)}\r\nconnection: close\r\n\r\n${body}`);
}

/** The HTTP server beneath Nest: errors of its own as problem+json, correlation ids, tokens before bodies, counters, draining. */
export function makeAdapter(parts: ServerParts): FastifyAdapter {
  const adapter = new FastifyAdapter({
    bodyLimit: SMALL_BODY,
    genReqId: requestId,
    routerOptions: { maxParamLength: 200 },
    forceCloseConnections: 'idle',
    requestTimeout: 300_000,
    skipMiddie: true,
    multipart: { limits: { fileSize: parts.uploadLimitBytes, files: 16, fields: 64, fieldSize: SMALL_BODY, parts: 80 } },
    frameworkErrors: (error: FastifyError, request: FastifyRequest, reply: FastifyReply) =>
      withCorrelation(request.id, () => parts.answer.send(error, reply)),
    clientErrorHandler: answerBrokenHttp,
  } as object);
  install(adapter.getInstance() as unknown as FastifyInstance, parts);
  // Nest would put a handler of its own in the place of ours, one that has forgotten the server's error codes when it sees them.
  adapter.setErrorHandler = () => adapter.getInstance();
  return adapter;
}

function install(server: FastifyInstance, parts: ServerParts): void {
  server.decorateRequest('actor', null);
  server.removeContentTypeParser('text/plain');
  server.setErrorHandler((error, request, reply) => withCorrelation(request.id, () => parts.answer.send(error, reply)));
  server.addHook('onRoute', (route) => takeLargeBodies(route, parts.uploadLimitBytes));
  server.addHook('onRequest', (request, reply, done) => {
    void reply.headers({ 'x-request-id': request.id, 'x-content-type-options': 'nosniff' });
    if (parts.drain.draining) void reply.header('connection', 'close');
    withCorrelation(request.id, done);
  });
  server.addHook('onRequest', async (request) => {
    if (GUARDED.test(request.url) && !PUBLIC.test(request.url)) request.actor = await parts.authenticator.actorOf(request.headers.authorization);
  });
  server.addHook('preHandler', (request, _, done) => withCorrelation(request.id, done));
  server.addHook('onResponse', (request, reply, done) => {
    told(request, reply, parts);
    done();
  });
}

function takeLargeBodies(route: RouteOptions, limit: number): void {
  const methods = Array.isArray(route.method) ? route.method : [route.method];
  if (methods.some((method) => LARGE_BODIES.has(`${method} ${route.url}`))) route.bodyLimit = limit;
}

function told(request: FastifyRequest, reply: FastifyReply, { log, metrics }: ServerParts): void {
  const route = request.routeOptions.url ?? 'none';
  const labels = { method: request.method, route, status: reply.statusCode };
  metrics.count('wallcourse_requests_total', 'Requests answered', labels);
  metrics.count('wallcourse_request_seconds_total', 'Seconds spent on requests', { method: request.method, route }, reply.elapsedTime / 1_000);
  const write = route.startsWith('/health/') || route === '/metrics' ? 'debug' : 'info';
  withCorrelation(request.id, () => log[write]({ ...labels, ms: Math.round(reply.elapsedTime), person: request.actor?.personId ?? undefined }, 'request'));
}
