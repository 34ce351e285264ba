import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import { Refusal } from '../refusals/refusal.js';
import type { Log } from '../telemetry/log.js';
import type { IdempotencyKeys, KeyedRequest, StoredAnswer } from './idempotency-keys.js';
import { RequestHash } from './request-hash.js';

const KEY = /^[\x21-\x7e]{1,200}$/;
const KEPT_HEADERS = ['content-type', 'location', 'etag', 'link'];

declare module 'fastify' {
  interface FastifyRequest {
    /** The key this request holds while it is carried out. */
    keyed: KeyedRequest | null;
  }
}

function keyedRequest(request: FastifyRequest): KeyedRequest | null {
  const key = request.headers['idempotency-key'];
  if (request.method !== 'POST' || key === undefined || request.actor === null) return null;
  if (typeof key !== 'string' || !KEY.test(key)) throw new Refusal('invalid', 'An Idempotency-Key is 1 to 200 printable characters without spaces.');
  return { actor: request.actor, route: `POST ${request.url}`, key };
}

/** The hash of the whole body: a stream that nobody has read is read to its end first, up to `limit` bytes. */
async function bodyHash(request: FastifyRequest, limit: number): Promise<string> {
  const hash = RequestHash.of(request.raw);
  if (hash === null) throw new Error('the request was not listened to');
  let bytes = 0;
  if (!request.raw.readableEnded && !request.raw.destroyed) {
    for await (const chunk of request.raw as AsyncIterable<Buffer>) {
      bytes += chunk.length;
      if (bytes > limit) throw new Refusal('too-large', 'The body is larger than this route takes.');
    }
  }
  return hash.digest();
}

function answerOf(reply: FastifyReply, payload: unknown): StoredAnswer | null {
  if (typeof payload !== 'string' && !Buffer.isBuffer(payload) && payload !== null && payload !== undefined) return null;
  const headers = KEPT_HEADERS.flatMap((name) => {
    const value = reply.getHeader(name);
    return value === undefined ? [] : [[name, String(value)] as const];
  });
  return { status: reply.statusCode, headers: Object.fromEntries(headers), body: payload?.toString() ?? '' };
}

/** Puts IdempotencyKeys around every POST that carries a key, before Nest sees it. */
export function installIdempotency(server: FastifyInstance, keys: IdempotencyKeys, limit: number, log: Log): void {
  server.decorateRequest('keyed', null);

  const begin = async (request: FastifyRequest, reply: FastifyReply): Promise<KeyedRequest | null> => {
    const keyed = keyedRequest(request);
    if (keyed === null) return null;
    const claim = await keys.claim(keyed);
    if (claim.kind === 'ours') return keyed;
    if ((await bodyHash(request, limit)) !== claim.hash) {
      throw new Refusal('invalid', 'This Idempotency-Key was used for another body: take a new key for a new request.');
    }
    void reply.status(claim.answer.status).headers({ ...claim.answer.headers, 'idempotency-replayed': 'true' }).send(claim.answer.body);
    return null;
  };

  // Callback style, so that the handler runs within the scope in which its commits are noted.
  server.addHook('preHandler', (request, reply, done) => {
    begin(request, reply).then((keyed) => {
      if (reply.sent) return;
      if (keyed === null) return done();
      request.keyed = keyed;
      keys.within(keyed, done);
    }, done);
  });

  server.addHook('onSend', async (request, reply, payload) => {
    const keyed = request.keyed;
    if (keyed === null) return payload;
    request.keyed = null;
    const answer = answerOf(reply, payload);
    try {
      if (answer !== null && reply.statusCode < 400) await keys.answer(keyed, await bodyHash(request, limit), answer);
      else await keys.release(keyed);
    } catch (error) {
      log.error({ err: error }, 'the answer to an Idempotency-Key could not be kept');
    }
    return payload;
  });
}
