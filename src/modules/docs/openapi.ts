import type { INestApplication } from '@nestjs/common';
import { DocumentBuilder, SwaggerModule, type OpenAPIObject } from '@nestjs/swagger';
import { z } from 'zod';
import { TickBody } from '../checklists/checklists.schemas.js';
import { ALSO_AS } from '../contract/answers.js';
import { PriceListDocument } from '../prices/prices.schemas.js';
import { ScheduleIn } from '../schedules/schedules.schemas.js';

const TITLE = 'Wallcourse';
const DESCRIPTION =
  'Wall schedule in; counted, checked, priced, explainable quote out. What no rule can settle becomes a ticket.';

type Converted = { readonly schema: Record<string, unknown>; readonly components: Record<string, Record<string, unknown>> };

/** zod's own JSON schema of the 2020-12 dialect, which OpenAPI 3.1 is written in. */
function converted(schema: unknown, { schemaType }: { readonly schemaType: 'input' | 'output' }): Converted | undefined {
  if (!(schema instanceof z.ZodType)) return undefined;
  const {
    $schema: _,
    $defs,
    ...own
  } = z.toJSONSchema(schema, { target: 'draft-2020-12', io: schemaType }) as Record<string, unknown>;
  return { schema: own, components: ($defs ?? {}) as Converted['components'] };
}

/** OpenAPI 3.1 of the running application. */
export function openApiDocument(app: INestApplication, version: string): OpenAPIObject {
  const config = new DocumentBuilder()
    .setOpenAPIVersion('3.1.0')
    .setTitle(TITLE)
    .setDescription(DESCRIPTION)
    .setVersion(version)
    .addBearerAuth()
    .build();
  const operationIdFactory = (controller: string, method: string) =>
    `${controller.replace('Controller', '').toLowerCase()}.${method}`;
  return completed(
    SwaggerModule.createDocument(app, config, {
      operationIdFactory,
      autoTagControllers: false,
      standardSchemaConverter: converted as never,
    }),
  );
}

type Operation = NonNullable<OpenAPIObject['paths'][string]['get']>;

const METHODS = ['get', 'put', 'post', 'patch', 'delete'] as const;
const IDEMPOTENCY_KEY = {
  name: 'Idempotency-Key',
  in: 'header',
  required: false,
  schema: { type: 'string', maxLength: 200 },
  description: 'The same key and body are carried out once; the answer is repeated',
} as const;

const filesAsJson = (path: string): z.ZodType => (path === '/v1/price-lists' ? PriceListDocument : ScheduleIn);

/** A body that may be JSON or a form has two shapes; the framework knows one. */
function nameJsonBody(document: OpenAPIObject, path: string, operation: Operation): void {
  const body = operation.requestBody;
  if (!body || !('content' in body) || !body.content['multipart/form-data']) return;
  const form = body.content['multipart/form-data'].schema;
  const takesFiles = form !== undefined && 'properties' in form && form.properties?.['files'] !== undefined;
  const { schema, components } = converted(takesFiles ? filesAsJson(path) : TickBody, { schemaType: 'input' })!;
  const inComponents = (text: string) => text.replaceAll('#/$defs/', '#/components/schemas/');
  document.components!.schemas = { ...document.components!.schemas, ...JSON.parse(inComponents(JSON.stringify(components))) };
  body.content['application/json'] = { schema: JSON.parse(inComponents(JSON.stringify(schema))) };
}

/** What the platform does for every route, and the one route that is not Nest's. */
function completed(document: OpenAPIObject): OpenAPIObject {
  for (const [path, operations] of Object.entries(document.paths)) {
    for (const method of METHODS) {
      const operation = operations[method];
      if (!operation) continue;
      nameProblem(operation);
      nameJsonBody(document, path, operation);
      nameOtherTypes(operation as Operation & { [ALSO_AS]?: readonly string[] });
      const own = (operation.parameters ?? []).filter(
        (parameter) => !('name' in parameter && parameter.in === 'header' && parameter.name === 'accept'),
      );
      operation.parameters = method === 'post' ? [...own, IDEMPOTENCY_KEY] : own;
    }
  }
  document.paths['/graphql'] = { post: GRAPHQL };
  return document;
}

function nameOtherTypes(operation: Operation & { [ALSO_AS]?: readonly string[] }): void {
  const answer = operation.responses['200'];
  for (const type of operation[ALSO_AS] ?? []) if (answer && 'content' in answer && answer.content) answer.content[type] = { schema: { type: 'string' } };
  delete operation[ALSO_AS];
}

function nameProblem(operation: Operation): void {
  const refusal = operation.responses['default'];
  if (!refusal || !('content' in refusal) || !refusal.content) return;
  const { 'application/json': body } = refusal.content;
  if (body) refusal.content = { 'application/problem+json': body };
}

const GRAPHQL: Operation = {
  operationId: 'graphql',
  summary: 'The same answers as a graph: see schema.graphql',
  tags: ['graphql'],
  security: [{ bearer: [] }],
  requestBody: {
    required: true,
    content: {
      'application/json': {
        schema: { type: 'object', required: ['query'], properties: { query: { type: 'string' }, variables: { type: 'object' } } },
      },
    },
  },
  responses: {
    200: {
      description: 'Data and errors; `extensions.code` is the code of the refusal',
      content: { 'application/json': { schema: { type: 'object' } } },
    },
  },
};
