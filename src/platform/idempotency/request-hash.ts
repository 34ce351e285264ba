import { createHash, type Hash } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

const taps = new WeakMap<IncomingMessage, RequestHash>();

/**
 * Hash of a request's body as it comes in, whoever reads it. The boundary of a multipart body is left out of the hash: clients
 * make a new one for every attempt, and the same files must be the same request.
 */
export class RequestHash {
  private readonly hash: Hash = createHash('sha256');
  private carry: Buffer = Buffer.alloc(0);
  private readonly boundary: Buffer | null;

  constructor(contentType: string) {
    const found = /^multipart\/[^;]+;.*\bboundary=(?:"([^"]+)"|([^;\s]+))/i.exec(contentType);
    const boundary = found?.[1] ?? found?.[2];
    this.boundary = boundary ? Buffer.from(boundary, 'latin1') : null;
    this.hash.update(boundary ? 'multipart\n' : `${contentType.split(';')[0]?.trim().toLowerCase()}\n`);
  }

  update(chunk: Buffer): void {
    if (this.boundary === null) {
      this.hash.update(chunk);
      return;
    }
    let rest = this.carry.length > 0 ? Buffer.concat([this.carry, chunk]) : chunk;
    for (let at = rest.indexOf(this.boundary); at >= 0; at = rest.indexOf(this.boundary)) {
      this.hash.update(rest.subarray(0, at));
      rest = rest.subarray(at + this.boundary.length);
    }
    const settled = Math.max(0, rest.length - this.boundary.length + 1);
    this.hash.update(rest.subarray(0, settled));
    this.carry = Buffer.from(rest.subarray(settled));
  }

  digest(): string {
    return this.hash.copy().update(this.carry).digest('hex');
  }

  /** Listens in on a request without reading it; must be called before the first byte of the body has come. */
  static tap(request: IncomingMessage): void {
    if (request.method !== 'POST' || request.headers['idempotency-key'] === undefined) return;
    const hash = new RequestHash(request.headers['content-type'] ?? '');
    const push = request.push.bind(request);
    request.push = (chunk: unknown, encoding?: BufferEncoding): boolean => {
      if (Buffer.isBuffer(chunk)) hash.update(chunk);
      return push(chunk, encoding);
    };
    taps.set(request, hash);
  }

  static of(request: IncomingMessage): RequestHash | null {
    return taps.get(request) ?? null;
  }
}
