import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { Refusal } from '../refusals/refusal.js';

/** The entity tag of a version: `"7"`. */
export const entityTag = (version: number): string => `"${version}"`;

/**
 * The version an If-Match header names, null for `*`.
 *
 * @param required whether a missing header is refused (`version-missing`) or means the same as `*`
 */
export function versionIn(header: string | undefined, required: boolean): number | null {
  if (header === undefined || header.trim() === '') {
    if (required) throw new Refusal('version-missing', 'Send If-Match with the version you have seen, as the ETag of your last reading says it.');
    return null;
  }
  if (header.trim() === '*') return null;
  const digits = /^(?:W\/)?"?(\d{1,9})"?$/.exec(header.trim())?.[1];
  if (digits === undefined) throw new Refusal('stale', `If-Match names no version: ${header.slice(0, 40)}`);
  return Number(digits);
}

/** `@IfMatch('required')` on PUT and PATCH, `@IfMatch('honoured')` on acts. */
export const IfMatch = createParamDecorator((how: 'required' | 'honoured', context: ExecutionContext): number | null =>
  versionIn(context.switchToHttp().getRequest<FastifyRequest>().headers['if-match'], how === 'required'),
);
