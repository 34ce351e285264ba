import type { Nm } from '../quantity/length.js';
import type { RowReader } from './row-reader.js';
import type { Feature } from './schedule.js';
import type { WallDraft } from './wall-draft.js';

/** A feature that is right by itself, with its row and its wall. */
export interface ReadFeature {
  readonly reader: RowReader;
  readonly feature: Feature;
  readonly wall: WallDraft;
}
type Of<K extends Feature['kind']> = ReadFeature & { readonly feature: Extract<Feature, { kind: K }> };

const ofKind = <K extends Feature['kind']>(features: readonly ReadFeature[], kind: K): readonly Of<K>[] =>
  features.filter((each): each is Of<K> => each.feature.kind === kind);

/** Tells the features that cannot stand on one wall together, each at its later row. */
export function reportConflicts(features: readonly ReadFeature[]): void {
  const walls = new Map<string, ReadFeature[]>();
  for (const each of features) {
    const known = walls.get(each.feature.wall);
    if (known) known.push(each);
    else walls.set(each.feature.wall, [each]);
  }
  for (const ofWall of walls.values()) {
    oneOnly(ofKind(ofWall, 'taper-top'), 'taper top');
    oneOnly(ofKind(ofWall, 'gable'), 'gable');
    taperUnderGable(ofWall);
    coreChanges(ofKind(ofWall, 'core-change'));
    ledges(ofKind(ofWall, 'ledge'));
  }
}

/** The row of a feature as the user knows it. */
const named = ({ reader, feature }: ReadFeature): string => (feature.place.row === null ? reader.pointer : `row ${feature.place.row}`);

function oneOnly(features: readonly ReadFeature[], noun: string): void {
  const [first, ...others] = features;
  for (const { reader, feature } of others)
    if (first) reader.fail('kind', `one ${noun} on wall ${feature.wall}: ${named(first)} is that already`);
}

function taperUnderGable(ofWall: readonly ReadFeature[]): void {
  const [taper, gable] = [ofKind(ofWall, 'taper-top')[0], ofKind(ofWall, 'gable')[0]];
  if (!taper || !gable) return;
  const [first, later] = ofWall.indexOf(taper) < ofWall.indexOf(gable) ? [taper, gable] : [gable, taper];
  later.reader.fail(
    'kind',
    `a taper top or a gable on wall ${later.feature.wall}, not both: ${named(first)} is the other, a taper top needs a level top course, and no unit is made for one under a slope`,
  );
}

/** From the foot up each change must lie over the one below and be of another core. */
function coreChanges(changes: readonly Of<'core-change'>[]): void {
  const rising = changes.toSorted((a, b) => a.feature.at - b.feature.at);
  let below: { readonly core: string; readonly change: Of<'core-change'> | null } | undefined;
  for (const change of rising) {
    const { reader, feature, wall } = change;
    below ??= { core: wall.core, change: null };
    if (below.change?.feature.at === feature.at) {
      reader.fail('at', `one core change at a height of wall ${wall.mark}: ${named(below.change)} is at ${reader.print(feature.at)} already`);
      continue;
    }
    if (feature.core === below.core) {
      const since = below.change ? `${named(below.change)} changes it to that at ${reader.print(below.change.feature.at)}` : 'the wall has it from its foot';
      reader.fail('core', `a core other than the one below, ${below.core}: ${since}`);
    }
    below = { core: feature.core, change };
  }
}

/** Ledges of one face and height run beside each other; they may touch. */
function ledges(features: readonly Of<'ledge'>[]): void {
  const lines = new Map<string, Of<'ledge'>[]>();
  for (const each of features) {
    const key = `${each.feature.face} ${each.feature.at}`;
    const known = lines.get(key);
    if (known) known.push(each);
    else lines.set(key, [each]);
  }
  for (const line of lines.values()) {
    let [reach, reaching]: [Nm, Of<'ledge'> | null] = [0, null];
    for (const each of line.toSorted((a, b) => a.feature.from - b.feature.from)) {
      const { reader, feature } = each;
      if (reaching && feature.from < reach)
        reader.fail(
          'from',
          `a ledge clear of the others on the ${feature.face} face of wall ${feature.wall} at ${reader.print(feature.at)}: ${named(reaching)} runs on to ${reader.print(reach)}`,
          reader.value('from') ?? reader.print(feature.from),
        );
      if (feature.to > reach || !reaching) [reach, reaching] = [feature.to, each];
    }
  }
}
