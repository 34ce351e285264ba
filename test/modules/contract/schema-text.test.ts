import { describe, expect, it } from '@jest/globals';
import { buildSchema } from 'graphql';
import { z } from 'zod';
import { schemaText } from '../../../src/modules/contract/schema-text.js';

const Part = z.object({ label: z.string(), weight: z.number().nullable() }).meta({ id: 'SamplePart' });
const Whole = z
  .object({
    id: z.string(),
    small: z.number().int().min(0).max(1000),
    wide: z.number().int(),
    parts: z.array(Part),
    first: Part.nullable(),
    notes: z.array(z.string()).optional(),
    numbers: z.record(z.string(), z.union([z.number(), z.string()])),
    state: z.enum(['half-done', 'done']),
  })
  .meta({ id: 'SampleWhole' });

describe('schemaText', () => {
  it('writes one type for every named answer, nullability and 32-bit integers told apart', () => {
    expect(schemaText([{ schema: Whole }])).toBe(
      `type SamplePart {
  label: String!
  weight: Float
}

type SampleWhole {
  id: String!
  small: Int!
  wide: Float!
  parts: [SamplePart!]!
  first: SamplePart
  notes: [String!]
  numbers: JSON!
  state: String!
}`,
    );
  });

  it('adds the fields that a resolver answers, and the whole is a valid schema', () => {
    const text = schemaText([{ schema: Whole, added: ['children: [SampleWhole!]!'] }]);
    const schema = buildSchema(`scalar JSON\n${text}\ntype Query { whole: SampleWhole }`);
    expect(String(schema.getType('SampleWhole'))).toBe('SampleWhole');
    expect(text).toContain('  children: [SampleWhole!]!\n}');
  });

  it('refuses an answer inside an answer that has no name', () => {
    const nameless = z.object({ inner: z.object({ x: z.number() }) }).meta({ id: 'SampleNameless' });
    expect(() => schemaText([{ schema: nameless }])).toThrow(
      'SampleNameless.inner: an answer inside an answer needs a name (meta id)',
    );
  });
});
