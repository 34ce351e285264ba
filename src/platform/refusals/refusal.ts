import type { InputError } from '../../domain/evidence/input-error.js';
import { REFUSALS, type RefusalCode } from './refusal-codes.js';

/** More errors than this are not listed: whoever reads them is helped by the first ones. */
export const MOST_ERRORS = 200;

/** An expected no, about the request. Thrown by services, turned into an answer by the door it came through. */
export class Refusal extends Error {
  readonly status: number;

  constructor(
    readonly code: RefusalCode,
    readonly detail: string,
    readonly errors: readonly InputError[] = [],
    /** What else the answer carries, such as the tickets that hold a quote. */
    readonly more: Readonly<Record<string, unknown>> = {},
  ) {
    super(`${code}: ${detail}`);
    this.name = 'Refusal';
    this.status = REFUSALS[code].status;
  }
}

export interface Problem {
  readonly type: string;
  readonly code: string;
  readonly title: string;
  readonly status: number;
  readonly detail: string;
  readonly errors: readonly InputError[];
  readonly [more: string]: unknown;
}

/** The body of a refusal: RFC 9457 problem details. */
export function problemOf(refusal: Refusal): Problem {
  return {
    ...refusal.more,
    type: `urn:wallcourse:${refusal.code}`,
    code: refusal.code,
    title: REFUSALS[refusal.code].title,
    status: refusal.status,
    detail: refusal.detail,
    errors: refusal.errors.slice(0, MOST_ERRORS),
  };
}
