import type { FastifyReply } from 'fastify';
import type { Log } from '../telemetry/log.js';
import type { Metrics } from '../telemetry/metrics.js';
import { correlationId } from '../telemetry/correlation.js';
import { problemOf, type Problem } from '../refusals/refusal.js';
import { refusalOf } from '../refusals/refusal-of.js';

export const PROBLEM_JSON = 'application/problem+json; charset=utf-8';

/** What a stranger is told of a defect: nothing but the id under which it stands in the log. */
function defectProblem(): Problem {
  return {
    type: 'urn:wallcourse:defect',
    code: 'defect',
    title: 'Something is wrong on our side',
    status: 500,
    detail: 'It has been written down under the correlation id; tell it when you ask.',
    errors: [],
    correlation: correlationId(),
  };
}

/** Turns what was thrown into the answer, the same wherever it was thrown; defects are logged. */
export class ProblemAnswer {
  constructor(
    private readonly log: Log,
    private readonly metrics: Metrics,
  ) {}

  problem(error: unknown): Problem {
    const refusal = refusalOf(error);
    if (refusal !== null) {
      this.metrics.count('wallcourse_refusals_total', 'Requests refused, by code', { code: refusal.code });
      return problemOf(refusal);
    }
    this.metrics.count('wallcourse_defects_total', 'Errors that are ours');
    this.log.error({ err: error }, 'defect');
    return defectProblem();
  }

  send(error: unknown, reply: FastifyReply): void {
    const problem = this.problem(error);
    if (problem.status === 401) void reply.header('www-authenticate', 'Bearer');
    if (problem.status === 503) void reply.header('retry-after', '1');
    void reply.status(problem.status).type(PROBLEM_JSON).send(JSON.stringify(problem));
  }
}
