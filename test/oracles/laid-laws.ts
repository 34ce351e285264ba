import type { FormRange } from '../../src/domain/range/range.js';
import { coreOfCourse } from '../../src/domain/takeoff/index.js';
import type { LaidCourse, LaidStorey, LaidWall, Piece, Takeoff } from '../../src/domain/takeoff/index.js';

/**
 * What must hold of any laid job, said without knowing how it was laid: what is broken, in words, nothing where all holds.
 * Lengths are whole nanometres and compared with ===.
 */
export function brokenLaws(takeoff: Takeoff, range: FormRange): string[] {
  const walls = takeoff.laid.storeys.flatMap((storey) => storey.walls);
  return [
    ...walls.flatMap((wall) => [
      ...brokenHeights(wall), ...wall.courses.flatMap((course) => [...(formless(wall) ? brokenEmpty(wall, course) : brokenCourse(wall, course, range)), ...brokenJoints(wall, course)]),
      ...brokenCurve(wall, range),
    ]),
    ...brokenPieces(walls, range),
    ...brokenCuts(takeoff, walls, range),
    ...brokenBond(takeoff, range),
    ...takeoff.laid.storeys.flatMap((storey) => [...brokenLegs(storey, range), ...brokenMitres(storey, range)]),
    ...brokenHands(takeoff),
    ...brokenCornerOrders(takeoff),
  ];
}

const sum = (lengths: readonly number[]): number => lengths.reduce((total, length) => total + length, 0);

/** Courses and strips stand on one another and make the stack's height; strips only between two full courses. */
function brokenHeights({ mark, courses: all, strips, stack, gable }: LaidWall): string[] {
  const broken: string[] = [];
  let top = 0;
  const courses = all.filter(({ n }) => n <= stack.courses);
  const above = all.filter(({ n }) => n > stack.courses);
  const gableTop = above.reduce((reached, { bottom, height }) => (bottom === reached ? reached + height : NaN), stack.height);
  if (gableTop !== stack.height + (gable?.rise ?? 0)) broken.push(`${mark}: gable courses reach ${gableTop}`);
  for (const course of courses) {
    const strip = strips.find(({ afterCourse }) => afterCourse === course.n - 1);
    if (strip && strip.bottom !== top) broken.push(`${mark}: strip under course ${course.n} at ${strip.bottom}, courses reach ${top}`);
    top += strip?.height ?? 0;
    if (course.bottom !== top) broken.push(`${mark}: course ${course.n} at ${course.bottom}, courses reach ${top}`);
    top += course.height;
    if (strip && course.ripped) broken.push(`${mark}: strip under the ripped course`);
  }
  if (top !== stack.height) broken.push(`${mark}: courses reach ${top}, stack is ${stack.height}`);
  if (courses.length !== stack.courses || strips.length !== stack.strips) broken.push(`${mark}: stack and courses differ`);
  for (const { afterCourse } of strips) {
    if (afterCourse < 1 || afterCourse >= courses.length) broken.push(`${mark}: strip after course ${afterCourse}`);
  }
  return broken;
}

/** Legs, forms and voids follow one another from end to end without gap or overlap. */
function brokenCourse(wall: LaidWall, course: LaidCourse, range: FormRange): string[] {
  const where = `${wall.mark}/${course.n}`;
  const spans = [...course.pieces.filter((piece) => !piece.inside), ...course.voids].sort((a, b) => a.from - b.from);
  const broken: string[] = [];
  let at = course.from;
  for (const { from, to } of spans) {
    if (from !== at || to <= from) broken.push(`${where}: span ${from}..${to} where ${at} was reached`);
    if (![from, to].every(Number.isSafeInteger)) broken.push(`${where}: span ${from}..${to} is not whole`);
    at = to;
  }
  if (at !== course.to || sum(spans.map(({ from, to }) => to - from)) !== course.to - course.from) broken.push(`${where}: reaches ${at}, not ${course.to}`);
  for (const { opening, from, to } of course.voids) {
    const hole = wall.openings.find(({ mark }) => mark === opening)!;
    if (hole.sill > course.bottom || hole.head < course.bottom + course.height) broken.push(`${where}: ${opening} takes less than the course`);
    const stops = [Math.max(course.from, hole.formsFrom), Math.min(course.to, hole.formsTo)];
    if (from !== stops[0] || to !== stops[1]) broken.push(`${where}: void of ${opening} is not where its forms stop`);
    const back = hole.lining === 'end-closure' ? range.closure.thickness : 0;
    if (hole.formsFrom !== hole.from + back || hole.formsTo !== hole.to - back) broken.push(`${where}: forms of ${opening} stop at the wrong place`);
  }
  return broken;
}

