import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { buildSchema } from 'graphql';

interface Document {
  readonly openapi: string;
  readonly paths: Readonly<
    Record<
      string,
      Readonly<Record<string, { readonly responses: Readonly<Record<string, unknown>>; readonly operationId: string }>>
    >
  >;
  readonly components: { readonly schemas: Readonly<Record<string, object>> };
}

const document = JSON.parse(readFileSync('shared/contracts/openapi.json', 'utf8')) as Document;

function references(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    key === '$ref' && typeof inner === 'string' ? [inner] : references(inner),
  );
}

describe('openapi.json', () => {
  it('is OpenAPI 3.1', () => {
    expect(document.openapi).toBe('3.1.0');
  });

  it.each(Object.keys(document.components.schemas))('the component %s is a schema of the 2020-12 dialect', (name) => {
    const ajv = new Ajv2020({
      strict: true,
      allowUnionTypes: true,
      formats: { uuid: true, email: true, binary: true },
      keywords: ['example', 'components'],
    });
    ajv.addSchema({ $id: 'document', components: { schemas: document.components.schemas } });
    expect(typeof ajv.compile({ $ref: `document#/components/schemas/${name}` })).toBe('function');
  });

  it('names no component that it does not hold', () => {
    const held = new Set(Object.keys(document.components.schemas).map((name) => `#/components/schemas/${name}`));
    expect([...new Set(references(document))].filter((reference) => !held.has(reference))).toEqual([]);
  });

  it('has one name for every operation', () => {
    const names = Object.values(document.paths).flatMap((path) => Object.values(path).map(({ operationId }) => operationId));
    expect(names).toHaveLength(new Set(names).size);
  });

  it('every route under /v1 but those that describe the API says how it refuses', () => {
    const silent = Object.entries(document.paths)
      .filter(([path]) => path.startsWith('/v1/'))
      .flatMap(([path, operations]) =>
        Object.entries(operations)
          .filter(([, { responses }]) => !responses['default'])
          .map(([method]) => `${method} ${path}`),
      );
    expect(silent).toEqual([]);
  });
});

describe('schema.graphql', () => {
  it('is a schema', () => {
    const schema = buildSchema(readFileSync('shared/contracts/schema.graphql', 'utf8'));
    expect(Object.keys(schema.getQueryType()!.getFields()).sort()).toEqual(['job', 'jobs', 'me', 'quote', 'ticket', 'tickets']);
  });
});
