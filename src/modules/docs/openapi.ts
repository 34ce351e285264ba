import type { INestApplication } from '@nestjs/common';
import { DocumentBuilder, SwaggerModule, type OpenAPIObject } from '@nestjs/swagger';
import { z } from 'zod';

const TITLE = 'Wallcourse';
const DESCRIPTION = 'Wall schedule in; counted, checked, priced, explainable quote out. What no rule can settle becomes a ticket.';

type Converted = { readonly schema: Record<string, unknown>; readonly components: Record<string, Record<string, unknown>> };

/** zod's own JSON schema of the 2020-12 dialect, which OpenAPI 3.1 is written in. */
function converted(schema: unknown, { schemaType }: { readonly schemaType: 'input' | 'output' }): Converted | undefined {
  if (!(schema instanceof z.ZodType)) return undefined;
  const { $schema: _, $defs, ...own } = z.toJSONSchema(schema, { target: 'draft-2020-12', io: schemaType }) as Record<string, unknown>;
  return { schema: own, components: ($defs ?? {}) as Converted['components'] };
}

/** OpenAPI 3.1 of the running application. */
export function openApiDocument(app: INestApplication, version: string): OpenAPIObject {
  const config = new DocumentBuilder().setOpenAPIVersion('3.1.0').setTitle(TITLE).setDescription(DESCRIPTION).setVersion(version).addBearerAuth().build();
  const operationIdFactory = (controller: string, method: string) => `${controller.replace('Controller', '').toLowerCase()}.${method}`;
  return SwaggerModule.createDocument(app, config, { operationIdFactory, autoTagControllers: false, standardSchemaConverter: converted as never });
}