/** A curve that no chord fits has no forms. */
const formless = ({ arc }: LaidWall): boolean => arc !== null && arc.chord === null;
const brokenEmpty = ({ mark }: LaidWall, { n, pieces }: LaidCourse): string[] => (pieces.some(({ inside }) => !inside) ? [`${mark}/${n}: forms on a curve too tight for them`] : []);

/** A length that misses a whole chord by less than this is one [nm]; radii are handed on rounded. */
const CHORD_REACH = 1_001;

/**
 * Decision 21: the chord is the longest multiple of the module that opens no more than the gap, every piece the chord between its own
 * two joints on the concave face, longer only where it is cut on the skew at a tee, and the joints stand one above the other.
 */
function brokenCurve(wall: LaidWall, range: FormRange): string[] {
  const { arc, mark, thickness, courses } = wall;
  if (!arc) return courses.some(({ pieces }) => pieces.some(({ why }) => why === 'chord')) ? [`${mark}: chords on a straight wall`] : [];
  if (arc.axisRadius - arc.concaveRadius !== thickness / 2 && Math.abs(arc.axisRadius - arc.concaveRadius - thickness / 2) > 1) return [`${mark}: radii ${arc.axisRadius} and ${arc.concaveRadius}`];
  const fits = (chord: number): boolean => chord <= range.formLength && chord <= 2 * arc.concaveRadius && (thickness * chord) / arc.concaveRadius <= range.parameters.radiusGap + 1;
  if (arc.chord === null) return fits(range.minPiece) && arc.concaveRadius > 0 ? [`${mark}: a chord of ${range.minPiece} fits`] : [];
  const broken: string[] = [];
  if (arc.chord % range.cutModule !== 0 || arc.chord < range.minPiece || !fits(arc.chord) || fits(arc.chord + range.cutModule)) broken.push(`${mark}: chord ${arc.chord}`);
  if (Math.abs(arc.gap - (thickness * arc.chord) / arc.concaveRadius) > 1) broken.push(`${mark}: gap ${arc.gap}`);
  for (const course of courses) {
    const forms = course.pieces.filter(({ inside }) => !inside);
    for (const { id, from, to, why, kind, pieceLength } of forms) {
      const between = 2 * arc.concaveRadius * Math.sin((to - from) / 2 / arc.axisRadius);
      const atTee = (from === course.from && course.from !== 0) || (to === course.to && course.to !== wall.length);
      const over = pieceLength - between;
      if (why !== 'chord' || kind !== 'straight') broken.push(`${id}: ${kind} for ${why} on a curve`);
      if (Math.abs(over) > CHORD_REACH && !(atTee && over > 0 && over < thickness)) broken.push(`${id} is sawn to ${pieceLength}, the chord between its joints is ${between}`);
      if (Math.abs(over) > 2 && !atTee && pieceLength !== arc.chord) broken.push(`${id} is sawn to ${pieceLength}, the chord between its joints is ${between}`);
      if (!atTee && pieceLength > arc.chord) broken.push(`${id} of ${pieceLength} is longer than the chord`);
    }
    for (const { at } of course.headJoints) {
      const under = at > course.from && at < course.to && courses.flatMap(({ pieces }) => pieces).find(({ inside, from, to }) => !inside && at > from && at < to);
      if (under) broken.push(`${mark}/${course.n}: its joint at ${at} stands in ${under.id}`);
    }
    if (course.headJoints.some(({ kind }) => kind !== 'chord')) broken.push(`${mark}/${course.n}: ${course.headJoints.map(({ kind }) => kind).join()} joints on a curve`);
  }
  return broken;
}

