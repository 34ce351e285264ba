import { toMm } from '../quantity/length.js';
import type { Nm } from '../quantity/length.js';
import type { LengthUnit } from '../schedule/schedule.js';

export interface DrawingScale {
  readonly denominator: number;
  readonly text: string;
}

const scaleOf = (denominator: number, text = ''): DrawingScale => ({
  denominator,
  text: text === '' ? `1:${denominator}` : `${text} = 1'-0" (1:${denominator})`,
});

/** Scales on the rulers of each trade, from near to far. */
const IMPERIAL = [
  scaleOf(8, '1 1/2"'),
  scaleOf(12, '1"'),
  scaleOf(16, '3/4"'),
  scaleOf(24, '1/2"'),
  scaleOf(48, '1/4"'),
  scaleOf(64, '3/16"'),
  scaleOf(96, '1/8"'),
  scaleOf(128, '3/32"'),
  scaleOf(192, '1/16"'),
  scaleOf(384, '1/32"'),
  scaleOf(600),
  scaleOf(1200),
  scaleOf(2400),
  scaleOf(6000),
  scaleOf(12000),
];
const METRIC = [5, 10, 20, 25, 50, 75, 100, 150, 200, 250, 500, 1000, 2000, 5000, 10000].map((denominator) =>
  scaleOf(denominator),
);

/** Printable fields under a page's header, landscape: letter or A4, then tabloid or A3 [mm of paper]. */
export const FIELDS_MM = [
  { width: 250, height: 158 },
  { width: 392, height: 232 },
] as const;

export interface Room {
  readonly width: number;
  readonly height: number;
}

/** Scales of a kind of drawing by system of units: its usual one, and the farthest at which it still stays on the smaller page. */
export interface ScaleSpan {
  readonly imperial: { readonly usual: number; readonly farthest: number };
  readonly metric: { readonly usual: number; readonly farthest: number };
}

/** Scales with the page they are tried on, from the best: near scales on the smaller page, then every scale on the larger. */
export function scaleLadder(units: LengthUnit, span: ScaleSpan): { readonly scale: DrawingScale; readonly field: Room }[] {
  const system = units === 'mm' || units === 'm' ? 'metric' : 'imperial';
  const { usual, farthest } = span[system];
  const scales = (system === 'metric' ? METRIC : IMPERIAL).filter((scale) => scale.denominator >= usual);
  const [page, large] = FIELDS_MM;
  return [
    ...scales.filter((scale) => scale.denominator <= farthest).map((scale) => ({ scale, field: page })),
    ...scales.map((scale) => ({ scale, field: large })),
  ];
}

/**
 * The first scale of the ladder at which the model fits the room its page leaves; the farthest where it fits nowhere.
 *
 * @param width  of the model [nm]
 * @param height of the model [nm]
 * @param roomOn what a page's field leaves for the model [mm of paper]
 */
export function chooseScale(
  units: LengthUnit,
  span: ScaleSpan,
  width: Nm,
  height: Nm,
  roomOn: (field: Room) => Room,
): DrawingScale {
  const ladder = scaleLadder(units, span);
  const rung = ladder.find(({ scale, field }) => {
    const room = roomOn(field);
    return toMm(width) / scale.denominator <= room.width && toMm(height) / scale.denominator <= room.height;
  });
  return (rung ?? (ladder.at(-1) as (typeof ladder)[number])).scale;
}
