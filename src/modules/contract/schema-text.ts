import { z } from 'zod';

/** The parts of JSON schema that an answer uses. */
interface Shape {
  readonly $ref?: string;
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly required?: readonly string[];
  readonly items?: Shape;
  readonly anyOf?: readonly Shape[];
  readonly maximum?: number;
  readonly description?: string;
}

const INT_MAX = 2_147_483_647;
const SCALARS: Readonly<Record<string, string>> = { string: 'String', boolean: 'Boolean', number: 'Float' };

/** One answer and the fields a resolver adds to it, as lines of schema language. */
export interface GraphType {
  readonly schema: z.ZodType;
  readonly added?: readonly string[];
}

/**
 * GraphQL object types of answers, written from the zod schemas that REST answers with: one shape, two doors.
 *
 * A record of mixed values is the scalar `JSON`; an integer that may pass 32 bits is a `Float`.
 */
export function schemaText(types: readonly GraphType[]): string {
  const written = new Map<string, string>();
  for (const { schema, added = [] } of types) {
    const document = z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'output' }) as Shape & {
      readonly $defs?: Readonly<Record<string, Shape>>;
    };
    for (const [name, shape] of Object.entries(document.$defs ?? {})) {
      if (!written.has(name) && shape.properties) written.set(name, typeText(name, shape, []));
    }
    if (added.length > 0) {
      const name = nameOf(document);
      written.set(name, typeText(name, document.$defs![name]!, added));
    }
  }
  return [...written.keys()]
    .sort()
    .map((name) => written.get(name))
    .join('\n\n');
}

function typeText(name: string, shape: Shape, added: readonly string[]): string {
  const required = new Set(shape.required);
  const fields = Object.entries(shape.properties!).map(
    ([field, value]) => `  ${field}: ${typeOf(value, `${name}.${field}`, required.has(field))}`,
  );
  return `type ${name} {\n${[...fields, ...added.map((line) => `  ${line}`)].join('\n')}\n}`;
}

function typeOf(shape: Shape, place: string, required: boolean): string {
  const kinds = typeof shape.type === 'string' ? [shape.type] : (shape.type ?? []);
  const choices = shape.anyOf?.filter(({ type }) => type !== 'null');
  const nullable = !required || kinds.includes('null') || (shape.anyOf !== undefined && choices!.length < shape.anyOf.length);
  const mark = nullable ? '' : '!';
  if (choices?.length === 1) return `${typeOf(choices[0]!, place, false)}${mark}`;
  if (shape.$ref) return `${shape.$ref.replace('#/$defs/', '')}${mark}`;
  const [kind, ...others] = kinds.filter((type) => type !== 'null');
  if (kind === undefined || others.length > 0 || choices) return `JSON${mark}`;
  if (kind === 'array') return `[${typeOf(shape.items!, place, true)}]${mark}`;
  if (kind === 'integer') return `${(shape.maximum ?? Infinity) <= INT_MAX ? 'Int' : 'Float'}${mark}`;
  if (kind === 'object' && shape.properties) throw new Error(`${place}: an answer inside an answer needs a name (meta id)`);
  return `${kind === 'object' ? 'JSON' : SCALARS[kind]}${mark}`;
}

function nameOf(document: Shape): string {
  if (!document.$ref) throw new Error('an answer needs a name (meta id)');
  return document.$ref.replace('#/$defs/', '');
}
