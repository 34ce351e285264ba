import { z } from 'zod';
import { Id, Instant, listOf } from '../contract/contract.schemas.js';

export const Role = z.enum(['contractor', 'support', 'sales', 'admin']);

const OrganisationAnswer = z.object({ id: Id, name: z.string(), place: z.string().nullable() }).meta({ id: 'Organisation' });

export const PersonAnswer = z
  .object({
    id: Id,
    name: z.string(),
    email: z.string(),
    role: Role,
    organisation: OrganisationAnswer.nullable(),
  })
  .meta({ id: 'Person' });
export type PersonAnswer = z.infer<typeof PersonAnswer>;
export const PersonList = listOf('PersonList', PersonAnswer);

export const MeAnswer = PersonAnswer.extend({
  supplier: z.object({ code: z.string(), name: z.string(), timeZone: z.string(), currency: z.string() }).meta({ id: 'Supplier' }),
}).meta({ id: 'Me' });
export type MeAnswer = z.infer<typeof MeAnswer>;

const Name = z.string().trim().min(1).max(200);

export const PersonBody = z
  .strictObject({
    name: Name,
    email: z.email().max(200),
    role: Role,
    organisation: z
      .strictObject({ name: Name, place: z.string().trim().min(1).max(100).optional() })
      .optional()
      .meta({ description: 'Of a contractor: the organisation of this name, made if there is none. Staff have none.' }),
  })
  .refine(({ role, organisation }) => (role === 'contractor') === (organisation !== undefined), {
    path: ['organisation'],
    error: 'a contractor belongs to an organisation, staff belong to none',
  })
  .meta({ id: 'PersonIn' });
export type PersonBody = z.infer<typeof PersonBody>;

export const TokenAnswer = z
  .object({
    id: Id,
    name: z.string(),
    person: Id,
    createdAt: Instant,
    revokedAt: Instant.nullable(),
  })
  .meta({ id: 'Token' });
export type TokenAnswer = z.infer<typeof TokenAnswer>;
export const TokenList = listOf('TokenList', TokenAnswer);

export const NewTokenAnswer = TokenAnswer.extend({
  token: z.string().meta({ description: 'The bearer token. Shown this once and kept nowhere.' }),
}).meta({ id: 'NewToken' });
export type NewTokenAnswer = z.infer<typeof NewTokenAnswer>;

export const TokenBody = z.strictObject({ person: Id, name: Name }).meta({ id: 'TokenIn' });
export type TokenBody = z.infer<typeof TokenBody>;
