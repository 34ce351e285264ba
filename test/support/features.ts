import { inches } from '../../src/domain/quantity/length.js';
import type { Feature, Schedule } from '../../src/domain/schedule/schedule.js';
import type { LaidWall, Takeoff } from '../../src/domain/takeoff/index.js';
import { scheduleOf, type OpeningInput, type WallInput } from './small-schedules.js';

const place = { sheet: null, row: null, pointer: '' };
const INCH = 25_400_000;

/** A ledge in inches, outside unless told otherwise. */
export const ledge = (wall: string, at: number, from: number, to: number, face: 'outside' | 'inside' = 'outside'): Feature => ({
  kind: 'ledge', wall, at: inches(at), from: inches(from), to: inches(to), face, place,
});

export const taper = (wall: string, faces: 'one' | 'both' = 'one'): Feature => ({ kind: 'taper-top', wall, faces, place });

/** A small schedule with features; heights of 96 in are six whole courses. */
export const featured = (walls: readonly WallInput[], features: readonly Feature[], openings: readonly OpeningInput[] = [], height = 96): Schedule => ({
  ...scheduleOf(walls, { openings, height }), features,
});

/** A rectangle of walls A to D from the lower left, counter-clockwise, dimensioned to the foam face. */
export const rectangle = (width: number, depth: number, core = '6'): WallInput[] => [
  { mark: 'A', core, from: [0, 0], to: [width, 0] },
  { mark: 'B', core, from: [width, 0], to: [width, depth] },
  { mark: 'C', core, from: [width, depth], to: [0, depth] },
  { mark: 'D', core, from: [0, depth], to: [0, 0] },
];

export const wallIn = ({ laid }: Takeoff, mark: string): LaidWall => laid.storeys.flatMap(({ walls }) => walls).find((wall) => wall.mark === mark)!;
export const inInches = (length: number): number => length / INCH;
export const spansOf = (spans: readonly { readonly from: number; readonly to: number }[]): number[][] => spans.map(({ from, to }) => [inInches(from), inInches(to)]);
export const cubicInches = (wall: LaidWall): number => Number(wall.concreteNm3) / INCH ** 3;
/** Extra concrete in cubic inches. */
export const extra = ({ concreteMm3 }: { readonly concreteMm3: number }): number => concreteMm3 / 25.4 ** 3;
export const boughtOf = ({ units }: Takeoff, sku: string): number => units.find((unit) => unit.sku === sku)?.bought ?? 0;
/** Stations of the forms of a kind in a course. */
export const formsIn = (wall: LaidWall, course: number, kind: string): number[][] =>
  spansOf(wall.courses[course - 1]!.pieces.filter((piece) => piece.kind === kind));
export const reached = (wall: LaidWall, course: number): number[] => [inInches(wall.courses[course - 1]!.from), inInches(wall.courses[course - 1]!.to)];
