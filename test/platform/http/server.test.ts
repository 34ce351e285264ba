import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { Body, Controller, Get, Param, Post, Put, Req, Sse } from '@nestjs/common';
import { ApiExcludeController } from '@nestjs/swagger';
import type { FastifyRequest } from 'fastify';
import { Observable } from 'rxjs';
import { z } from 'zod';
import { CurrentActor } from '../../../src/platform/auth/current-actor.js';
import type { Actor } from '../../../src/platform/database/actor.js';
import { Drain } from '../../../src/platform/http/drain.js';
import { IfMatch } from '../../../src/platform/http/if-match.js';
import { Refusal } from '../../../src/platform/refusals/refusal.js';
import { correlationId } from '../../../src/platform/telemetry/correlation.js';
import { openTestPlatform, type TestPlatform } from '../../support/platform.js';

const Thing = z.object({ name: z.string().min(1), size: z.number().int() });

@ApiExcludeController()
@Controller()
class ThingsController {
  constructor(private readonly drain: Drain) {}

  @Get('me')
  me(@CurrentActor() actor: Actor): object {
    return { ...actor, correlation: correlationId() };
  }

  @Post('things')
  make(@Body({ schema: Thing }) thing: z.infer<typeof Thing>): object {
    return thing;
  }

  @Put('things/:id')
  change(@IfMatch('required') version: number | null, @Param('id') id: string): object {
    return { version, id };
  }

  @Post('things/:id/act')
  act(@IfMatch('honoured') version: number | null): object {
    return { version };
  }

  @Get('refused')
  refused(): never {
    throw new Refusal('open-hold', 'Ticket T-000007 is open.', [], { tickets: ['T-000007'] });
  }

  @Get('broken')
  broken(): never {
    throw new Error('the password is swordfish');
  }

  @Post('jobs')
  large(@Req() request: FastifyRequest): object {
    return { size: JSON.stringify(request.body).length };
  }

  @Sse('stream')
  stream(): Observable<{ data: string }> {
    return new Observable((reader) => {
      reader.next({ data: 'first' });
      return this.drain.track(() => reader.complete());
    });
  }
}

