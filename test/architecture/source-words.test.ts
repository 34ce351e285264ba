import { readFileSync } from 'node:fs';
import { execFileSync } from 'node:child_process';
import { basename, extname } from 'node:path';
import { describe, expect, it } from '@jest/globals';

/** Everything that is kept, as git knows it: tracked files, and new ones that are not ignored. */
const files = execFileSync('git', ['ls-files', '-co', '--exclude-standard'], { encoding: 'utf8' }).split('\n').filter(Boolean);
const TEXT = new Set(['.ts', '.mjs', '.cjs', '.json', '.md', '.yml', '.sql', '.prisma', '.csv']);
const text = (file: string): string => readFileSync(file, 'utf8');
const source = files.filter((file) => /^(src|test)\//.test(file) && TEXT.has(extname(file)) && !file.startsWith('test/architecture/'));

/** Words that say a thing is not finished. */
const UNFINISHED = /\b(TODO|FIXME|HACK)\b|\b[Ff]or now\b|\b[Nn]ot implemented\b/;
/** Names under which anything could be kept. */
const NAMELESS = /^(utils?|helpers?|common|managers?|base|misc|shared)$/;

describe('the source', () => {
  it('says nowhere that it is unfinished', () => {
    expect(source.filter((file) => UNFINISHED.test(text(file)))).toEqual([]);
  });

  it('tells nothing of the machine it was written on', () => {
    const ours = files.filter((file) => TEXT.has(extname(file)) && file !== 'package-lock.json' && !file.startsWith('test/architecture/'));
    expect(ours.filter((file) => /(?<![\w.])\/(work|root|home\/\w+|Users)\/(?!\*)/.test(text(file)))).toEqual([]);
    expect(/"resolved": "(?!https:\/\/registry\.npmjs\.org\/)/.test(text('package-lock.json'))).toBe(false);
  });

  it('keeps nothing under a name that says nothing', () => {
    const parts = files.filter((file) => file.startsWith('src/')).flatMap((file) => file.split('/').map((part) => ({ file, word: basename(part, extname(part)) })));
    expect(parts.filter(({ word }) => NAMELESS.test(word)).map(({ file }) => file)).toEqual([]);
  });

  it('names files in kebab case', () => {
    const odd = files.filter((file) => /^(src|test)\/.*\.(ts|mjs)$/.test(file)).filter((file) => !/^[a-z0-9]+(-[a-z0-9]+)*(\.[a-z0-9-]+)*$/.test(basename(file)));
    expect(odd).toEqual([]);
  });

  it('has no file that is longer than anyone reads', () => {
    const long = source.filter((file) => file.startsWith('src/') && /\.(ts|mjs)$/.test(file)).map((file) => ({ file, lines: text(file).split('\n').length })).filter(({ lines }) => lines > 401);
    expect(long).toEqual([]);
  });
});
