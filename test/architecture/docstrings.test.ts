import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from '@jest/globals';
import ts from 'typescript';

const ROOT = 'src/domain/engineering';
const TAGS = ['equation', 'param', 'returns', 'valid', 'source', 'example'];
const UNITS = [
  '1', '-', 'psf', 'kg/m3', 'm/h', '°C', 'mm', 'pcf', 'ft', 'ft/h', 'in', '°F', 'deg', 'kPa', 'm', 'kN', 'kN/m', 'lb', 'lb/ft',
  'mph', 'm/s', 'km/h', 'h', 'm2', 'm3', 'ft2', 'ft3', 'kg', 'lb/ft2/h', 'kg/m2/h', 'psi', 'kN/m3', 'm3/h', 'yd3', 'yd3/h',
  'nm', 'ksi', 'MPa', 'in2', 'mm2', 'in3', 'psf/ft', 'ft·lb', 'ft·lb/ft', 'in·lb',
];

interface Tag {
  readonly name: string;
  readonly text: string;
}
interface Formula {
  readonly file: string;
  readonly name: string;
  readonly parameters: readonly string[];
  readonly tags: readonly Tag[];
}

const sourceKeys = new Set((JSON.parse(readFileSync('shared/reference/bibliography.json', 'utf8')) as { sources: { key: string }[] }).sources.map((s) => s.key));
const files = readdirSync(ROOT, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .sort()
  .map((file) => join(ROOT, file));
const formulas = files.flatMap(formulasOf);

/** What a file exports in a way that hides a formula from `formulasOf`, or without a word on it; a file that exports nothing says so. */
function undocumented(file: string): string[] {
  const tree = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.ES2022, true);
  const exported = tree.statements.filter((each) => ts.canHaveModifiers(each) && ts.getModifiers(each)?.some((m) => m.kind === ts.SyntaxKind.ExportKeyword));
  const hidden = tree.statements.filter((each) => ts.isExportDeclaration(each) || ts.isExportAssignment(each));
  const defaults = exported.filter((each) => ts.canHaveModifiers(each) && ts.getModifiers(each)?.some((m) => m.kind === ts.SyntaxKind.DefaultKeyword));
  const expressions = exported.filter((each) => ts.isVariableStatement(each) && each.declarationList.declarations.some((d) => d.initializer && ts.isFunctionExpression(d.initializer)));
  const bare = exported.filter((each) => !ts.isTypeAliasDeclaration(each) && !ts.isInterfaceDeclaration(each) && !lists(each) && !/\w/.test(commentOf(tree, each)));
  const nothing = exported.length + hidden.length === 0 ? ['exports nothing'] : [];
  return [...nothing, ...[...hidden, ...defaults, ...expressions, ...bare].map((each) => each.getText().split('\n')[0]!)];
}

/** The names of a table or list that stands beside it, `X_NAMES = Object.keys( X )`, speak for themselves. */
const lists = (statement: ts.Statement): boolean => ts.isVariableStatement(statement) && /Object\.keys\(/.test(statement.getText());

function commentOf(tree: ts.SourceFile, statement: ts.Statement): string {
  const last = (ts.getLeadingCommentRanges(tree.text, statement.getFullStart()) ?? []).at(-1);
  return last ? tree.text.slice(last.pos, last.end) : '';
}

function formulasOf(file: string): Formula[] {
  const tree = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.ES2022, true);
  return tree.statements.flatMap((statement) => {
    const exported = ts.canHaveModifiers(statement) && ts.getModifiers(statement)?.some((m) => m.kind === ts.SyntaxKind.ExportKeyword);
    if (!exported) return [];
    if (ts.isVariableStatement(statement)) {
      const arrows = statement.declarationList.declarations.filter((d) => d.initializer && ts.isArrowFunction(d.initializer));
      return arrows.map((d) => ({ file, name: d.name.getText(), parameters: [], tags: [] }));
    }
    if (!ts.isFunctionDeclaration(statement) || !statement.name) return [];
    const parameters = statement.parameters.map((p) => p.name.getText());
    return [{ file, name: statement.name.text, parameters, tags: tagsOf(commentOf(tree, statement)) }];
  });
}

