import { setTimeout as sleep } from 'node:timers/promises';
import pg from 'pg';
import type { Log } from '../telemetry/log.js';

const CHANNEL = 'wallcourse';
type Wake = () => void;

/**
 * Hears what Transaction.signal says, from every process. A signal carries no news, only that there is some: whoever is woken reads the
 * rows through the door, as the actor they are. After a lost connection everyone is woken once, since something may have been missed.
 */
export class Signals {
  private readonly waiting = new Map<string, Set<Wake>>();
  private client: pg.Client | null = null;
  private closed = false;
  private loop: Promise<void> | null = null;

  constructor(
    private readonly url: string,
    private readonly log: Log,
  ) {}

  /** Calls `wake` after every signal about the subject until the returned function is called. */
  subscribe(supplierId: string, topic: string, id: string, wake: Wake): () => void {
    const key = `${supplierId} ${topic} ${id}`;
    const set = this.waiting.get(key) ?? new Set();
    this.waiting.set(key, set.add(wake));
    return () => {
      set.delete(wake);
      if (set.size === 0 && this.waiting.get(key) === set) this.waiting.delete(key);
    };
  }

  /**
   * Waits until `look` sees something: it is asked now, after every signal about the subject and once a second.
   *
   * @returns what it saw, or null when the time is over or `abort` says so
   */
  async until<T>(supplierId: string, topic: string, id: string, look: () => Promise<T | null>, limitMs: number, abort?: AbortSignal): Promise<T | null> {
    const end = performance.now() + limitMs;
    let woken: Wake = () => undefined;
    const leave = this.subscribe(supplierId, topic, id, () => woken());
    try {
      for (;;) {
        const next = new Promise<void>((settle) => (woken = settle));
        const seen = await look();
        const left = end - performance.now();
        if (seen !== null || left <= 0 || abort?.aborted) return seen;
        const timer = new AbortController();
        await Promise.race([next, sleep(Math.min(left, 1_000), undefined, { signal: timer.signal }).catch(() => undefined)]);
        timer.abort();
      }
    } finally {
      leave();
    }
  }

  get subscribers(): number {
    return [...this.waiting.values()].reduce((sum, set) => sum + set.size, 0);
  }

  async start(): Promise<void> {
    await this.listen();
  }

  async close(): Promise<void> {
    this.closed = true;
    await this.client?.end().catch(() => undefined);
    await this.loop;
  }

  private async listen(): Promise<void> {
    const client = new pg.Client({ connectionString: this.url, application_name: 'wallcourse-signals', keepAlive: true, connectionTimeoutMillis: 15_000 });
    client.on('notification', (note) => this.heard(note.payload ?? ''));
    client.on('error', () => undefined);
    client.on('end', () => {
      if (!this.closed && this.client === client) this.loop = this.again();
    });
    await client.connect();
    await client.query(`listen ${CHANNEL}`);
    this.client = client;
  }

  private async again(): Promise<void> {
    this.log.warn({}, 'the connection that hears signals was lost');
    while (!this.closed) {
      try {
        await this.listen();
        for (const set of this.waiting.values()) for (const wake of set) wake();
        return;
      } catch {
        await sleep(250);
      }
    }
  }

  private heard(key: string): void {
    for (const wake of this.waiting.get(key) ?? []) wake();
  }
}
