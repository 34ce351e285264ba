import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import { Refusal } from '../../platform/refusals/refusal.js';
import { wrongField } from './field-error.js';

const ETAG = /^(?:W\/)?"(\d{1,9})"$/;

interface Asked {
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
}

/** The version an If-Match names, null where none is sent or `*` is. */
export function versionIn(header: string | string[] | undefined): number | null {
  if (header === undefined || header === '*') return null;
  const text = Array.isArray(header) ? header.join(', ') : header;
  const match = ETAG.exec(text.trim());
  if (!match) throw wrongField('If-Match names one version.', 'If-Match', text, 'the ETag of the last answer, such as "3"');
  return Number(match[1]);
}

/** If-Match where it is welcome. */
export const IfMatch = createParamDecorator((_: unknown, context: ExecutionContext): number | null =>
  versionIn(context.switchToHttp().getRequest<Asked>().headers['if-match']));

/** If-Match where nothing is changed without it. */
export const RequiredIfMatch = createParamDecorator((_: unknown, context: ExecutionContext): number => {
  const version = versionIn(context.switchToHttp().getRequest<Asked>().headers['if-match']);
  if (version === null) throw new Refusal('version-missing', 'Send If-Match with the ETag of the version that you change.');
  return version;
});
