import { createHash, randomBytes } from 'node:crypto';

/** Recognisable where it turns up by mistake, as in a log or a repository. */
const PREFIX = 'wc_';
const TOKEN = /^wc_[A-Za-z0-9_-]{43}$/;

/** 256 random bits; shown to its owner once. */
export const newToken = (): string => PREFIX + randomBytes(32).toString('base64url');

/** What is stored: a token is long and random, so that a plain hash cannot be turned round by guessing. */
export const hashToken = (token: string): Buffer => createHash('sha256').update(token).digest();

/** The token of an Authorization header, or null where it holds none that could be ours. */
export function bearerToken(header: string | undefined): string | null {
  const token = /^bearer +(\S+)$/i.exec(header?.trim() ?? '')?.[1];
  return token !== undefined && TOKEN.test(token) ? token : null;
}
