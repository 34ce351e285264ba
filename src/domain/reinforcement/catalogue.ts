import { RULES } from './registry.js';
import type { Rule } from './rule.js';

/** The rules as a page: one row each, from what the rules say of themselves. */
export function catalogueText(rules: readonly Rule[] = RULES): string {
  const rows = rules.map(({ meta }) => {
    const page = `../../src/domain/reinforcement/rules/${meta.id}.md`;
    const parameters = meta.parameters.map((name) => `\`${name}\``).join(', ');
    return `| [${meta.id}](${page}) | ${meta.title} | ${meta.trigger} | ${meta.consumes.join(', ') || 'nothing'} | ${parameters || 'none'} | ${meta.basis} |`;
  });
  return [
    '# Reinforcement rules',
    '',
    'What keeps the forms together until the concrete is hard. Generated from the rules; every number is a parameter of the form range.',
    '',
    '| rule | what it does | applies to | consumes | parameters | basis |',
    '|---|---|---|---|---|---|',
    ...rows,
    '',
  ].join('\n');
}
