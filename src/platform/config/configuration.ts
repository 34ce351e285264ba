import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { VARIABLES, type VariableName, type VariableValues } from './variables.js';

/** The environment, read once at start and checked; nothing else of the program looks at it. */
export class Configuration {
  private constructor(private readonly values: VariableValues) {}

  /** @throws Error that names every wrong variable, what was read and what would do */
  static read(environment: Readonly<Record<string, string | undefined>>): Configuration {
    const values: Record<string, unknown> = {};
    const wrong: string[] = [];
    for (const name of Object.keys(VARIABLES) as VariableName[]) {
      const { schema, default: usual, meaning } = VARIABLES[name];
      const text = environment[name] ?? usual;
      const result = schema.safeParse(text);
      if (result.success) values[name] = result.data;
      else wrong.push(`${name}=${JSON.stringify(text)}: ${result.error.issues.map((issue) => issue.message).join('; ')} (${meaning})`);
    }
    if (wrong.length > 0) throw new Error(`the configuration cannot be used:\n  ${wrong.join('\n  ')}`);
    return new Configuration(values as VariableValues);
  }

  get dataDir(): string {
    return resolve(this.values.DATA_DIR);
  }

  get port(): number {
    return this.values.PORT;
  }

  get host(): string {
    return this.values.HOST;
  }

  /** Null for the embedded database. */
  get databaseUrl(): string | null {
    return this.values.DATABASE_URL;
  }

  get databasePool(): number {
    return this.values.DATABASE_POOL;
  }

  get workerInline(): boolean {
    return this.values.WORKER === 'inline';
  }

  get workerTasks(): number {
    return this.values.WORKER_TASKS;
  }

  get threads(): number {
    return this.values.THREADS;
  }

  get threadMemoryMb(): number {
    return this.values.THREAD_MEMORY_MB;
  }

  get threadDeadlineMs(): number {
    return this.values.THREAD_DEADLINE_S * 1_000;
  }

  get ifcMemoryMb(): number {
    return this.values.IFC_MEMORY_MB;
  }

  get ifcDeadlineMs(): number {
    return this.values.IFC_DEADLINE_S * 1_000;
  }

  get uploadLimitBytes(): number {
    return this.values.UPLOAD_LIMIT_MB * 1_048_576;
  }

  get runWaitMs(): number {
    return this.values.RUN_WAIT_S * 1_000;
  }

  get drainMs(): number {
    return this.values.DRAIN_S * 1_000;
  }

  get blobsFolder(): string {
    return this.values.BLOBS_URL === null ? join(this.dataDir, 'blobs') : fileURLToPath(this.values.BLOBS_URL);
  }

  get seedDemo(): boolean {
    return this.values.SEED_DEMO;
  }

  get logLevel(): string {
    return this.values.LOG_LEVEL;
  }
}
