import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { Piscina } from 'piscina';
import { PACKAGE_ROOT } from '../config/package-root.js';
import { Refusal } from '../refusals/refusal.js';

export interface WorkerPoolOptions {
  readonly threads: number;
  readonly memoryMb: number;
  readonly deadlineMs: number;
}

const codeOf = (error: unknown): string => String((error as { code?: unknown }).code ?? '');
const nameOf = (error: unknown): string => String((error as { name?: unknown }).name ?? '');

/** Threads for reading, measuring and drawing, so that the ones that answer never compute. Each has a heap limit and every piece of work a deadline. */
export class WorkerPool {
  private readonly pool: Piscina;

  constructor(private readonly options: WorkerPoolOptions) {
    this.pool = new Piscina({
      minThreads: 0,
      maxThreads: options.threads,
      maxQueue: 1_000,
      idleTimeout: 60_000,
      resourceLimits: { maxOldGenerationSizeMb: options.memoryMb },
    });
  }

  /**
   * Runs an exported function of a compiled file in a thread.
   *
   * @param file path within the compiled program, such as `modules/takeoffs/measure.worker.js`
   * @param name the exported function; it takes and gives plain JSON values
   * @throws Refusal `too-large` past the deadline or the heap limit, `busy` where too much is waiting already
   */
  async run<Input, Output>(file: string, name: string, input: Input, deadlineMs = this.options.deadlineMs): Promise<Output> {
    const filename = join(PACKAGE_ROOT, 'dist', file);
    if (!existsSync(filename)) throw new Error(`there is no compiled ${file}`);
    const signal = AbortSignal.timeout(deadlineMs);
    try {
      return (await this.pool.run(input, { filename, name, signal })) as Output;
    } catch (error) {
      if (signal.aborted && nameOf(error) === 'AbortError') throw new Refusal('too-large', `It takes longer than the ${deadlineMs / 1_000} s it may take.`);
      if (codeOf(error) === 'ERR_WORKER_OUT_OF_MEMORY') throw new Refusal('too-large', `It needs more than the ${this.options.memoryMb} MB it may need.`);
      if (error instanceof Error && error.message === 'Task queue is at limit') throw new Refusal('busy', 'Too much is waiting to be computed; try again shortly.');
      throw error;
    }
  }

  get waiting(): number {
    return this.pool.queueSize;
  }

  async close(): Promise<void> {
    await this.pool.destroy();
  }
}
