import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import { Body, Controller, Post, Req, Res } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { CurrentActor } from '../../../src/platform/auth/current-actor.js';
import type { Actor } from '../../../src/platform/database/actor.js';
import { Database } from '../../../src/platform/database/database.js';
import { Refusal } from '../../../src/platform/refusals/refusal.js';
import { jobRow } from '../../support/database.js';
import { openTestPlatform, type TestPlatform } from '../../support/platform.js';

let runs = 0;
let refuse: Refusal | Error | null = null;
let pause = 0;

@ApiExcludeController()
@Controller()
class JobsController {
  constructor(private readonly database: Database) {}

  @Post('jobs')
  async add(@CurrentActor() actor: Actor, @Req() request: FastifyRequest, @Body() body: { name?: string }, @Res({ passthrough: true }) reply: FastifyReply): Promise<object> {
    runs += 1;
    const files: string[] = [];
    if (request.isMultipart()) for await (const part of request.files()) files.push((await part.toBuffer()).toString());
    if (refuse instanceof Refusal && refuse.code === 'invalid') throw refuse;
    const job = await this.database.transaction(actor, async (tx) =>
      tx.insert<{ id: string; number: string }>('jobs', jobRow(actor, await tx.nextNumber('job'), body?.name ?? files.join('+')), { kind: 'job.submitted' }));
    await sleep(pause);
    if (refuse) throw refuse;
    void reply.header('location', `/v1/jobs/${job.id}`);
    return { id: job.id, number: job.number };
  }

  @Post('other')
  other(): object {
    runs += 1;
    return { runs };
  }
}

