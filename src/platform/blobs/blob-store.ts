import { createHash, randomUUID } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { mkdir, open, readFile, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { Refusal } from '../refusals/refusal.js';

export interface StoredBlob {
  readonly sha256: string;
  readonly bytes: number;
}

const SHA256 = /^[0-9a-f]{64}$/;

/** Files by their content, a folder for each supplier: written once, never altered. */
export class BlobStore {
  constructor(private readonly folder: string) {}

  /**
   * Stores what flows in, a part at a time. It is written beside its place and moved there whole, so that no one ever reads half.
   *
   * @param limit most bytes that are taken; more is refused `too-large` and nothing stays
   */
  async put(supplierId: string, content: Readable | Buffer | string, limit = Number.MAX_SAFE_INTEGER): Promise<StoredBlob> {
    const partial = join(this.folder, '.partial', randomUUID());
    await mkdir(join(this.folder, '.partial'), { recursive: true });
    try {
      const blob = await this.written(partial, content, limit);
      const place = this.place(supplierId, blob.sha256);
      if (!(await this.stands(place, blob.bytes))) {
        await mkdir(join(place, '..'), { recursive: true });
        await rename(partial, place);
      }
      return blob;
    } finally {
      await rm(partial, { force: true });
    }
  }

  open(supplierId: string, sha256: string): Readable {
    return createReadStream(this.place(supplierId, sha256));
  }

  async read(supplierId: string, sha256: string): Promise<Buffer> {
    return readFile(this.place(supplierId, sha256));
  }

  async has(supplierId: string, sha256: string): Promise<boolean> {
    return (await stat(this.place(supplierId, sha256)).catch(() => null)) !== null;
  }

  private async written(file: string, content: Readable | Buffer | string, limit: number): Promise<StoredBlob> {
    const hash = createHash('sha256');
    let bytes = 0;
    const handle = await open(file, 'wx', 0o600);
    try {
      const parts: AsyncIterable<Buffer> | Iterable<Buffer> = content instanceof Readable ? content : [Buffer.from(content)];
      for await (const part of parts) {
        bytes += part.length;
        if (bytes > limit) throw new Refusal('too-large', `At most ${limit} bytes are taken.`);
        hash.update(part);
        await handle.writeFile(part);
      }
      await handle.sync();
    } finally {
      await handle.close();
    }
    return { sha256: hash.digest('hex'), bytes };
  }

  private async stands(place: string, bytes: number): Promise<boolean> {
    return (await stat(place).catch(() => null))?.size === bytes;
  }

  private place(supplierId: string, sha256: string): string {
    if (!SHA256.test(sha256) || !/^[0-9a-f-]{36}$/i.test(supplierId)) throw new Error('not the name of a blob');
    return join(this.folder, supplierId, sha256.slice(0, 2), sha256);
  }
}
