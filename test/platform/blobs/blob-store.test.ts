import { createHash, randomBytes } from 'node:crypto';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { BlobStore } from '../../../src/platform/blobs/blob-store.js';

const HERON = '01900000-0000-7000-8000-000000000001';
const PLOVER = '01900000-0000-7000-8000-000000000002';
/** FIPS 180-4, example of a one-block message: sha256("abc"). */
const ABC = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad';

describe('BlobStore', () => {
  let folder: string;
  let store: BlobStore;
  beforeEach(async () => {
    folder = await mkdtemp(join(tmpdir(), 'wallcourse-blobs-'));
    store = new BlobStore(folder);
  });
  afterEach(() => rm(folder, { recursive: true }));

  const files = async () => (await readdir(folder, { recursive: true, withFileTypes: true })).filter((entry) => entry.isFile()).map((entry) => entry.name);

  it('names what it keeps by its sha256 and gives it back as it was', async () => {
    expect(await store.put(HERON, 'abc')).toEqual({ sha256: ABC, bytes: 3 });
    expect((await store.read(HERON, ABC)).toString()).toBe('abc');
    expect(await files()).toEqual([ABC]);
  });

  it('takes a stream in parts', async () => {
    const parts = Array.from({ length: 50 }, () => randomBytes(40_000));
    const blob = await store.put(HERON, Readable.from(parts));
    expect(blob).toEqual({ sha256: createHash('sha256').update(Buffer.concat(parts)).digest('hex'), bytes: 2_000_000 });
    const read: Buffer[] = [];
    for await (const part of store.open(HERON, blob.sha256)) read.push(part as Buffer);
    expect(Buffer.concat(read).equals(Buffer.concat(parts))).toBe(true);
  });

  it('keeps the same content once, also when it comes ten times at once', async () => {
    await Promise.all(Array.from({ length: 10 }, () => store.put(HERON, 'abc')));
    expect(await files()).toEqual([ABC]);
  });

  it('keeps suppliers apart', async () => {
    await store.put(HERON, 'abc');
    expect([await store.has(HERON, ABC), await store.has(PLOVER, ABC)]).toEqual([true, false]);
  });

  it('refuses more than the limit and leaves nothing behind', async () => {
    await expect(store.put(HERON, Readable.from([Buffer.alloc(6), Buffer.alloc(5)]), 10)).rejects.toMatchObject({ code: 'too-large' });
    expect(await store.put(HERON, Buffer.alloc(10), 10)).toMatchObject({ bytes: 10 });
    expect(await files()).toHaveLength(1);
  });

  it('leaves nothing behind of a stream that breaks', async () => {
    const broken = Readable.from((async function* parts() {
      yield Buffer.alloc(5);
      throw new Error('line cut');
    })());
    await expect(store.put(HERON, broken)).rejects.toThrow('line cut');
    expect(await files()).toEqual([]);
  });

  it.each([[HERON, '../../etc/passwd'], ['../..', ABC], [HERON, ABC.toUpperCase()], [HERON, '']])('has no place for %s %s', async (supplier, sha256) => {
    await expect(store.read(supplier, sha256)).rejects.toThrow('not the name of a blob');
  });
});
