import type { z } from 'zod';
import { InputErrorList, shownText, type InputError } from '../evidence/input-error.js';
import { failure, success, type Result } from '../evidence/result.js';
import { LENGTH_UNITS, type LengthUnit } from '../quantity/length-unit.js';
import type { CornerUnit, FormRange } from './range.js';
import { rangeFaults } from './range-rules.js';
import { rangeShape, type RangeDocument } from './range-shape.js';

/**
 * A supplier's form range from its document `wallcourse/range@1`, lengths in nm.
 *
 * Refused are: anything missing, unknown or out of bounds; a parameter without a known basis; legs that would not bond; a form that
 * is no multiple of the cut module; a tee bar that is no material of the range. Errors carry the JSON pointer; all are told at once
 * (shape first, then the rules between figures).
 */
export function readRange(json: unknown): Result<FormRange, readonly InputError[]> {
  const errors = new InputErrorList();
  const add = (path: readonly PropertyKey[], fix: string): void =>
    errors.add({ sheet: null, row: null, column: null, pointer: pointerOf(path), read: shownText(valueAt(json, path)), fix });
  const unit = unitOf(json);
  if (!unit) {
    add(
      isObject(json) ? ['units'] : [],
      isObject(json) ? 'units: in, ft, mm or m' : 'a range document: a JSON object with format "wallcourse/range@1"',
    );
    return failure(errors.list());
  }
  const parsed = rangeShape(unit).safeParse(json, { error: faultText });
  if (!parsed.success) {
    for (const issue of parsed.error.issues) addIssue(issue, add);
    return failure(errors.list());
  }
  for (const { path, fix } of rangeFaults(parsed.data)) add(path, fix);
  return errors.count > 0 ? failure(errors.list()) : success(formRange(parsed.data));
}

function formRange(document: RangeDocument): FormRange {
  const { unitsPerCore: units, strip, cores, parameters } = document;
  const {
    code,
    version,
    inForceFrom,
    name,
    courseHeight,
    formLength,
    cutModule,
    minPiece,
    minStagger,
    panel,
    webSpacing,
    interlock,
    reversible,
    materials,
  } = document;
  const taper = units['taper-top'];
  return {
    code,
    version,
    inForceFrom,
    name,
    courseHeight,
    formLength,
    cutModule,
    minPiece,
    minStagger,
    panel,
    webSpacing,
    firstWeb: document.firstWeb ?? Math.round(webSpacing / 2),
    interlock,
    reversible,
    stripHeight: strip?.height ?? null,
    cores: new Map(cores.map((core) => [core.code, core])),
    corners: cornerUnits(document),
    straightPrefix: units.straight.prefix,
    stripPrefix: units.strip?.prefix ?? null,
    closure: units['end-closure'],
    ledge: units.ledge
      ? {
          prefix: units.ledge.prefix,
          cores: units.ledge.cores,
          projection: units.ledge.projection,
          extraSectionMm2: squareMillimetres(units.ledge.extraSectionIn2),
        }
      : null,
    taperTop: taper
      ? {
          prefix: taper.prefix,
          cores: taper.cores,
          faces: { one: taperFace(taper.faces.one), both: taperFace(taper.faces.both) },
        }
      : null,
    materials,
    parameters,
  };
}

/** Fixed units before the hinged one: a turn that a fixed unit makes is never made by a hinge. */
function cornerUnits({ unitsPerCore: units }: RangeDocument): readonly CornerUnit[] {
  const { corner, 'corner-pair': pair, 'corner-hinged': hinged } = units;
  const legsOf = (legs: Readonly<Record<string, readonly [number, number]>>): CornerUnit['legs'] =>
    new Map(Object.entries(legs).map(([core, [long, short]]) => [core, { long, short }]));
  const handsOf = (hands: readonly string[]): CornerUnit['hands'] => (hands.length === 2 ? 'two-skus' : 'either');
  return [
    ...(corner
      ? [
          {
            kind: 'corner' as const,
            prefix: corner.prefix,
            minTurn: corner.turn,
            maxTurn: corner.turn,
            hands: handsOf(corner.hands),
            legs: legsOf(corner.legs),
          },
        ]
      : []),
    ...(pair
      ? [
          {
            kind: 'corner-pair' as const,
            prefix: pair.prefix,
            minTurn: pair.turn,
            maxTurn: pair.turn,
            hands: 'either' in pair.yields ? ('either' as const) : ('pair' as const),
            legs: legsOf(pair.legs),
          },
        ]
      : []),
    ...(hinged
      ? [
          {
            kind: 'corner-hinged' as const,
            prefix: hinged.prefix,
            minTurn: hinged.minTurn,
            maxTurn: hinged.maxTurn,
            hands: handsOf(hinged.hands),
            legs: legsOf(hinged.legs),
          },
        ]
      : []),
  ];
}

/** Square inches to square millimetres: 25.4² exactly. */
const squareMillimetres = (squareInches: number): number => squareInches * 645.16;
const taperFace = (face: { seatGain: number; extraSectionIn2: number }) => ({
  seatGain: face.seatGain,
  extraSectionMm2: squareMillimetres(face.extraSectionIn2),
});

function unitOf(json: unknown): LengthUnit | undefined {
  return isObject(json) ? LENGTH_UNITS.find((unit) => unit === json['units']) : undefined;
}

/** Words for what zod finds by itself; the shape's own words win. */
function faultText(issue: { readonly code?: string; readonly expected?: unknown; readonly input?: unknown }): string {
  if (issue.input === undefined) return 'a value; this one is missing';
  return issue.code === 'invalid_type' ? `a value of type ${String(issue.expected)}` : 'another value';
}

function addIssue(issue: z.core.$ZodIssue, add: (path: readonly PropertyKey[], fix: string) => void): void {
  if (issue.code === 'unrecognized_keys')
    for (const key of issue.keys) add([...issue.path, key], 'nothing: no such key is known here');
  else add(issue.path, issue.message);
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function valueAt(json: unknown, path: readonly PropertyKey[]): unknown {
  let value = json;
  for (const key of path)
    value =
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? (value as Record<PropertyKey, unknown>)[key]
        : undefined;
  return value;
}

const pointerOf = (path: readonly PropertyKey[]): string =>
  path.map((key) => `/${String(key).replace(/~/g, '~0').replace(/\//g, '~1')}`).join('');
