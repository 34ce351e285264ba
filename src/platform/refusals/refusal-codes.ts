/** Every way in which a request can be refused, and its HTTP status. GraphQL tells the same code in `extensions.code`. */
export const REFUSALS = {
  unreadable: { status: 400, title: 'The request cannot be read' },
  unauthenticated: { status: 401, title: 'A valid bearer token is needed' },
  forbidden: { status: 403, title: 'Your role may not do this' },
  'not-found': { status: 404, title: 'There is no such thing' },
  'not-acceptable': { status: 406, title: 'No representation that you accept' },
  'illegal-move': { status: 409, title: 'Not from this state' },
  'open-hold': { status: 409, title: 'A question that holds the quote is still open' },
  'already-running': { status: 409, title: 'The same request is being carried out' },
  stale: { status: 412, title: 'It was changed by someone else meanwhile' },
  'too-large': { status: 413, title: 'More than is taken at once' },
  'wrong-type': { status: 415, title: 'This is not a kind of file that is read here' },
  invalid: { status: 422, title: 'The content does not hold together' },
  'version-missing': { status: 428, title: 'Say which version you change: If-Match is required' },
  'too-many': { status: 429, title: 'Too many requests' },
  busy: { status: 503, title: 'Too busy just now; try again' },
} as const satisfies Record<string, { status: number; title: string }>;

export type RefusalCode = keyof typeof REFUSALS;
