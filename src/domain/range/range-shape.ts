import { z } from 'zod';
import type { LengthUnit } from '../quantity/length-unit.js';
import { count, length, positive, word } from './range-fields.js';
import { rangeParameters } from './range-parameters.js';

const prefix = word(8);
const comment = z.string().max(1000).optional();
const turn = z.number('degrees').positive('a turn of more than 0 degrees').lt(180, 'a turn below 180 degrees');
const handed = z.union(
  [z.tuple([z.literal('left'), z.literal('right')]), z.tuple([z.literal('either')])],
  'hands: ["left", "right"] or ["either"]',
);
const yields = z.union(
  [z.strictObject({ left: z.literal(1), right: z.literal(1) }), z.strictObject({ either: z.literal(2) })],
  'what one blank yields: { "left": 1, "right": 1 } or { "either": 2 }',
);
const material = z.strictObject({
  sku: word(40),
  kind: z.enum(
    ['tape', 'wire-tie', 'cable-tie', 'strap', 'board', 'foam', 'cover', 'bar'],
    'a kind of material: tape, wire-tie, cable-tie, strap, board, foam, cover or bar',
  ),
  size: word(40),
  pack: z.strictObject({ quantity: positive, unit: z.enum(['ft', 'each'], 'a unit: ft or each') }),
  strengthLbPerIn: positive.nullable().default(null),
});

/** One set of units for each core, keyed by kind; legs are [long, short] by core. */
function unitsShape(unit: LengthUnit) {
  const legs = z.record(word(8), z.tuple([length(unit), length(unit)], 'legs: [long, short]'));
  const seatGain = z.strictObject({ seatGain: length(unit), extraSectionIn2: positive });
  return z.strictObject({
    comment,
    straight: z.strictObject({ prefix, length: length(unit) }),
    corner: z.strictObject({ prefix, turn, hands: handed, legs }).optional(),
    'corner-pair': z.strictObject({ prefix, turn, yields, legs }).optional(),
    'corner-hinged': z.strictObject({ prefix, minTurn: turn, maxTurn: turn, hands: handed, legs }).optional(),
    strip: z.strictObject({ prefix, length: length(unit) }).optional(),
    'end-closure': z.strictObject({ prefix, thickness: length(unit), height: length(unit) }),
    ledge: z
      .strictObject({
        prefix,
        length: length(unit),
        projection: length(unit),
        extraSectionIn2: positive,
        cores: z.array(word(8)).min(1),
      })
      .optional(),
    'taper-top': z
      .strictObject({
        prefix,
        length: length(unit),
        faces: z.strictObject({ one: seatGain, both: seatGain }),
        cores: z.array(word(8)).min(1),
      })
      .optional(),
  });
}

/** The range file `wallcourse/range@1` in its unit, every length turned into nm; nothing in it is left unread. */
export function rangeShape(unit: LengthUnit) {
  return z.strictObject({
    format: z.literal('wallcourse/range@1', 'the format "wallcourse/range@1"'),
    code: word(40),
    version: count,
    inForceFrom: z.iso.date('a date such as 2026-01-01'),
    name: word(200),
    units: z.literal(unit),
    courseHeight: length(unit),
    formLength: length(unit),
    cutModule: length(unit),
    minPiece: length(unit),
    minStagger: length(unit),
    panel: length(unit),
    webSpacing: length(unit),
    firstWeb: length(unit).optional(),
    interlock: z.enum(['module', 'continuous'], 'interlock: module or continuous'),
    reversible: z.boolean('true or false'),
    strip: z.strictObject({ height: length(unit) }).nullish(),
    cores: z
      .array(
        z.strictObject({
          code: word(8),
          width: length(unit),
          family: z.enum(['flat', 'waffle-grid', 'screen-grid'], 'a family: flat, waffle-grid or screen-grid'),
          ratedPressurePsf: positive,
        }),
      )
      .min(1, 'at least one core')
      .max(20, 'at most 20 cores'),
    unitsPerCore: unitsShape(unit),
    materials: z.array(material).max(200, 'at most 200 materials'),
    parameters: rangeParameters,
  });
}

export type RangeDocument = z.output<ReturnType<typeof rangeShape>>;
