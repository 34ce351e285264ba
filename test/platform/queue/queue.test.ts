import { setTimeout as sleep } from 'node:timers/promises';
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { openPool } from '../../../src/platform/database/pool.js';
import { Queue, type TaskContext } from '../../../src/platform/queue/queue.js';
import { correlationId, withCorrelation } from '../../../src/platform/telemetry/correlation.js';
import { silentLog } from '../../../src/platform/telemetry/log.js';
import { Metrics } from '../../../src/platform/telemetry/metrics.js';
import { addSupplier, openTestDatabase, type Household, type TestDatabase } from '../../support/database.js';
import { ensureBuilt, exited } from '../../support/server.js';

async function eventually(holds: () => boolean | Promise<boolean>, limitMs = 30_000): Promise<void> {
  const limit = performance.now() + limitMs;
  while (!(await holds())) {
    if (performance.now() > limit) throw new Error('it did not come to that in time');
    await sleep(15);
  }
}

describe('Queue', () => {
  let db: TestDatabase;
  let heron: Household;
  beforeAll(async () => {
    db = await openTestDatabase();
    heron = await addSupplier(db.database, 'heron');
  });
  afterAll(() => db.close());

  const open = (tasks = 2) => {
    const pool = openPool({ url: db.url, size: tasks + 2, onLost: () => undefined });
    const metrics = new Metrics();
    const queue = new Queue({ pool, url: db.url, tasks, drainMs: 2_000 }, silentLog(), metrics);
    return { queue, metrics, close: async () => { await queue.stop(); await pool.end(); } };
  };
  const enqueue = (task: string, payload: object, attempts = 1) => db.database.transaction(heron.contractor, (tx) => tx.enqueue(task, payload, { attempts }));
  const left = async (task: string) => Number((await db.owner<{ n: string }>('select count(*) as n from graphile_worker.jobs where task_identifier = $1', [task]))[0]?.n);

  it('carries out what was enqueued, as whom, with payload and correlation id', async () => {
    const { queue, metrics, close } = open();
    const seen: { payload: unknown; context: TaskContext; correlation: string | null }[] = [];
    queue.register('greet', async (payload, context) => {
      seen.push({ payload, context, correlation: correlationId() });
    });
    await queue.start();
    const began = performance.now();
    await withCorrelation('walk-1', () => enqueue('greet', { wall: 'A' }));
    await eventually(() => seen.length > 0);
    expect(performance.now() - began).toBeLessThan(5_000);
    expect(seen).toEqual([{ payload: { wall: 'A' }, context: expect.objectContaining({ actor: heron.contractor, attempt: 1, lastAttempt: true }), correlation: 'walk-1' }]);
    await close();
    expect(metrics.text()).toContain('wallcourse_tasks_total{task="greet",outcome="done"} 1');
    expect(await left('greet')).toBe(0);
  });

  it('tries again what failed, and says when it is the last time', async () => {
    const { queue, close } = open();
    const last: boolean[] = [];
    queue.register('stumble', async (_, { lastAttempt }) => {
      last.push(lastAttempt);
      throw new Error('no');
    });
    await queue.start();
    await enqueue('stumble', {}, 2);
    await eventually(() => last.length === 2);
    expect(last).toEqual([false, true]);
    await close();
  });

  it('lets running tasks finish when it is stopped', async () => {
    const { queue, close } = open();
    let stage = 'waiting';
    queue.register('finish', async () => {
      stage = 'running';
      await sleep(300);
      stage = 'done';
    });
    await queue.start();
    await enqueue('finish', {});
    await eventually(() => stage === 'running');
    await close();
    expect(stage).toBe('done');
    expect(await left('finish')).toBe(0);
  });

  it('shares the work between two workers, each task once', async () => {
    const done: number[] = [];
    const workers = [open(), open()];
    for (const { queue } of workers) {
      queue.register('share', async (payload) => {
        await sleep(5);
        done.push((payload as { n: number }).n);
      });
    }
    await Promise.all(workers.map(({ queue }) => queue.start()));
    await db.database.transaction(heron.contractor, async (tx) => {
      for (let n = 0; n < 40; n += 1) await tx.enqueue('share', { n });
    });
    await eventually(async () => (await left('share')) === 0);
    expect(done.sort((a, b) => a - b)).toEqual(Array.from({ length: 40 }, (_, n) => n));
    await Promise.all(workers.map(({ close }) => close()));
  });

  it('takes up within seconds what a worker had in hand when it was killed', async () => {
    await ensureBuilt(db.url);
    const dist = JSON.stringify(join(process.cwd(), 'dist', 'platform'));
    const script = `
      const { openPool } = await import(${dist} + '/database/pool.js'); const { Queue } = await import(${dist} + '/queue/queue.js');
      const { silentLog } = await import(${dist} + '/telemetry/log.js'); const { Metrics } = await import(${dist} + '/telemetry/metrics.js');
      const url = process.argv[1];
      const queue = new Queue({ pool: openPool({ url, size: 4, onLost() {} }), url, tasks: 1, drainMs: 1000 }, silentLog(), new Metrics());
      queue.register('survive', () => { console.log('taken'); return new Promise(() => {}); });
      await queue.start();`;
    const doomed = spawn(process.execPath, ['--input-type=module', '-e', script, db.url], { stdio: ['ignore', 'pipe', 'inherit'] });
    let taken = false;
    doomed.stdout.on('data', () => (taken = true));
    await enqueue('survive', {}, 5);
    await eventually(() => taken);
    doomed.kill('SIGKILL');
    await exited(doomed);

    const { queue, close } = open();
    const attempts: number[] = [];
    queue.register('survive', async (_, { attempt }) => {
      attempts.push(attempt);
    });
    await queue.start();
    const began = performance.now();
    await eventually(() => attempts.length > 0);
    expect(performance.now() - began).toBeLessThan(20_000);
    expect(attempts).toEqual([2]);
    await close();
  }, 90_000);

  it('refuses two handlers for one task', () => {
    const { queue } = open();
    queue.register('twice', async () => undefined);
    expect(() => queue.register('twice', async () => undefined)).toThrow('two handlers');
  });
});
