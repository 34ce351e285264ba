import { applyDecorators, HttpCode, SerializeOptions } from '@nestjs/common';
import { ApiBearerAuth, ApiDefaultResponse, ApiExtension, ApiHeader, ApiOperation, ApiResponse } from '@nestjs/swagger';
import type { z } from 'zod';
import { rolesOf, type Permission } from '../people/permissions.js';
import { ProblemAnswer } from './problem.schemas.js';

/** Where the document keeps the other media types until it is completed: the framework writes one content for a status. */
export const ALSO_AS = 'x-also-as';

interface Told {
  readonly summary: string;
  /** Who may: shown in the document, held by the service. Null where nobody needs a token. */
  readonly permission: Permission | null;
  readonly status?: number;
  /** A second status, which the handler sets itself. */
  readonly orStatus?: number;
  readonly ifMatch?: 'required' | 'honoured';
  /** Media types that the same answer is also told as. */
  readonly alsoAs?: readonly string[];
}

/** What a handler answers, said once: to the client as a status, to the serializer as a schema, to the document as both. */
export function Answers(schema: z.ZodType, told: Told): MethodDecorator {
  const { status = 200 } = told;
  return applyDecorators(
    SerializeOptions({ schema } as never),
    ...(told.orStatus === undefined
      ? [HttpCode(status)]
      : [ApiResponse({ status: told.orStatus, standardSchema: schema } as never)]),
    ApiResponse({ status, standardSchema: schema } as never),
    ...documented(told),
  );
}

/** A handler whose answer is not JSON: it names its media types itself. */
export function AnswersRaw(mediaTypes: readonly string[], told: Told): MethodDecorator {
  const content = Object.fromEntries(mediaTypes.map((type) => [type, { schema: { type: 'string' as const } }]));
  return applyDecorators(ApiResponse({ status: told.status ?? 200, content }), ...documented(told));
}

function documented(told: Told): MethodDecorator[] {
  return [
    ApiOperation({ summary: told.summary }),
    ApiDefaultResponse({ description: 'A refusal', standardSchema: ProblemAnswer } as never),
    ...(told.ifMatch
      ? [
          ApiHeader({
            name: 'If-Match',
            required: told.ifMatch === 'required',
            description: 'ETag of the version that is changed',
          }),
        ]
      : []),
    ...(told.alsoAs ? [ApiExtension(ALSO_AS, told.alsoAs)] : []),
    ...(told.permission ? [ApiBearerAuth(), ApiExtension('x-roles', [...rolesOf(told.permission)])] : []),
  ];
}