/** A head joint stands wherever two pieces of a course touch, and nowhere else but at the wall's own ends. */
function brokenJoints({ mark, length }: LaidWall, { n, pieces, headJoints }: LaidCourse): string[] {
  const laid = pieces.filter((piece) => !piece.inside).sort((a, b) => a.from - b.from);
  const touching = laid.slice(1).filter(({ from }, index) => laid[index]!.to === from).map(({ from }) => from);
  const inner = headJoints.map(({ at }) => at).filter((at) => (at !== 0 && at !== length) || touching.includes(at)).sort((a, b) => a - b);
  return touching.join() === inner.join() ? [] : [`${mark}/${n}: pieces touch at ${touching.join()}, head joints at ${inner.join()}`];
}

/** Every physical piece is one: counted once, no longer than a form, made up of its clipped spans. */
function brokenPieces(walls: readonly LaidWall[], range: FormRange): string[] {
  const broken: string[] = [];
  const byId = new Map<string, Piece[]>();
  for (const piece of allPieces(walls)) byId.set(piece.id, [...(byId.get(piece.id) ?? []), piece]);
  for (const [id, pieces] of byId) {
    if (pieces.filter(({ counted }) => counted).length !== 1) broken.push(`${id} is counted ${pieces.filter(({ counted }) => counted).length} times`);
    const { kind, pieceLength, cutEnds, webs, slope, why } = pieces[0]!;
    if (!FORMS.includes(kind)) continue;
    const chord = why === 'chord';
    if (!chord && sum(pieces.map(({ from, to }) => to - from)) !== pieceLength) broken.push(`${id} of ${pieceLength} is laid as ${pieces.map(({ from, to }) => to - from).join('+')}`);
    if (pieceLength > range.formLength) broken.push(`${id} is longer than a form`);
    if (slope === null && (pieceLength === range.formLength) !== (cutEnds === 0)) broken.push(`${id} of ${pieceLength} has ${cutEnds} cut ends`);
    const stations = pieces.flatMap((piece) => piece.webs ?? []);
    if (webs && pieces.length === 1) {
      const gaps = stations.slice(1).map((station, index) => station - stations[index]!);
      // A chord's webs are told along the axis: theirs is the spacing by the ratio of the two lengths, each station rounded.
      const spacing = chord ? (range.webSpacing * (pieces[0]!.to - pieces[0]!.from)) / pieceLength : range.webSpacing;
      if (gaps.some((gap) => Math.abs(gap - spacing) > (chord ? 1 : 0))) broken.push(`${id}: webs are not one spacing apart`);
      if (stations.some((station) => station < pieces[0]!.from || station > pieces[0]!.to)) broken.push(`${id}: a web stands outside its piece`);
      // Where both cuts go through a web, the piece keeps those between them alone.
      const most = Math.ceil(pieceLength / range.webSpacing);
      const least = most - 1;
      if (stations.length > most || stations.length < least) broken.push(`${id} of ${pieceLength} has ${stations.length} webs`);
    }
  }
  return broken;
}

/** Laid end to end and sawn from whole ones. */
const FORMS: readonly string[] = ['straight', 'ledge', 'taper-top'];

const allPieces = (walls: readonly LaidWall[]): Piece[] => walls.flatMap((wall) => wall.courses.flatMap((course) => course.pieces));

