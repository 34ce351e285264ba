/** Words of a table's cells by what they stand for; the document's own words need no entry. Plain: lower-case letters and digits. */
export type CellWords = ReadonlyMap<string, string>;

const meaning = (words: Readonly<Record<string, readonly string[]>>): CellWords =>
  new Map(Object.entries(words).flatMap(([meant, written]) => written.map((word) => [word, meant] as const)));

export const HANDS = meaning({
  left: ['l', 'lh', 'lhs', 'lefthand', 'leftside', 'lefthandside', 'totheleft', 'onleft'],
  right: ['r', 'rh', 'rhs', 'righthand', 'rightside', 'righthandside', 'totheright', 'onright'],
});
export const JOINTS = meaning({
  corner: ['c', 'cnr', 'l', 'ljoint', 'ljunction', 'lcorner'],
  tee: ['t', 'tjoint', 'tjunction', 'teejoint', 'teejunction', 'tintersection'],
  free: ['f', 'freeend', 'open', 'openend', 'none', 'loose'],
});
export const WALL_ENDS = meaning({
  start: ['s', 'st', 'from', 'beginning', 'begin', 'first', '1'],
  end: ['e', 'to', 'finish', 'last', '2'],
});
export const FACES = meaning({
  outside: ['o', 'out', 'ext', 'exterior', 'outer', 'outsideface', 'outerface', 'exteriorface'],
  inside: ['i', 'in', 'int', 'interior', 'inner', 'insideface', 'innerface', 'interiorface'],
});
export const FLUSH = meaning({
  outside: ['o', 'out', 'ext', 'exterior', 'outer', 'outsideface', 'outerface', 'exteriorface'],
  inside: ['i', 'in', 'int', 'interior', 'inner', 'insideface', 'innerface', 'interiorface'],
  centre: ['c', 'ctr', 'middle', 'centred', 'centered'],
});
export const FACE_COUNTS = meaning({ one: ['1', 'single', 'oneface', '1face', 'oneside'], both: ['2', 'two', 'double', 'bothfaces', 'bothsides', '2faces', 'twofaces'] });
export const FEATURE_KINDS = meaning({
  ledge: ['ledges'],
  'taper-top': ['taper', 'taperedtop', 'tapertops'],
  gable: ['gables', 'gableend', 'gablewall'],
  'core-change': ['corechanges', 'changeofcore', 'coresize', 'corestep'],
});
export const GRADES = meaning({ above: ['abovegrade', 'ag'], below: ['belowgrade', 'bg'] });
export const LININGS = meaning({ buck: ['bucks', 'bucked'], 'end-closure': ['endclosures', 'closure', 'closures'] });
export const MEASURES = meaning({
  concrete: ['concretehole', 'concreteopening', 'holeinconcrete'],
  rough: ['ro', 'roughopening', 'roughsize'],
});
export const DIMENSION_LINES = meaning({
  'foam-face': ['foam', 'faceoffoam', 'formface', 'faceofform'],
  'concrete-face': ['concrete', 'faceofconcrete'],
  axis: ['centreline', 'centerline', 'cl', 'centre', 'center'],
});
