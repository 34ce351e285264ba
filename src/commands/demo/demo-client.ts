import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { JobAnswer } from '../../modules/jobs/jobs.schemas.js';
import type { DemoServer, Tokens } from './demo-server.js';

type Person = keyof Tokens;

export interface Told<T> {
  readonly status: number;
  readonly body: T;
}

/** Speaks to the demo server over HTTP as one of its people, as any client would. */
export class DemoClient {
  constructor(private readonly server: DemoServer) {}

  async get<T>(as: Person, path: string): Promise<T> {
    return this.wanted(await this.ask<T>(as, 'GET', path), path);
  }

  async post<T>(as: Person, path: string, body?: object): Promise<T> {
    return this.wanted(await this.ask<T>(as, 'POST', path, body), path);
  }

  /** An answer that may be a refusal. */
  async ask<T>(as: Person, method: string, path: string, body?: object): Promise<Told<T>> {
    const json = body === undefined ? {} : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } };
    const response = await this.fetch(as, path, { method, ...json });
    return { status: response.status, body: (await response.json()) as T };
  }

  async bytes(as: Person, path: string, accept: string): Promise<Buffer> {
    const response = await this.fetch(as, path, { headers: { accept } });
    if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
    return Buffer.from(await response.arrayBuffer());
  }

  async submitDocument(file: string): Promise<JobAnswer> {
    return this.post('contractor', '/v1/jobs', JSON.parse(await readFile(file, 'utf8')) as object);
  }

  /** A workbook, or every file of a folder together. */
  async submitFiles(place: string): Promise<JobAnswer> {
    const names = place.endsWith('.xlsx') ? [place] : (await readdir(place)).sort().map((name) => join(place, name));
    const form = new FormData();
    for (const name of names) form.append('files', new Blob([await readFile(name)]), name.split('/').at(-1) ?? name);
    const response = await this.fetch('contractor', '/v1/jobs', { method: 'POST', body: form });
    return this.wanted({ status: response.status, body: (await response.json()) as JobAnswer }, place);
  }

  private fetch(as: Person, path: string, init: RequestInit): Promise<Response> {
    return fetch(this.server.address + path, {
      ...init,
      headers: { ...(init.headers as Record<string, string> | undefined), authorization: `Bearer ${this.server.tokens[as]}` },
    });
  }

  private wanted<T>({ status, body }: Told<T>, what: string): T {
    if (status >= 300) throw new Error(`${what}: ${status} ${JSON.stringify(body)}`);
    return body;
  }
}