/** The cut list holds every sawn straight piece once, within its form; with the whole ones it makes the forms that are bought. */
function brokenCuts(takeoff: Takeoff, walls: readonly LaidWall[], range: FormRange): string[] {
  const broken: string[] = [];
  const straight = allPieces(walls).filter(({ kind, counted }) => FORMS.includes(kind) && counted);
  const isSawn = ({ cutEnds, slope }: Piece): boolean => cutEnds > 0 || slope !== null;
  const sawn = new Map(straight.filter(isSawn).map((piece) => [piece.id, piece]));
  const skus = new Set(straight.map(({ sku }) => sku));
  const cut = new Set<string>();
  for (const line of takeoff.cuts.filter(({ sku }) => skus.has(sku))) {
    const form = `form ${line.storey}/${line.sku}/${line.form}`;
    let reach = 0;
    let turned = false;
    for (const part of line.parts) {
      if (!turned && !part.turned && part.offset < reach) broken.push(`${form}: ${part.piece} overlaps`);
      reach = part.offset + part.length;
      turned = part.turned;
      const piece = sawn.get(part.piece);
      if (!piece) broken.push(`${part.piece} is cut but not laid`);
      else if (piece.pieceLength !== part.length || piece.sku !== line.sku) broken.push(`${part.piece} is cut to ${part.length}, laid ${piece.pieceLength}`);
      else if (!websFit(piece, part.offset, range)) broken.push(`${part.piece} cut at ${part.offset} has webs at ${piece.webs!.map((web) => web - piece.from).join()}`);
      if (cut.has(part.piece)) broken.push(`${part.piece} is cut twice`);
      cut.add(part.piece);
    }
    if (reach + line.offcut > range.formLength) broken.push(`${form} is overfull`);
  }
  for (const [id, piece] of sawn) if (!cut.has(id)) broken.push(`${id} of ${piece.pieceLength} is not in the cut list`);
  for (const unit of takeoff.units.filter(({ kind }) => FORMS.includes(kind))) {
    const pieces = straight.filter(({ sku }) => sku === unit.sku);
    const forms = takeoff.cuts.filter(({ sku }) => sku === unit.sku).length + pieces.filter((piece) => !isSawn(piece)).length;
    if (forms !== unit.bought) broken.push(`${unit.sku}: ${forms} forms whole and sawn, ${unit.bought} bought`);
    if (pieces.length !== unit.pieces) broken.push(`${unit.sku}: ${pieces.length} pieces laid, ${unit.pieces} counted`);
    const material = takeoff.laid.storeys.map((storey) =>
      Math.ceil(sum(allPieces(storey.walls)  .filter(({ sku, counted, slope }) => sku === unit.sku && counted && slope === null).map(({ pieceLength }) => pieceLength)) / range.formLength));
    if (unit.lowerBound < sum(material) || unit.lowerBound > unit.bought) broken.push(`${unit.sku}: bound ${unit.lowerBound} of material ${sum(material)} and bought ${unit.bought}`);
    if (unit.kind !== 'straight' && unit.spare !== 0) broken.push(`${unit.sku}: spares`);
    if (unit.kind === 'straight' && unit.spare < Math.max(1, Math.ceil(unit.bought * range.parameters.spareForms - 1e-9))) broken.push(`${unit.sku}: ${unit.spare} spares of ${unit.bought}`);
  }
  return broken;
}

/** The webs of a piece are those of the form where it was sawn, the piece turned end for end or not. */
function websFit(piece: Piece, offset: number, range: FormRange): boolean {
  if (!piece.webs) return true;
  const chord = piece.why === 'chord';
  if (!chord && piece.pieceLength !== piece.to - piece.from) return true;
  const ratio = chord ? piece.pieceLength / (piece.to - piece.from) : 1;
  const laid = piece.webs.map((web) => (web - piece.from) * ratio);
  const form = Array.from({ length: Math.ceil(range.formLength / range.webSpacing) }, (_, index) => range.firstWeb + index * range.webSpacing);
  const kept = form.map((web) => web - offset).filter((web) => web > 0 && web < piece.pieceLength);
  const turned = kept.map((web) => piece.pieceLength - web).reverse();
  const fits = (webs: readonly number[]): boolean => laid.length === webs.length && laid.every((web, index) => Math.abs(web - webs[index]!) <= (chord ? 1 : 0));
  return fits(kept) || fits(turned);
}

