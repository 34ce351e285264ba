/** Printed on every quote, drawing and checklist. */
export const CAUTIONS: readonly string[] = [
  'These quantities and this advice are a count of forms and material. They are not engineering.',
  'Local codes and the licensed design professional of the project decide; where they differ from this paper, they hold.',
  'Bracing, scaffolds and the rate of the pour are the responsibility of the contractor.',
  'Nobody stands under or beside a wall on its low side while it is being filled.',
  'Watch the forms during the pour. When one moves, stop, secure it, and call before you go on.',
];
