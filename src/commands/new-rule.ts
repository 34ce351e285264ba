import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const RULES = 'src/domain/reinforcement/rules';
const TESTS = 'test/domain/reinforcement/rules';
const REGISTRY = 'src/domain/reinforcement/registry.ts';

const exportName = (id: string): string => id.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());

/** The three files of a new rule: it does nothing yet, and its test fails until it has cases. */
export function ruleFiles(id: string): readonly { readonly path: string; readonly text: string }[] {
  const title = 'Says in one sentence what the rule does.';
  return [
    { path: `${RULES}/${id}.rule.ts`, text: ruleText(id, title) },
    { path: `${RULES}/${id}.md`, text: docText(id, title) },
    { path: `${TESTS}/${id}.rule.test.ts`, text: testText(id) },
  ];
}

function ruleText(id: string, title: string): string {
  return `import type { Rule, RuleMeta } from '../rule.js';

const meta: RuleMeta = {
  id: '${id}',
  title: '${title}',
  trigger: 'what in the laid job sets the rule off',
  consumes: [],
  parameters: [],
  basis: 'common practice',
};

export const ${exportName(id)}: Rule = {
  meta,
  evaluate() {
    return { materials: [], instructions: [], findings: [] };
  },
};
`;
}

function docText(id: string, title: string): string {
  return `# ${id}

${title}

Applies to: what in the laid job sets the rule off.
Consumes: nothing.

## Why

What moves, and what holds it.

## When not to use it

Where something else holds it.

## Parameters

None.

## Basis

Common practice, no source.
`;
}

function testText(id: string): string {
  const name = exportName(id);
  return `import { ${name} } from '../../../../src/domain/reinforcement/rules/${id}.rule.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const applies: readonly Applies[] = [];

const doesNotApply: readonly DoesNotApply[] = [];

testRule(${name}, applies, doesNotApply);
`;
}

/** The registry of the rules given, in the order of the alphabet. */
export function registryText(ids: readonly string[]): string {
  const sorted = [...ids].sort();
  const imports = sorted.map((id) => `import { ${exportName(id)} } from './rules/${id}.rule.js';`);
  return `import type { Rule } from './rule.js';
${imports.join('\n')}

/** Every rule, in the order of the alphabet: written by \`npm run new:rule\`, held to the folder by the catalogue test. */
export const RULES: readonly Rule[] = [
${sorted.map((id) => `  ${exportName(id)},`).join('\n')}
];
`;
}

/** Ids of the rules that have a file. */
export function ruleIds(root: string): readonly string[] {
  return readdirSync(join(root, RULES))
    .filter((name) => name.endsWith('.rule.ts'))
    .map((name) => name.slice(0, -'.rule.ts'.length));
}

/** @returns the paths written @throws where the id is not kebab-case or the rule exists */
export function newRule(root: string, id: string): readonly string[] {
  if (!/^[a-z]+(-[a-z]+)+$/.test(id)) throw new Error(`a rule id is two or more lower-case words joined by hyphens, and "${id}" is not`);
  const files = ruleFiles(id);
  const existing = files.find(({ path }) => existsSync(join(root, path)));
  if (existing) throw new Error(`${existing.path} exists`);
  for (const { path, text } of files) writeFileSync(join(root, path), text);
  writeFileSync(join(root, REGISTRY), registryText(ruleIds(root)));
  return [...files.map(({ path }) => path), REGISTRY];
}

const invoked = process.argv[1] === fileURLToPath(import.meta.url);
if (invoked) {
  const written = newRule(join(fileURLToPath(import.meta.url), '..', '..', '..'), process.argv[2] ?? '');
  console.log(`${written.join('\n')}\nThe new test fails until it has cases; then npm run generate refreshes shared/docs/rules.md.`);
}
