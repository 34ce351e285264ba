import { HttpException } from '@nestjs/common';
import type { InputError } from '../../domain/evidence/input-error.js';
import { Refusal } from './refusal.js';
import type { RefusalCode } from './refusal-codes.js';

const BY_STATUS: Readonly<Record<number, RefusalCode>> = {
  400: 'unreadable',
  401: 'unauthenticated',
  403: 'forbidden',
  404: 'not-found',
  405: 'not-found',
  406: 'not-acceptable',
  408: 'unreadable',
  409: 'illegal-move',
  412: 'stale',
  413: 'too-large',
  414: 'unreadable',
  415: 'wrong-type',
  417: 'unreadable',
  422: 'invalid',
  428: 'version-missing',
  429: 'too-many',
  431: 'too-large',
  503: 'busy',
};

/** The server's own errors, where their status alone would say too little. */
const BY_CODE: Readonly<Record<string, readonly [RefusalCode, string]>> = {
  FST_ERR_CTP_INVALID_MEDIA_TYPE: ['wrong-type', 'Send JSON, or multipart/form-data with parts called files.'],
  FST_ERR_CTP_EMPTY_TYPE: ['wrong-type', 'Say what the content is: a Content-Type header is missing.'],
  FST_ERR_CTP_BODY_TOO_LARGE: ['too-large', 'The body is larger than this route takes.'],
  FST_ERR_CTP_EMPTY_JSON_BODY: ['unreadable', 'The body is empty where JSON was announced.'],
  FST_ERR_CTP_INVALID_JSON_BODY: ['unreadable', 'The body is not JSON.'],
  FST_ERR_CTP_INVALID_CONTENT_LENGTH: ['unreadable', 'The body is not as long as Content-Length says.'],
  FST_ERR_BAD_URL: ['unreadable', 'The address is not a valid URL.'],
  FST_ERR_MAX_PARAM_LENGTH: ['not-found', 'There is no such thing.'],
  FST_INVALID_MULTIPART_CONTENT_TYPE: ['wrong-type', 'This route reads multipart/form-data.'],
  FST_INVALID_JSON_FIELD_ERROR: ['unreadable', 'A JSON field of the form is not JSON.'],
  FST_MP_PREMATURE_CLOSE: ['unreadable', 'The upload ended before it was complete.'],
  FST_PROTO_VIOLATION: ['unreadable', 'A field has a name that is not taken.'],
  ECONNRESET: ['unreadable', 'The request ended before it was complete.'],
};

interface ErrorFacts {
  readonly code?: unknown;
  readonly statusCode?: unknown;
  readonly message?: unknown;
}

/** The refusal an error of the framework means, a Refusal as it is, and null for a defect of ours. */
export function refusalOf(error: unknown): Refusal | null {
  if (error instanceof Refusal) return error;
  if (error instanceof HttpException) return byStatus(error.getStatus(), error.message);
  if (typeof error !== 'object' || error === null) return null;
  const { code, statusCode, message } = error as ErrorFacts;
  const known = BY_CODE[String(code)];
  if (known) return new Refusal(known[0], known[1]);
  return typeof statusCode === 'number' ? byStatus(statusCode, String(message ?? '')) : null;
}

function byStatus(status: number, message: string): Refusal | null {
  const code = BY_STATUS[status] ?? (status >= 400 && status < 500 ? 'unreadable' : null);
  if (code === null) return null;
  return new Refusal(code, status === 404 ? 'There is no such thing.' : message);
}

interface SchemaIssue {
  readonly message: string;
  readonly path?: readonly (PropertyKey | { readonly key: PropertyKey })[];
  readonly input?: unknown;
}

const pointerOf = (issue: SchemaIssue): string =>
  (issue.path ?? []).map((step) => `/${String(typeof step === 'object' ? step.key : step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');

function shown(value: unknown): string {
  if (value === undefined) return '';
  return (typeof value === 'string' ? value : (JSON.stringify(value) ?? '')).slice(0, 80);
}

/** What a schema found wrong, as the refusal that lists it. Wired as the validation pipe's `exceptionFactory`. */
export function invalidInput(issues: readonly SchemaIssue[]): Refusal {
  const errors = issues.map(
    (issue): InputError => ({ sheet: null, row: null, column: null, pointer: pointerOf(issue), read: shown(issue.input), fix: issue.message }),
  );
  return new Refusal('invalid', `${errors.length} ${errors.length === 1 ? 'value is' : 'values are'} not as they must be.`, errors);
}
