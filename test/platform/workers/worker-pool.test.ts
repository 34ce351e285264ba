import { relative } from 'node:path';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from '@jest/globals';
import { WorkerPool } from '../../../src/platform/workers/worker-pool.js';

/** The pool takes paths within dist; this one leads out of it to the test's own work. */
const WORK = relative(join(process.cwd(), 'dist'), join(process.cwd(), 'test', 'support', 'threads', 'thread-work.mjs'));

describe('WorkerPool', () => {
  let pool: WorkerPool;
  beforeEach(() => {
    pool = new WorkerPool({ threads: 2, memoryMb: 64, deadlineMs: 30_000 });
  });
  afterEach(() => pool.close());

  it('runs an exported function in a thread', async () => {
    expect(await pool.run(WORK, 'double', { value: 21 })).toEqual({ value: 42 });
  });

  it('does more than it has threads, in turn', async () => {
    const done = await Promise.all(Array.from({ length: 12 }, (_, value) => pool.run(WORK, 'double', { value })));
    expect(done).toEqual(Array.from({ length: 12 }, (_, value) => ({ value: value * 2 })));
  });

  it('ends work that does not end, and works on', async () => {
    const began = performance.now();
    await expect(pool.run(WORK, 'forever', {}, 300)).rejects.toMatchObject({ code: 'too-large', detail: 'It takes longer than the 0.3 s it may take.' });
    expect(performance.now() - began).toBeLessThan(10_000);
    expect(await pool.run(WORK, 'double', { value: 1 })).toEqual({ value: 2 });
  });

  it('ends work that eats the memory, and works on', async () => {
    await expect(pool.run(WORK, 'greedy', {})).rejects.toMatchObject({ code: 'too-large', detail: 'It needs more than the 64 MB it may need.' });
    expect(await pool.run(WORK, 'double', { value: 1 })).toEqual({ value: 2 });
  });

  it('passes on what the work throws', async () => {
    await expect(pool.run(WORK, 'broken', {})).rejects.toThrow('no such wall');
  });

  it('counts a deadline from the asking, waiting included', async () => {
    const both = await Promise.allSettled([pool.run(WORK, 'slow', { ms: 600 }), pool.run(WORK, 'slow', { ms: 600 }), pool.run(WORK, 'slow', { ms: 600 }, 300)]);
    expect(both.map((one) => one.status)).toEqual(['fulfilled', 'fulfilled', 'rejected']);
  });

  it('knows no file that was not compiled', async () => {
    await expect(pool.run('modules/nothing.worker.js', 'run', {})).rejects.toThrow('there is no compiled modules/nothing.worker.js');
  });
});
