import { describe, expect, it } from '@jest/globals';
import { RequestHash } from '../../../src/platform/idempotency/request-hash.js';

const body = (boundary: string, text: string): string =>
  `--${boundary}\r\ncontent-disposition: form-data; name="files"; filename="a.csv"\r\n\r\n${text}\r\n--${boundary}--\r\n`;

function hashed(type: string, text: string, size = text.length): string {
  const hash = new RequestHash(type);
  const bytes = Buffer.from(text);
  for (let at = 0; at < bytes.length; at += size) hash.update(bytes.subarray(at, at + size));
  return hash.digest();
}

describe('RequestHash', () => {
  const of = (boundary: string, text: string, size?: number) => hashed(`multipart/form-data; boundary=${boundary}`, body(boundary, text), size);

  it('is the same for the same parts under another boundary, however the bytes come', () => {
    const whole = of('----one', 'wall A');
    for (const size of [1, 2, 3, 7, 16, 64]) expect(of('----another-boundary', 'wall A', size)).toBe(whole);
    expect(of('----one', 'wall B')).not.toBe(whole);
  });

  it('reads a quoted boundary', () => {
    expect(hashed('multipart/form-data; boundary="a b"', body('a b', 'x'))).toBe(of('zz', 'x'));
  });

  it('tells kinds of content apart, and leaves their parameters out', () => {
    expect(hashed('application/json', '{}')).not.toBe(hashed('text/csv', '{}'));
    expect(hashed('application/json', '{}')).toBe(hashed('Application/JSON; charset=utf-8', '{}'));
    expect(hashed('application/json', '{"a":1}', 1)).toBe(hashed('application/json', '{"a":1}'));
    expect(hashed('application/json', '{"a":1}')).not.toBe(hashed('application/json', '{"a":2}'));
  });
});
