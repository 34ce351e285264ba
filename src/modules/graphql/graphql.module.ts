import { Module, Optional } from '@nestjs/common';
import { HttpAdapterHost } from '@nestjs/core';
import { GraphQLModule } from '@nestjs/graphql';
import { MercuriusDriver, type MercuriusDriverConfig } from '@nestjs/mercurius';
import type { FastifyInstance, FastifyRequest } from 'fastify';
import { GraphQLScalarType } from 'graphql';
import { ProblemAnswer } from '../../platform/http/problem-answer.js';
import { ChecklistsModule } from '../checklists/checklists.module.js';
import { JobsModule } from '../jobs/jobs.module.js';
import { PeopleModule } from '../people/people.module.js';
import { QuotesModule } from '../quotes/quotes.module.js';
import { TakeoffsModule } from '../takeoffs/takeoffs.module.js';
import { TicketsModule } from '../tickets/tickets.module.js';
import { fieldLimit } from './field-limit.js';
import { graphErrors } from './graph-errors.js';
import { graphSchema } from './graph-schema.js';
import { ChecklistsResolver } from './checklists.resolver.js';
import { JobsResolver } from './jobs.resolver.js';
import { requireQueryText } from './query-text.js';

const PATH = '/graphql';
const DEEPEST = 12;

const JSON_SCALAR = new GraphQLScalarType({ name: 'JSON', description: 'Any JSON value', serialize: (value) => value });

const GRAPH = GraphQLModule.forRootAsync<MercuriusDriverConfig>({
  driver: MercuriusDriver,
  inject: [ProblemAnswer],
  useFactory: (answer: ProblemAnswer) => ({
    typeDefs: [graphSchema()],
    resolvers: { JSON: JSON_SCALAR },
    path: PATH,
    graphiql: false,
    queryDepth: DEEPEST,
    validationRules: [fieldLimit],
    jit: { minCount: 3, eluThreshold: 0.8, maxCompilePerTick: 1, maxQueueSize: 100 } as never,
    context: (request: FastifyRequest) => ({ actor: request.actor }),
    errorFormatter: graphErrors(answer) as never,
  }),
});

@Module({
  imports: [GRAPH, JobsModule, TakeoffsModule, ChecklistsModule, QuotesModule, TicketsModule, PeopleModule],
  providers: [JobsResolver, ChecklistsResolver],
})
export class GraphModule {
  constructor(@Optional() host?: HttpAdapterHost) {
    const server = host?.httpAdapter?.getInstance<FastifyInstance | undefined>();
    if (server) requireQueryText(server, PATH);
  }
}
