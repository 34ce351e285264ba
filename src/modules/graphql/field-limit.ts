import {
  GraphQLError,
  Kind,
  type FragmentDefinitionNode,
  type SelectionSetNode,
  type ValidationContext,
  type ValidationRule,
} from 'graphql';

/** Far above everything the schema has, far below what would keep the server busy. */
export const MOST_FIELDS = 1_000;

/**
 * Refuses an operation that asks for more fields than there is any use for, each counted as often as aliases and fragments repeat it.
 * Fragments are counted once and added where they are spread, so that no nesting of them makes the counting itself long.
 */
export const fieldLimit: ValidationRule = (context: ValidationContext) => ({
  OperationDefinition(node) {
    const fields = countedIn(node.selectionSet, context, new Map());
    if (fields > MOST_FIELDS) {
      context.reportError(new GraphQLError(`The operation asks for more than ${MOST_FIELDS} fields.`, { nodes: [node] }));
    }
  },
});

function countedIn(set: SelectionSetNode, context: ValidationContext, known: Map<string, number>): number {
  return set.selections.reduce((sum, selection) => {
    if (selection.kind === Kind.FIELD)
      return sum + 1 + (selection.selectionSet ? countedIn(selection.selectionSet, context, known) : 0);
    if (selection.kind === Kind.INLINE_FRAGMENT) return sum + countedIn(selection.selectionSet, context, known);
    return sum + fragmentCount(context.getFragment(selection.name.value), context, known);
  }, 0);
}

/** A fragment that spreads itself counts nothing here: another rule refuses it. */
function fragmentCount(
  fragment: FragmentDefinitionNode | null | undefined,
  context: ValidationContext,
  known: Map<string, number>,
): number {
  if (!fragment) return 0;
  const name = fragment.name.value;
  const before = known.get(name);
  if (before !== undefined) return before;
  known.set(name, 0);
  const count = countedIn(fragment.selectionSet, context, known);
  known.set(name, count);
  return count;
}