describe('the server', () => {
  let server: TestPlatform;
  let token: string;
  beforeAll(async () => {
    server = await openTestPlatform([ThingsController]);
    token = await server.tokenOf(server.heron.contractor);
  });
  afterAll(() => server.close());

  const call = (path: string, init: RequestInit = {}) =>
    fetch(server.url + path, { ...init, headers: { authorization: `Bearer ${token}`, ...(init.headers as Record<string, string>) } });
  const json = (body: unknown, method = 'POST'): RequestInit => ({
    method, body: typeof body === 'string' ? body : JSON.stringify(body), headers: { 'content-type': 'application/json' },
  });
  const problem = async (answer: Response) => {
    expect(answer.headers.get('content-type')).toBe('application/problem+json; charset=utf-8');
    const body = (await answer.json()) as Record<string, unknown>;
    expect({ ...body, type: body['type'], status: body['status'] }).toMatchObject({ type: `urn:wallcourse:${String(body['code'])}`, status: answer.status, errors: expect.any(Array) });
    return body;
  };

  it('knows who is speaking', async () => {
    const answer = await call('/v1/me', { headers: { 'x-request-id': 'order-77' } });
    expect(await answer.json()).toEqual({ ...server.heron.contractor, correlation: 'order-77' });
    expect(answer.headers.get('x-request-id')).toBe('order-77');
  });

  it('makes an id of its own where the sender\'s could do harm in a log', async () => {
    const answer = await call('/v1/me', { headers: { 'x-request-id': 'a b"}' } });
    expect(answer.headers.get('x-request-id')).toMatch(/^[0-9a-f-]{36}$/);
  });

  it.each([
    ['none', undefined], ['another scheme', 'Basic abc'], ['garbage', 'Bearer garbage'], ['an unknown token', `Bearer wc_${'A'.repeat(43)}`], ['an empty one', 'Bearer '],
  ])('answers 401 to %s, for paths that exist and paths that do not', async (_, authorization) => {
    const headers = authorization === undefined ? undefined : { authorization };
    for (const path of ['/v1/me', '/v1/nothing', '/graphql']) {
      const answer = await fetch(server.url + path, { headers });
      expect(answer.headers.get('www-authenticate')).toBe('Bearer');
      expect(await problem(answer)).toMatchObject({ code: 'unauthenticated', status: 401 });
    }
  });

  it('asks for the token before it reads a body', async () => {
    const answer = await fetch(`${server.url}/v1/things`, { method: 'POST', body: '{', headers: { 'content-type': 'application/json' } });
    expect(await problem(answer)).toMatchObject({ code: 'unauthenticated' });
  });

  it.each([
    ['a path that is none', '/v1/nothing', {}, 404, 'not-found'],
    ['a path outside', '/nothing', {}, 404, 'not-found'],
    ['a method that is none', '/v1/me', { method: 'DELETE' }, 404, 'not-found'],
    ['a bad escape', '/v1/%zz', {}, 400, 'unreadable'],
    ['broken JSON', '/v1/things', json('{"name":'), 400, 'unreadable'],
    ['an empty body', '/v1/things', json(''), 400, 'unreadable'],
    ['a prototype in the JSON', '/v1/things', json('{"__proto__": {"a": 1}, "name": "x", "size": 1}'), 400, 'unreadable'],
    ['another kind of content', '/v1/things', { method: 'POST', body: '<a/>', headers: { 'content-type': 'text/xml' } }, 415, 'wrong-type'],
    ['plain text', '/v1/things', { method: 'POST', body: 'a', headers: { 'content-type': 'text/plain' } }, 415, 'wrong-type'],
    ['a web form', '/v1/things', { method: 'POST', body: 'a=1', headers: { 'content-type': 'application/x-www-form-urlencoded' } }, 415, 'wrong-type'],
    ['too large a body', '/v1/things', json({ name: 'x'.repeat(1_100_000), size: 1 }), 413, 'too-large'],
    ['too large a schedule', '/v1/jobs', json({ name: 'x'.repeat(2_200_000), size: 1 }), 413, 'too-large'],
    ['a wrong shape', '/v1/things', json({ name: '', size: 1.5 }), 422, 'invalid'],
    ['a refusal', '/v1/refused', {}, 409, 'open-hold'],
    ['a missing If-Match', '/v1/things/1', { method: 'PUT' }, 428, 'version-missing'],
    ['an If-Match that names no version', '/v1/things/1', { method: 'PUT', headers: { 'if-match': '"abc"' } }, 412, 'stale'],
  ] as [string, string, RequestInit, number, string][])('answers %s in problem+json', async (_, path, init, status, code) => {
    const answer = await call(path, init);
    expect({ status: answer.status, ...(await problem(answer)) }).toMatchObject({ status, code });
  });

  it('lists what a schema found wrong, each with its place', async () => {
    const body = await problem(await call('/v1/things', json({ name: '', size: 'big' })));
    expect(body['errors']).toEqual([
      expect.objectContaining({ pointer: '/name', sheet: null, row: null, column: null }),
      expect.objectContaining({ pointer: '/size' }),
    ]);
  });

  it('carries what a refusal adds', async () => {
    expect(await problem(await call('/v1/refused'))).toMatchObject({ tickets: ['T-000007'], detail: 'Ticket T-000007 is open.' });
  });

  it('tells nothing of a defect but the id under which it stands in the log', async () => {
    const answer = await call('/v1/broken', { headers: { 'x-request-id': 'incident-1' } });
    const body = await problem(answer);
    expect(body).toMatchObject({ code: 'defect', status: 500, correlation: 'incident-1' });
    expect(JSON.stringify(body)).not.toContain('swordfish');
  });

  it('takes a whole schedule where schedules come in', async () => {
    const answer = await call('/v1/jobs', json({ name: 'x'.repeat(1_500_000) }));
    expect(await answer.json()).toEqual({ size: 1_500_011 });
  });

  it.each([['"7"', 7], ['W/"7"', 7], ['7', 7], ['*', null]])('reads If-Match %s', async (header, version) => {
    const answer = await call('/v1/things/a', { method: 'PUT', headers: { 'if-match': header } });
    expect(await answer.json()).toEqual({ version, id: 'a' });
  });

  it('honours If-Match on acts, and does without', async () => {
    expect(await (await call('/v1/things/a/act', { method: 'POST', headers: { 'if-match': '"3"' } })).json()).toEqual({ version: 3 });
    expect(await (await call('/v1/things/a/act', { method: 'POST' })).json()).toEqual({ version: null });
  });

  it('answers what is not HTTP in problem+json too', async () => {
    const text = await new Promise<string>((settle, fail) => {
      const socket = connect(Number(new URL(server.url).port), '127.0.0.1', () => socket.write('WHAT IS THIS\r\n\r\n'));
      let said = '';
      socket.on('data', (chunk) => (said += chunk.toString())).on('end', () => settle(said)).on('error', fail);
    });
    expect(text).toMatch(/^HTTP\/1\.1 400 Bad Request\r\n/);
    expect(JSON.parse(text.split('\r\n\r\n')[1] ?? '')).toMatchObject({ code: 'unreadable', status: 400 });
  });

  it('is live, ready and counted', async () => {
    expect(await (await fetch(`${server.url}/health/live`)).json()).toEqual({ status: 'live' });
    expect(await (await fetch(`${server.url}/health/ready`)).json()).toEqual({ status: 'ready' });
    const text = await (await fetch(`${server.url}/metrics`)).text();
    expect(text).toContain('wallcourse_requests_total{method="GET",route="/v1/refused",status="409"} 2');
    expect(text).toContain('wallcourse_refusals_total{code="open-hold"} 2');
    expect(text).toContain('wallcourse_defects_total 1');
  });

  it('forgets 1,000 readers of a stream that went away', async () => {
    const before = server.platform.drain.open;
    for (let round = 0; round < 25; round += 1) {
      await Promise.all(Array.from({ length: 40 }, async () => {
        const leave = new AbortController();
        const answer = await call('/v1/stream', { signal: leave.signal });
        await answer.body?.getReader().read();
        leave.abort();
      }));
    }
    for (let tries = 0; tries < 100 && server.platform.drain.open > before; tries += 1) await new Promise((settle) => setTimeout(settle, 20));
    expect(server.platform.drain.open).toBe(before);
  });

  it('ends open streams when it drains, and says that it is not ready', async () => {
    const other = await openTestPlatform([ThingsController]);
    const mine = await other.tokenOf(other.heron.contractor);
    const answer = await fetch(`${other.url}/v1/stream`, { headers: { authorization: `Bearer ${mine}` } });
    const text = answer.text();
    for (let tries = 0; tries < 100 && other.platform.drain.open === 0; tries += 1) await new Promise((settle) => setTimeout(settle, 10));
    other.platform.drain.begin();
    expect(await text).toContain('data: first');
    expect((await fetch(`${other.url}/health/ready`)).status).toBe(503);
    await other.close();
  });
});
