import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { Signals } from '../../../src/platform/signals/signals.js';
import { silentLog } from '../../../src/platform/telemetry/log.js';
import { addSupplier, openTestDatabase, type Household, type TestDatabase } from '../../support/database.js';

const JOB = '01900000-0000-7000-8000-000000000001';

describe('Signals', () => {
  let db: TestDatabase;
  let heron: Household;
  let plover: Household;
  let signals: Signals;
  beforeAll(async () => {
    db = await openTestDatabase();
    heron = await addSupplier(db.database, 'heron');
    plover = await addSupplier(db.database, 'plover');
    signals = new Signals(db.url, silentLog());
    await signals.start();
  });
  afterAll(async () => {
    await signals.close();
    await db.close();
  });

  const signal = (household: Household, topic = 'job', fail = false) =>
    db.database.transaction(household.contractor, async (tx) => {
      await tx.signal(topic, JOB);
      if (fail) throw new Error('rolled back');
    }).catch(() => undefined);

  it('wakes who waits on the subject, and nobody else, when the commit stands', async () => {
    const woken: string[] = [];
    const leave = [
      signals.subscribe(heron.system.supplierId, 'job', JOB, () => woken.push('heron')),
      signals.subscribe(plover.system.supplierId, 'job', JOB, () => woken.push('plover')),
      signals.subscribe(heron.system.supplierId, 'ticket', JOB, () => woken.push('ticket')),
    ];
    await signal(heron, 'job', true);
    await signal(heron);
    await signal(plover, 'end');
    for (let tries = 0; tries < 200 && woken.length === 0; tries += 1) await sleep(10);
    await sleep(50);
    expect(woken).toEqual(['heron']);
    for (const go of leave) go();
    expect(signals.subscribers).toBe(0);
  });

  it('waits until there is something to see', async () => {
    let state = 'running';
    const seen = signals.until(heron.system.supplierId, 'job', JOB, async () => (state === 'done' ? state : null), 20_000);
    await sleep(50);
    state = 'done';
    await signal(heron);
    expect(await seen).toBe('done');
    expect(signals.subscribers).toBe(0);
  });

  it('sees what happened before it looked, and gives up in time', async () => {
    expect(await signals.until(heron.system.supplierId, 'job', JOB, async () => 'there', 0)).toBe('there');
    const began = performance.now();
    expect(await signals.until(heron.system.supplierId, 'job', JOB, async () => null, 150)).toBeNull();
    expect(performance.now() - began).toBeGreaterThanOrEqual(149);
    expect(signals.subscribers).toBe(0);
  });

  it('hears again after its connection was lost, and wakes everybody once', async () => {
    let woken = 0;
    const leave = signals.subscribe(heron.system.supplierId, 'job', JOB, () => (woken += 1));
    await db.owner(`select pg_terminate_backend(pid) from pg_stat_activity where application_name = 'wallcourse-signals' and datname = current_database()`);
    for (let tries = 0; tries < 500 && woken === 0; tries += 1) await sleep(10);
    expect(woken).toBe(1);
    await signal(heron);
    for (let tries = 0; tries < 500 && woken === 1; tries += 1) await sleep(10);
    expect(woken).toBe(2);
    leave();
  });
});
