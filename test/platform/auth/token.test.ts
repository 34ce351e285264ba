import { describe, expect, it } from '@jest/globals';
import { bearerToken, hashToken, newToken } from '../../../src/platform/auth/token.js';

describe('tokens', () => {
  it('carry 256 random bits and are never the same', () => {
    const tokens = Array.from({ length: 1_000 }, newToken);
    expect(new Set(tokens).size).toBe(1_000);
    for (const token of tokens) expect(Buffer.from(token.slice(3), 'base64url')).toHaveLength(32);
  });

  it('are stored as their sha256 (FIPS 180-4: the digest of "abc")', () => {
    expect(hashToken('abc').toString('hex')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  const token = `wc_${'a'.repeat(43)}`;
  it.each([
    [`Bearer ${token}`, token], [`bearer  ${token} `, token], [`BEARER ${token}`, token],
    [undefined, null], ['', null], [token, null], [`Basic ${token}`, null], [`Bearer ${token}x`, null], [`Bearer ${token} ${token}`, null], ['Bearer wc_short', null],
  ])('are read from the header %p', (header, found) => {
    expect(bearerToken(header)).toBe(found);
  });
});
