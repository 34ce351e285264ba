import { setTimeout as sleep } from 'node:timers/promises';
import pg from 'pg';
import type { Log } from '../telemetry/log.js';

/** First half of the advisory locks by which workers show that they live. */
const LIVING = 727_073;
const ROUND_MS = 3_000;

/**
 * Frees the tasks of workers that died. A worker killed outright leaves its task locked, and the queue would only take it up again
 * after hours. So every worker holds a lock named by its id for as long as its connection lives; whoever finds a task locked by
 * a worker without one gives it back.
 */
export class Undertaker {
  private client: Promise<pg.Client> | null = null;
  private readonly announced: string[] = [];
  private readonly over = new AbortController();
  private loop: Promise<void> | null = null;
  private turn: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly url: string,
    private readonly log: Log,
  ) {}

  announce(workerId: string): void {
    this.announced.push(workerId);
    void this.hold(workerId).catch((error: unknown) => this.log.warn({ err: error }, 'a worker could not show that it lives'));
  }

  async start(): Promise<void> {
    await this.round();
    this.loop = this.rounds();
  }

  async close(): Promise<void> {
    this.over.abort();
    await this.loop;
    const client = await this.client?.catch(() => null);
    await client?.end().catch(() => undefined);
  }

  private async rounds(): Promise<void> {
    while (!this.over.signal.aborted) {
      await sleep(ROUND_MS, undefined, { signal: this.over.signal }).catch(() => undefined);
      if (this.over.signal.aborted) return;
      const round = this.turn.then(() => this.round());
      this.turn = round.catch(() => undefined);
      await round.catch((error: unknown) => this.log.warn({ err: error }, 'could not look for the tasks of dead workers'));
    }
  }

  private async round(): Promise<void> {
    const client = await this.connection();
    const holders = await client.query<{ locked_by: string }>(
      `select distinct locked_by from graphile_worker.jobs
       where locked_at < now() - interval '2 seconds' and not (locked_by = any($1))`,
      [this.announced],
    );
    const dead: string[] = [];
    for (const { locked_by: worker } of holders.rows) {
      const free = await client.query<{ free: boolean }>('select pg_try_advisory_lock($1, hashtext($2)) as free', [LIVING, worker]);
      if (!free.rows[0]?.free) continue;
      dead.push(worker);
      await client.query('select pg_advisory_unlock($1, hashtext($2))', [LIVING, worker]);
    }
    if (dead.length === 0) return;
    await client.query('select graphile_worker.force_unlock_workers($1)', [dead]);
    this.log.warn({ workers: dead }, 'gave back the tasks of workers that died');
  }

  /** One after the other: a connection answers one question at a time. */
  private hold(workerId: string): Promise<void> {
    const held = this.turn.then(async () => {
      const client = await this.connection();
      await client.query('select pg_advisory_lock($1, hashtext($2))', [LIVING, workerId]);
    });
    this.turn = held.catch(() => undefined);
    return held;
  }

  private connection(): Promise<pg.Client> {
    return (this.client ??= this.connected());
  }

  private async connected(): Promise<pg.Client> {
    const client = new pg.Client({ connectionString: this.url, application_name: 'wallcourse-worker', keepAlive: true, connectionTimeoutMillis: 15_000 });
    const lost = (): void => {
      this.client = null;
    };
    client.on('error', () => undefined);
    client.on('end', lost);
    try {
      await client.connect();
      for (const worker of this.announced) await client.query('select pg_advisory_lock($1, hashtext($2))', [LIVING, worker]);
      return client;
    } catch (error) {
      lost();
      throw error;
    }
  }
}