describe('Idempotency-Key', () => {
  let server: TestPlatform;
  let contractor: string;
  let neighbour: string;
  let keys = 0;

  beforeAll(async () => {
    server = await openTestPlatform([JobsController]);
    contractor = await server.tokenOf(server.heron.contractor);
    neighbour = await server.tokenOf(server.heron.neighbour);
  });
  afterAll(() => server.close());
  beforeEach(() => {
    runs = 0;
    refuse = null;
    pause = 0;
  });

  const post = (key: string | null, body: unknown, { path = '/v1/jobs', token = contractor } = {}) =>
    fetch(server.url + path, {
      method: 'POST', body: body instanceof FormData ? body : JSON.stringify(body),
      headers: { authorization: `Bearer ${token}`, ...(key === null ? {} : { 'idempotency-key': key }), ...(body instanceof FormData ? {} : { 'content-type': 'application/json' }) },
    });
  const key = () => `key-${++keys}`;
  const form = (text: string): FormData => {
    const parts = new FormData();
    parts.append('files', new Blob([text]), 'walls.csv');
    return parts;
  };
  const jobs = async (): Promise<number> => {
    const row = await server.platform.database.transaction(server.heron.support, (tx) => tx.one<{ n: number }>('select count(*)::int as n from jobs'));
    return row?.n ?? -1;
  };

  it('repeats the stored answer, status, headers and body, and does the work once', async () => {
    const mine = key();
    const before = await jobs();
    const first = await post(mine, { name: 'a' });
    const second = await post(mine, { name: 'a' });
    expect([first.status, second.status]).toEqual([201, 201]);
    expect(await second.text()).toBe(await first.text());
    expect(second.headers.get('location')).toBe(first.headers.get('location'));
    expect(second.headers.get('content-type')).toBe(first.headers.get('content-type'));
    expect([first.headers.get('idempotency-replayed'), second.headers.get('idempotency-replayed')]).toEqual([null, 'true']);
    expect({ runs, made: (await jobs()) - before }).toEqual({ runs: 1, made: 1 });
  });

  it('refuses the key for another body', async () => {
    const mine = key();
    await post(mine, { name: 'a' });
    const second = await post(mine, { name: 'b' });
    expect(second.status).toBe(422);
    expect(await second.json()).toMatchObject({ code: 'invalid' });
    expect(runs).toBe(1);
  });

  it('carries out one of 20 at once, and refuses the rest while it runs', async () => {
    const mine = key();
    const before = await jobs();
    pause = 400;
    const answers = await Promise.all(Array.from({ length: 20 }, () => post(mine, { name: 'race' })));
    const carriedOut = answers.filter((answer) => answer.status === 201 && answer.headers.get('idempotency-replayed') === null);
    const refused = answers.filter((answer) => answer.status === 409);
    const repeated = answers.filter((answer) => answer.headers.get('idempotency-replayed') === 'true');
    expect(carriedOut).toHaveLength(1);
    expect(refused.length + repeated.length).toBe(19);
    expect(refused.length).toBeGreaterThanOrEqual(5);
    for (const answer of refused) expect(await answer.json()).toMatchObject({ code: 'already-running' });
    expect({ runs, made: (await jobs()) - before }).toEqual({ runs: 1, made: 1 });
    const after = await post(mine, { name: 'race' });
    expect({ status: after.status, replayed: after.headers.get('idempotency-replayed') }).toEqual({ status: 201, replayed: 'true' });
  });

  it('knows the same files again although their multipart boundary is another', async () => {
    const mine = key();
    const first = await post(mine, form('A,0,0,1,1'));
    const again = await post(mine, form('A,0,0,1,1'));
    expect([first.status, again.status, again.headers.get('idempotency-replayed')]).toEqual([201, 201, 'true']);
    expect(await again.json()).toEqual(await first.json());
    const changed = await post(mine, form('A,0,0,1,2'));
    expect(changed.status).toBe(422);
    expect(runs).toBe(1);
  });

  it('knows a large upload again', async () => {
    const mine = key();
    const first = await post(mine, form('x'.repeat(900_000)));
    const again = await post(mine, form('x'.repeat(900_000)));
    expect([first.status, again.headers.get('idempotency-replayed')]).toEqual([201, 'true']);
  });

  it('belongs to a person and a route', async () => {
    const mine = key();
    await post(mine, { name: 'a' });
    const theirs = await post(mine, { name: 'other body' }, { token: neighbour });
    const elsewhere = await post(mine, { name: 'other body' }, { path: '/v1/other' });
    expect([theirs.status, elsewhere.status, runs]).toEqual([201, 201, 3]);
  });

  it('is forgotten with a refusal that changed nothing', async () => {
    const mine = key();
    refuse = new Refusal('invalid', 'no walls');
    expect((await post(mine, { name: 'a' })).status).toBe(422);
    refuse = null;
    expect((await post(mine, { name: 'better' })).status).toBe(201);
  });

  it('is kept where something was made before it failed, so that it is not made twice', async () => {
    const mine = key();
    const before = await jobs();
    refuse = new Error('after the commit');
    expect((await post(mine, { name: 'a' })).status).toBe(500);
    refuse = null;
    const again = await post(mine, { name: 'a' });
    expect([again.status, (await jobs()) - before, runs]).toEqual([409, 1, 1]);
  });

  it('may be taken up again five minutes after its process died, unless it had made something', async () => {
    const { database } = server.platform;
    const actor = server.heron.contractor;
    const abandoned = async (name: string, subject: string | null) => database.transaction(actor, (tx) => tx.query(
      `insert into idempotency_keys (supplier_id, person_id, organisation_id, route, key, request_hash, state, subject_type, subject_id, created_at, updated_at)
       values ($1, $2, $3, 'POST /v1/jobs', $4, '', 'running', $5, $6, now() - interval '6 minutes', now() - interval '6 minutes')`,
      [actor.supplierId, actor.personId, actor.organisationId, name, subject === null ? null : 'job', subject]));
    await abandoned('dead-before', null);
    await abandoned('dead-after', '01900000-0000-7000-8000-000000000001');
    expect((await post('dead-before', { name: 'a' })).status).toBe(201);
    const late = await post('dead-after', { name: 'a' });
    expect(late.status).toBe(409);
    expect((await late.json() as { detail: string }).detail).toContain('made job 01900000-0000-7000-8000-000000000001');
  });

  it('is free again after a day', async () => {
    const mine = key();
    await post(mine, { name: 'a' });
    await server.platform.database.transaction(server.heron.contractor, (tx) => tx.query(`update idempotency_keys set created_at = now() - interval '25 hours' where key = $1`, [mine]));
    expect((await post(mine, { name: 'b' })).headers.get('idempotency-replayed')).toBeNull();
    expect(runs).toBe(2);
  });

  it.each([['empty', ''], ['too long', 'k'.repeat(201)]])('refuses a key that is %s', async (_, bad) => {
    const answer = await post(bad, { name: 'a' });
    expect([answer.status, runs]).toEqual([422, 0]);
  });

  it('changes nothing for who sends none', async () => {
    await post(null, { name: 'a' });
    await post(null, { name: 'a' });
    expect(runs).toBe(2);
  });
});
