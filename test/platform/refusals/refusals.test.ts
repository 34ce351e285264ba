import { describe, expect, it } from '@jest/globals';
import { HttpException, NotFoundException, PayloadTooLargeException } from '@nestjs/common';
import type { InputError } from '../../../src/domain/evidence/input-error.js';
import { MOST_ERRORS, problemOf, Refusal } from '../../../src/platform/refusals/refusal.js';
import { REFUSALS, type RefusalCode } from '../../../src/platform/refusals/refusal-codes.js';
import { invalidInput, refusalOf } from '../../../src/platform/refusals/refusal-of.js';

/** The table of the design, typed in again. */
const DESIGN: readonly [RefusalCode, number][] = [
  ['unreadable', 400], ['unauthenticated', 401], ['forbidden', 403], ['not-found', 404], ['not-acceptable', 406], ['illegal-move', 409], ['open-hold', 409], ['already-running', 409],
  ['stale', 412], ['too-large', 413], ['wrong-type', 415], ['invalid', 422], ['version-missing', 428], ['too-many', 429], ['busy', 503],
];

describe('refusals', () => {
  it('have the codes and statuses of the design and no others', () => {
    expect(Object.entries(REFUSALS).map(([code, { status }]) => [code, status])).toEqual(DESIGN);
  });

  it('become problem details', () => {
    const error: InputError = { sheet: 'walls', row: 3, column: 'core', pointer: '/walls/1/core', read: '7', fix: 'one of 6, 8, 10' };
    expect(problemOf(new Refusal('invalid', 'One cell is wrong.', [error], { hint: 1 }))).toEqual({
      type: 'urn:wallcourse:invalid', code: 'invalid', title: 'The content does not hold together', status: 422, detail: 'One cell is wrong.', errors: [error], hint: 1,
    });
  });

  it('cannot be disguised by what they add', () => {
    expect(problemOf(new Refusal('invalid', 'x', [], { status: 200, code: 'fine', type: 'about:blank' }))).toMatchObject({ status: 422, code: 'invalid', type: 'urn:wallcourse:invalid' });
  });

  it(`list at most ${MOST_ERRORS} errors`, () => {
    const error: InputError = { sheet: null, row: null, column: null, pointer: null, read: '', fix: '' };
    expect(problemOf(new Refusal('invalid', 'x', Array.from({ length: 5_000 }, () => error))).errors).toHaveLength(200);
  });

  it.each([
    [new NotFoundException('Cannot GET /secret-path'), 'not-found', 'There is no such thing.'],
    [new PayloadTooLargeException('big'), 'too-large', 'big'],
    [new HttpException('teapot', 418), 'unreadable', 'teapot'],
    [Object.assign(new Error('x'), { code: 'FST_REQ_FILE_TOO_LARGE', statusCode: 413 }), 'too-large', 'x'],
    [Object.assign(new Error('x'), { code: 'FST_MP_PREMATURE_CLOSE', statusCode: 400 }), 'unreadable', 'The upload ended before it was complete.'],
    [Object.assign(new Error('x'), { statusCode: 400 }), 'unreadable', 'x'],
  ])('are what the framework means by %p', (error, code, detail) => {
    expect(refusalOf(error)).toMatchObject({ code, detail });
  });

  it.each([new Error('boom'), new TypeError('x is not a function'), new HttpException('x', 500), 'a string', null, undefined, { statusCode: 500 }])('are not made of defects: %p', (error) => {
    expect(refusalOf(error)).toBeNull();
  });

  it('point at what a schema found wrong', () => {
    const refusal = invalidInput([
      { message: 'must be a text', path: ['walls', 3, { key: 'a/b~c' }], input: 12 },
      { message: 'is missing', path: [] },
      { message: 'is too long', path: ['name'], input: 'n'.repeat(1_000_000) },
    ]);
    expect(refusal.errors).toEqual([
      { sheet: null, row: null, column: null, pointer: '/walls/3/a~1b~0c', read: '12', fix: 'must be a text' },
      { sheet: null, row: null, column: null, pointer: '', read: '', fix: 'is missing' },
      { sheet: null, row: null, column: null, pointer: '/name', read: 'n'.repeat(80), fix: 'is too long' },
    ]);
  });
});
