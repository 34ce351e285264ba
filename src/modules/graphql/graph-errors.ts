import { GraphQLError, type ExecutionResult } from 'graphql';
import type { ProblemAnswer } from '../../platform/http/problem-answer.js';
import { problemOf, Refusal, type Problem } from '../../platform/refusals/refusal.js';

interface Formatted {
  readonly statusCode: number;
  readonly response: ExecutionResult;
}

/** Errors as the client sees them: a refusal's code in `extensions.code`, nothing of a defect but its correlation id. */
export function graphErrors(answer: ProblemAnswer): (execution: ExecutionResult) => Formatted {
  return (execution) => {
    const executed = execution.data !== null && execution.data !== undefined;
    const errors = (execution.errors ?? []).flatMap((error) => shown(error, answer));
    return {
      statusCode: executed ? 200 : Number(errors[0]?.extensions['status'] ?? 200),
      response: { data: execution.data ?? null, errors },
    };
  };
}

function shown(error: GraphQLError, answer: ProblemAnswer): GraphQLError[] {
  const cause: unknown = error.originalError ?? error;
  if (cause instanceof Refusal) return [told(error, answer.problem(cause))];
  const faults = faultsIn(cause);
  if (faults) return faults.map((fault) => told(fault, problemOf(new Refusal('unreadable', fault.message))));
  return [
    told(error, cause instanceof GraphQLError ? problemOf(new Refusal('unreadable', error.message)) : answer.problem(cause)),
  ];
}

/** What is wrong with an operation that could not be carried out at all; the server wraps it in one error of its own. */
function faultsIn(cause: unknown): readonly GraphQLError[] | null {
  if (!(cause instanceof Error) || !('errors' in cause) || !Array.isArray(cause.errors)) return null;
  return cause.errors.map((fault: unknown) =>
    fault instanceof GraphQLError ? fault : new GraphQLError(fault instanceof Error ? fault.message : String(fault)),
  );
}

function told({ nodes, source, positions, path }: GraphQLError, { detail, ...extensions }: Problem): GraphQLError {
  return new GraphQLError(detail, { nodes: nodes ?? null, source, positions, path, extensions });
}
