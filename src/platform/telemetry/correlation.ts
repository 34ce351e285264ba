import { AsyncLocalStorage } from 'node:async_hooks';

const store = new AsyncLocalStorage<string>();

/** Runs `work` under a correlation id, which every log line and history event written within carries. */
export function withCorrelation<T>(id: string, work: () => T): T {
  return store.run(id, work);
}

/** For frameworks that give no closure to run in: holds for the rest of the current asynchronous call. */
export function enterCorrelation(id: string): void {
  store.enterWith(id);
}

export function correlationId(): string | null {
  return store.getStore() ?? null;
}
