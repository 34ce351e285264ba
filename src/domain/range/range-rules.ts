import { printInches } from '../quantity/print-length.js';
import type { RangeDocument } from './range-shape.js';

/** One thing in a range that cannot be counted with: where, and what would do. */
export interface RangeFault {
  readonly path: readonly (string | number)[];
  readonly fix: string;
}

const CORNERS = ['corner', 'corner-pair', 'corner-hinged'] as const;

/**
 * What a range must satisfy beyond its shape before anything is counted with it.
 *
 * Legs step by `long − short` from course to course, so that step is a multiple of the cut module and at least the stagger, or
 * courses would not bond (decisions 3). A form is a whole number of cut modules. A leg is longer than the corner's own mitre.
 */
export function rangeFaults(document: RangeDocument): readonly RangeFault[] {
  return [
    ...gridFaults(document),
    ...stripFaults(document),
    ...coreFaults(document),
    ...legFaults(document),
    ...hingeFaults(document),
    ...materialFaults(document),
  ];
}

function gridFaults({
  formLength,
  cutModule,
  minPiece,
  minStagger,
  firstWeb,
  webSpacing,
  unitsPerCore,
  ...document
}: RangeDocument): RangeFault[] {
  const straight = unitsPerCore.straight.length;
  return faults([
    [formLength % cutModule !== 0, ['formLength'], `a multiple of the cut module (${printInches(cutModule)})`],
    [minStagger % cutModule !== 0, ['minStagger'], `a multiple of the cut module (${printInches(cutModule)})`],
    [minPiece % cutModule !== 0, ['minPiece'], `a multiple of the cut module (${printInches(cutModule)})`],
    [minStagger * 2 > formLength, ['minStagger'], 'at most half a form'],
    [minPiece * 2 > formLength, ['minPiece'], 'at most half a form'],
    [webSpacing > formLength, ['webSpacing'], 'at most a form'],
    [(firstWeb ?? webSpacing / 2) >= webSpacing, ['firstWeb'], 'less than the web spacing'],
    [straight !== formLength, ['unitsPerCore', 'straight', 'length'], `the form length (${printInches(formLength)})`],
    [document.parameters.minRip >= document.courseHeight, ['parameters', 'minRip', 'value'], 'less than a course'],
  ]);
}

function stripFaults({ strip, unitsPerCore, courseHeight, formLength }: RangeDocument): RangeFault[] {
  const unit = unitsPerCore.strip;
  return faults([
    [!!strip && strip.height >= courseHeight, ['strip', 'height'], 'less than a course'],
    [!!strip && !unit, ['unitsPerCore', 'strip'], 'a strip unit, because the range has a strip height'],
    [!strip && !!unit, ['strip'], 'a strip height, because the range has a strip unit'],
    [!!unit && unit.length !== formLength, ['unitsPerCore', 'strip', 'length'], `the form length (${printInches(formLength)})`],
  ]);
}

function coreFaults({ cores, unitsPerCore }: RangeDocument): RangeFault[] {
  const codes = cores.map(({ code }) => code);
  const known = (list: readonly string[] | undefined, path: string): RangeFault[] =>
    (list ?? []).flatMap((code, index) =>
      codes.includes(code)
        ? []
        : [{ path: ['unitsPerCore', path, 'cores', index], fix: `a core of the range: ${codes.join(', ')}` }],
    );
  return [
    ...codes.flatMap((code, index) =>
      codes.indexOf(code) === index ? [] : [{ path: ['cores', index, 'code'], fix: 'a code that no other core has' }],
    ),
    ...known(unitsPerCore.ledge?.cores, 'ledge'),
    ...known(unitsPerCore['taper-top']?.cores, 'taper-top'),
  ];
}

function legFaults({ cores, panel, unitsPerCore, cutModule, minStagger }: RangeDocument): RangeFault[] {
  return CORNERS.flatMap((kind) => {
    const unit = unitsPerCore[kind];
    if (!unit) return [];
    const widest = 'maxTurn' in unit ? unit.maxTurn : unit.turn;
    return Object.entries(unit.legs).flatMap(([code, [long, short]]) => {
      const path = ['unitsPerCore', kind, 'legs', code];
      const core = cores.find((each) => each.code === code);
      if (!core) return [{ path, fix: `legs by a core of the range: ${cores.map((each) => each.code).join(', ')}` }];
      const mitre = (core.width / 2 + panel) * Math.tan((widest * Math.PI) / 360);
      return faults([
        [(long - short) % cutModule !== 0, path, `long less short a multiple of the cut module (${printInches(cutModule)})`],
        [long - short < minStagger, path, `long less short at least the stagger (${printInches(minStagger)})`],
        [short <= mitre, path, `legs longer than the mitre of the turn (${printInches(Math.ceil(mitre))})`],
      ]);
    });
  });
}

function hingeFaults({ unitsPerCore }: RangeDocument): RangeFault[] {
  const hinged = unitsPerCore['corner-hinged'];
  return faults([
    [!!hinged && hinged.minTurn >= hinged.maxTurn, ['unitsPerCore', 'corner-hinged', 'minTurn'], 'less than maxTurn'],
  ]);
}

function materialFaults({ materials, parameters }: RangeDocument): RangeFault[] {
  const skus = materials.map(({ sku }) => sku);
  const pinned = materials.some(({ kind, size }) => kind === 'bar' && size === parameters.teePinBar);
  return [
    ...skus.flatMap((sku, index) =>
      skus.indexOf(sku) === index ? [] : [{ path: ['materials', index, 'sku'], fix: 'a sku that no other material has' }],
    ),
    ...faults([[!pinned, ['parameters', 'teePinBar'], `the size of a bar of the range; ${parameters.teePinBar} is none`]]),
  ];
}

const faults = (rules: readonly (readonly [boolean, RangeFault['path'], string])[]): RangeFault[] =>
  rules.flatMap(([broken, path, fix]) => (broken ? [{ path, fix }] : []));
