/** What schema.prisma says of the database, read from its text: enough of the language for our file, and an error for anything else. */
export interface PrismaModel {
  readonly enums: Readonly<Record<string, readonly string[]>>;
  readonly tables: Readonly<Record<string, PrismaTable>>;
}

export interface PrismaTable {
  readonly columns: Readonly<Record<string, { readonly type: string; readonly required: boolean; readonly default: string | null }>>;
  readonly key: readonly string[];
  readonly indexes: Readonly<Record<string, { readonly unique: boolean; readonly columns: readonly string[] }>>;
  readonly references: Readonly<Record<string, { readonly columns: readonly string[]; readonly table: string; readonly to: readonly string[] }>>;
}

const TYPES: Readonly<Record<string, string>> = {
  String: 'text', 'String @db.Uuid': 'uuid', Int: 'integer', BigInt: 'bigint', Json: 'jsonb', Boolean: 'boolean', Bytes: 'bytea', Float: 'double precision',
  'DateTime @db.Date': 'date', 'DateTime @db.Timestamptz(3)': 'timestamp(3) with time zone', 'Decimal @db.Decimal(60, 0)': 'numeric(60,0)', 'Decimal @db.Decimal(18, 6)': 'numeric(18,6)',
};

const list = (text: string): string[] => text.split(',').map((name) => name.trim());

function need(pattern: RegExp, line: string): RegExpExecArray {
  const found = pattern.exec(line);
  if (!found) throw new Error(`schema.prisma: cannot read "${line}"`);
  return found;
}

function blocks(text: string, keyword: string): [string, string[]][] {
  return [...text.matchAll(new RegExp(`^${keyword} (\\w+) \\{\\n([\\s\\S]*?)^\\}`, 'gm'))].map((match) => [
    match[1] ?? '',
    (match[2] ?? '').split('\n').map((line) => line.trim()).filter((line) => line !== '' && !line.startsWith('//')),
  ]);
}

function tableOf(lines: readonly string[], models: ReadonlySet<string>, enums: ReadonlySet<string>): PrismaTable {
  const columns: Record<string, { type: string; required: boolean; default: string | null }> = {};
  const indexes: Record<string, { unique: boolean; columns: string[] }> = {};
  const references: Record<string, { columns: string[]; table: string; to: string[] }> = {};
  let key: string[] = [];
  for (const line of lines) {
    if (line.startsWith('@@')) {
      const [, kind, names, map] = need(/^@@(id|unique|index)\(\[([^\]]+)\](?:, map: "(\w+)")?\)$/, line);
      if (kind === 'id') key = list(names ?? '');
      else indexes[map ?? ''] = { unique: kind === 'unique', columns: list(names ?? '') };
      continue;
    }
    const [, name = '', base = '', mark, rest = ''] = need(/^(\w+) +(\w+)(\?|\[\])?\s*(.*)$/, line);
    if (models.has(base)) {
      const found = /fields: \[([^\]]+)\], references: \[([^\]]+)\], onDelete: NoAction, onUpdate: NoAction, map: "(\w+)"/.exec(rest);
      if (found) references[found[3] ?? ''] = { columns: list(found[1] ?? ''), table: base, to: list(found[2] ?? '') };
      else if (mark !== '[]') throw new Error(`schema.prisma: relation without fields: "${line}"`);
      continue;
    }
    const native = /@db\.\w+(?:\([^)]*\))?/.exec(rest)?.[0];
    const type = enums.has(base) ? base : TYPES[native ? `${base} ${native}` : base];
    if (type === undefined) throw new Error(`schema.prisma: unknown type in "${line}"`);
    if (/@id\b/.test(rest)) key = [name];
    columns[name] = { type, required: mark === undefined, default: /@default\((?:dbgenerated\()?"(.*)"\)?\)/.exec(rest)?.[1] ?? null };
  }
  return { columns, key, indexes, references };
}

/** The label of an enum's value in the database, where its name there is no name in this language. */
const labelOf = (line: string): string => /@map\("(.+)"\)$/.exec(line)?.[1] ?? line;

export function readPrismaModel(text: string): PrismaModel {
  const enums = Object.fromEntries(blocks(text, 'enum').map(([name, lines]) => [name, lines.map(labelOf)]));
  const models = blocks(text, 'model');
  const names = new Set(models.map(([name]) => name));
  return { enums, tables: Object.fromEntries(models.map(([name, lines]) => [name, tableOf(lines, names, new Set(Object.keys(enums)))])) };
}
