import type { DemoPerson, TestServer } from '../support/server.js';

export interface Answer<T = Record<string, unknown>> {
  readonly status: number;
  readonly headers: Headers;
  readonly text: string;
  readonly body: T;
}

/** Talks JSON to a server as one person or as nobody. */
export async function call<T = Record<string, unknown>>(
  server: TestServer,
  as: DemoPerson | null,
  method: string,
  path: string,
  body?: unknown,
  headers: Record<string, string> = {},
): Promise<Answer<T>> {
  const sent = body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) };
  const json: Record<string, string> = body === undefined ? {} : { 'content-type': 'application/json' };
  const response = await server.fetch(path, { method, headers: { ...json, ...headers }, ...sent, ...(as ? { as } : {}) });
  const text = await response.text();
  return { status: response.status, headers: response.headers, text, body: parsed(text) as T };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}

export interface Job {
  readonly id: string;
  readonly number: string;
  readonly name: string;
  readonly state: string;
  readonly revision: number;
  readonly version: number;
}

export async function submitted(server: TestServer, schedule: unknown, as: DemoPerson = 'contractor'): Promise<Job> {
  const answer = await call<Job>(server, as, 'POST', '/v1/jobs', schedule);
  if (answer.status !== 201 || answer.body.state !== 'measured') throw new Error(`not measured: ${answer.status} ${answer.text}`);
  return answer.body;
}

export interface List<T> {
  readonly items: readonly T[];
  readonly next: string | null;
}

export const itemsOf = async <T>(server: TestServer, as: DemoPerson, path: string): Promise<readonly T[]> =>
  (await call<List<T>>(server, as, 'GET', path)).body.items;
