import { VARIABLES } from './variables.js';

/** The configuration as the README's table of it. */
export function configurationTable(): string {
  const rows = Object.entries(VARIABLES).map(([name, { default: usual, meaning }]) => `| \`${name}\` | ${usual === '' ? '' : `\`${usual}\``} | ${meaning} |`);
  return ['| variable | default | meaning |', '|---|---|---|', ...rows].join('\n');
}