/** A tag goes on over lines until the next one. */
function tagsOf(comment: string): Tag[] {
  const lines = comment.split('\n').map((line) => line.replace(/^\s*\*?\s?/, '').replace(/\*\/\s*$/, '').trim());
  const first = lines.findIndex((line) => line.startsWith('@'));
  const tags = first < 0 ? '' : lines.slice(first).filter((line) => line !== '' && line !== '/').join(' ');
  return [...tags.matchAll(/@(\w+)\s+(.*?)(?=\s+@\w|$)/g)].map((match) => ({ name: match[1] ?? '', text: (match[2] ?? '').trim() }));
}

const texts = (formula: Formula, name: string): string[] => formula.tags.filter((tag) => tag.name === name).map((tag) => tag.text);

function read(written: string): unknown {
  if (written === 'true' || written === 'false') return written === 'true';
  return written.startsWith("'") ? written.slice(1, -1) : Number(written);
}

function argumentsOf(formula: Formula, given: string): unknown[] {
  const values: Record<string, unknown> = {};
  const assignment = /([\w.]+) = ('[^']*'|true|false|-?[\d.]+)(?:, |$)/g;
  const consumed = given.replace(assignment, (_, path: string, written: string) => {
    const [head = '', field] = path.split('.');
    if (field === undefined) values[head] = read(written);
    else values[head] = { ...(values[head] as object | undefined), [field]: read(written) };
    return '';
  });
  expect(consumed.trim()).toBe('');
  return formula.parameters.map((name) => {
    expect(Object.keys(values)).toContain(name);
    return values[name];
  });
}

function expectPrinted(actual: unknown, printed: string): void {
  const expected = read(printed);
  if (typeof expected !== 'number') expect(actual).toEqual(expected);
  else {
    const decimals = printed.split('.')[1]?.length ?? 0;
    expect(Math.abs((actual as number) - expected)).toBeLessThanOrEqual(0.5 * 10 ** -decimals);
  }
}

const follow = (value: unknown, path: string): unknown => path.split('.').reduce<unknown>((at, key) => (at as Record<string, unknown>)[key], value);

describe('published formulas', () => {
  it.each(files)('%s exports something, each with a word on it and where it is read here', (file) => expect(undocumented(file)).toEqual([]));

  it('are found', () => {
    expect(formulas.map((formula) => formula.name)).toEqual(
      expect.arrayContaining(['pressureByEquationA', 'pressureByEquationB', 'unitWeightCoefficient', 'chemistryCoefficient', 'wallFormPressure', 'riseLimit']),
    );
  });

  it.each(formulas.map((formula) => [`${formula.file} ${formula.name}`, formula] as const))('%s carries the six tags in order', (_, formula) => {
    const order = formula.tags.map((tag) => tag.name).filter((name, index, all) => name !== all[index - 1]);
    expect(order).toEqual(TAGS);
    for (const name of TAGS.filter((tag) => tag !== 'param')) expect(texts(formula, name)).toHaveLength(1);
  });

  it.each(formulas.map((formula) => [`${formula.file} ${formula.name}`, formula] as const))('%s states a unit for every parameter and the result', (_, formula) => {
    for (const text of [...texts(formula, 'param'), ...texts(formula, 'returns')]) {
      expect(UNITS).toContain(/\[([^\]]+)\]$/.exec(text)?.[1]);
    }
    const documented = new Set(texts(formula, 'param').map((text) => /^\w+/.exec(text)?.[0]));
    expect([...documented].sort()).toEqual([...formula.parameters].sort());
  });

  it.each(formulas.map((formula) => [`${formula.file} ${formula.name}`, formula] as const))('%s cites sources of the bibliography', (_, formula) => {
    const cited = (texts(formula, 'source')[0] ?? '').match(/\b[a-z][a-z0-9]*(?:-[a-z0-9]+)+|\b(?:nunnally|en5466a|statics)\b/g) ?? [];
    expect(cited.length).toBeGreaterThanOrEqual(1);
    for (const key of cited) expect([...sourceKeys, 'statics']).toContain(key);
  });

  it.each(formulas.map((formula) => [`${formula.file} ${formula.name}`, formula] as const))('%s gives its example', async (_, formula) => {
    const [given = '', result = ''] = (texts(formula, 'example')[0] ?? '').split(' → ');
    expect([given, result]).not.toContain('');
    const module = (await import(`../../${formula.file}`)) as Record<string, (...values: unknown[]) => unknown>;
    const actual = module[formula.name]?.(...argumentsOf(formula, given));
    const [left = '', right] = result.split(' = ');
    if (right === undefined) expectPrinted(actual, left);
    else expectPrinted(follow(actual, left), right);
  });
});
