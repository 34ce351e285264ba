import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from '@jest/globals';
import { newRule, registryText, ruleFiles, ruleIds } from '../../src/commands/new-rule.js';
import { catalogueText } from '../../src/domain/reinforcement/catalogue.js';
import { RULES } from '../../src/domain/reinforcement/registry.js';
import { PARAMETERS } from '../support/rule-range.js';

const RULE_FOLDER = 'src/domain/reinforcement/rules';
const TEST_FOLDER = 'test/domain/reinforcement/rules';

const ids = RULES.map(({ meta }) => meta.id);
const stems = (folder: string, ending: string): readonly string[] =>
  readdirSync(folder).filter((name) => name.endsWith(ending)).map((name) => name.slice(0, -ending.length)).sort();
const read = (path: string): string => readFileSync(path, 'utf8');

describe('the catalogue of rules', () => {
  it('rules = docs = tests, in the order of the alphabet', () => {
    expect(ids).toEqual([...ids].sort());
    expect(stems(RULE_FOLDER, '.rule.ts')).toEqual(ids);
    expect(stems(RULE_FOLDER, '.md')).toEqual(ids);
    expect(stems(TEST_FOLDER, '.rule.test.ts')).toEqual(ids);
  });

  it('the registry is what the folder says', () => expect(read('src/domain/reinforcement/registry.ts')).toBe(registryText(ids)));

  it('the page of rules is fresh (npm run generate)', () => expect(read('shared/docs/rules.md')).toBe(catalogueText()));

  it('holds the ten rules of the first step', () => {
    expect(ids).toEqual(expect.arrayContaining([
      'end-closure', 'footing-corner', 'footing-fix', 'hinged-corner', 'paired-unit', 'ripped-edge', 'short-piece', 'strip-course', 'tee-cut-out', 'top-course-hold-down',
    ]));
  });
});

describe.each(RULES.map(({ meta }) => ({ id: meta.id, meta })))('$id', ({ id, meta }) => {
  const doc = read(`${RULE_FOLDER}/${id}.md`);
  const source = read(`${RULE_FOLDER}/${id}.rule.ts`);
  const test = read(`${TEST_FOLDER}/${id}.rule.test.ts`);

  it('has a doc that opens with its id, title, trigger and materials', () => {
    const consumes = meta.consumes.join(', ') || 'nothing';
    expect(doc.startsWith(`# ${id}\n\n${meta.title}\n\nApplies to: ${meta.trigger}.\nConsumes: ${consumes}.\n`)).toBe(true);
  });

  it('has a doc with every section, in order and none empty', () => {
    const sections = [...doc.matchAll(/^## (.+)\n\n(.+)/gm)].map(([, heading]) => heading);
    expect(sections).toEqual(['Why', 'When not to use it', 'Parameters', 'Basis']);
  });

  it('documents the parameters it reads, and all of them exist', () => {
    const documented = [...doc.matchAll(/^\| `(\w+)` \|/gm)].map(([, name]) => name);
    expect(documented).toEqual(meta.parameters);
    for (const name of meta.parameters) expect(Object.keys(PARAMETERS)).toContain(name);
  });

  it('reads just the parameters it says it reads', () => {
    const inBody = source.slice(source.indexOf('export const'));
    expect(Object.keys(PARAMETERS).filter((name) => new RegExp(`\\b${name}\\b`).test(inBody)).sort()).toEqual([...meta.parameters].sort());
  });

  it('has a test with cases of both kinds', () => {
    expect(test).toMatch(/const applies: readonly Applies\[\] = \[\s*\{/);
    expect(test).toMatch(/const doesNotApply: readonly DoesNotApply\[\] = \[\s*\{/);
  });
});

describe('npm run new:rule', () => {
  const root = mkdtempSync(join(tmpdir(), 'wallcourse-rule-'));
  afterAll(() => rmSync(root, { recursive: true }));
  for (const folder of [RULE_FOLDER, TEST_FOLDER]) mkdirSync(join(root, folder), { recursive: true });

  it('writes rule, doc and test, and puts the rule into the registry', () => {
    newRule(root, 'top-protect');
    newRule(root, 'gable-edge');
    expect(ruleIds(root)).toEqual(['gable-edge', 'top-protect']);
    for (const { path, text } of ruleFiles('gable-edge')) expect(read(join(root, path))).toBe(text);
    expect(read(join(root, 'src/domain/reinforcement/registry.ts'))).toContain('export const RULES: readonly Rule[] = [\n  gableEdge,\n  topProtect,\n];');
  });

  it('overwrites nothing and takes only an id', () => {
    expect(() => newRule(root, 'top-protect')).toThrow('exists');
    expect(() => newRule(root, '../escape')).toThrow('lower-case words');
    expect(() => newRule(root, '')).toThrow('lower-case words');
  });
});