interface PlacedJoint {
  readonly wall: string;
  readonly course: number;
  readonly at: number;
  readonly x: number;
  readonly y: number;
  readonly seam: boolean;
}

/** Two nanometres: stations are whole, their places on the plan are not. */
const HAIR = 2;

/** Head joints of successive courses nearer than the stagger, and joints at a tee, are exactly those the answer lists. */
function brokenBond(takeoff: Takeoff, range: FormRange): string[] {
  const expected: string[] = [];
  for (const storey of takeoff.laid.storeys) {
    const most = Math.max(...storey.walls.flatMap(({ courses }) => courses.map(({ n }) => n)));
    for (let n = 2; n <= most; n += 1) {
      for (const line of straightLines(storey, n)) {
        const joints = line.flatMap((wall) => wall.courses.filter((course) => course.n === n || course.n === n - 1)
          .flatMap((course) => course.headJoints.map((joint) => placedJoint(wall, course.n, joint))));
        for (const upper of joints.filter(({ seam, course }) => !seam && course === n)) {
          for (const lower of joints.filter(({ seam, course }) => !seam && course === n - 1)) {
            if (Math.hypot(upper.x - lower.x, upper.y - lower.y) < range.minStagger - HAIR) expected.push(`${storey.id}/${upper.wall}/${n} at ${upper.at}`);
          }
        }
      }
    }
    for (const { tee, courses } of storey.junctions) {
      const through = tee && storey.walls.find(({ mark }) => mark === tee.through);
      for (const course of through?.courses.filter(({ n }) => courses.includes(n)) ?? []) {
        for (const { at, kind } of course.headJoints) {
          const near = at > tee!.cutFrom - range.webSpacing && at < tee!.cutTo + range.webSpacing;
          if (near && kind !== 'seam' && kind !== 'chord') expected.push(`${storey.id}/${through!.mark}/${course.n} at ${at}`);
        }
      }
    }
  }
  const listed = takeoff.bondBreaks.map(({ storey, wall, course, at }) => `${storey}/${wall}/${course} at ${at}`);
  const missing = unmatched(expected, listed).map((place) => `bond break not listed: ${place}`);
  return [...missing, ...unmatched(listed, expected).map((place) => `bond break listed where none is: ${place}`)];
}

function placedJoint(wall: LaidWall, course: number, { at, kind }: LaidCourse['headJoints'][number]): PlacedJoint {
  const { axisFrom, axisTo, length } = wall;
  const share = at / length;
  return {
    wall: wall.mark, course, at, seam: kind === 'seam' || kind === 'chord',
    x: axisFrom.x + (axisTo.x - axisFrom.x) * share, y: axisFrom.y + (axisTo.y - axisFrom.y) * share,
  };
}

function unmatched(wanted: readonly string[], given: readonly string[]): string[] {
  const rest = [...given];
  return wanted.filter((each) => {
    const index = rest.indexOf(each);
    if (index >= 0) rest.splice(index, 1);
    return index < 0;
  });
}

