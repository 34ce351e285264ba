import { GraphQLError, type ExecutionResult } from 'graphql';
import type { ProblemAnswer } from '../../platform/http/problem-answer.js';
import { problemOf, Refusal, type Problem } from '../../platform/refusals/refusal.js';

interface Formatted {
  readonly statusCode: number;
  readonly response: ExecutionResult;
}

/** Errors of an operation as the client sees them: the refusal's code in `extensions.code`, nothing of a defect but its correlation id. */
export function graphErrors(answer: ProblemAnswer): (execution: ExecutionResult) => Formatted {
  const shown = (error: GraphQLError): GraphQLError => {
    const problem = problemIn(error, answer);
    const { detail, status, title, type, ...extensions } = problem;
    return new GraphQLError(detail, { nodes: error.nodes ?? null, source: error.source, positions: error.positions, path: error.path, extensions: { ...extensions, status, title, type } });
  };
  return (execution) => {
    const executed = execution.data !== null && execution.data !== undefined;
    const errors = (execution.errors ?? []).map(shown);
    return { statusCode: executed ? 200 : Number(errors[0]?.extensions['status'] ?? 200), response: { data: execution.data ?? null, errors } };
  };
}

/** What the operation itself got wrong has no thrown error behind it: it cannot be read, or asks for what there is not. */
function problemIn(error: GraphQLError, answer: ProblemAnswer): Problem {
  const cause = error.originalError ?? error;
  if (cause !== error && !(cause instanceof GraphQLError)) return answer.problem(cause);
  return problemOf(new Refusal('unreadable', error.message));
}
