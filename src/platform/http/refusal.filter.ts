import { Catch, type ArgumentsHost, type ExceptionFilter } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import type { ProblemAnswer } from './problem-answer.js';

/** Every error of a REST handler becomes problem+json; those of GraphQL go on to its own formatter, which reads the same table. */
@Catch()
export class RefusalFilter implements ExceptionFilter {
  constructor(private readonly answer: ProblemAnswer) {}

  catch(error: unknown, host: ArgumentsHost): void {
    if (host.getType<string>() === 'graphql') throw error;
    const reply = host.switchToHttp().getResponse<FastifyReply>();
    if (!reply.sent) this.answer.send(error, reply);
  }
}