/** Walls of one core, height and base that go straight on, together. */
function straightLines({ walls, junctions }: LaidStorey, course: number): LaidWall[][] {
  const shiftOf = ({ coreChanges }: LaidWall): number => coreChanges.findLast((change) => course >= change.course)?.axisShift ?? 0;
  const lines = new Map(walls.map((wall) => [wall.mark, [wall]]));
  for (const { kind, walls: marks } of junctions) {
    const pairs = kind === 'straight' ? [marks] : kind === 'tee' && marks.length === 3 ? [marks.slice(0, 2)] : [];
    for (const [one, two] of pairs) {
      const [a, b] = [lines.get(one!)!, lines.get(two!)!];
      const alike = coreOfCourse(a[0]!, course).code === coreOfCourse(b[0]!, course).code && shiftOf(a[0]!) === shiftOf(b[0]!) && a[0]!.askedHeight === b[0]!.askedHeight && a[0]!.base === b[0]!.base;
      if (a === b || !alike) continue;
      const joined = [...a, ...b];
      for (const wall of joined) lines.set(wall.mark, joined);
    }
  }
  return [...new Set(lines.values())];
}

/** A leg gives or takes what its run misses of whole modules: 2 µm (decision 6), and half a nanometre of its own rounding. */
const LEG_REACH = 2_000.5;

/** A corner unit gives a leg to each of its walls, long and short in turn, course by course. */
function brokenLegs({ id, walls, junctions }: LaidStorey, range: FormRange): string[] {
  const broken: string[] = [];
  for (const junction of junctions.filter(({ kind, unit }) => kind === 'corner' && unit)) {
    const [arriving, leaving] = junction.walls.map((mark) => walls.find((wall) => wall.mark === mark)!) as [LaidWall, LaidWall];
    let before: { readonly leg: string; readonly course: number } | null = null;
    for (const { course, piece } of junction.units) {
      const core = coreOfCourse(arriving, course);
      const made = range.corners.find(({ kind }) => kind === junction.unit)!.legs.get(core.code)!;
      const mitre = ((core.width + 2 * range.panel) / 2) * Math.tan((Math.abs(junction.turn) * Math.PI) / 360);
      const legs = [arriving, leaving].map((wall) => {
        const holder = wall.courses.find(({ pieces }) => pieces.some((each) => each.id === piece && each.junction === junction.id));
        const laid = holder?.pieces.find((each) => each.id === piece && each.junction === junction.id);
        // An opening that stands in a leg takes what is left of it.
        const cut = laid && holder!.voids.some(({ from, to }) => from === laid.to || to === laid.from);
        return laid ? { length: laid.to - laid.from + mitre, cut } : { length: NaN, cut: false };
      });
      const is = ({ length, cut }: { length: number; cut: boolean | undefined }, as: number): boolean => (cut ? length <= as + LEG_REACH : Math.abs(length - as) <= LEG_REACH);
      const longFirst = is(legs[0]!, made.long) && is(legs[1]!, made.short);
      const shortFirst = is(legs[0]!, made.short) && is(legs[1]!, made.long);
      if (longFirst && shortFirst) {
        before = null;
        continue;
      }
      if (!longFirst && !shortFirst) broken.push(`${id}/${junction.id} course ${course}: legs ${legs.map(({ length }) => length).join(' and ')}`);
      const leg = longFirst ? 'long' : 'short';
      if (before && (leg === before.leg) !== ((course - before.course) % 2 === 0)) broken.push(`${id}/${junction.id} course ${course}: ${leg} leg out of turn`);
      before = { leg, course };
    }
  }
  return broken;
}

/**
 * Where a ledge or a taper keeps the corner unit away, the forms of both walls end at one mitre: the convex foam-face corner, or the
 * outer tip of two ledges that meet there. A corner without either always has its unit.
 */
function brokenMitres({ id, walls, junctions }: LaidStorey, range: FormRange): string[] {
  return junctions.filter(({ kind, unit }) => kind === 'corner' && unit).flatMap((junction) => {
    const [first, second] = junction.walls.map((mark) => walls.find((wall) => wall.mark === mark)!) as [LaidWall, LaidWall];
    if (first.coreChanges.length + second.coreChanges.length > 0) return [];
    return junction.courses.filter((n) => !junction.units.some(({ course }) => course === n)).flatMap((n): string[] => {
      const bed = first.base + first.courses.find((course) => course.n === n)!.bottom;
      const where = `${id}/${junction.id} course ${n}`;
      const found = [first, second].map((wall) => ({ wall, course: wall.courses.find(({ bottom }) => wall.base + bottom === bed)! }));
      const featured = found.some(({ wall, course }) => wall.taper?.course === course.n || wall.ledges.some((ledge) => ledge.course === course.n));
      const voided = found.some(({ wall, course }) => course.voids.some(({ from, to }) => from <= 0 || to >= wall.length));
      if (!featured) return voided ? [] : [`${where}: no corner unit`];
      const atStart = ({ startJunction }: LaidWall): boolean => startJunction === junction.id;
      const convex = junction.turn > 0 ? 'outside' : 'inside';
      const meet = found.every(({ wall, course }) =>
        wall.ledges.some((ledge) => ledge.course === course.n && ledge.face === convex && (atStart(wall) ? ledge.mitreStart : ledge.mitreEnd)));
      const half = first.thickness / 2 + (meet ? range.ledge!.projection : 0);
      const tip = half * Math.tan((Math.abs(junction.turn) * Math.PI) / 360);
      return found.flatMap(({ wall, course }) => {
        const past = atStart(wall) ? -course.from : course.to - wall.length;
        return Math.abs(past - tip) > 0.5000001 ? [`${where}: ${wall.mark} passes the node by ${past}, the mitre lies at ${tip}`] : [];
      });
    });
  });
}

/** Hands alternate course by course, and are read from the convex side: the same leg first gives the other hand at a re-entrant corner. */
function brokenHands({ laid }: Takeoff): string[] {
  const broken: string[] = [];
  const handOf = new Map<boolean, string>();
  for (const { walls, junctions } of laid.storeys) {
    for (const { id, unit, turn, units, walls: marks } of junctions.filter(({ kind, unit: made }) => kind === 'corner' && made === 'corner')) {
      units.forEach(({ course, hand, piece }, index) => {
        const below = units[index - 1];
        if (below && (below.hand === hand) !== ((course - below.course) % 2 === 0)) broken.push(`${id} course ${course}: ${unit} of the hand below`);
        const leg = walls.find(({ mark }) => mark === marks[0])!.courses.flatMap(({ pieces }) => pieces).find((each) => each.id === piece);
        const left = (leg?.why === 'leg-long') === turn > 0;
        const before = handOf.get(left) ?? hand;
        handOf.set(left, before);
        if (before !== hand) broken.push(`${id} course ${course}: ${hand} where the same leg was ${before}`);
      });
    }
  }
  if (handOf.size === 2 && handOf.get(true) === handOf.get(false)) broken.push('both hands are one');
  return broken;
}

/** Corner units are bought one a corner and course; a sawn pair gives one of each hand, so the job buys as many as the hand it needs more of. */
function brokenCornerOrders({ laid, units }: Takeoff): string[] {
  const needed = new Map<string, { left: number; right: number }>();
  for (const { units: made, unit } of laid.storeys.flatMap(({ junctions }) => junctions)) {
    for (const { hand, sku } of made) {
      const count = needed.get(`${unit} ${sku}`) ?? { left: 0, right: 0 };
      needed.set(`${unit} ${sku}`, { ...count, [hand]: count[hand] + 1 });
    }
  }
  const bought = new Map<string, number>();
  for (const { kind, sku, bought: number } of units.filter((each) => each.kind.startsWith('corner'))) {
    bought.set(`${kind} ${sku}`, (bought.get(`${kind} ${sku}`) ?? 0) + number);
  }
  const broken: string[] = [];
  for (const [key, { left, right }] of needed) {
    const expected = key.startsWith('corner-pair') ? Math.max(left, right) : left + right;
    const given = [...bought].filter(([sku]) => sku === key || sku.startsWith(`${key}-`)).reduce((sum, [, number]) => sum + number, 0);
    if (given !== expected) broken.push(`${key}: ${given} bought for ${left} left and ${right} right`);
  }
  return broken;
}
